import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { jobOf } from "./job.testing.ts";
import { draftReasons } from "./release.ts";

const mirroredByTurns = (name: string) => {
  const brief = JSON.parse(
    readFileSync(new URL(`../../../examples/${name}`, import.meta.url), "utf8"),
  );
  const block = brief.blocks[0].id;
  brief.quilt.plan = [[block, { block, quarters: 0, mirrored: true }]];
  return draftReasons(jobOf(JSON.stringify(brief)));
};

// Two fabrics by turns in a square that turns onto itself: its mirror image turns the other way.
test("blocks that no step sews keep a pattern a draft", () => {
  expect(mirroredByTurns("quiet-field.json")).toEqual([
    expect.stringMatching(/^12 of 30 sheaf blocks lie mirrored/),
  ]);
});

test("a block that is its own mirror image is sewn as ever", () => {
  expect(mirroredByTurns("lantern-throw.json")).toEqual([]);
});
