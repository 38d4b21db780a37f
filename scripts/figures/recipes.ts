import { radialBlock } from "../../src/core/block/index.ts";
import {
  add,
  edges,
  halfPlanes,
  type Point,
  type Polygon,
  point,
  dot as product,
  scale,
} from "../../src/core/geometry/index.ts";
import { stepOf } from "../../src/core/measure/index.ts";
import { type Piece, piecesOf } from "../../src/core/piece/index.ts";
import {
  flatTip,
  halfAcross,
  type Recipe,
  recipesOf,
  rulerOf,
  wedgeBase,
} from "../../src/core/recipe/index.ts";
import { dot, figure, label, line, onFigure, type Place, shape } from "./draw.ts";

const SEAM = 0.25;
const GREY = "#d9d9d9";
const FABRIC = { f: { name: "F", letter: "A", directional: false, reversible: false } };

interface Made {
  readonly piece: Piece;
  readonly recipe: Recipe;
}

/** One piece of an eight-wedge block finishing `a` to the flat, cut at the size said or its own. */
function made(role: string, a: number, size?: string, deepHalf?: number): Made {
  const geometry = radialBlock({
    id: "b",
    n: 8,
    outline: "square",
    turned: deepHalf === undefined ? "flat" : "corner",
    a,
    half: deepHalf ?? a,
    whole: role === "kite" ? [1, 3, 5, 7] : [],
    join: 1e-9,
  });
  const { pieces } = piecesOf({
    unit: "in",
    seam: SEAM,
    blocks: [
      {
        geometry,
        count: 1,
        fabricOf: Object.fromEntries(geometry.patches.map((p) => [p.id, "f"])),
      },
    ],
    extras: [],
    fabrics: FABRIC,
  });
  const piece = pieces.find((p) => p.roles.some((r) => r.startsWith(role)));
  if (!piece) throw new Error(`${role} expected`);
  const { recipes } = recipesOf({
    pieces: [piece],
    ruler: { point: "sharp" },
    seam: SEAM,
    step: stepOf("1/8", "in"),
    unit: "in",
    fabrics: FABRIC,
    choices: size === undefined ? {} : { b: { [role]: { size } } },
  });
  return { piece, recipe: recipes[0] };
}

/** Finished shapes inside their cut ones, with the trims of their sharp corners. */
function allowance(): string {
  const A = 4;
  const all: [string, string, Made][] = [
    ["wedge, sharp", "strip 4.9033, base 4.0620", made("wedge", A)],
    ["corner", "square cut once, 3.1967", made("corner", A)],
    ["kite", "mark 2.7602 from the corner", made("kite", A)],
    [
      "left background, h = 6",
      "half of a 6.8536 square, sliced",
      made("background", A, undefined, 6),
    ],
  ];
  const parts = all.flatMap(([name, words, { piece }], i) => {
    const place = { at: point(20 + i * 200, 165), scale: 26 };
    const middle = place.at.x + 70;
    return [
      shape(piece.cut, place),
      shape(piece.finished, place, GREY),
      ...piece.trims.map((t) => line(t.from, t.to, place, true)),
      label(name, point(middle, 186), 14),
      label(words, point(middle, 204), 11),
    ];
  });
  return figure(820, 216, "Finished shapes inside the pieces as cut, a = 4 in, seam 1/4 in", parts);
}

/** Where the needle meets the nearest free raw edge: from the end of a seam, square to it. */
function tightest({ recipe }: Made): [Point, Point] | undefined {
  const raw = halfPlanes(recipe.polygon).filter((_, k) => !recipe.setEdges.includes(k));
  const seams = halfPlanes(recipe.patch);
  let best: { out: number; from: Point; to: Point } | undefined;
  edges(recipe.patch).forEach((e, j) => {
    for (const v of [e.from, e.to])
      for (const k of raw) {
        const facing = product(k.n, seams[j].n);
        if (facing < 1e-9) continue;
        const out = (k.c - product(k.n, v)) / facing;
        if (!best || out < best.out - 1e-9)
          best = { out, from: v, to: add(v, scale(seams[j].n, out)) };
      }
  });
  return best && [best.from, best.to];
}

