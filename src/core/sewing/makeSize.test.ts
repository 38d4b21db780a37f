import { describe, expect, test } from "vitest";
import { fourPatch, ninePatch, SEED, settings } from "./blocks.testing.ts";
import { expectedReach } from "./draw.ts";
import { circleLoss, deepLoss } from "./laws.ts";
import { type Maker, testedMaker, untestedMaker, widerOnTheWhole } from "./maker.ts";
import { type MakeSizeQuestion, makeSize, sewMany, spareLeft } from "./makeSize.ts";
import { reachesOf } from "./reaches.ts";

const blocks = settings(4);
const MAKER: Maker = {
  cutBias: 0.003,
  cutScatter: 0.011,
  seamBias: 0.013,
  seamScatter: 0.017,
  turn: 0.019,
  driftBias: 0.007,
  driftScatter: 0.005,
  driftPivot: 0.4,
};
const STILL: Maker = {
  ...MAKER,
  cutBias: 0,
  cutScatter: 0,
  seamBias: 0,
  seamScatter: 0,
  turn: 0,
  driftBias: 0,
  driftScatter: 0,
};
const ask = (id: string, more: Partial<MakeSizeQuestion> = {}): MakeSizeQuestion => ({
  block: blocks[id],
  seam: 0.25,
  maker: MAKER,
  spareOf: () => 0,
  within: 1 / 16,
  seed: SEED,
  samples: 4000,
  ...more,
});

describe("will it make size?", () => {
  test.each(Object.keys(blocks))("a maker without errors makes every block its size (%s)", (id) => {
    const a = makeSize(ask(id, { maker: STILL, samples: 3 }));
    expect(a.share).toBe(1);
    for (const w of a.widths) expect(w.mean).toBeCloseTo(w.trim, 9);
  });

  test.each([...Object.keys(blocks)])(
    "samples agree with the closed form within their own error (%s)",
    (id) => {
      for (const follow of ["outer", "inner"] as const) {
        const a = makeSize(ask(id, { follow, samples: 1000 }));
        reachesOf(blocks[id], 0.25, () => 0, follow).forEach((r, i) => {
          const expected = expectedReach(r, blocks[id].radial?.n ?? 0, MAKER);
          const error = a.reaches[i].sd / Math.sqrt(a.samples);
          expect(Math.abs(a.reaches[i].mean - expected.mean)).toBeLessThan(4.5 * error);
          // A sample standard deviation has a standard error of sd / sqrt(2 N).
          expect(Math.abs(a.reaches[i].sd - expected.sd)).toBeLessThan(
            (4.5 * expected.sd) / Math.sqrt(2 * a.samples),
          );
        });
      }
    },
  );

  test("with bias alone, the laws: 5.226 e for the kite block, 4.828 e and 8.524 e for the deep one", () => {
    const maker = { ...STILL, seamBias: 0.02, turn: 0.01 };
    const e = widerOnTheWhole(maker);
    expect(e).toBeCloseTo(0.025, 15);
    const width = (id: string, follow: "outer" | "inner") =>
      makeSize(ask(id, { maker, follow, samples: 2 })).widths[0];
    const kites = width("kites", "outer");
    expect(kites.trim - kites.mean).toBeCloseTo(circleLoss(8, e), 9);
    for (const follow of ["outer", "inner"] as const) {
      const deep = width("deep", follow);
      expect(deep.trim - deep.mean).toBeCloseTo(deepLoss(e, follow), 9);
    }
  });

  test("the share agrees with the normal curve where one piece makes each side", () => {
    const id = "plain";
    const a = makeSize(ask(id, { spareOf: (p) => (p.role === "corner" ? 1 : 0), samples: 8000 }));
    const [r] = reachesOf(blocks[id], 0.25, () => 0).filter((x) => x.piece === "to-center");
    const one = expectedReach(r, 8, MAKER);
    const at = (2 * (one.mean - r.far) + 1 / 16) / (Math.SQRT2 * one.sd);
    // Both ways pass: the two widths share no seam, so their chances multiply.
    expect(Math.abs(a.share - normalShare(at) ** 2)).toBeLessThan(4 * a.shareError);
  });

  test("equal seeds give equal answers, others do not; progress is told on the way", () => {
    const q = ask("deep", { samples: 1500 });
    expect(makeSize(q)).toEqual(makeSize(q));
    expect(makeSize({ ...q, seed: SEED + 1 }).widths[0].mean).not.toBe(makeSize(q).widths[0].mean);
    expect([...sewMany(q)]).toEqual([512, 1024]);
  });

  test("plain corners: no cut helps, because the corners have spare and the wedges make the flats", () => {
    const withSpare = (corner: number) => (p: { role: string }) =>
      p.role === "corner" ? corner : 0;
    const a = makeSize(
      ask("plain", {
        spareOf: withSpare(0.5),
        enlarged: [{ id: "corner", spareOf: withSpare(0.625) }],
      }),
    );
    expect(a.share).toBeLessThan(0.5);
    expect(a.enlarged).toEqual([{ id: "corner", share: a.share }]);
    expect(a.bestCut).toBeUndefined();
  });

  test("deep: the background square a step larger helps, and lefts with rights help more than lefts alone", () => {
    const larger = (roles: string[]) => (p: { role: string }) =>
      roles.includes(p.role) ? 0.125 : 0;
    const a = makeSize(
      ask("deep", {
        enlarged: [
          { id: "left", spareOf: larger(["background-left"]) },
          { id: "both", spareOf: larger(["background-left", "background-right"]) },
        ],
      }),
    );
    expect(a.bestCut).toBe("both");
    expect(a.enlarged[1].share).toBeGreaterThan(a.share + 0.2);
  });

  test("every block is in one bin", () => {
    const { widths, samples } = makeSize(ask("kites"));
    for (const w of widths) expect(w.bins.reduce((sum, b) => sum + b.count, 0)).toBe(samples);
  });
});

