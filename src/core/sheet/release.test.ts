import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { jobOf } from "./job.testing.ts";
import { draftReasons } from "./release.ts";

const example = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), "utf8"));

const mirroredByTurns = (name: string) => {
  const brief = example(name);
  const block = brief.blocks[0].id;
  brief.quilt.plan = [[block, { block, quarters: 0, mirrored: true }]];
  return draftReasons(jobOf(JSON.stringify(brief)));
};

// Two fabrics by turns in a square that turns onto itself: its mirror image turns the other way.
test("blocks that no step sews keep a pattern a draft", () => {
  expect(mirroredByTurns("quiet-field")).toEqual([
    expect.stringMatching(/^12 of 30 sheaf blocks lie mirrored/),
  ]);
});

test("a block that is its own mirror image is sewn as ever", () => {
  expect(mirroredByTurns("lantern-throw")).toEqual([]);
});

test("strips are cut from large to small, but for those joined to long ones, which come first", () => {
  const brief = example("ferry-windows");
  const job = jobOf(JSON.stringify({ ...brief, quilt: { ...brief.quilt, rows: 8 } }));
  expect(draftReasons(job)).toEqual([]);
  const layouts = job.answer.layouts.map((l) => ({ ...l, strips: l.strips.toReversed() }));
  expect(draftReasons({ ...job, answer: { ...job.answer, layouts } })).toContainEqual(
    expect.stringMatching(/^Wake: a .* strip is cut after a/),
  );
});

test("lefts and rights that are cut apart may be of different number", () => {
  const brief = example("ten-petal-pillow");
  const quilt = { arrangement: "on-point", edges: "halves", rows: 2, columns: 1 };
  const job = jobOf(JSON.stringify({ ...brief, quilt: { ...brief.quilt, ...quilt } }));
  const { pieces } = job.answer;
  const twin = (id: string | undefined) => pieces.find((p) => p.id === id);
  expect(pieces.some((p) => p.mirrorId && twin(p.mirrorId)?.count !== p.count)).toBe(true);
  expect(draftReasons(job).filter((why) => /cut together/.test(why))).toEqual([]);
});
