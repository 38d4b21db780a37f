import {
  type BlockGeometry,
  layOutBlock,
  type Patch,
  patchesOf,
  type SeamTree,
  unitsOf,
} from "../../src/core/block/index.ts";
import type { WedgeBlock } from "../../src/core/brief/schema.ts";
import { type Point, type Polygon, point } from "../../src/core/geometry/index.ts";
import {
  accentLabel,
  dot,
  figure,
  label,
  line,
  onFigure,
  type Place,
  patchLabel,
  shape,
} from "./draw.ts";

/** Letters of the figures: W wedge, K kite, C corner, T trapezoid, L and R backgrounds, B bar. */
function letterOf(p: Patch): string {
  if (p.role.startsWith("wedge")) return "W";
  if (p.role.startsWith("background")) return p.hand === "left" ? "L" : "R";
  return p.role[0].toUpperCase();
}

const fillOf = (p: Patch): string => (p.role.startsWith("wedge") ? "#d9d9d9" : "#fff");

const HALF = 1;

function wedges(over: Partial<WedgeBlock>): BlockGeometry {
  const block: WedgeBlock = {
    kind: "wedges",
    id: "block",
    n: 8,
    outline: "square",
    strip: "1",
    setting: "sectors",
    fabric: {},
    ...over,
  };
  const { geometry, findings } = layOutBlock(block, "in", 0.01, HALF);
  if (!geometry) throw new Error(JSON.stringify(findings));
  return geometry;
}

const draw = (b: BlockGeometry, place: Place, size = 11): string[] =>
  b.patches.flatMap((p) => [
    shape(p.polygon, place, fillOf(p)),
    patchLabel(letterOf(p), p.polygon, place, size),
  ]);

function settings(): string {
  const blocks: [string, Partial<WedgeBlock>][] = [
    ["plain corners", { setting: "plain" }],
    ["kites", { setting: "kites" }],
    ["floating", { setting: "floating", side: "2.6" }],
    ["framed", { setting: "framed", side: "2.6" }],
    ["deep background", { setting: "deep" }],
  ];
  const parts = blocks.flatMap(([name, over], i) => {
    const at = point(90 + i * 160, 84);
    return [...draw(wedges(over), { at, scale: 54 }), label(name, point(at.x, 172), 14)];
  });
  return figure(820, 190, "Eight wedges in a square, in the five settings", parts);
}

function otherCounts(): string {
  const rows: Pick<WedgeBlock, "n" | "turned" | "outline">[] = [
    { n: 6, turned: "flat", outline: "square" },
    { n: 10, turned: "flat", outline: "square" },
    { n: 12, turned: "flat", outline: "square" },
    { n: 12, turned: "corner", outline: "square" },
    { n: 16, turned: "flat", outline: "square" },
    { n: 16, turned: "corner", outline: "square" },
    { n: 6, turned: "corner", outline: "hexagon" },
    { n: 12, turned: "flat", outline: "hexagon" },
    { n: 12, turned: "corner", outline: "hexagon" },
  ];
  const parts = rows.flatMap((row, i) => {
    const at = point(100 + (i % 5) * 178, 90 + Math.floor(i / 5) * 208);
    const words = `${row.n}, ${row.turned}${row.outline === "hexagon" ? ", in a hexagon" : ""}`;
    const outer = (b: BlockGeometry) =>
      b.patches.flatMap((p) => [
        shape(p.polygon, { at, scale: 66 }, fillOf(p)),
        ...(p.role.startsWith("wedge")
          ? []
          : [patchLabel(letterOf(p), p.polygon, { at, scale: 66 }, 9)]),
      ]);
    return [...outer(wedges(row)), label(words, point(at.x, at.y + 102), 14)];
  });
  return figure(912, 412, "Other numbers of wedges at their least side", parts);
}

/** One unit at its own stop: its patches, and the seam just sewn in the accent. */
function unitPicture(unit: SeamTree & { kind: "seam" }, place: Place): string[] {
  return [
    ...patchesOf(unit).map((p) => shape(p.polygon, place, fillOf(p))),
    line(unit.seam.from, unit.seam.to, place, true),
  ];
}

function seamTree(): string {
  const rows: [string, BlockGeometry, (u: SeamTree & { kind: "seam" }) => string][] = [
    ["plain, corners last", wedges({ setting: "plain" }), byCount([2, 4, 8, 12])],
    ["deep background", wedges({ setting: "deep" }), byCount([2, 4, 8, 16])],
  ];
  const parts = rows.flatMap(([name, b, key], row) => {
    const seen = new Map<string, SeamTree & { kind: "seam" }>();
    for (const unit of unitsOf(b.tree)) {
      const k = key(unit);
      if (k !== "" && !seen.has(k)) seen.set(k, unit);
    }
    const pictures = [...seen.values()].flatMap((unit, i) => {
      const place = { at: point(250 + i * 170, 90 + row * 176), scale: 62 };
      return unitPicture(unit, place);
    });
    return [label(name, point(92, 90 + row * 176), 14), ...pictures];
  });
  return figure(860, 352, "Units of two blocks in the order they are sewn", parts);
}

