import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { blockFigures } from "./blocks.ts";
import { recipeFigures } from "./recipes.ts";
import { stripeFigures } from "./stripes.ts";

const folder = new URL("../../docs/geometry/figures/", import.meta.url);

describe("figures of docs/geometry are those the code draws", () => {
  test.each(Object.entries({ ...blockFigures(), ...recipeFigures(), ...stripeFigures() }))(
    "%s",
    (name, svg) => {
      // Stale? npx tsx scripts/figures/write.ts
      expect(readFileSync(new URL(name, folder), "utf8")).toBe(svg);
    },
  );
});
