import { describe, expect, test } from "vitest";
import { type Brief, smallBrief } from "../../brief/sample.ts";
import { say } from "../../findings/index.ts";
import { stepOf } from "../../measure/index.ts";
import { answerBrief, makeIt, overWords, planWords, withPlan } from "../index.ts";

const STEP = stepOf("1/8", "in");
const said = (b: Brief, width: number, length: number): string[] =>
  makeIt(b, width, length).map((m) => `${planWords(m.plan, STEP)}: ${overWords(m.over, STEP)}`);

const wedges = (change: object) => ({
  kind: "wedges",
  id: "star",
  strip: "4 1/2",
  fabric: { wedge: "red", kite: "sand", background: "sand" },
  ...change,
});
const deep = smallBrief({ blocks: [wedges({ setting: "deep", side: "14" })] });
const kites = smallBrief({
  blocks: [wedges({ setting: "kites", strip: "6 1/4" })],
  quilt: { rows: 4, columns: 3, plan: [["star"]] },
});
const blunt: Brief = { ...kites, ruler: { point: { blunt: "1/4" } } };

describe("make it 60 x 72", () => {
  test("deep background: the side is free, so 12 in blocks come exactly; their square is 6.8536 in", () => {
    const [first] = makeIt(deep, 60, 72);
    expect(first.plan).toMatchObject({ way: "float", rows: 6, columns: 5, length: 12 });
    expect(first.over).toEqual({ width: 0, length: 0 });
    const background = first.answer.pieces.find((p) => p.roles.includes("background-left"))!;
    const recipe = first.answer.recipes.find((r) => r.pieceId === background.id)!;
    expect(recipe.exactSize).toBeCloseTo(6 + 0.25 * (2 + Math.SQRT2), 9);
    expect(recipe.size).toBe(6.875);
  });

  test("a sharp point wants a 6.903 in strip for 12 in blocks; the ruler's 6 7/8 falls short", () => {
    const plan = makeIt(kites, 60, 72).find((m) => m.plan.way === "strip")!;
    expect(plan.plan).toMatchObject({ rows: 6, columns: 5, length: 6.875 });
    expect(plan.plan.exactLength).toBeCloseTo(6 + 0.25 + 0.25 / Math.sin(Math.PI / 8), 9);
    expect(plan.over.width).toBeCloseTo(-5 * 2 * 0.028281, 4);
  });

  test("a point cut blunt 1/4 in past the center takes 6 1/2 in exactly", () => {
    const [first] = makeIt(blunt, 60, 72);
    expect(first.plan).toMatchObject({ way: "strip", length: 6.5 });
    expect(overWords(first.over, STEP)).toBe("exactly");
  });

  test("all of its ways, nearest first, in words", () => {
    expect(said(blunt, 60, 72)).toEqual([
      "6 by 5, wedges from 6 1/2 in strips: exactly",
      "6 by 5, 5/8 in sashing: 1/8 in over in length",
      "6 by 5, the outer border 1 3/8 in: 1/4 in over in width, 1/4 in under in length",
      "6 by 5: 2 1/2 in under in width, 3 in under in length",
    ]);
  });

  test("every way is what its own brief answers, and nothing of it blocks", () => {
    for (const b of [deep, kites, blunt])
      for (const { plan, brief, answer, over } of makeIt(b, 57, 71)) {
        expect(answer.briefHash).toBe(answerBrief(brief).briefHash);
        expect(over.width).toBeCloseTo(plan.over.width, 9);
        expect(over.length).toBeCloseTo(plan.over.length, 9);
        expect(answer.findings.filter((f) => f.severity === "blocks")).toEqual([]);
      }
  });

  test("a ruler that stops short of the strip is not asked for more", () => {
    const short: Brief = { ...blunt, ruler: { point: { blunt: "1/4" }, longest: "6 3/8" } };
    const strip = makeIt(short, 60, 72).find((m) => m.plan.way === "strip");
    expect(strip?.plan.length ?? 0).toBeLessThanOrEqual(6.375);
  });

  test("refuses a size that is none", () => {
    expect(() => makeIt(deep, 0, 72)).toThrow(RangeError);
  });
});

