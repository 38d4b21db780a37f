import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  applyToPolygon,
  area,
  distance,
  edgeLength,
  edges,
  isConvex,
  norm,
  type Point,
  type Polygon,
} from "../geometry/index.ts";
import { outlineOf, unitsOf } from "./plan.ts";
import { radialSpec } from "./radial.testing.ts";
import { leastHalf, type RadialSpec, radialBlock } from "./radial.ts";
import { circleOf } from "./sectors.ts";
import type { BlockGeometry } from "./types.ts";

const SEED = 20260108;

const hasEdge = (p: Polygon, a: Point, b: Point, join: number) =>
  edges(p).some(
    (e) =>
      Math.min(distance(e.from, a) + distance(e.to, b), distance(e.from, b) + distance(e.to, a)) <=
      join,
  );

/** Edge lengths read anticlockwise, from the place that puts the greatest list first. */
function shapeOf(p: Polygon): string {
  const lengths = edges(p).map((e) => edgeLength(e).toFixed(6));
  return lengths
    .map((_, i) => [...lengths.slice(i), ...lengths.slice(0, i)].join(" "))
    .sort()
    .reverse()[0];
}

const mirrored = (p: Polygon): Polygon =>
  applyToPolygon({ turn: 0, x: 0, y: 0, mirrored: true }, p);

const shapes = (b: BlockGeometry, hand: "left" | "right", mirror: boolean) =>
  b.patches
    .filter((p) => p.hand === hand)
    .map((p) => shapeOf(mirror ? mirrored(p.polygon) : p.polygon))
    .sort();

/** Patches are convex, fill the block, keep to its outline and have names of their own. */
function patchFaults(b: BlockGeometry, spec: RadialSpec): string[] {
  const faults: string[] = [];
  const sum = (list: number[]) => list.reduce((x, y) => x + y, 0);
  const areas = b.patches.map((p) => area(p.polygon));
  if (Math.abs(sum(areas) / area(b.outline) - 1) > 1e-12) faults.push("areas do not sum");
  if (Math.min(...areas) <= 0) faults.push("a patch without area");
  if (!b.patches.every((p) => isConvex(p.polygon, spec.join))) faults.push("not convex");
  if (new Set(b.patches.map((p) => p.id)).size !== b.patches.length) faults.push("id twice");
  const outside = b.patches.flatMap((p) =>
    edges(p.polygon)
      .filter((_, i) => p.outside[i])
      .map(edgeLength),
  );
  const around = sum(edges(b.outline).map(edgeLength));
  if (Math.abs(sum(outside) / around - 1) > 1e-11) faults.push("outside edges are not the outline");
  return faults;
}

/** Every seam is one full edge of both units it joins; every unit is convex. */
function seamFaults(b: BlockGeometry, spec: RadialSpec): string[] {
  const faults: string[] = [];
  const units = unitsOf(b.tree);
  for (const unit of units) {
    const { from, to, length } = unit.seam;
    if (length !== distance(from, to)) faults.push(`${unit.id}: length`);
    if (!unit.parts.every((part) => hasEdge(outlineOf(part), from, to, spec.join)))
      faults.push(`${unit.id}: its seam is not an edge of both parts`);
    if (!isConvex(unit.outline, spec.join)) faults.push(`${unit.id}: not convex`);
  }
  if (new Set(units.map((u) => u.id)).size !== b.patches.length - 1) faults.push("units");
  return faults;
}

/** Each sector has one patch at the center, of 360 / n degrees. */
function circleFaults(b: BlockGeometry, spec: RadialSpec): string[] {
  const faults: string[] = [];
  const atCenter = b.patches.filter((p) => norm(p.polygon[0]) <= spec.join);
  const sectors = atCenter.map((p) => p.sector).sort((x, y) => x! - y!);
  if (sectors.join() !== Array.from({ length: spec.n }, (_, i) => i).join())
    faults.push(`sectors at the center: ${sectors.join()}`);
  for (const { id, polygon } of atCenter) {
    const first = Math.atan2(polygon[1].y, polygon[1].x);
    const last = polygon[polygon.length - 1];
    const turn = (Math.atan2(last.y, last.x) - first + 4 * Math.PI) % (2 * Math.PI);
    if (Math.abs(turn - (2 * Math.PI) / spec.n) > 1e-9) faults.push(`${id}: angle`);
  }
  return faults;
}

describe(`radial blocks (seed ${SEED})`, () => {
  test("fill the block with convex patches, joined along whole edges, once round the center", () => {
    fc.assert(
      fc.property(radialSpec, (spec) => {
        const b = radialBlock(spec);
        const faults = [...patchFaults(b, spec), ...seamFaults(b, spec), ...circleFaults(b, spec)];
        if (faults.length > 0) throw new Error(faults.join("; "));
      }),
      { seed: SEED, numRuns: 2500 },
    );
  });

  test("lefts equal rights, each the other turned over, where the pattern mirrors into itself", () => {
    fc.assert(
      fc.property(radialSpec, ({ whole, ...rest }) => {
        const image = (i: number) =>
          rest.turned === "flat" ? (rest.n - i) % rest.n : rest.n - 1 - i;
        const both = [...new Set([...whole, ...whole.map(image)])];
        const least = leastHalf({ ...rest, whole: both });
        const b = radialBlock({ ...rest, whole: both, half: Math.max(rest.half, least) });
        expect(shapes(b, "left", false)).toEqual(shapes(b, "right", true));
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test("a block twice the size has the same patches, twice as long", () => {
    fc.assert(
      fc.property(radialSpec, (spec) => {
        const b = radialBlock(spec);
        const double = radialBlock({
          ...spec,
          a: 2 * spec.a,
          half: 2 * spec.half,
          ...(spec.frame === undefined ? {} : { frame: 2 * spec.frame }),
        });
        expect(double.choice).toEqual(b.choice);
        expect(double.patches.map((p) => [p.id, p.role, p.hand])).toEqual(
          b.patches.map((p) => [p.id, p.role, p.hand]),
        );
        b.patches.forEach((p, i) => {
          p.polygon.forEach((v, k) => {
            const w = double.patches[i].polygon[k];
            expect(Math.hypot(w.x - 2 * v.x, w.y - 2 * v.y)).toBeLessThan(1e-11 * spec.half);
          });
        });
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test("a side shorter than the least is refused, the least is not", () => {
    fc.assert(
      fc.property(radialSpec, ({ frame, ...spec }) => {
        const least = leastHalf(spec);
        fc.pre(least > 0);
        const sectors = radialBlock({ ...spec, half: least }).patches.filter(
          (p) => p.sector !== undefined,
        );
        expect(sectors.length).toBeGreaterThanOrEqual(spec.n);
        expect(() => radialBlock({ ...spec, half: least * (1 - 1e-6) })).toThrow(RangeError);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test("sector axes and seams stand where the block is turned to", () => {
    for (const n of [6, 8, 10, 12, 16]) {
      expect(circleOf(n, "flat").axis(0)).toEqual({ x: 1, y: 0 });
      expect(circleOf(n, "corner").seam(0)).toEqual({ x: 1, y: 0 });
      expect(circleOf(n, "corner").axis(0)).not.toEqual({ x: 1, y: 0 });
    }
  });
});
