import type { Brief } from "../../brief/index.ts";
import type { Finding } from "../../findings/index.ts";
import { knownLength, type Length, printWithUnit, type Step } from "../../measure/index.ts";
import { type FreeLength, type SizePlan, topSize, type Wanted } from "../../quilt/index.ts";
import type { Measures } from "../cut/stages.ts";
import type { Answer, SizeAnswer } from "../types/answer.ts";
import { byNearness, type Finished, plansFor, shapeNow, withPlan } from "./plans.ts";

/** How a plan comes to its size, in few words: "6 by 5, blocks of 12 in". */
export function planWords(plan: SizePlan, step: Step): string {
  const grid = `${plan.rows} by ${plan.columns}`;
  if (plan.length === undefined) return grid;
  const length = printWithUnit(plan.length, step);
  const what = {
    float: `blocks of ${length}`,
    strip: `wedges from ${length} strips`,
    sashing: `${length} sashing`,
    borders: `the outer border ${length}`,
  }[plan.way as FreeLength["way"]];
  return `${grid}, ${what}`;
}

/** "exactly", or by how much each side is over or under. */
export function overWords(over: Wanted, step: Step): string {
  const one = (x: Length, side: string): string[] =>
    Math.abs(x) < 1e-6
      ? []
      : [`${printWithUnit(Math.abs(x), step)} ${x > 0 ? "over" : "under"} in ${side}`];
  const words = [...one(over.width, "width"), ...one(over.length, "length")];
  return words.length === 0 ? "exactly" : words.join(", ");
}

export interface Sizes {
  readonly sizes: readonly SizeAnswer[];
  readonly findings: readonly Finding[];
}

/**
 * Every size of the brief, planned as one design: the nearest way that adds no part of its own is
 * chosen and answered in full by `answer`. Costs one answer a size.
 */
export function sizesOf(
  b: Brief,
  m: Measures,
  block: Finished,
  answer: (b: Brief) => Answer,
): Sizes {
  const made = (b.sizes ?? []).map((size) => {
    const wanted = {
      width: knownLength(size.width, b.unit),
      length: knownLength(size.length, b.unit),
    };
    const ways = plansFor(b, m, block, wanted).filter((p) => p.way !== "strip");
    const [plan] = byNearness(
      ways.filter((p) => !p.adds),
      m.step,
    );
    const full = answer(withPlan(b, plan, m.step));
    const blocking = full.findings.filter((f) => f.severity === "blocks");
    const sized: SizeAnswer = {
      name: size.name,
      wanted,
      ways,
      plan,
      blocks: full.blocks.reduce((n, k) => n + (k.id.includes("~") ? 0 : k.count), 0),
      ...(full.quilt && { width: full.quilt.width, height: full.quilt.height }),
      yardages: full.yardages,
      ...(full.finishing && { finishing: full.finishing }),
    };
    const findings = [
      ...missed(b, m, block, sized),
      ...blocking.map(
        (f): Finding => ({ ...f, severity: "draft", place: `${size.name}, ${f.place}` }),
      ),
    ];
    return { sized, findings };
  });
  return { sizes: made.map((x) => x.sized), findings: made.flatMap((x) => x.findings) };
}

/** Sides that no plan brings within a step of the ruler, and a size too small for one block on point. */
function missed(b: Brief, m: Measures, block: Finished, size: SizeAnswer): Finding[] {
  const { wanted, plan, name } = size;
  const least = topSize(shapeNow(b, block), 1, 1);
  const small = wanted.width < least.width - 1e-9 || wanted.length < least.height - 1e-9;
  const corners: Finding[] =
    b.quilt.arrangement === "on-point" && small
      ? [
          {
            code: "no-room-for-corners",
            severity: "advice",
            place: name,
            needed: Math.max(least.width, least.height),
            found: Math.min(wanted.width, wanted.length),
            unit: b.unit,
            words: { works: "Straight rows need less." },
          },
        ]
      : [];
  const sides = [
    ["width", wanted.width, plan.width],
    ["length", wanted.length, plan.height],
  ] as const;
  const near = m.step.size.valueOf() + 1e-6;
  return [
    ...corners,
    ...sides.flatMap(([side, needed, found]): Finding[] =>
      Math.abs(found - needed) <= near
        ? []
        : [
            {
              code: "size-not-reached",
              severity: "advice",
              place: `${name} (${side})`,
              needed,
              found,
              unit: b.unit,
            },
          ],
    ),
  ];
}