describe("sizes together", () => {
  const quilt = {
    rows: 4,
    columns: 3,
    plan: [["star"]],
    borders: [{ width: "3", fabric: "sand" }],
  };
  const sizes = [
    { name: "Throw", width: "50", length: "65" },
    { name: "Runner", width: "19 1/4", length: "42 1/4" },
  ];
  const b = smallBrief({ blocks: [wedges({ setting: "deep", side: "12" })], quilt, sizes });
  const answer = answerBrief(b);

  test("each is planned by its nearest way, and answered in full", () => {
    const [cover, runner] = answer.sizes!;
    // 10 in blocks and a 3 in border lack 6 in across and 1 in down: no grid is nearer than borders.
    expect(runner).toMatchObject({ name: "Runner", wanted: { width: 19.25, length: 42.25 } });
    for (const s of [cover, runner]) {
      const full = answerBrief(withPlan(b, s.plan, STEP));
      expect(s).toMatchObject({ width: full.quilt!.width, height: full.quilt!.height });
      expect(s.yardages).toEqual(full.yardages);
      expect(s.blocks).toBe(s.plan.rows * s.plan.columns);
      const misses = s.ways
        .filter((w) => !w.adds)
        .map((w) => Math.max(Math.abs(w.over.width), Math.abs(w.over.length)));
      const mine = Math.max(Math.abs(s.plan.over.width), Math.abs(s.plan.over.length));
      expect(mine).toBeLessThanOrEqual(Math.min(...misses) + 0.125);
    }
  });

  test("the design keeps its parts: sashing it does not have is named and not chosen", () => {
    for (const s of answer.sizes!) {
      expect(s.ways.find((w) => w.way === "sashing")?.adds).toBe(true);
      expect(s.plan.way).not.toBe("sashing");
    }
  });

  test("a side more than a step away is a finding with the nearest", () => {
    const far = answerBrief({ ...kites, sizes: [{ name: "Bed", width: "60", length: "72" }] });
    const missed = far.findings.filter((f) => f.code === "size-not-reached");
    expect(missed.map((f) => say(f, { step: STEP }))).toEqual([
      "Bed (length) does not come to 72 in; the nearest this design comes is 74.854 in.",
      "Bed (width) does not come to 60 in; the nearest this design comes is 64.161 in.",
    ]);
  });

  test("one block on point does not fit: the finding names what it takes", () => {
    const tile = { kind: "unit", id: "tile", unit: "square", width: "6", fabric: { patch: "red" } };
    const small = answerBrief(
      smallBrief({
        blocks: [tile],
        quilt: { arrangement: "on-point", rows: 3, columns: 2, plan: [["tile"]], setting: "sand" },
        sizes: [{ name: "Mat", width: "8", length: "17" }],
      }),
    );
    const found = small.findings.find((f) => f.code === "no-room-for-corners")!;
    expect(say(found, { step: STEP })).toBe(
      "Mat has no room for one block on point with its corner triangles: that takes 8.485 in. Straight rows need less.",
    );
  });

  test("the first question names them; without sizes nothing is planned for them", () => {
    const line = answer.questions.find((q) => q.id === "size")!.line;
    expect(line).toContain(" Also as Throw, ");
    expect(answerBrief({ ...b, sizes: undefined }).sizes).toBeUndefined();
  });

  test("a size that cannot be cut makes the pattern a draft, not the quilt itself", () => {
    // 13 in blocks want 7 3/8 in squares: 12 in ones, 6 7/8 in, are the most this fabric holds.
    const narrow = { kind: "plain", name: "Narrow", usable: "7 1/4", color: "#A33B2E" };
    const { findings } = answerBrief(
      smallBrief({
        fabrics: ["red", "sand"].map((id) => ({ ...narrow, id })),
        blocks: [wedges({ setting: "deep", side: "12" })],
        quilt: { rows: 2, columns: 2, plan: [["star"]] },
        sizes: [{ name: "Mat", width: "13", length: "13" }],
      }),
    );
    expect(findings.filter((f) => f.severity === "blocks")).toEqual([]);
    const mat = findings.filter((f) => f.place.startsWith("Mat, "));
    expect(mat.map((f) => [f.code, f.severity])).toContainEqual([
      "piece-wider-than-fabric",
      "draft",
    ]);
  });
});
