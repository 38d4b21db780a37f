import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Brief, readDocument, withOtherUnit } from "../../brief/index.ts";
import { smallBrief } from "../../brief/sample.ts";
import { answerBrief } from "../compose.ts";
import { allWords } from "./all-choices.ts";
import { planText, readPlan, TURNINGS, turningNow } from "./plan-of-kinds.ts";
import { changed } from "./word.ts";

const { choicesFor, typed, wordsOf } = allWords;

const done = (r: ReturnType<typeof typed>): Brief => {
  if (!r.ok) throw new Error(r.error.problem);
  return r.brief;
};

const full = smallBrief({
  ruler: { point: { blunt: "1/4", seam: "7 mm" }, shortest: "1", longest: "8 1/2" },
  blocks: [
    {
      kind: "wedges",
      id: "star",
      name: "Star",
      setting: "plain",
      strip: "4 1/2",
      tree: "corners-first",
      cut: { corner: { size: "4" } },
      fabric: { wedge: "red", corner: "sand" },
    },
    {
      kind: "wedges",
      id: "frame",
      n: 8,
      setting: "framed",
      inner: "kites",
      side: "8",
      strip: "4",
      fabric: { wedge: "red", kite: "sand", bar: "sand" },
    },
    {
      kind: "wedges",
      id: "twelve",
      n: 12,
      outline: "hexagon",
      turned: "corner",
      setting: "sectors",
      whole: [0, 6],
      strip: "4",
      fabric: { wedge: "red", background: "sand" },
    },
    {
      kind: "own",
      id: "sail",
      outline: { width: "8", height: "8" },
      seams: ["from A to C", "2 1/2 from A toward B"],
      roles: { ABC: "corner" },
      fabric: { patch: "red", corner: "sand" },
    },
    {
      kind: "own",
      id: "comb",
      outline: { hexagon: "8" },
      seams: ["from A to D"],
      fabric: { patch: "red" },
    },
    {
      kind: "unit",
      id: "pane",
      unit: "half-rectangle",
      width: "8",
      height: "8",
      hand: "left",
      fabric: { patch: "sand" },
    },
  ],
  quilt: {
    arrangement: "on-point",
    edges: "triangles",
    setting: "sand",
    offset: false,
    rows: 3,
    columns: 4,
    plan: [
      ["star", "frame", "twelve"],
      ["sail", "comb", { block: "pane", quarters: 1, mirrored: true }],
    ],
    sashing: { width: "1", fabric: "sand", cornerstone: "red" },
    borders: [{ width: "3", fabric: "red", cornerstone: "sand", cut: "along" }],
  },
  margin: { straighten: "2", wrongStrip: true, extra: "3" },
  finishing: {
    binding: { width: "2 1/4", fabric: "red", cut: "bias", join: "slant-cut", spare: "12" },
    backing: { fabric: "sand", overhang: "4", whose: "Marsh" },
    batting: { overhang: "3" },
  },
});

/** Edited elsewhere on the page: names of designs, fabrics, tables; ids are never edited. */
const ELSEWHERE =
  /^(format|version|title|fabrics\/|accepted|notes|sizes|record|shop|class)|\/(id|kind)$/;
/** Eight wedges fit a square only. */
const FIXED = /^blocks\/[01]\/outline$/;

function leaves(value: unknown, path = ""): string[] {
  if (value === null || typeof value !== "object") return [path];
  return Object.entries(value).flatMap(([k, v]) => leaves(v, path === "" ? k : `${path}/${k}`));
}

describe("what a brief holds", () => {
  it("has a word that decides it, or an editor of its own", () => {
    const paths = wordsOf(full).map((w) => w.path);
    const also = ["quilt/offset", "quilt/edges"].map((p) => [p, "quilt/arrangement"]);
    const covered = (leaf: string): boolean =>
      paths.some((p) => leaf === p || leaf.startsWith(`${p}/`)) ||
      also.some(([p, by]) => leaf === p && paths.includes(by)) ||
      (leaf.endsWith("/height") && paths.includes(leaf.replace(/height$/, "width"))) ||
      (/\/inner$|\/whole\//.test(leaf) &&
        paths.includes(leaf.replace(/\/(inner|whole\/.*)$/, "/setting")));
    expect(
      leaves(full).filter((leaf) => !ELSEWHERE.test(leaf) && !FIXED.test(leaf) && !covered(leaf)),
    ).toEqual([]);
  });
});