/** The first unit with each of these numbers of patches. */
const byCount =
  (counts: readonly number[]) =>
  (u: SeamTree & { kind: "seam" }): string => {
    const n = patchesOf(u).length;
    return counts.includes(n) ? String(n) : "";
  };

function hands(): string {
  const deep = wedges({ setting: "deep" });
  const at = point(120, 100);
  // The right side turned to the bottom: that is where a hand is read.
  const turned = (p: Polygon): Polygon => p.map((v) => point(v.y, -v.x));
  const atBottom = new Set(["block/s0/outer", "block/s7/outer"]);
  const block = deep.patches.flatMap((p) => {
    const polygon = turned(p.polygon);
    const place = { at, scale: 74 };
    const letter = atBottom.has(p.id) ? [patchLabel(letterOf(p), polygon, place, 13)] : [];
    return [shape(polygon, place, fillOf(p)), ...letter];
  });
  const half = (x: number, p: Polygon, word: string): string[] => {
    const place = { at: point(x, 140), scale: 34 };
    return [shape(p, place), patchLabel(word[0].toUpperCase(), p, place, 13)];
  };
  return figure(640, 212, "Left and right, outside edge at the bottom", [
    ...block,
    ...half(280, [point(0, 0), point(4, 0), point(0, 2)], "left"),
    ...half(470, [point(0, 0), point(4, 0), point(4, 2)], "right"),
    label("the bottom edge is the outside edge", point(120, 200), 12),
    label("half-rectangles on their long leg", point(443, 168), 12),
  ]);
}

/** A said block with the letters of its points and, in the accent, its seams as numbered. */
function said(seams: readonly string[], width: string, height: string, place: Place): string[] {
  const block = { kind: "own" as const, id: "own", fabric: {}, outline: { width, height } };
  const { geometry, points = [] } = layOutBlock(
    { ...block, seams: [...seams] },
    "in",
    0.1,
    undefined,
  );
  if (!geometry) throw new Error("no block");
  const numbers = seams.map((_, i) => {
    const upTo = layOutBlock({ ...block, seams: seams.slice(0, i + 1) }, "in", 0.1, undefined);
    const before = new Set(i === 0 ? [] : seamKeys(block, seams.slice(0, i)));
    const fresh = unitsOf(upTo.geometry!.tree).filter(
      (u) => !before.has(key(u.seam.from, u.seam.to)),
    );
    const [{ seam }] = fresh;
    const at = onFigure(point((seam.from.x + seam.to.x) / 2, (seam.from.y + seam.to.y) / 2), place);
    return accentLabel(String(i + 1), point(at.x + 9, at.y - 9), 13);
  });
  const letters = points.map(({ name, at }) => {
    const on = onFigure(at, place);
    const inside =
      Math.abs(at.x) < Number(width) / 2 - 0.01 && Math.abs(at.y) < Number(height) / 2 - 0.01;
    if (inside) return label(name, point(on.x + 16, on.y + 11), 14);
    const away = Math.hypot(at.x, at.y);
    return label(name, point(on.x + (at.x / away) * 13, on.y - (at.y / away) * 13), 14);
  });
  return [
    ...geometry.patches.map((p) => shape(p.polygon, place)),
    ...points.map((p) => dot(p.at, place)),
    ...letters,
    ...numbers,
  ];
}

const key = (a: Point, b: Point) =>
  [a, b]
    .map((p) => `${p.x.toFixed(6)},${p.y.toFixed(6)}`)
    .sort()
    .join();

const seamKeys = (
  block: { kind: "own"; id: string; fabric: object; outline: { width: string; height: string } },
  seams: readonly string[],
) =>
  unitsOf(
    layOutBlock({ ...block, fabric: {}, seams: [...seams] }, "in", 0.1, undefined).geometry!.tree,
  ).map((u) => key(u.seam.from, u.seam.to));

export const SAID_FIRST = [
  "from the middle of AB to the middle of CD",
  "from A to F",
  "from 2 in from C along BC to the middle of EF",
];
export const SAID_ROUND = ["8 wedges round the center", "from 2/3 of EF to 2/3 of EC"];

function ownLetters(): string {
  return figure(720, 250, "Two blocks said seam by seam, with the letters of their points", [
    ...said(SAID_FIRST, "8", "6", { at: point(180, 122), scale: 32 }),
    ...said(SAID_ROUND, "6", "6", { at: point(530, 122), scale: 32 }),
  ]);
}

/** Every figure of docs/geometry about blocks: file name -> SVG. */
export const blockFigures = (): Record<string, string> => ({
  "settings.svg": settings(),
  "other-counts.svg": otherCounts(),
  "seam-tree.svg": seamTree(),
  "hands.svg": hands(),
  "own-letters.svg": ownLetters(),
});