describe("spare when every cut is 1/32 small", () => {
  test("a kite block then comes 1/32 and 2.613 / 32 short on each side: the wedge decides", () => {
    const left = spareLeft(blocks.kites, 0.25, () => 0, 1 / 32);
    for (const s of left) expect(s).toBeCloseTo(-(1 + 1 / Math.sin(Math.PI / 8)) / 32, 12);
  });

  test("a deep block with 0.2 to spare keeps 0.2 less (1 + 2.414) / 32", () => {
    const left = spareLeft(blocks.deep, 0.25, () => 0.2, 1 / 32);
    for (const s of left) expect(s).toBeCloseTo(0.2 - (1 + 1 + Math.SQRT2) / 32, 12);
  });
});

describe("a block without wedges round a center", () => {
  const nine = ninePatch(2);

  test("two seams across: 4 e smaller, and 4 of each cut too small", () => {
    const maker = { ...STILL, seamBias: 0.03, cutBias: -0.01 };
    const [w] = makeSize({ ...ask("plain"), block: nine, maker, samples: 2 }).widths;
    expect(w.trim - w.mean).toBeCloseTo(4 * 0.03 + 6 * 0.01, 12);
    for (const s of spareLeft(nine, 0.25, () => 0, 1 / 32)) expect(s).toBeCloseTo(-3 / 32, 12);
  });

  test("scatter adds by squares: two seams, six edges, the outer ones least of three", () => {
    const maker = { ...STILL, seamScatter: 0.02 };
    const [w] = makeSize({ ...ask("plain"), block: fourPatch(2), maker, samples: 3000 }).widths;
    // One seam across each row; the seam that joins the rows is followed at its outer end.
    expect(w.sd).toBeGreaterThan(2 * 0.02 * 0.6);
    expect(w.sd).toBeLessThan(2 * 0.02 * 1.2);
  });
});

test("after a seam test the turn of the fabric is in the seam", () => {
  const maker = testedMaker(untestedMaker("in"), { wider: 0.021, error: 0.003 });
  expect(widerOnTheWhole(maker)).toBe(0.021);
  // Presumed to sew scant enough for the fold.
  expect(widerOnTheWhole(untestedMaker("in"))).toBe(0);
  expect(untestedMaker("mm").turn).toBeCloseTo(25.4 / 32, 12);
});

/** Share of a normal curve below z: Abramowitz and Stegun 26.2.17, good to 1e-7. */
function normalShare(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}
