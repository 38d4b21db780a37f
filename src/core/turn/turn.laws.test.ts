import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentenceText } from "../answer/index.ts";
import { smallBrief } from "../brief/sample.ts";
import { nearestOf, SMALL_FREE, type Tried, tryAll } from "./brute.testing.ts";
import { litSentence, type Pin, type Turned, turnRound } from "./index.ts";

const border = { width: "2", fabric: "red", join: "butted", cut: "across" };
/** Marks of half an inch and four rows and columns: small enough to try every sentence. */
const BRIEF = smallBrief({
  step: "1/2",
  quilt: { rows: 2, columns: 3, plan: [["star"]], borders: [border] },
});
const LIMITS = { across: 4, smaller: 0.88, larger: 1.12 };
/** From 2 seams and a mark, 1 in, to the block, 7.19 in; now 2. */
const DOMAIN = {
  strips: ["4", "4 1/2", "5"],
  rows: [1, 2, 3, 4],
  columns: [1, 2, 3, 4],
  borders: [
    "0",
    "1",
    "1 1/2",
    "2",
    "2 1/2",
    "3",
    "3 1/2",
    "4",
    "4 1/2",
    "5",
    "5 1/2",
    "6",
    "6 1/2",
    "7",
  ],
};

const run = (pins: Pin[], brief = BRIEF): Turned => {
  const search = turnRound({ brief, pins, free: SMALL_FREE, limits: LIMITS });
  for (let x = search.next(); ; x = search.next()) if (x.done) return x.value;
};

/** Tried once: two words at most, to stay within seconds; the search is held to the same. */
const tried = tryAll(BRIEF, DOMAIN, 2);
const runTwo = (pins: Pin[]): Turned => {
  const limits = { ...LIMITS, words: 2 };
  const search = turnRound({ brief: BRIEF, pins, free: SMALL_FREE, limits });
  for (let x = search.next(); ; x = search.next()) if (x.done) return x.value;
};

const steps = (x: number): number => Math.ceil(Math.abs(x) / 0.5 - 1e-6);

describe("the nearest sentences are those of trying every one", () => {
  const side = fc.integer({ min: 20, max: 80 }).map((n) => n / 2);
  const yards = fc.integer({ min: 1, max: 12 }).map((n) => n * 4.5);

  test("law: a size, near enough, with or without a fabric pinned", () => {
    fc.assert(
      fc.property(side, side, fc.option(yards, { nil: undefined }), (width, length, most) => {
        const pins: Pin[] = [
          { kind: "size", relation: "=", width, length, within: 2 },
          ...(most === undefined ? [] : [{ kind: "yardage" as const, fabricId: "red", most }]),
        ];
        const miss = (t: Tried): number | undefined => {
          const far = Math.max(Math.abs(t.width - width), Math.abs(t.height - length));
          const enough = most === undefined || t.buy.red <= most + 1e-6;
          return far <= 2 + 1e-6 && enough ? steps(far) : undefined;
        };
        const found = runTwo(pins);
        expect(found.found.map((f) => sentenceText(f.brief))).toEqual(
          nearestOf(tried, miss, false, 4),
        );
        expect(found.complete).toBe(true);
        expect(found.weighed).toBe(found.all);
      }),
      { seed: 1018, numRuns: 6 },
    );
  });

  test("law: what there is of two fabrics: the largest quilts they make", () => {
    fc.assert(
      fc.property(yards, yards, (red, sand) => {
        const pins: Pin[] = [
          { kind: "yardage", fabricId: "red", most: red },
          { kind: "yardage", fabricId: "sand", most: sand },
        ];
        const miss = (t: Tried): number | undefined =>
          t.buy.red <= red + 1e-6 && t.buy.sand <= sand + 1e-6 ? 0 : undefined;
        const expected = nearestOf(tried, miss, true, 4);
        expect(runTwo(pins).found.map((f) => sentenceText(f.brief))).toEqual(expected);
      }),
      { seed: 2218, numRuns: 3 },
    );
  });

  test("law: a number of blocks", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 17 }),
        fc.constantFrom("=" as const, "<=" as const, ">=" as const),
        (count, relation) => {
          const miss = (t: Tried): number | undefined => {
            const by = t.blocks - count;
            return (relation === "=" ? by === 0 : relation === "<=" ? by <= 0 : by >= 0)
              ? 0
              : undefined;
          };
          const { found } = runTwo([{ kind: "blocks", relation, count }]);
          expect(found.map((f) => sentenceText(f.brief))).toEqual(nearestOf(tried, miss, false, 4));
        },
      ),
      { seed: 3318, numRuns: 20 },
    );
  });

  test("law: when nothing fits, each pin alone is loosened by as little as trying every one tells", () => {
    fc.assert(
      fc.property(side, side, yards, (width, length, most) => {
        const size: Pin = { kind: "size", relation: "=", width, length, within: 0.5 };
        const fabric: Pin = { kind: "yardage", fabricId: "red", most };
        const far = (t: Tried): number =>
          Math.max(Math.abs(t.width - width), Math.abs(t.height - length));
        const { found, loosened } = runTwo([size, fabric]);
        const enough = tried.filter((t) => t.buy.red <= most + 1e-6);
        const near = tried.filter((t) => far(t) <= 0.5 + 1e-6);
        const both = enough.filter((t) => near.includes(t));
        expect(found.length === 0).toBe(both.length === 0);
        if (both.length > 0) return;
        const by = (kind: Pin["kind"]) => loosened.find((l) => l.from.kind === kind)?.to;
        const nearest = Math.min(...enough.map(far));
        if (enough.length > 0)
          expect((by("size") as { within: number }).within).toBeCloseTo(nearest, 6);
        else expect(by("size")).toBeUndefined();
        const least = Math.min(...near.map((t) => t.buy.red));
        if (near.length > 0) expect((by("yardage") as { most: number }).most).toBeCloseTo(least, 6);
        else expect(by("yardage")).toBeUndefined();
      }),
      { seed: 4418, numRuns: 6 },
    );
  });
});

