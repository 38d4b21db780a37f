// What the fuzz has found, each with its seed and number, mended and kept.
import { expect, test } from "vitest";
import { answerBrief, choicesFor } from "../../src/core/answer/index.ts";
import { allWords } from "../../src/core/answer/words/all-choices.ts";
import { readBrief } from "../../src/core/brief/index.ts";
import { readStock } from "../../src/core/fabric/index.ts";
import { planFirst } from "../../src/core/layout/index.ts";
import { csvText } from "../../src/core/table/index.ts";
import { ownOf, problemsOf } from "../../src/living/own.ts";
import { drawn, type Kind, runCase } from "./cases.ts";
import { broken } from "./laws.ts";

const again = (seed: number, kind: Kind, number: number) =>
  runCase({ seed, bases: 12, kind }, number);

test("seed 2, design 1755: one oblong block on point has no corners that fit", () => {
  expect(again(2, "design", 1755).broken).toEqual([]);
  const read = readBrief(drawn({ seed: 2, bases: 12, kind: "design" }, 1755).input as string);
  if (!read.ok) throw new Error("the design is refused");
  expect(answerBrief(read.brief).findings[0]).toMatchObject({
    code: "block-not-square",
    severity: "blocks",
    place: "quilt",
  });
});

test("seed 2, design 1695: one hexagon is a top by itself, but not inside a border", () => {
  expect(again(2, "design", 1695).broken).toEqual([]);
  const { input } = drawn({ seed: 2, bases: 12, kind: "design" }, 1695);
  const document = JSON.parse(input as string);
  document.quilt.borders = [{ width: "2", fabric: "foam" }];
  const read = readBrief(JSON.stringify(document));
  if (!read.ok) throw new Error("the design is refused");
  expect(answerBrief(read.brief).findings.map((f) => f.code)).toContain("outline-does-not-fit");
});

test("seed 1, list 474: a bolt longer than any quilt is no length", () => {
  expect(again(1, "list", 474).broken).toEqual([]);
  const { pieces, leftOut, findings } = readStock("fabric,width,length\nReef,40,999999", "in");
  expect([pieces.length, leftOut.length]).toEqual([0, 1]);
  expect(findings).toMatchObject([{ code: "stock-cell-not-read", place: "line 2" }]);
});

test("seed 3, 5260: a role that every object answers to is refused, not looked up", () => {
  const document = (role: string) => {
    const d = JSON.parse(drawn({ seed: 3, bases: 12, kind: "design" }, 1).input as string);
    d.blocks[0].fabric = JSON.parse(`{"${role}": "reef"}`);
    return readBrief(JSON.stringify(d));
  };
  for (const role of ["toString", "__proto__", "constructor", "valueOf"]) {
    const read = document(role);
    expect(read.ok || read.refusals[0].path).toBe(`blocks/0/fabric/${role}`);
  }
  expect(document("wedge").ok).toBe(true);
});

test("seed 4, 1186: a strip that is all seam makes no wedges, and says what would", () => {
  const { input } = drawn({ seed: 3, bases: 12, kind: "design" }, 1);
  const document = JSON.parse(input as string);
  const strip = (text: string) => {
    document.blocks = [
      {
        kind: "wedges",
        id: "star",
        strip: text,
        setting: "plain",
        fabric: { wedge: "reef", corner: "foam" },
      },
    ];
    Object.assign(document, { unit: "in", seam: "1/4", step: "1/8", ruler: { point: "sharp" } });
    document.quilt = { rows: 1, columns: 1, plan: [["star"]] };
    const read = readBrief(JSON.stringify(document));
    if (!read.ok) throw new Error(read.refusals[0].message);
    return answerBrief(read.brief).findings.find((f) => f.code === "strip-all-seam");
  };
  // SA + SA / sin 22.5 = 0.9033 goes into the seams of a sharp point.
  for (const text of ["1/2", "7/8"]) expect(strip(text)?.needed).toBeCloseTo(0.9033 + 0.0625, 4);
  expect(strip("1")).toBeUndefined();
});

