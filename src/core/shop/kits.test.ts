import fc from "fast-check";
import { describe, expect, test } from "vitest";
import orchard from "../../../examples/orchard-stripe.json" with { type: "json" };
import tidepool from "../../../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../answer/index.ts";
import { type Brief, readDocument, type ShopText } from "../brief/index.ts";
import { ceilDiv, readMoney, sayMoney } from "../measure/money.ts";
import { costsOf, secondsOf } from "./costs.ts";
import { planKits } from "./kits.ts";
import { rulesOf } from "./rules.ts";
import { afterRun } from "./runs.ts";
import { readShelf, shelfCsv } from "./shelf.ts";
import { lengthOfTicks, ticksDown, ticksText, ticksUp } from "./ticks.ts";
import type { Shelf } from "./types.ts";
import { bagWeight, weighBag } from "./weight.ts";

const SEED = 20261125;

function made(document: unknown, shop: Partial<ShopText> = {}): Brief {
  const read = readDocument({ ...(document as object), shop });
  if (!read.ok) throw new RangeError(JSON.stringify(read.refusals));
  return read.brief;
}
const shelfOf = (text: string): Shelf => readShelf(text, "in").shelf;
const plan = (shop: Partial<ShopText>, shelf: Shelf, document: unknown = tidepool) => {
  const brief = made(document, shop);
  return planKits(brief, answerBrief(brief), shelf);
};
const inches = (t: number): number => +lengthOfTicks(t, "in");

/** Kelp 22 1/2 each, Shell 36, Current 36, Basalt 18, as the pattern says to buy. */
const FOUR =
  "fabric,kind,width,length,cost\nKelp,bolt,40,8 yd,12.95\nShell,bolt,42,433,11\nCurrent,bolt,40,14 yd,13.50\nBasalt,bolt,40,5 yd,9.80\n";

describe("kits from the bolts on the shelf", () => {
  // Common practice, no source: N x length and one straightened end make up a bolt.
  test("the most is what length and straightening allow, and the limiting bolt says by how much", () => {
    const p = plan({}, shelfOf(FOUR));
    // Kelp (288 - 1) / 22.5 = 12.75; Shell (433 - 1) / 36 = 12; Current 13.97; Basalt 9.94.
    expect(p.fabrics.map((f) => f.most)).toEqual([12, 12, 13, 9]);
    expect(p.kits).toBe(9);
    expect(p.limits).toEqual([
      { fabricIds: ["basalt"], kits: 9, boltId: "b4", short: ticksUp(1, "in") },
    ]);
    expect(p.runs.map((r) => [r.name, inches(r.used), inches(r.left)])).toEqual([
      ["Kelp", 203.5, 84.5],
      ["Shell", 325, 108],
      ["Current", 325, 179],
      ["Basalt", 163, 17],
    ]);
    expect(p.runs[3].cuts.map((c) => inches(c.soFar))).toEqual(
      Array.from({ length: 9 }, (_, i) => 1 + 18 * (i + 1)),
    );
  });

  test("trimmed to the exact length and its margin more can be cut; the plan says how many", () => {
    const p = plan({}, shelfOf(FOUR));
    const trimmed = plan({ basis: "trimmed" }, shelfOf(FOUR));
    // Basalt 15: (180 - 1) / 15 = 11.93.
    expect(trimmed.kits).toBe(11);
    expect(p.ways).toContainEqual({ kind: "trimmed", kits: 11 });
    expect(p.ways).toContainEqual({
      kind: "no-wrong-strip",
      kits: plan({ wrongStrip: false }, shelfOf(FOUR)).kits,
    });
  });

  test("another bolt instead, or as well: what it gives is what planning with it gives", () => {
    const shelf = shelfOf(`${FOUR}Slate,bolt,44,6 yd,9\n`);
    const p = plan({}, shelf);
    const instead = p.ways.find((w) => w.kind === "instead");
    expect(instead).toMatchObject({ fabricId: "basalt", boltId: "b5" });
    expect(plan({ from: { basalt: ["Slate"] } }, shelf).kits).toBe(instead?.kits);
    const both = p.ways.find((w) => w.kind === "as-well");
    const more = plan({ from: { basalt: ["Basalt", "Slate"] } }, shelf);
    expect(more.kits).toBe(both?.kits);
    expect(more.findings.map((f) => f.code)).toContain("kit-several-bolts");
  });

  test("what is wanted is cut and no more; what is missing is said", () => {
    const six = plan({ kits: 6 }, shelfOf(FOUR));
    expect([six.kits, six.most, six.limits]).toEqual([6, 9, []]);
    const twelve = plan({ kits: 12 }, shelfOf(FOUR));
    expect(twelve.kits).toBe(9);
    // Twelve of 18 and 1 to straighten: 217 where there are 180.
    expect(twelve.limits).toEqual([
      { fabricIds: ["basalt"], kits: 9, boltId: "b4", short: ticksUp(37, "in") },
    ]);
    expect(twelve.findings).toContainEqual(
      expect.objectContaining({ code: "kits-fewer", needed: 12, found: 9 }),
    );
  });

  test("a fabric without a bolt gives no kit, and so does a bolt too narrow for a piece", () => {
    const none = plan({}, shelfOf(FOUR.replace("Basalt", "Slate")));
    expect([none.kits, none.findings.map((f) => f.code)]).toEqual([0, ["kit-no-bolt"]]);
    const narrow = plan({}, shelfOf(FOUR.replace("Basalt,bolt,40", "Basalt,bolt,3")));
    expect([narrow.kits, narrow.findings.map((f) => f.code)]).toEqual([0, ["kit-bolt-too-narrow"]]);
  });

  test("a bolt narrower than any width of the pattern is planned at its own width", () => {
    const p = plan({}, shelfOf(FOUR.replace("Kelp,bolt,40", "Kelp,bolt,20")));
    const kelp = p.fabrics[0].bolts[0].cut;
    const brief = made(tidepool);
    const own = answerBrief({
      ...brief,
      fabrics: brief.fabrics.map((f) => (f.id === "kelp" ? { ...f, usable: "20" } : f)),
    }).yardages.find((y) => y.fabricId === "kelp" && y.width === 20);
    expect(inches(kelp.length)).toBe(own?.buy);
  });

  test("one bolt may serve two fabrics", () => {
    const p = plan({ from: { basalt: ["Kelp"] } }, shelfOf(FOUR));
    // Each kit takes 22.5 and 18 of the 288 - 1.
    expect(p.kits).toBe(7);
    expect(p.runs.find((r) => r.name === "Kelp")?.cuts).toHaveLength(14);
  });
});

