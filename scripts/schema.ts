// Writes the published JSON Schemas: the brief's from its zod schema, the others' from their types.
// `npm run -s schema`; with --check it only compares (a test runs that).
import { readFileSync, writeFileSync } from "node:fs";
import { createGenerator } from "ts-json-schema-generator";
import * as z from "zod";
import { canonicalText } from "../src/core/brief/canonical.ts";
import { brief } from "../src/core/brief/schema.ts";

const ID = "urn:eighthwise:schema";

/** The schemas as text, by file name under docs/schema/. */
export function schemaTexts(): ReadonlyMap<string, string> {
  const ofBrief = { $id: `${ID}:brief`, ...z.toJSONSchema(brief, { io: "input" }) };
  // One reading of the types for all three: it takes longer than the schemas.
  const types = createGenerator({
    path: "src/core/{answer/types,turn/output,turn/fromOutput}.ts",
    tsconfig: "tsconfig.json",
    skipTypeCheck: true,
  });
  const ofAnswer = { $id: `${ID}:answer`, ...types.createSchema("Answer") };
  const ofTurn = { $id: `${ID}:turn`, ...types.createSchema("TurnOutput") };
  const ofFrom = { $id: `${ID}:from`, ...types.createSchema("FromOutput") };
  return new Map([
    ["docs/schema/brief.schema.json", canonicalText(ofBrief)],
    ["docs/schema/answer.schema.json", canonicalText(ofAnswer)],
    ["docs/schema/turn.schema.json", canonicalText(ofTurn)],
    ["docs/schema/from.schema.json", canonicalText(ofFrom)],
  ]);
}

if (process.argv[1]?.endsWith("schema.ts")) {
  const check = process.argv.includes("--check");
  for (const [file, text] of schemaTexts()) {
    if (!check) writeFileSync(file, text);
    else if (readFileSync(file, "utf8") !== text) {
      console.error(`${file} is out of date: npm run -s schema`);
      process.exitCode = 1;
    }
  }
}