test("seed 100, 2160: the setting of a framed hexagon can be touched", () => {
  const plan = { seed: 3, bases: 12, kind: "design" } as const;
  const document = JSON.parse(drawn(plan, 1).input as string);
  const fabric = { wedge: "reef", corner: "foam", bar: "foam" };
  const framed = {
    kind: "wedges",
    id: "star",
    strip: "90",
    setting: "framed",
    side: "300",
    fabric,
  };
  document.quilt = { rows: 1, columns: 1, plan: [["star"]] };
  for (const shape of [{ n: 8, outline: "hexagon" }, { n: 12 }]) {
    document.blocks = [{ ...framed, ...shape }];
    Object.assign(document, { unit: "mm", seam: "6", step: "1" });
    const read = readBrief(JSON.stringify(document));
    if (!read.ok) throw new Error(read.refusals[0].message);
    expect(choicesFor(read.brief, "setting/star").length).toBeGreaterThan(0);
  }
});

test("seed 100, 36171: a fabric narrower than a join takes is said to be too narrow", () => {
  const long = {
    id: "long",
    fabricId: "reef",
    shape: { kind: "rect", first: 1115, pitch: 1115, height: 165 },
    count: 4,
    turns: "half",
    hand: "none",
    up: false,
    layers: 1,
    joinsAllowed: true,
    joinLoss: 15,
    piecesEach: 1,
    pieceIds: ["p"],
  } as const;
  const plan = planFirst([long], { fabricId: "reef", width: 1 / 3, folds: 0 });
  expect(plan.unplaced).toEqual([{ demandId: "long", count: 4 }]);
  expect(plan.findings).toMatchObject([{ code: "piece-wider-than-fabric", place: "long" }]);
});

/** One design of the fuzz with its blocks made anew. */
function answered(blocks: object[], change: object = {}) {
  const { input } = drawn({ seed: 3, bases: 12, kind: "design" }, 1);
  const quilt = { rows: 2, columns: 2, plan: [["star"]] };
  const common = { unit: "in", seam: "1/4", step: "1/8", ruler: { point: "sharp" }, quilt };
  const read = readBrief(
    JSON.stringify({ ...JSON.parse(input as string), ...common, blocks, ...change }),
  );
  if (!read.ok) throw new Error(read.refusals[0].message);
  return { brief: read.brief, answer: answerBrief(read.brief) };
}

test("long form, 72504: a square far too small for a background is never called proved", () => {
  const fabric = { wedge: "reef", background: "foam" };
  const star = { kind: "wedges", id: "star", strip: "4 1/2", setting: "deep", side: "12", fabric };
  const { brief, answer } = answered([{ ...star, cut: { background: { size: "3" } } }]);
  const backgrounds = answer.recipes.filter((r) => r.kind === "half-square-sliced");
  expect(new Set(backgrounds.map((r) => r.verdict))).toEqual(new Set(["blocked"]));
  expect(answer.findings[0]).toMatchObject({ code: "does-not-cover", severity: "blocks" });
  expect(broken(brief, true, answer)).toEqual([]);
});

test("long form, 2745: a strip set narrower than its wedges leaves places where nothing shows", () => {
  const fabric = { wedge: "set", trapezoid: "foam", background: "foam", corner: "foam" };
  const star = { kind: "wedges", id: "star", strip: "3", setting: "sectors", side: "9", fabric };
  const common = { usable: "40", color: "#223344" };
  const set = {
    ...common,
    kind: "strip-set",
    id: "set",
    name: "Set",
    strips: [{ fabric: "foam", cut: "1" }],
  };
  const plain = { ...common, kind: "plain", id: "foam", name: "Foam" };
  const { brief, answer } = answered([star], { fabrics: [set, plain] });
  expect(broken(brief, true, answer)).toEqual([]);
});