describe("a frame", () => {
  it("goes round plain corners or kites, and comes back", () => {
    const framed = changed(full, (d) => {
      d.blocks = d.blocks.filter((k) => k.id === "frame");
      d.quilt.plan = [["frame"]];
    });
    const labels = choicesFor(framed, "setting/frame").map((c) => c.label);
    expect(labels).toEqual([
      "with plain corners",
      "framed",
      "with kites and a frame",
      "in a deep background",
    ]);
    const plain = done(typed(framed, "setting/frame", "framed"));
    expect(plain.blocks[0]).toMatchObject({ inner: "plain" });
    expect(done(typed(plain, "setting/frame", "with kites and a frame")).blocks[0]).toEqual({
      ...framed.blocks[0],
      fabric: { ...framed.blocks[0].fabric, corner: "sand" },
    });
  });
});

describe("a unit that may be oblong", () => {
  it("takes both sides in one word, and is square again", () => {
    const id = "width/pane";
    const oblong = done(typed(full, id, "8 by 6 1/2"));
    expect(oblong.blocks[5]).toMatchObject({ width: "8", height: "6 1/2" });
    const square = done(typed(oblong, id, "9 by 9")).blocks[5];
    expect(square).toMatchObject({ width: "9" });
    expect(square).not.toHaveProperty("height");
    expect(typed(full, id, "8 by wide").ok).toBe(false);
  });
});

describe("the plan of kinds", () => {
  const two = smallBrief({
    blocks: ["star", "wheel"].map((id) => ({
      kind: "wedges",
      id,
      setting: "kites",
      strip: "4 1/2",
      fabric: { wedge: "red", kite: "sand" },
    })),
    quilt: { rows: 4, columns: 4, plan: [["star", "wheel"]] },
  });

  it("is read as it is typed, whatever it holds", () => {
    const cell = fc.record({
      block: fc.constantFrom("star", "wheel"),
      quarters: fc.integer({ min: 0, max: 3 }),
      mirrored: fc.boolean(),
    });
    const plan = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(plan, (cells) => {
        const b = changed(two, (d) => {
          d.quilt.plan = cells;
        });
        const read = readPlan(b, planText(b));
        if ("problem" in read) throw new Error(read.problem);
        const said = read.map((row) =>
          row.map((c) => (typeof c === "string" ? { block: c, quarters: 0, mirrored: false } : c)),
        );
        expect(said).toEqual(cells);
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it.each(Object.keys(TURNINGS))("turned '%s' is known again, and kept when kinds move", (name) => {
    const turned = done(typed(two, "turning", name));
    expect(turningNow(turned)).toBe(name);
    const rows = choicesFor(turned, "mix").find((c) => c.label === "row by row")!.brief;
    expect(turningNow(rows)).toBe(name);
    expect(answerBrief(rows).findings.filter((f) => f.severity === "blocks")).toEqual([]);
  });

  it.each([
    ["moon", "no block called"],
    ["star turned five times", "no block called"],
    ["", "Type up to 40 rows"],
  ])("refuses %j with a sentence", (text, needle) => {
    const r = typed(two, "turning", text);
    expect(!r.ok && r.error.problem).toContain(needle);
  });

  it("up to four kinds finish alike and can be laid out", () => {
    const four = done(typed(smallBrief(), "kinds", "4"));
    expect(four.quilt.plan.length).toBe(4);
    const { findings, quilt } = answerBrief(four);
    expect(findings.filter((f) => f.severity === "blocks")).toEqual([]);
    expect(Object.keys(quilt?.counts ?? {}).length).toBe(4);
    expect(done(typed(four, "kinds", "one")).quilt.plan).toEqual([["star"]]);
  });
});

describe("another unit", () => {
  const plain = changed(full, (d) => {
    d.blocks = d.blocks.filter((k) => k.id === "star");
    d.quilt.plan = [["star"]];
    delete d.quilt.sashing;
  });

  it("keeps every length what it was: the same quilt, 25.4 times the number", () => {
    const metric = changed(plain, (d) => withOtherUnit(d, "mm"));
    expect(readDocument(JSON.parse(JSON.stringify(metric))).ok).toBe(true);
    const [a, z] = [answerBrief(plain), answerBrief(metric)];
    expect(z.quilt!.width).toBeCloseTo(a.quilt!.width * 25.4, 6);
    expect(z.quilt!.height).toBeCloseTo(a.quilt!.height * 25.4, 6);
    expect(z.finishing!.binding!.length).toBeCloseTo(a.finishing!.binding!.length * 25.4, 6);
    expect(z.recipes.map((r) => r.verdict)).toEqual(a.recipes.map((r) => r.verdict));
  });

  it("gives seams and rules of thumb the unit they had", () => {
    const b = changed(full, (d) => {
      d.blocks[0].cut = { corner: { rule: "strip-1/2" } };
      withOtherUnit(d, "mm");
    });
    expect(b.blocks[0].cut?.corner.rule).toBe("strip-1/2in");
    const own = b.blocks[3];
    expect(own.kind === "own" && own.seams[1]).toBe("2 1/2 in from A toward B");
  });
});
