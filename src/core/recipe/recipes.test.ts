import { describe, expect, it } from "vitest";
import { type RadialSpec, radialBlock } from "../block/index.ts";
import { knownLength, stepOf } from "../measure/index.ts";
import { piecesOf } from "../piece/index.ts";
import { halfAcross, type RecipesInput, recipesOf, rulerOf } from "./index.ts";

const FABRICS = {
  tide: { name: "Tide", letter: "A", directional: false, reversible: false },
  sand: { name: "Sand", letter: "B", directional: false, reversible: false },
};

type Given = Partial<Pick<RecipesInput, "choices" | "accepted" | "ruler">> & {
  strip?: string;
  spec?: Partial<RadialSpec>;
  sideOf?: (a: number) => number;
};

/** Recipes of one eight-wedge block, wedges of tide, all else of sand. */
function recipesFor(given: Given) {
  const ruler = given.ruler ?? { point: "sharp" as const };
  const strip = knownLength(given.strip ?? "4 1/2", "in");
  const a = halfAcross(rulerOf(ruler, given.spec?.n ?? 8, "in"), strip, 0.25);
  const geometry = radialBlock({
    id: "star",
    n: 8,
    outline: "square",
    turned: "flat",
    a,
    half: given.sideOf ? given.sideOf(a) / 2 : a,
    whole: [],
    join: 1e-9,
    ...given.spec,
  });
  const fabricOf = Object.fromEntries(
    geometry.patches.map((p) => [p.id, p.role.startsWith("wedge") ? "tide" : "sand"]),
  );
  const { pieces } = piecesOf({
    unit: "in",
    seam: 0.25,
    blocks: [{ geometry, count: 6, fabricOf }],
    extras: [],
    fabrics: FABRICS,
  });
  const result = recipesOf({
    pieces,
    ruler,
    seam: 0.25,
    step: stepOf("1/8", "in"),
    unit: "in",
    fabrics: FABRICS,
    choices: given.choices,
    accepted: given.accepted,
    wedges: { star: { strip, a } },
  });
  const of = (role: string) => {
    const piece = pieces.find((p) => p.roles.some((r) => r.startsWith(role)))!;
    return {
      piece,
      recipe: result.recipes.find((r) => r.pieceId === piece.id)!,
      demand: result.demands.find((d) => d.pieceIds.includes(piece.id))!,
    };
  };
  return { ...result, pieces, of };
}

const KITES = { spec: { whole: [1, 3, 5, 7] } };

