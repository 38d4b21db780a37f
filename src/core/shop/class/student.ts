import {
  type Answer,
  answerBrief,
  fabricLetters,
  finishRows,
  measuresOf,
  sayReading,
  sayStep,
  sizeText,
  usesOf,
  withPlan,
} from "../../answer/index.ts";
import type { Brief, StudentText } from "../../brief/index.ts";
import { type Length, printWithUnit, stepOf } from "../../measure/index.ts";
import { rulerOf, stripFor } from "../../recipe/index.ts";
import { setsOf } from "../needs.ts";
import { seamResult } from "./seam.ts";
import type { Homework, StudentPlan, Supply } from "./types.ts";

/**
 * The design as one student makes it: her fabric's usable width, her ruler's point and longest line,
 * the size she chose. A ruler with another point cuts another wedge from the same strip; her block
 * stays the class's, so her strip changes, exactly, and is not rounded.
 */
export function briefOf(brief: Brief, answer: Answer, s: StudentText): Brief {
  const sized = inSize(brief, answer, s.top);
  const ruler = {
    ...sized.ruler,
    ...(s.point !== undefined && { point: s.point }),
    ...(s.longest !== undefined && { longest: s.longest }),
  };
  const { unit } = brief;
  const { seam } = measuresOf(brief);
  const blocks = sized.blocks.map((b) => {
    const radial = answer.blocks.find((k) => k.id === b.id)?.radial;
    if (b.kind !== "wedges" || s.point === undefined || !radial) return b;
    const strip = stripFor(rulerOf(ruler, b.n, unit), radial.a, seam);
    return { ...b, strip: String(Number((+strip).toFixed(6))) };
  });
  const fabrics = sized.fabrics.map((f) =>
    s.usable === undefined || f.kind === "strip-set"
      ? f
      : { ...f, usable: s.usable, narrower: undefined, inHand: undefined },
  );
  return { ...sized, ruler, blocks, fabrics, sizes: [], shop: undefined, class: undefined };
}

/** The brief in the size of that name; as it is where there is none. */
function inSize(brief: Brief, answer: Answer, top: string | undefined): Brief {
  const size = answer.sizes?.find((x) => x.name === top);
  return size ? withPlan(brief, size.plan, stepOf(brief.step, brief.unit)) : brief;
}

export function studentPlan(brief: Brief, answer: Answer, s: StudentText): StudentPlan {
  const own = ownWords(s);
  const hers = own.length === 0 ? brief : briefOf(brief, answer, s);
  const made = own.length === 0 ? answer : answerBrief(hers);
  const seam = s.test && seamResult(hers, made, s.test);
  return {
    name: s.name,
    brief: hers,
    answer: made,
    size: sizeText(hers, made),
    own,
    supplies: suppliesOf(hers, made),
    tools: toolsOf(hers, made),
    homework: homeworkOf(hers, made),
    rulerCheck: rulerCheckOf(hers, made),
    ...(seam && { seam }),
    findings: made.findings.filter((f) => f.severity !== "advice"),
  };
}

function ownWords(s: StudentText): string[] {
  return [
    ...(s.usable === undefined ? [] : [`fabric ${s.usable} usable`]),
    ...(s.point === undefined ? [] : ["a ruler with another point"]),
    ...(s.longest === undefined ? [] : [`a ruler up to ${s.longest}`]),
    ...(s.top === undefined ? [] : [`the size ${s.top}`]),
  ];
}

function suppliesOf(brief: Brief, answer: Answer): Supply[] {
  const letters = fabricLetters(brief);
  return brief.fabrics.flatMap((f): Supply[] => {
    const y = answer.yardages.find((v) => v.fabricId === f.id);
    if (!y || f.kind === "strip-set") return [];
    const base = { fabricId: f.id, letter: letters[f.id] ?? "", name: f.name };
    return [{ ...base, buy: y.buyText, uses: usesOf(brief, answer, f.id) || setsOf(brief, f.id) }];
  });
}

/** What the cuts and seams of this design ask for; nothing that is not used. */
function toolsOf(brief: Brief, answer: Answer): string[] {
  const step = stepOf(brief.step, brief.unit);
  const { seam } = measuresOf(brief);
  const kinds = new Set(answer.recipes.map((r) => r.kind));
  const wedges = brief.blocks.flatMap((b) => (b.kind === "wedges" ? [b] : []));
  const lines = [
    ...new Set(
      wedges.map(
        (b) => `${360 / b.n}-degree wedge ruler with a line at ${b.strip}, or the printed template`,
      ),
    ),
  ];
  const batting = finishRows(brief, answer).find((r) => r.id === "batting");
  const widest = Math.max(0, ...answer.blocks.map((b) => b.width + 2 * seam));
  return [
    "rotary cutter with a fresh blade, and mat",
    "long ruler",
    ...(kinds.has("wedge") ? lines : []),
    ...(kinds.has("kite") || kinds.has("half-square-sliced") || kinds.has("template")
      ? ["the printed templates"]
      : []),
    ...(widest > 0 ? [`square ruler of at least ${printWithUnit(widest, step)}`] : []),
    `sewing machine, threaded and tried, with its foot for a ${printWithUnit(seam, step)} seam`,
    "pins, thread, seam ripper",
    ...(batting ? [`batting, ${batting.size}`] : []),
    "test strips: three, of one width, for the seam test",
  ];
}

/**
 * What to cut at home: whole strips, which only a straight ruler sets. Everything a point, a line at
 * an angle or a template decides is cut in class, after the ruler has been checked.
 */
function homeworkOf(brief: Brief, answer: Answer): Homework[] {
  const letters = fabricLetters(brief);
  const step = stepOf(brief.step, brief.unit);
  return answer.cutting.flatMap((c): Homework[] => {
    const fabric = brief.fabrics.find((f) => f.id === c.fabricId);
    if (!fabric || fabric.kind === "strip-set") return [];
    const strips = c.orders
      .filter((o) => o.from === "bolt")
      .flatMap((o) => o.steps.filter((s) => s.op === "strip"));
    const counts = new Map<Length, number>();
    for (const s of strips) counts.set(s.size, (counts.get(s.size) ?? 0) + s.cuts);
    const cuts = [...counts].map(([size, n]) =>
      sayStep({ number: 0, op: "strip", size, cuts: n }, answer, step),
    );
    if (cuts.length === 0) return [];
    return [{ fabricId: fabric.id, letter: letters[fabric.id] ?? "", name: fabric.name, cuts }];
  });
}

const rulerCheckOf = (brief: Brief, answer: Answer): string[] => [
  ...new Set(answer.wedges.flatMap((g) => sayReading(g.reading, stepOf(brief.step, brief.unit)))),
];
