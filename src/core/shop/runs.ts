import type { Brief } from "../brief/index.ts";
import { typedLength } from "./kits.ts";
import type { Left } from "./ripple/record.ts";
import { type Ticks, ticksDown, ticksText } from "./ticks.ts";
import type { Bolt, KitPlan, Shelf } from "./types.ts";
import { sayBolt, sayLeft, sayTicks } from "./words.ts";

/** One cut of a run that was begun, as it is read at the cutting table. */
export interface RunRow {
  readonly boltId: string;
  readonly bolt: string;
  readonly cut: number;
  readonly kit: number;
  readonly fabric: string;
  readonly length: string;
  readonly soFar: string;
  readonly left: string;
}

/** What a run takes of one bolt. */
export interface RunUse {
  readonly boltId: string;
  readonly name: string;
  readonly used: Ticks;
  readonly straighten: string;
  readonly usedText: string;
  readonly leftText: string;
}

/** A run of kits that was begun: its cuts as planned then, ticked one by one, whatever changes since. */
export interface Run {
  readonly id: string;
  readonly title: string;
  readonly unit: Brief["unit"];
  readonly kits: number;
  readonly at: string;
  readonly rows: readonly RunRow[];
  readonly used: readonly RunUse[];
  /** Places of the rows that are cut. */
  readonly ticked: readonly number[];
  /** When its fabric was taken off the shelf. */
  readonly finished?: string;
  /** The design it was planned from, and what its kits carry, for that design's record. */
  readonly of?: { readonly design: string; readonly kits: Left };
}

/** The plan as a run to tick. Its id and date are the caller's. */
export function beginRun(
  plan: KitPlan,
  brief: Pick<Brief, "step" | "unit">,
  id: string,
  at: string,
  of?: Run["of"],
): Run {
  const named = (fabricId: string): string => {
    const f = plan.fabrics.find((x) => x.fabricId === fabricId);
    return f ? `${f.letter} ${f.name}` : fabricId;
  };
  return {
    id,
    title: plan.title,
    unit: plan.unit,
    kits: plan.kits,
    at,
    rows: plan.runs.flatMap((r) =>
      r.cuts.map((c, i) => ({
        boltId: r.boltId,
        bolt: sayBolt(r),
        cut: i + 1,
        kit: c.kit,
        fabric: named(c.fabricId),
        length: sayTicks(c.length, brief),
        soFar: sayTicks(c.soFar, brief),
        left: sayLeft(c.left, brief),
      })),
    ),
    used: plan.runs.map((r) => ({
      boltId: r.boltId,
      name: r.name,
      used: r.used,
      straighten: sayTicks(r.straighten, brief),
      usedText: sayTicks(r.used, brief),
      leftText: sayLeft(r.left, brief),
    })),
    ticked: [],
    ...(of && { of }),
  };
}

/** The note for the design's record that the kits of a run are cut; the day is the caller's. */
export const kitsCut = (run: Run, date: string): Left | undefined =>
  run.of && { ...run.of.kits, date, count: run.kits };

/** "Basalt 163 in, 17 in left": what a run takes of each bolt. */
export const sayTaken = (run: Run): string[] =>
  run.used.map((u) => {
    const bolt = run.rows.find((r) => r.boltId === u.boltId)?.bolt ?? u.name;
    return `${bolt}: ${u.usedText} taken, ${u.leftText} left`;
  });

/** What is left of a bolt counts from an eighth of an inch, or 3 mm, on. */
const LEAST = { in: 200, mm: 3000 } as const;

/** The shelf with each bolt shorter by what the run took; a bolt that is used up is gone. */
export function finishRun(shelf: Shelf, run: Pick<Run, "used" | "unit">): Shelf {
  const bolts = shelf.bolts.flatMap((b): Bolt[] => {
    const use = run.used.find((u) => u.boltId === b.id);
    if (!use) return [b];
    const left = ticksDown(typedLength(b.length, shelf, run.unit), run.unit) - use.used;
    if (left < LEAST[run.unit]) return [];
    return [{ ...b, length: `${ticksText(left, run.unit)} ${run.unit}` }];
  });
  return { ...shelf, bolts };
}

/** The shelf once a plan is cut. */
export const afterRun = (shelf: Shelf, plan: KitPlan): Shelf =>
  finishRun(shelf, {
    unit: plan.unit,
    used: plan.runs.map((r) => ({
      boltId: r.boltId,
      name: r.name,
      used: r.used,
      straighten: "",
      usedText: "",
      leftText: "",
    })),
  });
