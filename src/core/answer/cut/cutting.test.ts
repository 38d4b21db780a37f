import load from "highs";
import { describe, expect, test } from "vitest";
import skylark from "../../../../examples/skylark-bed.json";
import { readDocument } from "../../brief/index.ts";
import { type Brief, smallBrief } from "../../brief/sample.ts";
import { type FabricLayout, planKnown } from "../../layout/index.ts";
import { stepOf } from "../../measure/index.ts";
import { answerBrief, inHandLayouts, sayNarrower } from "../index.ts";

const sand = { kind: "plain", id: "sand", name: "Sand", usable: "40", narrower: "38" };
const red = (change: object) => ({
  kind: "plain",
  id: "red",
  name: "Red",
  usable: "40",
  narrower: "38",
  ...change,
});
const star = (change: object = {}) => ({
  kind: "wedges",
  id: "star",
  setting: "kites",
  strip: "4 1/2",
  fabric: { wedge: "red", kite: "sand" },
  ...change,
});
const withRed = (change: object, block: object = {}): Brief =>
  smallBrief({ fabrics: [red(change), sand], blocks: [star(block)] });

const plain = answerBrief(smallBrief());
const buy = (a: ReturnType<typeof answerBrief>, id: string) =>
  a.yardages.find((y) => y.fabricId === id)!;

describe("strip sets", () => {
  // Two strips of 2 1/2 sew up to 4 1/2. Six blocks of four wedges; 20 wedges from one set.
  const set = {
    kind: "strip-set",
    strips: [
      { fabric: "sand", cut: "2 1/2" },
      { fabric: "dusk", cut: "2 1/2" },
    ],
  };
  const fabrics = [red(set), sand, { ...sand, id: "dusk", name: "Dusk", narrower: undefined }];
  const a = answerBrief(smallBrief({ fabrics, blocks: [star()] }));

  test("are sewn, not bought; their strips count with the fabrics they come from", () => {
    expect(a.cutting.find((c) => c.fabricId === "red")).toMatchObject({ sets: 2 });
    expect(a.yardages.map((y) => y.fabricId)).toEqual(["sand", "sand", "dusk"]);
    expect(buy(a, "dusk").inPieces).toBe(2 * 2.5);
    expect(buy(a, "sand").inPieces).toBeCloseTo(buy(plain, "sand").inPieces + 2 * 2.5, 9);
    expect(a.questions.find((q) => q.id === "enough")!.line).toContain("Sew 2 sets of Red.");
  });

  test("made of themselves are a finding, not a crash", () => {
    const ring = smallBrief({
      fabrics: [red({ kind: "strip-set", strips: [{ fabric: "red", cut: "2 1/2" }] }), sand],
    });
    expect(answerBrief(ring).findings.map((f) => f.code)).toContain("strip-set-in-itself");
  });
});

describe("pieces in hand", () => {
  const a = answerBrief(withRed({ inHand: [{ width: "18", length: "21", count: 3 }] }));

  test("are used up first and take from what must be bought", () => {
    const [cut] = a.cutting;
    expect(cut.pieces!.sheets.length).toBeGreaterThan(0);
    expect(cut.orders.length).toBeGreaterThan(0);
    expect(buy(a, "red").inPieces).toBeLessThan(buy(plain, "red").inPieces);
  });

  test("that give everything leave nothing to buy", () => {
    const all = answerBrief(withRed({ inHand: [{ width: "40", length: "30", count: 1 }] }));
    expect(buy(all, "red").buy).toBe(0);
  });
});

describe("rounds", () => {
  const stripe = {
    kind: "stripe",
    runs: "across",
    bands: [
      { width: "2", color: "#112233" },
      { width: "4", color: "#DDEEFF" },
    ],
  };
  const round = { place: { wedge: { round: "matched", start: "1 1/4" } } };
  const a = answerBrief(withRed(stripe, round));

  test("matched: every strip begins at its place of the repeat, wedges all one way", () => {
    const [demand] = a.demands.filter((d) => d.fabricId === "red");
    expect(demand).toMatchObject({
      register: { axis: "along", period: 6, phase: 1.25 },
      turns: "none",
      count: 24,
    });
    expect(a.layouts[0].strips.every((s) => s.runs[0].y === 1.25)).toBe(true);
    expect(buy(a, "red")).toMatchObject({ toRepeat: 6 });
    expect(a.cutting[0].ways).toEqual([{ demandId: demand.id, up: 24, down: 0 }]);
  });

  test("matched: the gaps are true wedges, as tall as the strip", () => {
    // Three strips of at most ten: one gap fewer than wedges in each.
    const strips = a.layouts[0].strips.reduce((n, s) => n + s.times, 0);
    expect(a.cutting[0].waste).toMatchObject([{ height: 4.5, count: 24 - strips }]);
  });

  test("mixed: half one way, half the other, still head to tail", () => {
    const b = answerBrief(withRed(stripe, { place: { wedge: { round: "mixed" } } }));
    const [demand] = b.demands.filter((d) => d.fabricId === "red");
    expect(demand).toMatchObject({ turns: "half", count: 24, register: { phase: 0 } });
    expect(demand.shape.pitch).toBeLessThan(demand.shape.first);
  });

  test("matched from a print: as many repeats on one another as wedges in the round", () => {
    const print = { kind: "print", repeat: { along: "12" } };
    const b = answerBrief(withRed(print, { place: { wedge: { round: "matched" } } }));
    const [demand] = b.demands.filter((d) => d.fabricId === "red");
    expect(demand).toMatchObject({ layers: 4, register: { period: 12 } });
  });
});