describe("stripes", () => {
  // If These Threads Could Talk, repeats: N x repeat is the yardage, 6 x 24 in = 4 yd exactly.
  test("are cut by whole repeats, each kit beginning at the same place", () => {
    const matched = structuredClone(orchard) as unknown as Brief;
    const stripe = matched.fabrics.find((f) => f.kind === "stripe");
    if (stripe?.kind !== "stripe") throw new RangeError("a stripe expected");
    Object.assign(stripe, { runs: "across" });
    for (const b of matched.blocks)
      b.place = { wedge: { round: "matched", way: "up", start: "0" } };
    const p = plan(
      {},
      shelfOf("fabric,kind,length\nRows,bolt,25 yd\nBark,bolt,25 yd\nBlossom,bolt,25 yd"),
      matched,
    );
    const period = stripe.bands.reduce(
      (t, b) =>
        t +
        ticksUp(
          Number(
            b.width
              .split(" ")
              .reduce(
                (x, w) =>
                  x +
                  (w.includes("/") ? Number(w.split("/")[0]) / Number(w.split("/")[1]) : Number(w)),
                0,
              ),
          ),
          "in",
        ),
      0,
    );
    const cut = p.fabrics[0].bolts[0].cut;
    expect(cut.repeats).toEqual({ count: cut.length / period, period });
    expect(Number.isInteger(cut.repeats?.count)).toBe(true);
    const run = p.runs[0];
    // The first start may lie a whole repeat from the straightened end; every cut starts on a repeat.
    const starts = run.cuts.map((c) => c.soFar - c.length - run.straighten - period);
    expect(starts.every((s) => s % period === 0)).toBe(true);
  });
});

describe("the shelf after the run", () => {
  test("each bolt has what it had less what the run took, and reads back from CSV", () => {
    const shelf = shelfOf(FOUR);
    const p = plan({}, shelf);
    const after = afterRun(shelf, p);
    expect(after.bolts.map((b) => b.length)).toEqual(["84 1/2 in", "108 in", "179 in", "17 in"]);
    expect(readShelf(shelfCsv(after), "in").shelf).toEqual(after);
  });

  test("law: a length of ticks reads back from its text to the same ticks", () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 5_000_000 }), (t) => {
        const text = `fabric,width,length\nReed,40,${ticksText(t, "in")}`;
        const [bolt] = readShelf(text, "in").shelf.bolts;
        const sum = bolt.length
          .replace(" in", "")
          .split(" ")
          .reduce(
            (x, w) =>
              x + (w.includes("/") ? Number(w.split("/")[0]) / Number(w.split("/")[1]) : Number(w)),
            0,
          );
        expect(ticksDown(sum, "in")).toBe(t);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test("formulas in names come out inert", () => {
    const shelf = shelfOf('fabric,kind,length\n"=SUM(A1)",bolt,2 yd');
    expect(shelfCsv(shelf)).toContain("'=SUM(A1)");
  });
});

