import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { RadialFacts } from "../block/index.ts";
import { boundingBox, type Polygon } from "../geometry/index.ts";
import { toRadians } from "../measure/index.ts";
import { SEED, settings } from "./blocks.testing.ts";
import {
  angleMisfit,
  angleMisfitAlong,
  circleLoss,
  deepLoss,
  domeHeight,
  driftMisfit,
  frameLoss,
  lossInQuilt,
  sideLoss,
  stepBetweenEdges,
  takenUpBy,
} from "./laws.ts";
import {
  meet,
  reachOf,
  type SectorErrors,
  sewRound,
  sewSector,
  stitched,
  TRUE,
} from "./sewn.testing.ts";
import { type Follow, rawOutline, type Sewn } from "./shift.ts";

const WEDGES = [6, 8, 10, 12, 16] as const;
const SEAM = 0.25;
const size = fc.double({ min: 2.1, max: 9.7, noNaN: true });
const error = fc.double({ min: -1 / 12, max: 1 / 12, noNaN: true });
const run = (p: fc.IProperty<unknown[]>) => fc.assert(p, { seed: SEED, numRuns: 200 });

/** Has the polygon an edge on the side of the square that faces `direction`? */
const liesOn = (p: Polygon, direction: number, half: number): boolean =>
  p.filter((v) => Math.abs(v.x * Math.cos(direction) + v.y * Math.sin(direction) - half) < 1e-7)
    .length > 1;

const sewnWith = (e: number, follow: Follow = "outer"): SectorErrors => ({
  ...TRUE,
  inner: e,
  outer: e,
  cross: e,
  follow,
});

