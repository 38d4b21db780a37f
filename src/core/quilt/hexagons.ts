import { point } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { movedBy, quartersTurned } from "./shapes.ts";
import type { CountedPatch, QuiltPatch } from "./types.ts";

/**
 * Hexagons in offset columns, each kept as two halves so that the quilt is sewn in straight rows half
 * a hexagon high, never set in (docs/geometry/hexagon-rows.md). Every second column sits half a
 * hexagon lower and is filled up with a half at the top and at the bottom. Right triangles square off
 * the two ends of each row.
 */
export interface HexagonRows {
  readonly rows: number;
  readonly columns: number;
  /** Finished hexagon from flat to flat: its height in the quilt. */
  readonly flats: Length;
  readonly fabricId: string;
}

/** Center to corner. */
export const cornerRadius = (flats: Length): Length => flats / Math.sqrt(3);

export const hexagonSize = (g: Pick<HexagonRows, "rows" | "columns" | "flats">) => {
  const r = cornerRadius(g.flats);
  return { width: 2 * r + (g.columns - 1) * 1.5 * r, height: g.rows * g.flats };
};

/** Center of hexagon k of column c; odd columns have k = 0 ... rows, cut by the top and bottom edge. */
export const hexagonCenter = (
  g: Pick<HexagonRows, "rows" | "columns" | "flats">,
  k: number,
  c: number,
) => ({
  x: (c - (g.columns - 1) / 2) * 1.5 * cornerRadius(g.flats),
  y: ((g.rows - 1) / 2 - k + (c % 2 === 0 ? 0 : 0.5)) * g.flats,
});

/** The triangle beside the upper half of a hexagon at the left end: right angle outside, at the top. */
const endTriangle = (flats: Length) => {
  const r = cornerRadius(flats);
  return [point(r / 2, flats / 2), point(0, flats / 2), point(0, 0)];
};
/** Its mirror image, beside the lower half. */
const endTriangleBelow = (flats: Length) => {
  const r = cornerRadius(flats);
  return [point(r / 2, -flats / 2), point(0, 0), point(0, -flats / 2)];
};
/** The upright leg lies outside; the level one too where the row is the quilt's first or last. */
const ABOVE_OUTSIDE = [false, true, false];
const BELOW_OUTSIDE = [false, true, false];

/** Two per row and end: as many of one hand as of the other. */
export function endKinds(g: HexagonRows): CountedPatch[] {
  const common = { role: "setting-triangle", fabricId: g.fabricId, count: 2 * g.rows } as const;
  return [
    { ...common, id: "setting/end-above", polygon: endTriangle(g.flats), outside: ABOVE_OUTSIDE },
    {
      ...common,
      id: "setting/end-below",
      polygon: endTriangleBelow(g.flats),
      outside: BELOW_OUTSIDE,
    },
  ];
}

/** Every end triangle where it lies, for drawing. */
export function* placedEnds(g: HexagonRows): Generator<QuiltPatch> {
  const { width } = hexagonSize(g);
  const common = { role: "setting-triangle", fabricId: g.fabricId } as const;
  for (const end of ["left", "right"] as const) {
    const column = end === "left" ? 0 : g.columns - 1;
    const quarters = end === "left" ? 0 : 2;
    const x = end === "left" ? -width / 2 : width / 2;
    for (let k = 0; k < g.rows + (column % 2); k++) {
      const { y } = hexagonCenter(g, k, column);
      const halves = halvesKept(g, k, column);
      // Turned half round, what lies above at the left lies below at the right.
      if (halves.upper)
        yield {
          ...common,
          id: `setting/end-${end === "left" ? "above" : "below"}/${end}-${k + 1}`,
          polygon: movedBy(
            quartersTurned(
              end === "left" ? endTriangle(g.flats) : endTriangleBelow(g.flats),
              quarters,
            ),
            x,
            y,
          ),
        };
      if (halves.lower)
        yield {
          ...common,
          id: `setting/end-${end === "left" ? "below" : "above"}/${end}-${k + 1}`,
          polygon: movedBy(
            quartersTurned(
              end === "left" ? endTriangleBelow(g.flats) : endTriangle(g.flats),
              quarters,
            ),
            x,
            y,
          ),
        };
    }
  }
}

/** Which halves of hexagon k of column c lie in the quilt. */
export const halvesKept = (g: Pick<HexagonRows, "rows">, k: number, c: number) => ({
  upper: c % 2 === 0 || k > 0,
  lower: c % 2 === 0 || k < g.rows,
});
