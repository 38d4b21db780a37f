import { describe, expect, it } from "vitest";
import tidepool from "../../../../examples/tidepool-runner.json";
import { type Brief, readDocument } from "../../brief/index.ts";
import { answerBrief } from "../compose.ts";
import { sewingSteps } from "../sewing/steps.ts";
import { GAP, stopTables } from "../sewing/stops.ts";
import { choicesFor, typed } from "../words/choices.ts";
import {
  patchesLit,
  patchesOfRoles,
  patchLabel,
  patchSaid,
  sizeText,
  stateText,
  totalBuy,
  usesOf,
} from "./phrases.ts";
import { cutRows, sizeRows, supplies, toldFindings } from "./tables.ts";

const read = readDocument(tidepool);
if (!read.ok) throw new Error("the sample is refused");
const sample = read.brief;

const with4: Brief = (() => {
  const r = typed(sample, "cut/star/kite", "4");
  if (!r.ok) throw new Error(r.error.problem);
  return r.brief;
})();

const proved = answerBrief(sample);
const doubtful = answerBrief(with4);

describe("what the page shows, worded in the core", () => {
  it("sizes: finished and unfinished differ by two seams", () => {
    expect(sizeRows(sample, proved).map((r) => [r.id, r.finished, r.unfinished])).toEqual([
      ["star", "8 × 8 in", "8 1/2 × 8 1/2 in"],
      ["wheel", "8 × 8 in", "8 1/2 × 8 1/2 in"],
      ["quilt", "64 × 24 in", "64 1/2 × 24 1/2 in"],
    ]);
    expect(sizeText(sample, proved)).toBe("64 × 24 in");
  });

  it("pieces: those in doubt first, how they are cut, and what covers", () => {
    const [kite, ...rest] = cutRows(with4, doubtful);
    // A 4 in square for the kites of a 4 1/2 in strip cut blunt 1/4 past the center reaches to 1/4 in
    // short of the finished center on each side (geometry: a = 4, square less one seam = 3 3/4).
    expect(kite).toMatchObject({ name: "kite", fabric: "Shell", count: 48 });
    expect(kite.cut).toBe("4 in square, sliced by two marks");
    expect(kite.cover).toEqual({ text: "1/4 in short", doubt: true });
    expect(rest.every((r) => !r.cover.doubt)).toBe(true);
    expect(cutRows(sample, proved).some((r) => r.cover.doubt)).toBe(false);
  });

  it("supplies: never less than the least possible, one row a fabric", () => {
    const table = supplies(sample, proved);
    expect(table.rows.map((r) => r.name)).toEqual(["Kelp", "Shell", "Current", "Basalt"]);
    expect([table.stated, table.narrower]).toEqual(["40", "38"]);
    for (const r of table.rows) expect(r.buy).toMatch(/yd$/);
    expect(totalBuy(proved).fabrics).toBe("in four fabrics");
  });

  it("steps: pairs, halves, octagon, then the block, each seam once", () => {
    const [star, wheel] = sewingSteps(sample, proved);
    expect(star.steps.map((s) => s.name.split(" ")[0])).toEqual(["pair", "half", "block"]);
    expect(wheel.steps[2].name).toMatch(/^octagon/);
    expect(wheel.steps.at(-1)?.measure).toBe("8 1/2 in across, two ways");
    expect(star.steps[0].copies).toBe("48 of them, four to a block");
    for (const { rows } of stopTables(sample, proved))
      for (const r of rows.filter((x) => x.width !== GAP)) expect(r.should).not.toBe(r.finished);
  });
});

describe("what is touched and lit", () => {
  const patch = proved.blocks[0].patches.find((p) => p.role === "kite")!;

  it("names a patch by its piece, and says when it is not proved", () => {
    expect(patchLabel(sample, proved, "star", patch.id)).toMatchObject({
      rest: "Shell, one of 48, from a 4 1/2 in square",
      doubt: false,
    });
    expect(patchSaid(with4, doubtful, "star", patch.id)).toMatch(
      /^Kite B1, Shell, one of 48, from a 4 inch square, not proved$/,
    );
    expect(usesOf(sample, proved, "shell")).toBe("48 kites");
  });

  it("a piece, a fabric and a role light the same patches", () => {
    const piece = proved.blocks[0].pieceOf[patch.id];
    const ids = (m: ReturnType<typeof patchesLit>) => [...m].map(([k, v]) => [k, [...v].sort()]);
    const byPiece = ids(patchesLit(proved, [piece]));
    expect(byPiece).toEqual(ids(patchesLit(proved, ["shell"])));
    expect(byPiece).toEqual(ids(patchesOfRoles(proved, [{ block: "star", role: "kite" }])));
    expect(byPiece[0][1]).toHaveLength(4);
  });
});

describe("doubt", () => {
  it("dots the word that decides the piece, and counts it in the head", () => {
    const dotted = (a: typeof proved) => a.sentence.filter((p) => p.doubt).map((p) => p.text);
    expect(dotted(proved)).toEqual([]);
    expect(dotted(doubtful)).toEqual(["4 in squares"]);
    expect(stateText(proved)).toBe("every number is proved");
    expect(stateText(doubtful)).toBe("draft: one number is not proved");
    expect(toldFindings(with4, doubtful)[0]).toMatchObject({ severity: "blocks" });
  });

  it("no choice of any word leaves a patch without a fabric", () => {
    const words = ["n/star+wheel", "setting/star", "setting/wheel", "mix"];
    for (const word of words)
      for (const c of choicesFor(sample, word)) {
        const codes = answerBrief(c.brief).findings.map((f) => f.code);
        expect(codes, `${word}: ${c.label}`).not.toContain("fabric-not-chosen");
      }
  });
});
