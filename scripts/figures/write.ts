/** Writes the figures of docs/geometry. Run: npx tsx scripts/figures/write.ts */
import { writeFileSync } from "node:fs";
import { blockFigures } from "./blocks.ts";
import { recipeFigures } from "./recipes.ts";
import { stripeFigures } from "./stripes.ts";

const folder = new URL("../../docs/geometry/figures/", import.meta.url);
for (const [name, svg] of Object.entries({
  ...blockFigures(),
  ...recipeFigures(),
  ...stripeFigures(),
}))
  writeFileSync(new URL(name, folder), svg);