describe("a deep block that floats, with its border, by several pins at once", () => {
  const deep = smallBrief({
    step: "1/2",
    blocks: [
      {
        kind: "wedges",
        id: "star",
        setting: "deep",
        strip: "4 1/2",
        side: "9",
        fabric: { wedge: "red", background: "sand" },
      },
    ],
    quilt: { rows: 2, columns: 2, plan: [["star"]], borders: [{ ...border, width: "1" }] },
  });
  const free = ["float", "rows", "columns", "borders"] as const;
  const limits = { across: 3, smaller: 0.88, larger: 1.12, words: 2 };
  const halves = (from: number, to: number): string[] =>
    Array.from({ length: 2 * (to - from) + 1 }, (_, i) => {
      const whole = Math.floor(from + i / 2);
      return i % 2 === 0 ? `${whole}` : `${whole} 1/2`;
    });
  /** From a side of 7.92, with room for the wedges above 7.79, to 10.08; borders up to a block of 9. */
  const domain = {
    strips: ["4 1/2"],
    rows: [1, 2, 3],
    columns: [1, 2, 3],
    borders: ["0", ...halves(1, 9)],
    sides: halves(8, 10),
  };
  const every = tryAll(deep, domain, 2);

  test("law: size, blocks and a fabric together are what trying every one tells", () => {
    const side = fc.integer({ min: 16, max: 70 }).map((n) => n / 2);
    const count = fc.integer({ min: 1, max: 6 });
    const yards = fc.integer({ min: 2, max: 10 }).map((n) => n * 4.5);
    fc.assert(
      fc.property(side, side, count, yards, (width, length, blocks, most) => {
        const pins: Pin[] = [
          { kind: "size", relation: "=", width, length, within: 4 },
          { kind: "blocks", relation: ">=", count: blocks },
          { kind: "yardage", fabricId: "sand", most },
        ];
        const miss = (t: Tried): number | undefined => {
          const far = Math.max(Math.abs(t.width - width), Math.abs(t.height - length));
          const fits = t.blocks >= blocks && (t.buy.sand ?? 0) <= most + 1e-6;
          return far <= 4 + 1e-6 && fits ? steps(far) : undefined;
        };
        const search = turnRound({ brief: deep, pins, free, limits });
        let x = search.next();
        while (!x.done) x = search.next();
        expect(x.value.found.map((f) => sentenceText(f.brief))).toEqual(
          nearestOf(every, miss, false, 4),
        );
      }),
      { seed: 6718, numRuns: 12 },
    );
  });
});

test("law: three words at once: every answer stands by its pins, and lights what it changed", () => {
  fc.assert(
    fc.property(fc.integer({ min: 24, max: 90 }), fc.integer({ min: 24, max: 90 }), (w, l) => {
      const { found } = run([
        { kind: "size", relation: "=", width: w / 2, length: l / 2, within: 1 },
      ]);
      for (const f of found) {
        expect(Math.abs(f.answer.quilt!.width - w / 2)).toBeLessThanOrEqual(1 + 1e-6);
        expect(Math.abs(f.answer.quilt!.height - l / 2)).toBeLessThanOrEqual(1 + 1e-6);
        expect(f.answer.findings.filter((x) => x.severity === "blocks")).toEqual([]);
        expect(litSentence(f.brief, BRIEF).some((p) => p.lit)).toBe(f.words.length > 0);
      }
    }),
    { seed: 5518, numRuns: 12 },
  );
});