describe("laws of n wedges, against a block sewn piece by piece", () => {
  test.each(WEDGES)("%i wedges: every seam e too wide, 2 e / sin(180 / n) smaller across", (n) => {
    run(
      fc.property(size, error, (a, e) => {
        const across = 2 * reachOf(n, a, a + SEAM, 0, SEAM, sewnWith(e), "to-center");
        expect(2 * (a + SEAM) - across).toBeCloseTo(circleLoss(n, e), 9);
      }),
    );
  });

  test.each(WEDGES)(
    "%i wedges, every seam alike too wide: it still closes, so it lies flat",
    (n) => {
      run(
        fc.property(size, error, (a, e) => {
          expect(sewRound(n, a, a, SEAM, sewnWith(e)).open).toBeCloseTo(0, 12);
        }),
      );
    },
  );

  test.each(WEDGES)(
    "%i wedges: what a side at any slant loses, whichever raw edge is followed",
    (n) => {
      run(
        fc.property(size, error, fc.double({ min: -60, max: 60, noNaN: true }), (a, e, delta) => {
          for (const follow of ["outer", "inner"] as const) {
            const far = 1.3 * a;
            const came = reachOf(n, a, far, toRadians(delta), SEAM, sewnWith(e, follow), "outer");
            expect(far - came).toBeCloseTo(sideLoss(n, e, delta, follow), 9);
          }
        }),
      );
    },
  );

  test.each(WEDGES)("%i wedges: wedge and outer piece end 2 e sin(180 / n) apart", (n) => {
    run(
      fc.property(size, error, (a, e) => {
        const { stepBetweenEdges: step } = sewSector(n, a, a, SEAM, sewnWith(e));
        expect(step).toBeCloseTo(stepBetweenEdges(n, e), 12);
      }),
    );
  });

  test.each(Object.entries(settings(4)))(
    "every side of a whole block, by its patches: %s",
    (_, block) => {
      const { n, a, turned } = block.radial as RadialFacts;
      const half = block.radial?.half ?? 0;
      const framed = block.width / 2 > half + 1e-9;
      for (const e of [1 / 64, 0.043])
        for (const follow of ["outer", "inner"] as const) {
          const reachTo = (side: number): number => {
            const reaches = block.patches.flatMap((p) => {
              if (p.sector === undefined || !liesOn(p.polygon, side, half)) return [];
              const axis = ((p.sector + (turned === "flat" ? 0 : 0.5)) * 2 * Math.PI) / n;
              const outer = p.id.endsWith("/outer");
              // A plain corner has no edge in the long seams: it goes where its wedge goes.
              const plain = p.role === "corner" && p.polygon.length === 3;
              const own = plain && outer ? "inner" : follow;
              return reachOf(
                n,
                a,
                half + SEAM,
                side - axis,
                SEAM,
                sewnWith(e, own),
                outer ? "outer" : "to-center",
              );
            });
            return Math.min(...reaches);
          };
          const bars = framed ? 2 * (block.width / 2 - half) - 4 * e : 0;
          const sewn: Sewn = { seam: SEAM, wider: () => e, follow, spareOf: () => 0, near: 1e-7 };
          const came = boundingBox(rawOutline(block.tree, sewn));
          expect(came.right - came.left).toBeCloseTo(reachTo(0) + reachTo(Math.PI) + bars, 9);
          expect(came.top - came.bottom).toBeCloseTo(
            reachTo(Math.PI / 2) + reachTo(-Math.PI / 2) + bars,
            9,
          );
        }
    },
  );

  test.each(WEDGES)("%i wedges: allowance drifting by d leaves 2 n d at the outer edge", (n) => {
    run(
      fc.property(
        size,
        fc.double({ min: -1 / 32, max: 1 / 32, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (leg, d, pivot) => {
          const { open } = sewRound(n, leg, leg, SEAM, {
            ...TRUE,
            inner: d * (1 - pivot),
            outer: -d * pivot,
          });
          // Wider at the center than at the outer edge: too much, so nothing is open.
          const misfit = driftMisfit(n, d);
          expect(-open * leg).toBeCloseTo(misfit, 3);
          expect(Math.abs(-open * leg - misfit)).toBeLessThan(0.01 * Math.abs(misfit) + 1e-9);
        },
      ),
    );
  });

  test.each(WEDGES)("%i wedges: each x degrees too wide, n x degrees too much", (n) => {
    run(
      fc.property(size, fc.double({ min: -0.6, max: 0.6, noNaN: true }), (leg, x) => {
        const { open } = sewRound(n, leg, leg, SEAM, { ...TRUE, angle: x });
        expect((-open * 180) / Math.PI).toBeCloseTo(angleMisfit(n, x), 9);
        expect(-open * leg).toBeCloseTo(angleMisfitAlong(n, x, leg), 9);
      }),
    );
  });

  test("for eight: 5.226 e, 4.828 e, 8.524 e, 0.765 e, 16 d", () => {
    expect(circleLoss(8, 1)).toBeCloseTo(5.226, 3);
    expect(deepLoss(1, "outer")).toBeCloseTo(4.828, 3);
    expect(deepLoss(1, "inner")).toBeCloseTo(8.524, 3);
    expect(stepBetweenEdges(8, 1)).toBeCloseTo(0.765, 3);
    expect(driftMisfit(8, 1)).toBe(16);
  });

  test("sewing some seams deeper again takes up what the drift law says it put there", () => {
    // 1/4 too much goes with 4 seams taken in by 1/32.
    expect(takenUpBy(4, 1 / 32)).toBe(1 / 4);
    const shape = (deeper: number) => sewRound(8, 4, 4.3, SEAM, { ...TRUE, outer: deeper });
    expect((shape(1 / 32).open - shape(0).open) * 4.3).toBeCloseTo(takenUpBy(8, 1 / 32), 3);
  });

  test("a shortage of 1/4 on an octagon of 8 raises a dome of about 0.56, if nothing gives", () => {
    // A cone of the same slope: circumference short by 1/4 of 2 pi 4.
    expect(domeHeight(4, 0.25)).toBeCloseTo(0.563, 3);
    expect(domeHeight(4, -0.1)).toBe(0);
  });

  test("in the quilt every unit loses an allowance's error on two sides; bars take two seams more", () => {
    const strip = (parts: number, e: number): number => {
      // Raw widths 3, 5, 7 ... laid raw edge on raw edge, each seam drawn 1/4 + e inside both.
      let at = 0;
      for (let i = 0; i < parts; i++) at += 3 + 2 * i - (i > 0 ? 2 * (SEAM + e) : 0);
      return at;
    };
    expect(strip(3, 0) - strip(3, 0.03)).toBeCloseTo(frameLoss(0.03), 12);
    const finished = (e: number) => 4 - 2 * (SEAM + e);
    expect(finished(0) - finished(0.03)).toBeCloseTo(lossInQuilt(0.03), 12);
  });

  test("two lines of the check meet where they should", () => {
    expect(meet(stitched([0, 1], [1, 1], 0, 0), stitched([2, 0], [2, 5], 0, 0))).toEqual([2, 1]);
  });
});