describe("recipesOf", () => {
  it("cuts plain corners from squares once, and wedges head to tail", () => {
    const r = recipesFor({});
    const corner = r.of("corner");
    expect(corner.recipe).toMatchObject({ kind: "square-once", verdict: "proved", yields: 2 });
    expect(corner.recipe.exactSize).toBeCloseTo(2.9605, 4);
    expect(corner.recipe.size).toBe(3);
    expect(corner.recipe.smallest).toBe(3);
    expect(corner.demand).toMatchObject({ count: 12, piecesEach: 2, turns: "quarter" });
    const wedge = r.of("wedge");
    expect(wedge.recipe).toMatchObject({ kind: "wedge", verdict: "proved", size: 4.5 });
    expect(wedge.recipe.smallest).toBeUndefined();
    expect(wedge.demand.shape.pitch).toBeCloseTo(wedge.demand.shape.first / 2, 12);
    expect(wedge.demand).toMatchObject({ count: 48, turns: "half", hand: "none" });
    expect(r.findings).toEqual([]);
  });

  it("says thin, blocked or proved of the maker's own size or rule", () => {
    const rule = { star: { kite: { rule: "strip-1/2" } } };
    const sharp = recipesFor({ ...KITES, choices: rule });
    expect(sharp.of("kite").recipe).toMatchObject({ size: 4, smallest: 4.125, verdict: "thin" });
    expect(sharp.of("kite").recipe.w).toBeCloseTo(0.1659, 4);
    expect(sharp.findings.map((f) => [f.code, f.severity])).toEqual([["thin-cover", "draft"]]);
    const blunt = recipesFor({ ...KITES, ruler: { point: { blunt: "1/4" } }, choices: rule });
    expect(blunt.of("kite").recipe).toMatchObject({ size: 4, smallest: 4.5, verdict: "blocked" });
    expect(blunt.of("kite").recipe.reach).toBeCloseTo(-0.25, 9);
    expect(blunt.findings.map((f) => [f.code, f.severity])).toEqual([["does-not-cover", "blocks"]]);
    const own = recipesFor({ ...KITES, choices: { star: { kite: { size: "5" } } } });
    expect(own.of("kite").recipe).toMatchObject({ size: 5, verdict: "proved" });
  });

  it("accepts a thin place by name, and never one that blocks", () => {
    const choices = { star: { kite: { rule: "strip-1/2" } } };
    const place = recipesFor({ ...KITES, choices }).of("kite").piece.id;
    const accepted = [
      { place, code: "thin-cover" },
      { place, code: "does-not-cover" },
    ];
    const sharp = recipesFor({ ...KITES, choices, accepted });
    expect(sharp.findings[0]).toMatchObject({ code: "thin-cover", severity: "advice" });
    const blunt = recipesFor({ ...KITES, choices, accepted, ruler: { point: { blunt: "1/4" } } });
    expect(blunt.findings.every((f) => f.severity === "blocks")).toBe(true);
  });

  it("cuts kites at the least square that gives every stitch its allowance", () => {
    const { recipe } = recipesFor({ ...KITES, ruler: { point: { blunt: "1/4" } } }).of("kite");
    expect(recipe).toMatchObject({ kind: "kite", size: 4.5, verdict: "proved" });
    expect(recipe.exactSize).toBeCloseTo(4.481, 4);
    const slices = recipe.cuts.filter((c) => c.op === "slice");
    expect(slices).toHaveLength(2);
    // Both marks on the outer edges stand 2.7602 from the outer corner (a = 4, seam 1/4).
    const onOuter = slices.flatMap((s) => (s.marks ?? []).map((m) => m.at));
    expect(onOuter.filter((at) => Math.abs(at - 2.7602) < 1e-4)).toHaveLength(2);
  });

  it("slices deep backgrounds from half squares, both hands from the same squares", () => {
    const r = recipesFor({ spec: { turned: "corner" }, sideOf: () => 12 });
    const { recipe, demand } = r.of("background");
    expect(recipe).toMatchObject({ kind: "half-square-sliced", verdict: "proved", size: 6.875 });
    expect(recipe.exactSize).toBeCloseTo(6 + 0.8536, 4);
    const slice = recipe.cuts.find((c) => c.op === "slice")!;
    expect(slice.lengths[0]).toBeCloseTo(3.5967 - 0.25 + 0.25 / Math.sin(Math.PI / 8), 3);
    expect(demand).toMatchObject({ count: 24, piecesEach: 2, hand: "none" });
    expect(demand.pieceIds).toHaveLength(2);
    const left = r.findings.filter((f) => f.code === "leftover-wedge");
    expect(left).toHaveLength(2);
    // One inch smaller across flats than the block's own octagon at a 1/4 in seam.
    expect(left[0].found).toBeCloseTo(2 * 3.5967 - 1, 3);
  });

  it("offers the strips either side when the strip is not on the ruler", () => {
    const r = recipesFor({ strip: "5.4033" });
    const { recipe } = r.of("wedge");
    expect(recipe.neighbors?.map((n) => n.strip)).toEqual([5.375, 5.5]);
    expect(recipe.neighbors?.[1].across).toBeCloseTo(9.1934, 4);
    const f = r.findings.find((x) => x.code === "cut-neighbours");
    expect(f).toMatchObject({ severity: "draft" });
  });

  it("cuts floating trapezoids along a strip and its corners by two marks, trimmed outside", () => {
    const r = recipesFor({ sideOf: () => 9 });
    const trapezoid = r.of("trapezoid");
    expect(trapezoid.recipe).toMatchObject({ kind: "trapezoid", verdict: "proved" });
    expect(trapezoid.demand.shape.kind).toBe("nested");
    const corner = r.of("corner");
    expect(corner.recipe).toMatchObject({ kind: "two-marks", verdict: "proved" });
    expect(r.findings).toEqual([]);
  });

  it("refuses politely: a rule it cannot read, a way that does not fit, a size that is not free", () => {
    const choices = {
      star: {
        kite: { rule: "strip less a bit" },
        wedge: { size: "4 3/4" },
      },
    };
    const r = recipesFor({ ...KITES, choices });
    expect(r.findings.map((f) => f.code).sort()).toEqual(["cut-not-free", "rule-not-understood"]);
    const odd = recipesFor({ ...KITES, choices: { star: { kite: { kind: "square-once" } } } });
    expect(odd.findings.map((f) => f.code)).toEqual(["way-does-not-fit"]);
    expect(odd.of("kite").recipe.kind).toBe("kite");
  });

  it("finds a ruler whose flat tip is wider than its shortest line, and strips off its ends", () => {
    const wide = recipesFor({ ruler: { point: { flat: "2 1/2" }, shortest: "2" }, strip: "3" });
    expect(wide.findings.find((f) => f.code === "ruler-tip-too-wide")).toMatchObject({
      severity: "blocks",
      needed: 2,
      found: 2.5,
    });
    const short = recipesFor({ ruler: { point: "sharp", shortest: "3", longest: "4" } });
    expect(short.findings.map((f) => f.code)).toEqual(["ruler-too-short"]);
  });
});
