import { expect, test } from "vitest";
import tidepool from "../../../../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../../answer/index.ts";
import { type Brief, readDocument } from "../../brief/index.ts";
import { lastVersion, nextVersion, versionToGive } from "./edition.ts";
import { LEAVES } from "./facts.ts";
import { type Left, leaving, remembering } from "./record.ts";
import { correcting, rippleOf, sayChanged, sayLeftThing } from "./ripple.ts";

function made(more: object = {}): Brief {
  const read = readDocument({ ...structuredClone(tidepool), ...more });
  if (!read.ok) throw new RangeError(JSON.stringify(read.refusals));
  return read.brief;
}
const date = "2026-11-25";

/** Everything handed out once, as the design stood. */
function handedOut(): Brief {
  const brief = made();
  const answer = answerBrief(brief);
  const all = LEAVES.map((of) =>
    leaving(brief, answer, { what: "handed-out", of, version: "1", date, to: "the spring class" }),
  );
  // An answered brief may not be changed any more.
  const noted = structuredClone(brief);
  remembering(all)(noted);
  return noted;
}

test("nothing is wrong while nothing has changed; the record reads back with the design", () => {
  const brief = handedOut();
  expect(rippleOf(brief, answerBrief(brief))).toEqual([]);
  expect(readDocument(JSON.parse(JSON.stringify(brief)))).toMatchObject({ ok: true });
});

test("a changed number is found wherever it was printed, and nowhere else", () => {
  const brief = handedOut();
  // One row of blocks more: counts, yardage and the top change; templates, chart and stops do not.
  brief.quilt.rows += 1;
  const wrong = rippleOf(brief, answerBrief(brief));
  expect(wrong.map((w) => w.left.of).sort()).toEqual([
    "card",
    "class",
    "kits",
    "layouts",
    "living",
    "pattern",
  ]);
  const pattern = wrong.find((w) => w.left.of === "pattern")!;
  expect(pattern.changes.find((c) => c.where === "the top, finished")).toEqual({
    where: "the top, finished",
    was: "64 × 24 in",
    is: "64 × 32 in",
  });
  expect(sayLeftThing(pattern.left)).toBe(
    "Pattern, version 1, handed out 2026-11-25 to the spring class",
  );
});

test("another fabric's width leaves the pieces and the templates alone", () => {
  const brief = handedOut();
  const kelp = brief.fabrics.find((f) => f.id === "kelp")!;
  kelp.usable = "20";
  delete (kelp as { narrower?: string }).narrower;
  const wrong = rippleOf(brief, answerBrief(brief));
  expect(wrong.map((w) => w.left.of).sort()).toEqual([
    "card",
    "class",
    "kits",
    "layouts",
    "living",
    "pattern",
  ]);
  for (const w of wrong.filter((x) => x.left.of === "pattern"))
    expect(w.changes.map((c) => c.where)).toEqual([
      "Kelp, to buy",
      "Kelp, to buy where it is narrower",
    ]);
});

test("a wider seam makes every sheet wrong", () => {
  const brief = handedOut();
  brief.seam = "5/16";
  const wrong = rippleOf(brief, answerBrief(brief));
  expect(wrong.map((w) => w.left.of)).toEqual(
    expect.arrayContaining(["pattern", "templates", "chart", "sewing", "class"]),
  );
});

test("what is printed after a change wants another version than what is out", () => {
  const brief = handedOut();
  expect(lastVersion(brief)).toBe("1");
  expect(versionToGive(brief, [])).toBeUndefined();
  brief.quilt.rows += 1;
  const wrong = rippleOf(brief, answerBrief(brief));
  expect(versionToGive(brief, wrong)).toBe("2");
  expect(["1", "1.9", "spring 3", "draft"].map(nextVersion)).toEqual([
    "2",
    "1.10",
    "spring 4",
    "draft 2",
  ]);
});

test("a correction given out settles it, until the next change", () => {
  const brief = handedOut();
  brief.quilt.rows += 1;
  const answer = answerBrief(brief);
  remembering(correcting(brief, answer, rippleOf(brief, answer), "2026-11-26"))(brief);
  expect(rippleOf(brief, answer)).toEqual([]);
  brief.quilt.rows += 1;
  const again = rippleOf(brief, answerBrief(brief)).find((w) => w.left.of === "pattern")!;
  // Old and new compared by hand: from the correction on, not from the first printing.
  expect(again.changes.find((c) => c.where === "the top, finished")).toMatchObject({
    was: "64 × 32 in",
    is: "64 × 40 in",
  });
});

test("what is gone is struck out, what is new is added, and entries of others are left alone", () => {
  expect(sayChanged({ where: "piece E1", was: "kite" })).toBe(
    "piece E1: it says kite; strike it out",
  );
  expect(sayChanged({ where: "piece E1", is: "kite" })).toBe("piece E1: it says nothing; add kite");
  const brief = made({ record: [{ what: "sewn", unit: "star/u0" }, "a note", 7] });
  remembering([])(brief);
  expect(brief.record).toHaveLength(3);
  expect(rippleOf(brief, answerBrief(brief))).toEqual([]);
});

test("a full record gives up the oldest that left, never what was ticked or measured", () => {
  const brief = handedOut();
  const [first, ...rest] = brief.record ?? [];
  const ticks = Array.from({ length: 2000 - rest.length - 1 }, (_, i) => ({
    what: "sewn",
    unit: `u${i}`,
  }));
  brief.record = [first, ...ticks, ...rest];
  remembering([first as Left])(brief);
  expect(brief.record).toHaveLength(2000);
  expect(brief.record.slice(0, ticks.length)).toEqual(ticks);
  expect(brief.record.at(-1)).toEqual(first);
});
