import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { boughtOf } from "../answer/index.ts";
import { readDocument } from "../brief/index.ts";
import { designOf } from "./design.ts";
import { LeastFabric } from "./least.ts";
import type { Values } from "./types.ts";

function designAt(name: string) {
  const read = readDocument(JSON.parse(readFileSync(`examples/${name}.json`, "utf8")));
  if (!read.ok) throw new Error(`${name} is refused`);
  return designOf(read.brief)!;
}

/** Sashing with cornerstones; a fold; lefts and rights; stripes; millimeters. */
const NAMES = ["ferry-windows", "orchard-wall", "quiet-field", "tidepool-runner", "harbor-mat"];

test.each(NAMES)(
  "law: what is bought is never under what was found without planning: %s",
  (name) => {
    const d = designAt(name);
    const bound = new LeastFabric(d);
    const step = d.brief.unit === "in" ? 1 / 4 : 5;
    const some = (most: number, from = 0) =>
      fc.integer({ min: from, max: most }).map((n) => n * step);
    const block = d.block.width / step / 2;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 6 }),
        fc.option(some(Math.floor(block), 4), { nil: 0 }),
        fc.option(some(Math.floor(block), 4), { nil: undefined }),
        (rows, columns, border, sash) => {
          const v: Values = {
            ...d.now,
            rows,
            columns,
            border,
            ...(d.now.sash && sash !== undefined && { sash }),
          };
          const ids = d.brief.fabrics.map((f) => f.id);
          for (const y of boughtOf(d.write(v), ids)) {
            const least = bound.least(v, y.fabricId);
            expect(least, `${y.fabricId} of ${JSON.stringify(v)}`).toBeLessThanOrEqual(
              y.buy + 1e-6,
            );
            expect(bound.least(v, y.fabricId, 0)).toBeLessThanOrEqual(least + 1e-6);
          }
        },
      ),
      { seed: 7718, numRuns: 6 },
    );
  },
);
