import { readFileSync } from "node:fs";
import DxfParser from "dxf-parser";
import { expect, test } from "vitest";
import { dxfText } from "./dxf.ts";
import { jobOf } from "./job.testing.ts";

const example = (name: string): string =>
  readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), "utf8");

// That make's file holds every shape is tested in src/cli/dxf.test.ts.
test("a name with a line break stays a name", () => {
  const brief = JSON.parse(example("tidepool-runner"));
  brief.fabrics[0].name = "Kelp\n0\nENDSEC";
  const dxf = new DxfParser().parseSync(dxfText(jobOf(JSON.stringify(brief))));
  expect(
    dxf?.entities.some(
      (e) => e.type === "TEXT" && /Kelp 0 ENDSEC/.test((e as unknown as { text: string }).text),
    ),
  ).toBe(true);
});
