import { produce } from "immer";
import { expect, test } from "vitest";
import { type Brief, keepMeasured, keepReading, keepSeamTest, tick } from "../../brief/index.ts";
import { smallBrief } from "../../brief/sample.ts";
import { answerBrief } from "../compose.ts";
import { foundSeam, seamTests } from "./make-size.ts";
import { sewingSteps } from "./steps.ts";
import { stopTables } from "./stops.ts";
import { whyTables } from "./why.ts";

const brief: Brief = smallBrief();
const answer = answerBrief(brief);
const after = (...changes: ((d: Brief) => void)[]): Brief =>
  changes.reduce<Brief>((b, change) => produce(b, change), brief);

test("what was done and measured decides nothing: the answer has the same hash", () => {
  const done = after(tick("block/x", true), keepSeamTest(4, "1 1/2", "4 7/16"));
  expect(answerBrief(done).briefHash).toBe(answer.briefHash);
  expect(after(tick("block/x", true), tick("block/x", false)).record).toBeUndefined();
});

test("a full record gives up its oldest tick, never what another part of the shop kept", () => {
  const printed = Array.from({ length: 1999 }, (_, i) => ({ what: "printed", n: i }));
  const full = produce(brief, (d) => {
    d.record = [{ what: "sewn", unit: "a" }, ...printed];
  });
  const next = produce(full, tick("b", true));
  expect(next.record).toEqual([...printed, { what: "sewn", unit: "b" }]);
});

test("four strips of 1 1/2 in that give 4 7/16 for 4 1/2 have seams 1/96 too wide (arithmetic of six sides)", () => {
  expect(seamTests(brief)[0].should).toBe("4 1/2 in");
  expect(foundSeam(after(keepSeamTest(4, "1 1/2", "4 7/16")))?.wider).toBeCloseTo(1 / 96, 12);
  const wrong = seamTests(after(keepSeamTest(4, "1 1/2", "11")));
  expect(wrong[0].problem).toContain("far off");
});

test("a block measured small shifts what follows; the wrong unit is asked about, nothing is judged", () => {
  const [table] = stopTables(brief, answer);
  const row = table.rows.find((r) => r.measure);
  if (!row?.measure) throw new Error("no stop to measure");
  const typed = (text: string) =>
    stopTables(after(keepMeasured(row.unitId, row.width, text, row.should)), answer)[0];
  const small = typed(String(row.measure.unfinished - 3 / 16));
  expect(small.outcome).toContain("too wide");
  expect(small.rows.find((r) => r.id === row.id)?.verdict?.kind).not.toBe("sew-on");
  expect(small.rows.filter((r) => r.now !== "").length).toBeGreaterThan(0);
  const other = typed(String(25.4 * row.measure.unfinished)).rows.find((r) => r.id === row.id);
  expect(other?.verdict).toBeUndefined();
  expect(other?.problem).toContain("same unit");
  expect(typed("four").rows.find((r) => r.id === row.id)?.problem).toBeDefined();
});

test("why: one reading alone asks for another; the impossible and the other unit are told at their field", () => {
  const [plain] = whyTables(brief, answer);
  if (!plain) throw new Error("no wedges in the sample");
  const at = (name: string, text: string) =>
    whyTables(after(keepReading(plain.block.id, name, text)), answer)[0];
  const width = plain.block.radial ? 2 * (plain.block.radial.a + 0.25) : 0;
  const one = at("acrossOne", String(width - 1 / 4));
  expect(one.findings.join(" ")).toContain("Measure also");
  expect(one.rows.some((r) => r.wanted)).toBe(true);
  const mm = at("acrossOne", String(25.4 * width));
  expect(mm.rows.find((r) => r.name === "acrossOne")?.problem).toBeDefined();
  expect(mm.causes).toEqual([]);
  expect(at("acrossOne", "-8").rows[0].problem).toBe("It cannot be less than 0.");
});

test("every unit of a block is sewn in just one step", () => {
  for (const { block, steps } of sewingSteps(brief, answer)) {
    const sewn = steps.flatMap((s) => s.units.map((u) => u.id));
    expect(sewn.sort()).toEqual(
      answer.units
        .filter((u) => u.blockId === block.id)
        .map((u) => u.id)
        .sort(),
    );
  }
});
