import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Answer, answerBrief } from "../core/answer/index.ts";
import { type Brief, readBrief } from "../core/brief/index.ts";
import { sheetJob } from "../core/sheet/index.ts";
import {
  besideOriginal,
  forStudents,
  LIVING_DATA,
  LIVING_TITLE,
  livingPattern,
  livingView,
} from "../core/sheet/living.ts";
import { draftReasons } from "../core/sheet/release.ts";
import { type Own, ownOf, problemsOf, withOwn } from "./own.ts";

const EDITION = { version: "2", date: "November 25, 2026" };
const EXAMPLES = readdirSync("examples").filter((f) => f.endsWith(".json"));
/** The template with its script and faces takes less than half a million bytes (e2e/living.test.ts). */
const TEMPLATE = 500_000;

function example(file: string): { brief: Brief; answer: Answer } {
  const read = readBrief(readFileSync(`examples/${file}`, "utf8"));
  if (!read.ok) throw new RangeError(`${file} is refused`);
  const brief = forStudents(read.brief);
  return { brief, answer: answerBrief(brief) };
}

/** What one student says of her own. */
const VARIANTS: readonly (readonly [string, (b: Brief) => Partial<Own>])[] = [
  ["a narrower fabric", (b) => ({ usable: b.unit === "in" ? "38" : "965" })],
  ["a narrower seam", (b) => ({ seam: b.unit === "in" ? "7/32" : "5.5" })],
];

const reasons = (brief: Brief, answer: Answer): readonly string[] =>
  draftReasons(sheetJob(brief, answer, EDITION));

test.each(EXAMPLES)(
  "%s: its own fields give back the original; another's pass the checklist",
  (file) => {
    const { brief, answer } = example(file);
    const original = livingView(brief, answer, EDITION);
    const own = ownOf(brief);
    expect(problemsOf(brief, own)).toEqual({});
    // Said anew with the original's own fields the design is the same, so its answer is too.
    const same = withOwn(brief, own);
    expect(JSON.parse(JSON.stringify(same))).toEqual(JSON.parse(JSON.stringify(brief)));
    expect(original.quilt).toContain("<svg");
    expect(original.layouts.map((l) => l.id)).toEqual(answer.layouts.map((l) => l.fabricId));

    const html = livingPattern(`${LIVING_TITLE}${LIVING_DATA}`, brief, answer, EDITION);
    expect(Buffer.byteLength(html) + TEMPLATE).toBeLessThanOrEqual(1_500_000);

    // One variant an example, in turn, so that the tests stay short.
    const [what, change] = VARIANTS[EXAMPLES.indexOf(file) % VARIANTS.length];
    const next = withOwn(brief, { ...own, ...change(brief) });
    const hers = answerBrief(next);
    const view = besideOriginal(livingView(next, hers, EDITION), original);
    for (const y of hers.yardages) {
      const layout = hers.layouts.find((l) => l.fabricId === y.fabricId && l.width === y.width);
      const need = Math.max(layout?.lowerBound ?? 0, layout?.length ?? 0);
      expect(y.buy, `${what}, ${y.fabricId}`).toBeGreaterThanOrEqual(need - 1e-9);
    }
    // A pattern of hers passes the release checklist, or says that it is not proved and why.
    if (reasons(next, hers).length > 0) expect(view.doubts, what).not.toEqual([]);
    // What the original passes without a doubt, a change of width alone may not lose in silence.
    if (view.doubts.length === 0) expect(reasons(next, hers), what).toEqual([]);
  },
);

test("a fabric of which the same is asked keeps the original's plan, found by a longer search", () => {
  const { brief, answer } = example("tidepool-runner.json");
  const seen = livingView(brief, answer, EDITION);
  // As if the longer search had found a yardage that the first plan does not.
  const original = {
    ...seen,
    supplies: seen.supplies.map((s) => ({ ...s, buy: `${s.buy}, searched for` })),
  };
  const kelp = brief.fabrics.map((f) => (f.id === "kelp" ? { ...f, usable: "20" } : f));
  const next = { ...brief, fabrics: kelp } as Brief;
  const mine = besideOriginal(livingView(next, answerBrief(next), EDITION), original);
  const buy = (id: string) => mine.supplies.find((s) => s.id === id)?.buy;
  expect(buy("shell")).toMatch(/, searched for$/);
  expect(buy("kelp")).not.toMatch(/searched for/);
});

test("a photo travels once, however many of its tiles the pictures show", () => {
  const { brief } = example("tidepool-runner.json");
  const data = `data:image/png;base64,${"A".repeat(2000)}`;
  const printed = brief.fabrics.map((f) =>
    f.id === "shell"
      ? { ...f, kind: "print" as const, photo: { data, width: "6", height: "6" } }
      : f,
  );
  const next = { ...brief, fabrics: printed } as Brief;
  const html = livingPattern(`${LIVING_TITLE}${LIVING_DATA}`, next, answerBrief(next), EDITION);
  expect(html).toContain("photo:shell");
  expect(html.split(data)).toHaveLength(2);
});
