import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { applyToPolygon, area, boundingBox, type Polygon, point } from "../geometry/index.ts";
import { bandsIn } from "./bands.ts";
import { layMotion, undone } from "./motion.ts";
import { ringsOf, ringWidth, upDownShift } from "./rings.ts";
import { type BandLook, stripOf, type WedgeCut } from "./types.ts";

const seed = 20260417;
const runs = { seed, numRuns: 150 };
console.info(`rings.laws seed ${seed}`);

const COLORS = ["#112233", "#445566", "#778899", "#AABBCC", "#DDEEFF", "#998877"];
const T8 = Math.tan(Math.PI / 8);

const cutOf = fc
  .record({
    a: fc.double({ min: 1.3, max: 9.7, noNaN: true }),
    seam: fc.double({ min: 0.2, max: 0.4, noNaN: true }),
    past: fc.double({ min: 0.05, max: 1.1, noNaN: true }),
  })
  .map((c): WedgeCut => c);

const stripeOf = fc
  .array(fc.double({ min: 0.11, max: 2.3, noNaN: true }), { minLength: 2, maxLength: 6 })
  .map((widths): BandLook => {
    let at = 0;
    const bands = widths.map((w, i) => {
      const band = { from: at, to: at + w, color: COLORS[i], fabricId: "s" };
      at += w;
      return band;
    });
    return { kind: "bands", fabricId: "s", bands, period: at, tilt: 0 };
  });

/** A sewn wedge lying up in its strip: outer seam at y = SA, center at y = a + SA. */
const wedge = (c: WedgeCut): Polygon => [
  point(0, c.a + c.seam),
  point(-c.a * T8, c.seam),
  point(c.a * T8, c.seam),
];

/** Second method: walks every band edge of many repeats through the formulas of the brief. */
function edgesByFormula(look: BandLook, c: WedgeCut, way: "up" | "down", start: number): number[] {
  const radii: number[] = [];
  for (let k = -3; k < 60; k++)
    for (const b of look.bands) {
      const y = b.from + k * (look.period as number) - start;
      const r = way === "up" ? c.a + c.seam - y : y - c.past;
      if (r > 1e-9 && r < c.a - 1e-9) radii.push(r);
    }
  return radii.sort((p, q) => p - q);
}

describe("band edges in a sewn wedge", () => {
  test("polygons and rings agree with r = a + SA - y (up) and y - p (down) to 1e-9", () => {
    fc.assert(
      fc.property(cutOf, stripeOf, fc.nat(1000), fc.boolean(), (c, look, s, down) => {
        const start = (s / 1000) * (look.period as number);
        const way = down ? "down" : "up";
        const expected = edgesByFormula(look, c, way, start);
        const rings = ringsOf(look, c, way, start);
        expect(rings.slice(1).map((r) => r.inner)).toHaveLength(expected.length);
        rings.slice(1).forEach((r, i) => {
          expect(Math.abs(r.inner - expected[i])).toBeLessThan(1e-9);
        });
        const shown = bandsIn(wedge(c), look, { way, start, strip: stripOf(c) });
        const ys = shown.map((p) => boundingBox(p.polygon));
        const fromPolygons = ys
          .map((b) => c.a + c.seam - b.top)
          .filter((r) => r > 1e-9)
          .sort((p, q) => p - q);
        expect(fromPolygons).toHaveLength(expected.length);
        fromPolygons.forEach((r, i) => {
          expect(Math.abs(r - expected[i])).toBeLessThan(1e-9);
        });
      }),
      runs,
    );
  });

  test("ring widths sum to a, and the polygons to the wedge's area", () => {
    fc.assert(
      fc.property(
        cutOf,
        stripeOf,
        fc.double({ min: -30, max: 30, noNaN: true }),
        (c, look, tilt) => {
          for (const way of ["up", "down"] as const) {
            const sum = ringsOf(look, c, way, 0.37).reduce((x, r) => x + ringWidth(r), 0);
            expect(sum).toBeCloseTo(c.a, 9);
            const shown = bandsIn(wedge(c), look, { way, start: 0.37, tilt, strip: stripOf(c) });
            const total = shown.reduce((x, p) => x + area(p.polygon), 0);
            expect(total).toBeCloseTo(c.a * c.a * T8, 8);
          }
        },
      ),
      runs,
    );
  });

  test("up and down are mirror images exactly when p = SA", () => {
    fc.assert(
      fc.property(cutOf, stripeOf, (c, look) => {
        const mirrored = (past: number) => {
          const cut = { ...c, past };
          const up = ringsOf(look, cut, "up", 0).map((r) => [r.color, r.inner, r.outer]);
          const down = ringsOf(look, cut, "down", 0)
            .reverse()
            .map((r) => [r.color, c.a - r.outer, c.a - r.inner]);
          return (
            up.length === down.length &&
            up.every(
              (r, i) =>
                r[0] === down[i][0] &&
                Math.abs(+r[1] - +down[i][1]) < 1e-9 &&
                Math.abs(+r[2] - +down[i][2]) < 1e-9,
            )
          );
        };
        expect(mirrored(c.seam)).toBe(true);
        const shift = 0.173 * Math.min(...look.bands.map((b) => b.to - b.from));
        fc.pre(ringsOf(look, { ...c, past: c.seam + shift }, "up", 0).length > 1);
        expect(mirrored(c.seam + shift)).toBe(false);
        expect(upDownShift({ ...c, past: c.seam + shift })).toBeCloseTo(shift, 12);
      }),
      runs,
    );
  });

  test("a lay taken back is no lay at all", () => {
    fc.assert(
      fc.property(
        cutOf,
        fc.double({ min: -45, max: 45, noNaN: true }),
        fc.boolean(),
        (c, tilt, x) => {
          const motion = layMotion(
            { way: "down", start: 1.7, along: 2.9, tilt, crosswise: x, strip: stripOf(c) },
            0,
          );
          const there = applyToPolygon(motion, wedge(c));
          applyToPolygon(undone(motion), there).forEach((p, i) => {
            expect(p.x).toBeCloseTo(wedge(c)[i].x, 9);
            expect(p.y).toBeCloseTo(wedge(c)[i].y, 9);
          });
        },
      ),
      runs,
    );
  });
});
