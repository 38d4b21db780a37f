import fc from "fast-check";
import { expect, test } from "vitest";
import { layOutBlock } from "../block/index.ts";
import { smallBrief } from "../brief/sample.ts";
import { roundUp, stepOf } from "../measure/index.ts";
import { layOutQuilt } from "./index.ts";
import {
  type FreeLength,
  missedBy,
  planByBlocks,
  planByLength,
  type TopShape,
  topSize,
} from "./sizes.ts";

const SEED = 20261126;
const HALF = stepOf("1/2", "in");

const arrangement = fc.constantFrom("rows", "on-point", "hexagon-rows");

test("a top's size from its shape alone is the size it is laid out with", () => {
  fc.assert(
    fc.property(
      arrangement,
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 9 }),
      fc.constantFrom(undefined, "3/4", "1 1/2"),
      fc.array(fc.constantFrom("1", "2 1/2"), { maxLength: 3 }),
      (arranged, rows, columns, sash, borders) => {
        const hexagons = arranged === "hexagon-rows";
        const common = { kind: "wedges", id: "star", strip: "4 1/2", fabric: { wedge: "red" } };
        const sashing =
          arranged !== "hexagon-rows" && sash ? { width: sash, fabric: "red" } : undefined;
        const brief = smallBrief({
          blocks: [
            hexagons
              ? {
                  ...common,
                  n: 12,
                  outline: "hexagon",
                  setting: "sectors",
                  turned: "flat",
                  side: "9",
                }
              : { ...common, setting: "plain" },
          ],
          quilt: {
            arrangement: arranged,
            rows,
            columns,
            plan: [["star"]],
            sashing,
            borders: borders.map((width) => ({ width, fabric: "sand" })),
          },
        });
        const block = layOutBlock(brief.blocks[0], "in", 0.25, hexagons ? 3.3 : 4).geometry!;
        const { geometry } = layOutQuilt(brief, [block]);
        const shape = {
          arrangement: arranged,
          block,
          sash: sashing ? (sash === "3/4" ? 0.75 : 1.5) : 0,
          borders: borders.reduce((sum, w) => sum + (w === "1" ? 1 : 2.5), 0),
        };
        const size = topSize(shape, rows, columns);
        expect(size.width).toBeCloseTo(geometry!.width, 9);
        expect(size.height).toBeCloseTo(geometry!.height, 9);
      },
    ),
    { seed: SEED, numRuns: 60 },
  );
});

const square = (side: number): TopShape["block"] => ({ width: side, height: side });
const shapes = fc.record({
  arrangement,
  side: fc.integer({ min: 20, max: 56 }).map((x) => x / 4),
  sash: fc.constantFrom(0, 0.5, 1.5),
  borders: fc.constantFrom(0, 2, 5.5),
});
const sizes = fc.record({
  width: fc.integer({ min: 24, max: 110 }),
  length: fc.integer({ min: 24, max: 110 }),
});

test("no other rows and columns come nearer than those it names", () => {
  fc.assert(
    fc.property(shapes, sizes, ({ side, ...rest }, wanted) => {
      const shape = { ...rest, block: square(side) };
      const plan = planByBlocks(shape, wanted);
      for (let n = 1; n <= 30; n++) {
        const other = topSize(shape, n, n);
        expect(Math.abs(plan.over.width)).toBeLessThanOrEqual(
          Math.abs(other.width - wanted.width) + 1e-9,
        );
        expect(Math.abs(plan.over.length)).toBeLessThanOrEqual(
          Math.abs(other.height - wanted.length) + 1e-9,
        );
      }
    }),
    { seed: SEED + 1, numRuns: 100 },
  );
});

/** The free lengths of a shape, each with room of its own. */
function freeIn(
  way: FreeLength["way"],
  { side, ...rest }: { side: number } & Omit<TopShape, "block">,
) {
  const now = { ...rest, block: square(side) };
  const shape = {
    float: (x: number) => ({ ...now, block: square(x) }),
    strip: (x: number) => ({ ...now, block: square(2 * x - 1.8) }),
    sashing: (x: number) => ({ ...now, sash: x }),
    borders: (x: number) => ({ ...now, borders: rest.borders + x }),
  }[way];
  const room = { float: [4.3, 12.1], strip: [3.2, 7.7], sashing: [0.6, 3.4], borders: [0.7, 9.2] };
  return { way, now: 2, least: room[way][0], most: room[way][1], shape } as FreeLength;
}

test("by one length: trying every length on the step with every grid finds nothing nearer", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("float", "strip", "sashing", "borders"),
      shapes,
      sizes,
      (way, shape, wanted) => {
        // Sashing is for straight rows.
        const rows = way === "sashing" && shape.arrangement === "hexagon-rows";
        const given = rows ? { ...shape, arrangement: "rows" as const } : shape;
        const free = freeIn(way, given);
        const plan = planByLength(free, wanted, HALF)!;
        expect(plan.length).toBeGreaterThanOrEqual(free.least);
        expect(plan.length).toBeLessThanOrEqual(free.most);
        const made = topSize(free.shape(plan.length!), plan.rows, plan.columns);
        expect(plan.over.width).toBeCloseTo(made.width - wanted.width, 9);
        let least = Number.POSITIVE_INFINITY;
        for (let x = roundUp(free.least, HALF); x <= free.most; x += 0.5) {
          const shape = free.shape(x);
          let [across, down] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
          for (let n = 1; n <= 40; n++) {
            const { width, height } = topSize(shape, n, n);
            across = Math.min(across, Math.abs(width - wanted.width));
            down = Math.min(down, Math.abs(height - wanted.length));
          }
          least = Math.min(least, Math.max(across, down));
        }
        expect(Math.ceil(missedBy(plan) / 0.5 - 1e-6)).toBe(Math.ceil(least / 0.5 - 1e-6));
      },
    ),
    { seed: SEED + 2, numRuns: 100 },
  );
});

test("a length without room on the ruler has no plan", () => {
  const shape = { arrangement: "rows", block: square(6), sash: 0, borders: 0 } as const;
  const free: FreeLength = {
    way: "borders",
    now: 0,
    least: 1.1,
    most: 1.4,
    shape: (x) => ({ ...shape, borders: x }),
  };
  expect(planByLength(free, { width: 30, length: 40 }, HALF)).toBeUndefined();
});
