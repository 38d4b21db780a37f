import { describe, expect, test } from "vitest";
import { complement, crossing, depth, leftHalfPlane, moved } from "./halfplane.ts";
import { point } from "./point.ts";
import {
  area,
  boundingBox,
  centroid,
  clip,
  contains,
  covers,
  edgeLength,
  edges,
  intersect,
  isConvex,
  offset,
  type Polygon,
  startNearest,
} from "./polygon.ts";

const wide: Polygon = [point(1, 2), point(8, 2), point(8, 5), point(1, 5)];
const triangle: Polygon = [point(0, 0), point(6, 0), point(0, 4)];

describe("half-planes", () => {
  test("left of a directed line is inside", () => {
    const h = leftHalfPlane(point(2, 1), point(7, 1));
    expect(depth(h, point(4, 3.5))).toBe(2.5);
    expect(depth(h, point(4, 0))).toBe(-1);
    expect(depth(complement(h), point(4, 3.5))).toBe(-2.5);
    expect(depth(moved(h, 0.75), point(4, 0))).toBe(-0.25);
  });

  test("boundaries cross at one point, or nowhere when parallel", () => {
    const across = leftHalfPlane(point(0, 3), point(1, 3));
    const up = leftHalfPlane(point(5, 0), point(5, 1));
    expect(crossing(across, up)).toEqual({ x: 5, y: 3 });
    expect(crossing(across, moved(across, 2))).toBeUndefined();
  });
});

describe("polygons", () => {
  test("area, centroid, box and edges", () => {
    expect(area(wide)).toBe(21);
    expect(area([...wide].reverse())).toBe(-21);
    expect(area(triangle)).toBe(12);
    expect(centroid(triangle)).toEqual({ x: 2, y: 4 / 3 });
    expect(centroid(wide)).toEqual({ x: 4.5, y: 3.5 });
    expect(boundingBox(triangle)).toEqual({ left: 0, bottom: 0, right: 6, top: 4 });
    expect(edges(wide).map(edgeLength)).toEqual([7, 3, 7, 3]);
  });

  test("convex means anticlockwise with no corner turning in", () => {
    expect(isConvex(wide)).toBe(true);
    expect(isConvex([...wide].reverse())).toBe(false);
    expect(isConvex([point(0, 0), point(4, 0), point(1, 1), point(0, 4)])).toBe(false);
    expect(isConvex([point(0, 0), point(4, 0)])).toBe(false);
    const nearly = [point(0, 0), point(2, 1e-6), point(4, 0), point(2, 3)];
    expect(isConvex(nearly)).toBe(false);
    expect(isConvex(nearly, 1e-5)).toBe(true);
  });

  test("contains and covers, with slack", () => {
    expect(contains(wide, point(1, 3))).toBe(true);
    expect(contains(wide, point(0.9, 3))).toBe(false);
    expect(contains(wide, point(0.9, 3), 0.2)).toBe(true);
    expect(covers(wide, [point(2, 3), point(4, 3), point(4, 4)])).toBe(true);
    expect(covers(wide, triangle)).toBe(false);
  });

  test("clipping through a corner makes no splinter", () => {
    const h = leftHalfPlane(point(8, 2 + 1e-10), point(1, 5));
    expect(clip(wide, h, 1e-9).length).toBe(3);
    expect(clip(wide, complement(h), 1e-9).length).toBe(3);
    expect(clip(wide, leftHalfPlane(point(0, 9), point(1, 9)), 1e-9)).toEqual([]);
  });

  test("offset moves each edge by its own allowance", () => {
    const cut = offset(wide, [0.25, 0.5, 0.75, 1]);
    expect(boundingBox(cut)).toEqual({ left: 0, bottom: 1.75, right: 8.5, top: 5.75 });
    expect(() =>
      offset([point(0, 0), point(1, 0), point(3, 0), point(2, 2)], [1, 1, 1, 1]),
    ).toThrow(RangeError);
  });

  test("intersection of half-planes, and of none that meet", () => {
    const planes = [
      leftHalfPlane(point(0, -1), point(1, -1)),
      leftHalfPlane(point(3, 0), point(3, 1)),
      leftHalfPlane(point(3, 2), point(0, -1)),
    ];
    expect(area(intersect(planes, 50, 1e-9))).toBeCloseTo(4.5, 9);
    const apart = [
      leftHalfPlane(point(0, 1), point(1, 1)),
      leftHalfPlane(point(1, 0), point(0, 0)),
    ];
    expect(intersect(apart, 50, 1e-9)).toEqual([]);
  });

  test("the list of corners starts nearest a point; of equals, after a farther one", () => {
    expect(startNearest(wide, point(9, 6))[0]).toEqual(point(8, 5));
    expect(startNearest(wide, point(20, 3.5)).slice(0, 2)).toEqual([point(8, 2), point(8, 5)]);
    expect(startNearest(wide, point(-9, 3.5)).slice(0, 2)).toEqual([point(1, 5), point(1, 2)]);
    expect(startNearest(wide, point(4.5, 3.5))[0]).toEqual(point(1, 2));
  });
});