describe("money", () => {
  test.each([
    ["12.95", 1295],
    ["12,5", 1250],
    ["$ 7", 700],
    ["9.80 €", 980],
    ["", undefined],
    ["1.234,50", undefined],
    ["12.345", undefined],
    ["-3", undefined],
  ])("%s", (text, cents) => expect(readMoney(text)).toBe(cents));

  test("a kit costs its share of all that left the bolts, rounded up to a cent", () => {
    const shop = {
      hour: "24",
      margin: 40,
      roundTo: "0.50",
      extras: [{ name: "pattern", cost: "6" }],
    };
    const shelf = shelfOf(FOUR);
    const brief = made(tidepool, shop);
    const p = planKits(brief, answerBrief(brief), shelf);
    const c = costsOf(p, shelf, rulesOf(brief));
    if (!c) throw new RangeError("costs expected");
    // By hand: 203.5/36 x 12.95 / 9 = 8.1336..., 325/36 x 11 / 9 = 11.0339..., 13.5415..., 163/36 x 9.80 / 9 = 4.9302...
    expect(c.lines.slice(0, 4).map((l) => l.cents)).toEqual([814, 1104, 1355, 494]);
    // 4 bolts of 3 min, 36 cuts of 1.5, 9 bags of 3: 93 min at 24 an hour, over 9 kits: 4.1333...
    expect(secondsOf(p, rulesOf(brief))).toBe(93 * 60);
    expect(c.lines[4].cents).toBe(414);
    expect(c.cost).toBe(814 + 1104 + 1355 + 494 + 414 + 600);
    // 47.81 / 0.6 = 79.683..., up to the next half.
    expect(c.price).toBe(8000);
    expect(c.withoutLoss).toBeLessThan(c.fabric);
    expect(c.unpriced).toEqual([]);
  });

  test("law: all kits together never cost more than is said, nor a cent a line and kit less", () => {
    const one = fc.record({
      lengths: fc.array(fc.integer({ min: 200, max: 1200 }), { minLength: 4, maxLength: 4 }),
      prices: fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 4, maxLength: 4 }),
      margin: fc.integer({ min: 0, max: 90 }),
    });
    const brief = made(tidepool);
    const answer = answerBrief(brief);
    fc.assert(
      fc.property(one, ({ lengths, prices, margin }) => {
        const names = ["Kelp", "Shell", "Current", "Basalt"];
        const rows = names.map((n, i) => `${n},bolt,40,${lengths[i]},${sayMoney(prices[i])}`);
        const shelf = shelfOf(`fabric,kind,width,length,cost\n${rows.join("\n")}`);
        const p = planKits({ ...brief, shop: { ...made(tidepool).shop!, margin } }, answer, shelf);
        const c = costsOf(p, shelf, { ...rulesOf(brief), margin: margin * 100 });
        if (!c) return;
        const spent = p.runs.reduce((t, r) => {
          const i = names.indexOf(r.name);
          return t + (inches(r.used) / 36) * prices[i];
        }, 0);
        expect(c.fabric * p.kits).toBeGreaterThanOrEqual(spent - 1e-6);
        expect(c.fabric * p.kits).toBeLessThanOrEqual(spent + 4 * p.kits + 1e-6);
        expect(c.earned * 100).toBeGreaterThanOrEqual(c.price * margin - 1e-6);
        expect((c.price - 1) * (100 - margin)).toBeLessThan(c.cost * 100);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("law: the quotient up is the least whole number not below it", () => {
    fc.assert(
      fc.property(fc.nat(1e9), fc.integer({ min: 1, max: 1e6 }), (a, b) => {
        const q = ceilDiv(a, b);
        expect(q * b).toBeGreaterThanOrEqual(a);
        expect((q - 1) * b).toBeLessThan(a);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe("the weight of a bag", () => {
  test("is area times the stated weight; a bag that lacks a piece is told, and which", () => {
    const brief = made(tidepool, { weight: 150 });
    const p = planKits(brief, answerBrief(brief), shelfOf(FOUR));
    const w = bagWeight(p, rulesOf(brief));
    // Shell: 36 x 40 in = 0.92903 square meters; at 150 g each, 139.355 g.
    expect(w.pieces[1].grams).toBeCloseTo(36 * 40 * 0.00064516 * 150, 6);
    expect(weighBag(w, 430, 428)).toEqual({ kind: "alike" });
    expect(weighBag(w, 430, 430 - 86)).toEqual({ kind: "light", by: 86, piece: "Kelp" });
    expect(weighBag(w, 430, 430 + 69)).toMatchObject({ kind: "heavy", piece: "Basalt" });
    expect(weighBag(w, 430, 100)).toEqual({ kind: "light", by: 330 });
  });
});