test("long form, 99997: a width thinner than a thread is refused", () => {
  const own = { kind: "own", id: "star", fabric: { patch: "reef" }, seams: ["from A to C"] };
  const thin = { ...own, outline: { width: "0.0002", height: "6" } };
  expect(() => answered([thin])).toThrow(/absurdly small/);
  const narrow = { ...own, outline: { width: "0.002", height: "6" } };
  expect(answered([narrow]).answer.findings.length).toBeGreaterThan(0);
});

test("long form, 720028: a segment no standard knows is a trace too", () => {
  expect(runCase({ seed: 20261125, bases: 2000 }, 720028).broken).toEqual([]);
});

test("a formula behind spaces, a line break or in full-width signs is written as text", () => {
  for (const cell of ["\n=1+1", "  @SUM(A1)", "＝1+1", "\t+2"])
    expect(csvText([[cell]])).toMatch(/^"?'/);
  expect(csvText([["-2.5", "2"]])).toBe("-2.5,2\r\n");
});

test("seed 3, 5842: a seam across the center of a unit of two halves is laid edge to edge", () => {
  expect(runCase({ seed: 3, bases: 12 }, 5842).broken).toEqual([]);
  const fabric = { patch: "foam" };
  const half = { kind: "unit", unit: "half-square", id: "star", width: "4", fabric };
  const line = answered([half]).answer.questions.find((q) => q.id === "make-size")?.line;
  expect(line).toMatch(/left|short/i);
});

test("seed 9, asked 553: a student's fabric wider than any is told, as the maker's is", () => {
  expect(again(9, "asked", 553).broken).toEqual([]);
  const { brief } = answered([
    {
      kind: "wedges",
      id: "star",
      strip: "4 1/2",
      setting: "plain",
      fabric: { wedge: "reef", corner: "foam" },
    },
  ]);
  const told = (usable: string) => problemsOf(brief, { ...ownOf(brief), usable }).usable;
  expect(told("99999")).toMatch(/that can be cut/);
  expect(told("36")).toBeUndefined();
});

test("seed 3, 10787: a price of 23 figures is no price, and a shelf that is written reads back", () => {
  expect(again(3, "asked", 10787).broken).toEqual([]);
  expect(runCase({ seed: 3, bases: 12 }, 10787).broken).toEqual([]);
  const { pieces, findings } = readStock("fabric,width,length,cost\nReef,40,9,99999999999", "in");
  expect(pieces[0].cost).toBeUndefined();
  expect(findings).toMatchObject([{ code: "stock-cost-not-read", severity: "advice" }]);
});

test("seed 20261128, 145430, 300482, 645393: a name cut short leaves no space at its end", () => {
  for (const number of [145430, 300482, 645393])
    expect(runCase({ seed: 20261128, bases: 12 }, number).broken).toEqual([]);
  const long = `${"reef ".repeat(23)}reef  \u{1F9F5}`;
  const { pieces } = readStock(
    `fabric\twidth\tlength\tnote\n${long}\t40\t9\t${"x".repeat(119)}\u{1F9F5}`,
    "in",
  );
  expect(pieces[0].fabric).toBe(long.slice(0, 119).trimEnd());
  expect(pieces[0].note).toBe("x".repeat(119));
});

test("seed 5, words 47 and seed 21, words 633: what is typed with letters that are not seen is refused there", () => {
  expect(again(5, "words", 47).broken).toEqual([]);
  expect(again(21, "words", 633).broken).toEqual([]);
  const { brief } = answered([
    {
      kind: "own",
      id: "star",
      fabric: { patch: "reef" },
      seams: ["from A to C"],
      outline: { width: "6", height: "6" },
    },
  ]);
  for (const [word, text] of [
    ["of/reef/name", "Reef\u0000"],
    ["of/reef/name", "Reef\u202efdp.exe"],
    ["of/reef/name", "Reef\tFoam"],
    ["own/star/seam/0", "from A \u0000 to C"],
  ])
    expect(allWords.typed(brief, word, text)).toMatchObject({
      ok: false,
      error: { problem: expect.stringMatching(/seen/) },
    });
});
