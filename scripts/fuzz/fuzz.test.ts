import { execFileSync } from "node:child_process";
import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import tidepool from "../../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../../src/core/answer/index.ts";
import { readDocument } from "../../src/core/brief/index.ts";
import { readPin } from "../../src/core/turn/index.ts";
import type { AskedCase } from "./asked.ts";
import { drawn, Met, runCase } from "./cases.ts";
import { broken } from "./laws.ts";

const SEED = 3;
const COUNT = 20_000;

test(`${COUNT} cases of seed ${SEED}: no crash, no hang, no growth, every law kept`, () => {
  const root = resolve(import.meta.dirname, "../..");
  const args = ["--import", "tsx", "scripts/fuzz/main.ts", `--count=${COUNT}`, `--seed=${SEED}`];
  const said = execFileSync(process.execPath, args, { cwd: root, encoding: "utf8" });
  expect(said).toMatch(/\b0 failures/);
  expect(said).toMatch(/harmed accepted +\d\d/);
  expect(said).toMatch(/whole accepted +\d/);
  expect(said).toMatch(/asked accepted +\d{3}/);
  expect(said).toMatch(/command accepted +\d/);
  expect(said).toMatch(/command refused +\d/);
  expect(said).toMatch(/words accepted +\d\d/);
  expect(said).toMatch(/pixels accepted +\d\d/);
}, 300_000);

describe("the fuzz itself", () => {
  const plan = { seed: SEED, bases: 12 };

  test("draws a case again from its seed and number", () => {
    for (const number of [0, 7, 1234]) expect(drawn(plan, number)).toEqual(drawn(plan, number));
    expect(drawn(plan, 1).input).not.toEqual(drawn({ ...plan, seed: SEED + 1 }, 1).input);
  });

  test("answers a design that was met before no second time", () => {
    const met = new Met();
    const designs = { ...plan, kind: "design" } as const;
    expect(runCase(designs, 5, met).end).toBe("accepted");
    expect(runCase(designs, 5, met).end).toBe("known");
  });

  test("what is typed beside a design is taken and refused, both", () => {
    const typed = Array.from({ length: 300 }, (_, n) => drawn({ ...plan, kind: "asked" }, n).input);
    const pins = typed.flatMap((t) =>
      (JSON.parse(t as string) as AskedCase).texts.map((text) => readPin(text, brief)),
    );
    expect(pins.filter((p) => !("problem" in p)).length).toBeGreaterThan(3);
    expect(pins.filter((p) => "problem" in p).length).toBeGreaterThan(300);
  });

  test("a design with its shop, class and record is answered, kits and all", () => {
    const ends = Array.from({ length: 12 }, (_, n) => runCase({ ...plan, kind: "whole" }, n));
    expect(ends.filter((e) => e.end === "accepted").length).toBeGreaterThan(2);
    expect(ends.flatMap((e) => e.broken)).toEqual([]);
  });

  const read = readDocument(tidepool);
  if (!read.ok) throw new Error("the sample is refused");
  const { brief } = read;
  const answer = answerBrief(brief);
  const laws = (spoiled: typeof answer): string[] =>
    broken(brief, false, spoiled).map((b) => b.law);

  test("finds nothing wrong with a sound answer", () => {
    expect(broken(brief, true, answer)).toEqual([]);
  });

  test.each([
    [
      "a plan that is short of its demand",
      {
        ...answer,
        layouts: answer.layouts.map((l) => ({ ...l, strips: l.strips.slice(1) })),
      },
      "plans meet their demands, between bound and handbook",
    ],
    [
      "a recipe called proved that does not cover",
      {
        ...answer,
        recipes: answer.recipes.map((r) => ({
          ...r,
          polygon: r.polygon.map((p) => ({ x: p.x * 0.99, y: p.y * 0.99 })),
        })),
      },
      "a proved recipe covers, measured again",
    ],
    [
      "a piece too few",
      { ...answer, pieces: answer.pieces.slice(1) },
      "every patch is a piece, counted",
    ],
    [
      "a patch gone from a block",
      { ...answer, blocks: answer.blocks.map((b) => ({ ...b, patches: b.patches.slice(1) })) },
      "patches fill their block and are convex",
    ],
    [
      "a number that is none",
      { ...answer, units: answer.units.map((u) => ({ ...u, spare: Number.NaN })) },
      "every number is finite",
    ],
  ])("finds %s", (_, spoiled, law) => {
    expect(laws(spoiled)).toContain(law);
  });
});
