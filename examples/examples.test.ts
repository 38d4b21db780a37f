import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { Ajv } from "ajv";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { examples, filesOf, gallery } from "../scripts/examples.ts";
import { schemaTexts } from "../scripts/schema.ts";
import { WEDGE_SETTINGS } from "../src/core/block/index.ts";

const ALL = examples();

test("there are at least ten examples, with every setting, both units and all three points", () => {
  expect(ALL.length).toBeGreaterThanOrEqual(10);
  const wedges = ALL.flatMap((e) => e.brief.blocks.filter((b) => b.kind === "wedges"));
  expect(new Set(wedges.map((b) => b.setting))).toEqual(new Set(Object.keys(WEDGE_SETTINGS)));
  expect(new Set(ALL.map((e) => e.brief.unit))).toEqual(new Set(["in", "mm"]));
  const points = ALL.map(({ brief: { ruler } }) =>
    typeof ruler.point === "string" ? "sharp" : Object.keys(ruler.point)[0],
  );
  expect(new Set(points)).toEqual(new Set(["sharp", "blunt", "flat"]));
});

describe.each(ALL.map((e) => [e.name, e] as const))("%s", (_, example) => {
  test("nothing blocks cutting", () => {
    expect(example.answer.findings.filter((f) => f.severity === "blocks")).toEqual([]);
  });

  test("every checked-in picture is there and unchanged (a changed one is saved beside it)", () => {
    const changed: string[] = [];
    for (const [file, text] of filesOf(example)) {
      if (!existsSync(file)) changed.push(`${file} is missing: npm run -s examples`);
      else if (readFileSync(file, "utf8") !== text) {
        writeFileSync(file.replace(/\.(\w+)$/, "-changed.$1"), text);
        changed.push(file);
      }
    }
    expect(changed).toEqual([]);
  });

  test("no picture is checked in that nothing draws", () => {
    const drawn = new Set(filesOf(example).keys());
    const folder = `examples/pictures/${example.name}`;
    const extra = readdirSync(folder).filter(
      (f) => !f.includes("-changed") && !drawn.has(`${folder}/${f}`),
    );
    expect(extra).toEqual([]);
  });
});

test("the gallery page shows them all", () => {
  expect(readFileSync("examples/README.md", "utf8")).toBe(gallery(ALL));
});

describe("published schemas", () => {
  const texts = schemaTexts();

  test.each([...texts.keys()])("%s is up to date", (file) => {
    expect(readFileSync(file, "utf8")).toBe(texts.get(file));
  });

  test("every example brief follows its schema, and so does every answer", () => {
    const brief = new Ajv2020({ strict: false }).compile(
      JSON.parse(texts.get("docs/schema/brief.schema.json")!),
    );
    const answer = new Ajv({ strict: false }).compile(
      JSON.parse(texts.get("docs/schema/answer.schema.json")!),
    );
    for (const e of ALL) {
      expect(brief(JSON.parse(readFileSync(`examples/${e.name}.json`, "utf8"))), e.name).toBe(true);
      answer(JSON.parse(JSON.stringify(e.answer)));
      expect(answer.errors, e.name).toBeNull();
    }
  });
});