test("washed fabric is planned at the width that is left, and bought longer", () => {
  const a = answerBrief(withRed({ shrinkage: { length: 4, width: 5 } }));
  expect(buy(a, "red").width).toBe(38);
  expect(buy(a, "red").total).toBeCloseTo(
    (buy(a, "red").inPieces + buy(a, "red").straighten + buy(a, "red").wrongStrip) / 0.96,
    9,
  );
});

test("deep backgrounds leave true wedges; each hand has its ledger where hands are cut apart", () => {
  const block = star({ setting: "deep", side: "14", fabric: { wedge: "red", background: "sand" } });
  const a = answerBrief(smallBrief({ blocks: [block] }));
  const waste = a.cutting.flatMap((c) => c.waste);
  expect(waste.map((w) => w.count)).toEqual([24, 24]);
  // a - SA + SA / sin 22.5, the wedge sliced off the half square; its wide edge by its angle.
  const { radial } = a.blocks[0];
  for (const w of waste) {
    expect(w.height).toBeCloseTo(radial!.a - 0.25 + 0.25 / Math.sin(Math.PI / 8), 6);
    expect(w.base / 2 / w.height).toBeCloseTo(Math.tan(Math.PI / 8), 9);
  }
});

describe("every piece is drawn", () => {
  const drawn = (layout: FabricLayout, id: string): number =>
    layout.strips
      .flatMap((s) => s.runs.map((r) => ({ s, r })))
      .filter(({ r }) => r.demandId === id && !r.segment)
      .reduce((n, { s, r }) => n + s.times * s.layers * r.copies, 0);

  test("what is cut from beside long borders among them", () => {
    const read = readDocument(skylark);
    if (!read.ok) throw new Error(read.refusals[0].message);
    const a = answerBrief(read.brief);
    const meadow = a.layouts.find((l) => l.fabricId === "meadow")!;
    const own = a.demands.filter((d) => d.fabricId === "meadow" && !d.joinsAllowed);
    expect(own.some((d) => d.shape.kind === "along")).toBe(true);
    for (const d of own)
      expect({ id: d.id, n: drawn(meadow, d.id) }).toEqual({ id: d.id, n: d.count });
    const right = Math.max(...meadow.strips.flatMap((s) => s.runs.map((r) => r.x + r.width)));
    expect(right).toBeLessThanOrEqual(meadow.width + 1e-9);
  });
});

test("a solver finds a plan no longer, and a known plan is taken up without it", async () => {
  const solver = await load();
  const brief = smallBrief({ quilt: { rows: 3, columns: 5, plan: [["star"]] } });
  const first = answerBrief(brief);
  const seen: FabricLayout[] = [];
  const best = answerBrief(brief, { solver, nodes: 20, onProgress: (l) => seen.push(l) });
  best.layouts.forEach((l, i) => {
    expect(l.length).toBeLessThanOrEqual(first.layouts[i].length + 1e-9);
    expect(l.lowerBound).toBeLessThanOrEqual(l.length + 1e-9);
  });
  const again = answerBrief(brief, { bolt: planKnown(best.layouts) });
  expect(again.layouts.map((l) => l.length)).toEqual(best.layouts.map((l) => l.length));
  // Made for other demands, it is not taken.
  const other = smallBrief({ quilt: { rows: 2, columns: 2, plan: [["star"]] } });
  const fresh = answerBrief(other, { bolt: planKnown(best.layouts) });
  expect(fresh.layouts).toEqual(answerBrief(other).layouts);
}, 20_000);

describe("the next narrower width", () => {
  const step = stepOf("1/8", "in");

  test("says what each piece loses a strip, and how much more length that takes", () => {
    const { narrower } = plain.cutting.find((c) => c.fabricId === "red")!;
    expect(narrower).toMatchObject({ fabricId: "red", width: 38 });
    const at = (width: number) =>
      plain.yardages.find((y) => y.fabricId === "red" && y.width === width)!;
    expect(narrower!.more).toBeCloseTo(at(38).inPieces - at(40).inPieces, 9);
    const words = sayNarrower(plain.cutting[0], plain, step);
    expect(words).toMatch(/^At 38 in usable: /);
    for (const d of narrower!.demands) {
      expect(d.atNarrow).toBeLessThan(d.atWide);
      expect(words).toContain(`${d.atNarrow} a strip, not ${d.atWide}`);
    }
  });

  test("is not spoken of where none is given", () => {
    const a = answerBrief(withRed({ narrower: undefined }));
    expect(sayNarrower(a.cutting[0], a, step)).toBe("");
  });
});

describe("layouts of pieces in hand", () => {
  test("together hold what the bolt does not, each within its own piece", () => {
    const a = answerBrief(withRed({ inHand: [{ width: "18", length: "21", count: 3 }] }));
    const [cut] = a.cutting;
    const layouts = inHandLayouts(cut, a.layouts[0]);
    const copies = (strips: FabricLayout["strips"]) =>
      strips.flatMap((s) => s.runs.map((r) => s.times * s.layers * r.copies));
    const sum = (xs: number[]) => xs.reduce((t, x) => t + x, 0);
    const own = a.demands.filter((d) => d.fabricId === "red");
    expect(
      sum(copies(a.layouts[0].strips)) +
        sum(layouts.map((l) => l.times * sum(copies(l.layout.strips)))),
    ).toBe(sum(own.map((d) => d.count)));
    for (const l of layouts) {
      expect(l.layout.length).toBeLessThanOrEqual(l.room + 1e-9);
      expect([l.layout.width, l.room].sort((x, y) => x - y)).toEqual([18, 21]);
    }
  });
});
