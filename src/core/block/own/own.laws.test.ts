import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { OwnBlock } from "../../brief/schema.ts";
import { area, distance, edges, isConvex } from "../../geometry/index.ts";
import { outlineOf, unitsOf } from "../plan.ts";
import { layOutOwn, type OwnLaidOut } from "./lay-out-own.ts";

const SEED = 20260112;
const JOIN = 1e-9;
const SEAM = 0.003;

const outlines: OwnBlock["outline"][] = [
  { width: "9 1/2", height: "6 3/8" },
  { width: "7", height: "7" },
  { hexagon: "8 1/4" },
];

const lay = (outline: OwnBlock["outline"], seams: readonly string[]) =>
  layOutOwn({ kind: "own", id: "own", fabric: {}, outline, seams: [...seams] }, "in", SEAM);

const nameAt = (laid: OwnLaidOut, at: { x: number; y: number }) =>
  laid.points.find((p) => distance(p.at, at) <= JOIN)?.name;

interface Choice {
  readonly part: number;
  readonly first: number;
  readonly second: number;
  readonly k: number;
}

const choice: fc.Arbitrary<Choice> = fc.record({
  part: fc.nat({ max: 1000 }),
  first: fc.nat({ max: 1000 }),
  second: fc.nat({ max: 1000 }),
  k: fc.integer({ min: 1, max: 6 }),
});

/** A seam across one patch, from a corner or a seventh of an edge to another edge, in words. */
function seamAcross(laid: OwnLaidOut, c: Choice): string {
  const { polygon } = laid.geometry.patches[c.part % laid.geometry.patches.length];
  const n = polygon.length;
  const i = c.first % n;
  const j = (i + 1 + (c.second % (n - 1))) % n;
  const letter = (at: number) => nameAt(laid, polygon[at % n]);
  const start = `${c.k}/7 of ${letter(i)}${letter(i + 1)}`;
  const acrossFromCorner = n > 3 || j === (i + 2) % n;
  const end =
    c.k === 3 && acrossFromCorner && j !== (i + 1) % n
      ? `${letter(j)}`
      : `${7 - c.k}/7 of ${letter(j)}${letter(j + 1)}`;
  return `from ${start} to ${end}`;
}

describe(`blocks of one's own (seed ${SEED})`, () => {
  test("each seam said across a patch makes one patch more; all fill the block and are convex", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...outlines),
        fc.array(choice, { minLength: 1, maxLength: 9 }),
        (outline, choices) => {
          let seams: string[] = [];
          let laid = lay(outline, seams);
          for (const c of choices) {
            seams = [...seams, seamAcross(laid, c)];
            const next = lay(outline, seams);
            const blocked = next.findings.filter((f) => f.severity === "blocks");
            if (blocked.length > 0)
              throw new Error(`${seams.join("; ")}: ${JSON.stringify(blocked)}`);
            expect(next.geometry.patches.length).toBe(laid.geometry.patches.length + 1);
            laid = next;
          }
          const { geometry } = laid;
          const sum = geometry.patches.reduce((s, p) => s + area(p.polygon), 0);
          expect(Math.abs(sum / area(geometry.outline) - 1)).toBeLessThan(1e-12);
          expect(geometry.patches.every((p) => isConvex(p.polygon, JOIN))).toBe(true);
          for (const unit of unitsOf(geometry.tree)) {
            const { from, to } = unit.seam;
            const whole = unit.parts.every((part) =>
              edges(outlineOf(part)).some(
                (e) =>
                  Math.min(
                    distance(e.from, from) + distance(e.to, to),
                    distance(e.from, to) + distance(e.to, from),
                  ) <= JOIN,
              ),
            );
            expect(whole).toBe(true);
          }
          expect(new Set(laid.points.map((p) => p.name)).size).toBe(laid.points.length);
        },
      ),
      { seed: SEED, numRuns: 150 },
    );
  });

  test("where it says a seam that stops inside a part should go on to, it can go", () => {
    let tried = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...outlines),
        fc.array(choice, { minLength: 0, maxLength: 4 }),
        choice,
        (outline, choices, last) => {
          let seams: string[] = [];
          for (const c of choices) seams = [...seams, seamAcross(lay(outline, seams), c)];
          const laid = lay(outline, seams);
          const { polygon } = laid.geometry.patches[last.part % laid.geometry.patches.length];
          const n = polygon.length;
          if (n < 4) return;
          const letter = (i: number) => nameAt(laid, polygon[(last.first + i) % n]);
          const inside = `${last.k}/7 of ${letter(1)}${letter(n - 1)}`;
          const [finding] = lay(outline, [...seams, `from ${letter(0)} to ${inside}`]).findings;
          expect(finding.code).toBe("seam-misses-outline");
          const onward = /Go on to (.+)\.$/.exec(finding.words?.works ?? "")![1];
          const good = lay(outline, [...seams, `from ${letter(0)} to ${onward}`]);
          expect(good.findings.filter((f) => f.severity === "blocks")).toEqual([]);
          expect(good.geometry.patches.length).toBe(laid.geometry.patches.length + 1);
          tried++;
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
    expect(tried).toBeGreaterThan(50);
  });
});
