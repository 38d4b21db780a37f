import type { Border } from "../brief/index.ts";
import { type Polygon, point } from "../geometry/index.ts";
import { knownLength, type Length, type Unit } from "../measure/index.ts";
import { movedBy, quartersTurned, rectangleAt } from "./shapes.ts";
import type { BorderFacts, CountedPatch, QuiltPatch } from "./types.ts";

export interface Bordered {
  readonly facts: readonly BorderFacts[];
  readonly kinds: readonly CountedPatch[];
  readonly placed: readonly QuiltPatch[];
  readonly width: Length;
  readonly height: Length;
}

/**
 * Borders from the inside out. Butted: the two sides first, then top and bottom over their ends;
 * with cornerstones all four are as long as the quilt inside. Mitred: four trapezoids, joined at the
 * corners by a set-in seam from the corner of the quilt inside to the corner outside.
 */
export function bordersOf(
  borders: readonly Border[],
  unit: Unit,
  inner: { readonly width: Length; readonly height: Length },
): Bordered {
  const facts: BorderFacts[] = [];
  const kinds: CountedPatch[] = [];
  const placed: QuiltPatch[] = [];
  let { width, height } = inner;
  borders.forEach((border, index) => {
    const made = oneBorder(border, index, knownLength(border.width, unit), width, height);
    facts.push(made.facts);
    kinds.push(...made.kinds);
    placed.push(...made.placed);
    width = made.facts.outerWidth;
    height = made.facts.outerHeight;
  });
  return { facts, kinds, placed, width, height };
}

function oneBorder(border: Border, index: number, b: Length, width: Length, height: Length) {
  const long = border.join === "mitred" || border.cornerstone === undefined;
  const facts: BorderFacts = {
    index,
    width: b,
    join: border.join,
    upright: border.join === "mitred" ? height + 2 * b : height,
    level: long ? width + 2 * b : width,
    outerWidth: width + 2 * b,
    outerHeight: height + 2 * b,
  };
  const sides =
    border.join === "mitred" ? mitred(b, width, height) : butted(b, facts, width, height);
  const patch = (side: string, polygon: Polygon): QuiltPatch => ({
    id: `border/${index}/${side}`,
    role: "border",
    fabricId: border.fabric,
    polygon,
  });
  const { top, right, bottom, left } = sides;
  const stones =
    border.cornerstone === undefined || border.join === "mitred"
      ? []
      : cornerstones(border.cornerstone, index, b, width, height);
  return {
    facts,
    kinds: [
      { ...patch("right", right), id: `border/${index}/upright`, count: 2 },
      { ...patch("bottom", bottom), id: `border/${index}/level`, count: 2 },
      ...stones.slice(0, 1).map((s) => ({ ...s, id: `border/${index}/cornerstone`, count: 4 })),
    ],
    placed: [
      patch("top", top),
      patch("right", right),
      patch("bottom", bottom),
      patch("left", left),
      ...stones,
    ],
  };
}

interface Sides {
  readonly top: Polygon;
  readonly right: Polygon;
  readonly bottom: Polygon;
  readonly left: Polygon;
}

function butted(b: Length, f: BorderFacts, width: Length, height: Length): Sides {
  const x = (width + b) / 2;
  const y = (height + b) / 2;
  return {
    top: rectangleAt(0, y, f.level, b),
    bottom: rectangleAt(0, -y, f.level, b),
    left: rectangleAt(-x, 0, b, f.upright),
    right: rectangleAt(x, 0, b, f.upright),
  };
}

/** The trapezoid below a quilt of this width: its long edge outside. */
const trapezoidBelow = (b: Length, width: Length, height: Length): Polygon => [
  point(width / 2, -height / 2),
  point(-width / 2, -height / 2),
  point(-width / 2 - b, -height / 2 - b),
  point(width / 2 + b, -height / 2 - b),
];

function mitred(b: Length, width: Length, height: Length): Sides {
  const level = trapezoidBelow(b, width, height);
  const upright = trapezoidBelow(b, height, width);
  return {
    bottom: level,
    right: quartersTurned(upright, 1),
    top: quartersTurned(level, 2),
    left: quartersTurned(upright, 3),
  };
}

function cornerstones(
  fabricId: string,
  index: number,
  b: Length,
  width: Length,
  height: Length,
): QuiltPatch[] {
  const square = rectangleAt(0, 0, b, b);
  const x = (width + b) / 2;
  const y = (height + b) / 2;
  return [
    ["top-right", x, y],
    ["top-left", -x, y],
    ["bottom-left", -x, -y],
    ["bottom-right", x, -y],
  ].map(([at, cx, cy]) => ({
    id: `border/${index}/${at}`,
    role: "cornerstone",
    fabricId,
    polygon: movedBy(square, cx as Length, cy as Length),
  }));
}
