import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { blockLetters, finishBlock } from "./finish.ts";
import { jobOf } from "./job.testing.ts";

const example = (name: string, quilt: object): string => {
  const design = JSON.parse(readFileSync(`examples/${name}.json`, "utf8"));
  return JSON.stringify({ ...design, quilt: { ...design.quilt, ...quilt } });
};

/** Every text in what is drawn, with how often it stands there. */
function textsIn(value: unknown, found: Record<string, number> = {}): Record<string, number> {
  if (value === null || typeof value !== "object") return found;
  for (const [key, part] of Object.entries(value)) {
    if (key === "text" && typeof part === "string") found[part] = (found[part] ?? 0) + 1;
    else textsIn(part, found);
  }
  return found;
}

test("in shifted rows the halves at the ends bear their numbers in the map, as often as there are halves", () => {
  const job = jobOf(
    example("skylark-bed", { arrangement: "rows", offset: true, sashing: undefined }),
  );
  const letters = blockLetters(job);
  const drawings = finishBlock(job, 1).items.filter((i) => i.kind === "figure");
  const texts = textsIn(drawings);
  const kinds = job.answer.blocks.filter((b) => b.count > 0);
  expect(kinds.length).toBe(4);
  for (const b of kinds) expect([b.name, texts[letters[b.id]]]).toEqual([b.name, b.count]);
});
