import { type Answer, type BlockSteps, measuresOf, sewingSteps } from "../../answer/index.ts";
import type { Brief } from "../../brief/index.ts";
import { lengthToInch } from "../../measure/index.ts";
import { minutesFor, RATES, type Rates } from "../../sewing/index.ts";
import type { Stage } from "./types.ts";

/** Minutes of a cut in class: an estimate (no source). */
const PER_CUT = 0.75;

export const ratesOf = (brief: Pick<Brief, "class">): Rates & { readonly perCut: number } => {
  const r = brief.class?.rates ?? {};
  return {
    perSeam: r.seam ?? RATES.perSeam,
    perInch: r.inch ?? RATES.perInch,
    perPress: r.press ?? RATES.perPress,
    perStep: r.step ?? RATES.perStep,
    perCut: r.cut ?? PER_CUT,
  };
};

/**
 * Minutes by stage for one student who makes `blocks` of each kind of block in the class: cutting what
 * was left for class, then every stage of sewing, from its seams, their length, its presses and one
 * stop. With `students` at `irons`, a stage whose pressing keeps the irons busy for longer than it
 * takes one student makes the room wait. All minutes are estimates.
 */
export function stagesOf(
  brief: Brief,
  answer: Answer,
  room: { readonly blocks: number; readonly students: number; readonly irons: number },
  steps: readonly BlockSteps[] = sewingSteps(brief, answer),
): Stage[] {
  const rates = ratesOf(brief);
  const { seam } = measuresOf(brief);
  const all = answer.blocks.reduce((n, b) => n + b.count, 0);
  const stage = (name: string, own: Omit<Stage, "name" | "own" | "inClass" | "queue">): Stage => {
    const total = own.sewing + own.pressing + own.laying;
    const busy = (room.students * own.pressing) / room.irons;
    return { name, ...own, own: total, inClass: Math.max(total, busy), queue: busy > total + 1e-9 };
  };
  const subcuts = answer.cutting
    .flatMap((c) => c.orders.flatMap((o) => o.steps))
    .filter((s) => s.op !== "strip" && s.op !== "straighten")
    .reduce((n, s) => n + s.cuts, 0);
  const share = all === 0 ? 0 : Math.min(1, (room.blocks * kinds(answer)) / all);
  const cutting = stage("cutting in class", {
    seams: 0,
    sewing: 0,
    pressing: 0,
    laying: subcuts * share * rates.perCut,
  });
  const sewing = steps.flatMap(({ block, steps: ofBlock }) =>
    block.count === 0
      ? []
      : ofBlock.map(({ unit, name }) => {
          const seams = unit.copies * room.blocks;
          const inches = lengthToInch(seams * (unit.seam.length + 2 * seam), brief.unit);
          const m = minutesFor({ seams, inches, presses: seams }, 1, rates);
          return stage(`${block.name}: ${name}`, {
            seams,
            sewing: m.sewing,
            pressing: m.pressing,
            laying: m.laying,
          });
        }),
  );
  return [cutting, ...sewing];
}

const kinds = (answer: Answer): number => answer.blocks.filter((b) => b.count > 0).length;

/** The most blocks of every kind that fit the time; stages are stopped for once, however many. */
export function blocksIn(
  brief: Brief,
  answer: Answer,
  minutes: number,
  room: { readonly students: number; readonly irons: number },
): number {
  const most = Math.max(0, ...answer.blocks.map((b) => b.count));
  const steps = sewingSteps(brief, answer);
  for (let blocks = most; blocks > 0; blocks--) {
    const total = stagesOf(brief, answer, { ...room, blocks }, steps).reduce(
      (t, s) => t + s.inClass,
      0,
    );
    if (total <= minutes + 1e-9) return blocks;
  }
  return 0;
}
