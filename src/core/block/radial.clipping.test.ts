import fc from "fast-check";
import { intersection, setPrecision, union } from "polyclip-ts";
import { describe, expect, test } from "vitest";
import { area, distance, type Point } from "../geometry/index.ts";
import { radialSpec } from "./radial.testing.ts";
import { type RadialSpec, radialBlock } from "./radial.ts";

/**
 * The same blocks by a second way that shares no code: each sector is a long triangle of three
 * trigonometric points, each chord the edge of a long rectangle, and a general polygon clipper cuts
 * them out of the outline.
 */
const SEED = 20260110;
const FAR = 4;
// Corners this near are one to the clipper; without it the noise of its input breaks its rings.
setPrecision(1e-10);

type Ring = [number, number][][];

const ring = (points: [number, number][]): Ring => [[...points, points[0]]];
const at = (radius: number, angle: number): [number, number] => [
  radius * Math.cos(angle),
  radius * Math.sin(angle),
];

function outlineRing(s: RadialSpec): Ring {
  const sides = s.outline === "square" ? 4 : 6;
  const corner = s.half / Math.cos(Math.PI / sides);
  return ring(Array.from({ length: sides }, (_, i) => at(corner, ((2 * i + 1) * Math.PI) / sides)));
}

function sectorRing(s: RadialSpec, i: number): Ring {
  const start = ((s.turned === "flat" ? 2 * i - 1 : 2 * i) * Math.PI) / s.n;
  const far = FAR * s.half;
  return ring([[0, 0], at(far, start), at(far, start + (2 * Math.PI) / s.n)]);
}

/** Everything from the line square to the axis at distance `a` inward, or outward. */
function chordRing(s: RadialSpec, i: number, side: "in" | "out"): Ring {
  const axis = ((s.turned === "flat" ? 2 * i : 2 * i + 1) * Math.PI) / s.n;
  const far = FAR * s.half;
  const to = side === "in" ? -far : far;
  const along = at(1, axis);
  const across: [number, number] = [-along[1], along[0]];
  const corner = (u: number, v: number): [number, number] => [
    u * along[0] + v * across[0],
    u * along[1] + v * across[1],
  ];
  return ring([corner(s.a, -far), corner(s.a, far), corner(to, far), corner(to, -far)]);
}

const ringArea = (r: readonly (readonly [number, number])[]) =>
  r.slice(0, -1).reduce((sum, [x, y], i) => sum + (x * r[i + 1][1] - r[i + 1][0] * y) / 2, 0);

/** Corners of the one polygon clipped out; none when nothing but noise is left. */
function corners(s: RadialSpec, polygons: ReturnType<typeof intersection>): Point[] {
  const outer = polygons.map(([r]) => r).filter((r) => Math.abs(ringArea(r)) > 1e-9 * s.half ** 2);
  expect(outer.length).toBeLessThanOrEqual(1);
  return (outer[0]?.slice(0, -1) ?? []).map(([x, y]) => ({ x, y }));
}

const nearest = (p: Point, list: readonly Point[]) => Math.min(...list.map((q) => distance(p, q)));

describe(`radial blocks by a polygon clipper (seed ${SEED})`, () => {
  test("areas and corners agree for every patch", () => {
    fc.assert(
      fc.property(radialSpec, ({ frame, unit, ...spec }) => {
        const b = radialBlock(spec);
        for (let i = 0; i < spec.n; i++) {
          const sector = intersection(outlineRing(spec), sectorRing(spec, i));
          const clipped: Record<string, Point[]> = {
            whole: corners(spec, sector),
            wedge: corners(spec, intersection(sector, chordRing(spec, i, "in"))),
            outer: corners(spec, intersection(sector, chordRing(spec, i, "out"))),
          };
          const patches = b.patches.filter((p) => p.sector === i);
          for (const p of patches) {
            const other = clipped[p.id.split("/")[2]];
            const both = Math.max(
              ...p.polygon.map((v) => nearest(v, other)),
              ...other.map((v) => nearest(v, p.polygon)),
            );
            if (!(both < 1e-7 * spec.half))
              throw new Error(`${p.id} of unit ${unit}: off by ${both}`);
          }
          const kinds = patches
            .map((p) => p.id.split("/")[2])
            .sort()
            .join();
          const outer = spec.whole.includes(i)
            ? ""
            : clipped.outer.length > 0
              ? "outer,wedge"
              : "wedge";
          if (outer !== "") expect(kinds).toBe(outer);
          else expect(["whole", "wedge"]).toContain(kinds);
          const sum = patches.reduce((x, p) => x + area(p.polygon), 0);
          const whole = clipped.whole.reduce((x, v, k) => {
            const w = clipped.whole[(k + 1) % clipped.whole.length];
            return x + (v.x * w.y - w.x * v.y) / 2;
          }, 0);
          expect(sum / Math.abs(whole)).toBeCloseTo(1, 8);
        }
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  test("the union of all patches is the outline", () => {
    fc.assert(
      fc.property(radialSpec, ({ unit, ...spec }) => {
        const b = radialBlock(spec);
        const rings = b.patches.map((p) => ring(p.polygon.map((v) => [v.x, v.y])));
        const joined = union(rings[0], ...rings.slice(1));
        const outer = joined.map(([r]) => Math.abs(ringArea(r)));
        expect(Math.max(...outer) / area(b.outline)).toBeCloseTo(1, 8);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});