function cover(): string {
  const sharp = halfAcross(rulerOf({ point: "sharp" }, 8, "in"), 4.5, SEAM);
  const all: [string, (m: Made) => string, Made][] = [
    [
      "corner, 4 in square",
      (m) => `proved: w ${n(m.recipe.w)}, spare ${n(m.recipe.spare)}`,
      made("corner", sharp, "4"),
    ],
    ["kite, sharp, 4 in square", (m) => `thin: w ${n(m.recipe.w)}`, made("kite", sharp, "4")],
    [
      "kite, blunt, 4 in square",
      (m) => `blocked: reach ${n(m.recipe.reach)}`,
      made("kite", 4, "4"),
    ],
    ["kite, blunt, 4 1/2 in square", (m) => `proved: w ${n(m.recipe.w)}`, made("kite", 4, "4 1/2")],
  ];
  const parts = all.flatMap(([name, words, m], i) => {
    const place: Place = { at: point(46 + i * 200, 160), scale: 30 };
    const near = tightest(m);
    const middle = place.at.x + 62;
    return [
      shape(m.recipe.polygon, place),
      shape(m.recipe.patch, place, GREY),
      ...edges(m.recipe.polygon).flatMap((e, k) =>
        m.recipe.setEdges.includes(k) ? [thick(e.from, e.to, place)] : [],
      ),
      ...(near ? [line(near[0], near[1], place, true), dot(near[0], place)] : []),
      label(name, point(middle, 186), 14),
      label(words(m), point(middle, 204), 12),
    ];
  });
  return figure(840, 216, "Cover of corners and kites beside a 4 1/2 in wedge strip", parts);
}

const n = (x: number): string => x.toFixed(4);

function thick(a: Point, b: Point, place: Place): string {
  const [p, q] = [onFigure(a, place), onFigure(b, place)];
  const f = (x: number) => String(Number(x.toFixed(2)));
  return `<line x1="${f(p.x)}" y1="${f(p.y)}" x2="${f(q.x)}" y2="${f(q.y)}" stroke="#111" stroke-width="2.4"/>`;
}

/** One strip number, three rulers: where the finished center falls, and what the octagon measures. */
function rulers(): string {
  const STRIP = 4.5;
  const all = [
    ["sharp point", rulerOf({ point: "sharp" }, 8, "in")],
    ["blunt, 1/4 past the center", rulerOf({ point: { blunt: "1/4" } }, 8, "in")],
    ["flat tip 1/2 wide", rulerOf({ point: { flat: "1/2" } }, 8, "in")],
  ] as const;
  const parts = all.flatMap(([name, ruler], i) => {
    const place: Place = { at: point(130 + i * 250, 170), scale: 32 };
    const [base, tip, a] = [
      wedgeBase(ruler, STRIP) / 2,
      flatTip(ruler) / 2,
      halfAcross(ruler, STRIP, SEAM),
    ];
    const half = a * Math.tan(ruler.angle / 2);
    const top: Polygon = tip > 0 ? [point(tip, STRIP), point(-tip, STRIP)] : [point(0, STRIP)];
    const center = point(0, SEAM + a);
    return [
      line(point(-3.2, 0), point(3.2, 0), place),
      line(point(-3.2, STRIP), point(3.2, STRIP), place),
      shape([point(-base, 0), point(base, 0), ...top], place),
      shape([point(-half, SEAM), point(half, SEAM), center], place, GREY),
      dot(center, place),
      label(name, point(place.at.x, 194), 14),
      label(`finishes ${(2 * a).toFixed(3)} across`, point(place.at.x, 212), 12),
    ];
  });
  return figure(760, 224, "A 4 1/2 in strip by three rulers, seam 1/4 in", parts);
}

/** Figures of allowance.md, proof-of-cover.md and rulers.md. Grey: finished. Heavy: set edges. */
export const recipeFigures = (): Record<string, string> => ({
  "allowance.svg": allowance(),
  "cover.svg": cover(),
  "rulers.svg": rulers(),
});
