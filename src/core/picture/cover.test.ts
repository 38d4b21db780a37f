import { expect, test } from "vitest";
import { area, contains, distance, edges, type Polygon, point } from "../geometry/index.ts";
import type { Recipe } from "../recipe/types.ts";
import { rectangle } from "./compose.ts";
import { commonPart, coverMarks, coverPicture, neededFabric } from "./cover.ts";
import type { Mark } from "./marks.ts";

const triangle: Polygon = [point(0, 0), point(4, 0), point(0, 3)];

test("the needed fabric is the patch and one strip of the allowance along each seam", () => {
  const needed = neededFabric(triangle, 0.25);
  const strips = 0.25 * (4 + 3 + 5);
  // Beyond each seam's ends nothing is needed: between two strips only the triangle they span.
  const corner = (exterior: number): number => 0.5 * 0.25 * 0.25 * Math.sin(exterior);
  const angles = [Math.PI / 2, Math.PI - Math.atan2(3, 4), Math.PI - Math.atan2(4, 3)];
  const spanned = angles.reduce((sum, a) => sum + corner(a), 0);
  expect(area(needed)).toBeCloseTo(6 + strips + spanned, 12);
});

test("common part of two rectangles", () => {
  const part = commonPart(rectangle(0, 0, 4, 3), rectangle(1, -1, 9, 2));
  expect(area(part)).toBeCloseTo(3 * 1, 12);
});

const recipe = (polygon: Polygon, spare: number): Recipe => ({
  pieceId: "p",
  kind: "rectangle",
  cuts: [],
  yields: 1,
  yieldsLeft: 0,
  yieldsRight: 0,
  polygon,
  patch: rectangle(0.25, 0.25, 3, 2),
  setEdges: [0, 3],
  w: 0.25 + spare,
  reach: 0.25 + spare,
  spareBySide: [{ index: 1, spare }],
  spareByCorner: [],
  offCenter: 0,
  spare,
  grain: [0, 0, 0, 0],
  verdict: spare >= 0 ? "proved" : "blocked",
});

const dotted = (marks: readonly Mark[]) =>
  marks.flatMap((m) => (m.kind === "line" && m.line === "doubt" ? [m.points] : []));

test("fabric that covers has nothing dotted; what is short is dotted over its true length", () => {
  const options = { seam: 0.25, fabricId: "reed" };
  expect(dotted(coverMarks(recipe(rectangle(0, 0, 3.7, 2.5), 0.2), options))).toEqual([]);
  const short = dotted(coverMarks(recipe(rectangle(0, 0, 3, 2.5), -0.5), options));
  const length = short.reduce((sum, [a, b]) => sum + distance(a, b), 0);
  // Outside x = 3: of the patch 2 x 0.25 and its end 2; of the needed fabric two sides, an end, and
  // two cut corners.
  const ofPatch = 2 * 0.25 + 2;
  const ofNeeded = 2 * 0.25 + 2 + 2 * 0.25 * Math.SQRT2;
  expect(length).toBeCloseTo(ofPatch + ofNeeded, 9);
});

test("the cover picture holds all that is cut and all that is needed", () => {
  const p = coverPicture(recipe(rectangle(0, 0, 3, 2.5), -0.5), {
    unit: "in",
    seam: 0.25,
    fabricId: "reed",
  });
  const frame = rectangle(p.left, p.bottom, p.width, p.height);
  for (const e of edges(neededFabric(rectangle(0.25, 0.25, 3, 2), 0.25)))
    expect(contains(frame, e.from)).toBe(true);
  expect(p.title).toBe("Piece: does not cover");
});
