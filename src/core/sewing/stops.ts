import type { Length } from "../measure/index.ts";
import { widthAt } from "./measures.ts";
import { type Follow, rawOutline, type Sewn } from "./shift.ts";
import { noSpare, type SpareOf } from "./spare.ts";
import { type SeamNode, seamNodes } from "./tree.ts";
import type { Measure, SewnUnit } from "./types.ts";
import type { SewableBlock } from "./units.ts";

/** What a maker measured at a stop: one named width of one unit, in the document's unit. */
export interface StopReading {
  readonly unitId: string;
  readonly name: string;
  readonly measured: Length;
}

export interface StopContext {
  readonly block: SewableBlock;
  readonly units: readonly SewnUnit[];
  readonly seam: Length;
  /** What a ruler can be off by: within it a size is right. */
  readonly reading: Length;
  readonly spareOf?: SpareOf;
  readonly follow?: Follow;
}

/**
 * sew-on: right, or what is wrong is trimmed off anyway. take-in: sew the unit's seams deeper.
 * let-out: pick them out and sew them narrower. recut: no seam that still holds can mend it.
 */
export interface StopVerdict {
  readonly verdict: "sew-on" | "take-in" | "let-out" | "recut";
  readonly planned: Length;
  /** Measured less what it should measure before trimming. */
  readonly off: Length;
  /** How many seams of the unit to sew again, and by how much each (positive: deeper). */
  readonly seams: number;
  readonly perSeam: Length;
  /** What is left to trim over the width, once it is sewn on. */
  readonly toTrim: Length;
}

/** A seam may be let out until three quarters of its allowance are left (common practice, no source). */
const LEAST_ALLOWANCE = 3 / 4;

function nodeOf(c: StopContext, unitId: string): SeamNode {
  const node = seamNodes(c.block.tree).find((s) => s.id === unitId);
  if (!node) throw new RangeError(`no unit ${JSON.stringify(unitId)} in block ${c.block.id}`);
  return node;
}

function measureOf(c: StopContext, r: Pick<StopReading, "unitId" | "name">): Measure {
  const unit = c.units.find((u) => u.id === r.unitId);
  const found = unit?.measures.find((m) => m.name === r.name);
  if (!found)
    throw new RangeError(
      `unit ${r.unitId}: one of ${unit?.measures.map((m) => m.name).join(", ") ?? "no widths"} expected, got ${r.name}`,
    );
  return found;
}

/** The raw width of a unit whose every seam is wider by e. */
export function widthWhen(c: StopContext, unitId: string, m: Measure, e: Length): Length {
  const sewn: Sewn = {
    seam: c.seam,
    wider: () => e,
    follow: c.follow ?? "outer",
    spareOf: c.spareOf ?? noSpare,
    near: 1e-7 * Math.max(1, c.block.width),
  };
  return widthAt(rawOutline(nodeOf(c, unitId), sewn), m);
}

/** How much a width loses for every inch (or mm) that all seams of the unit are too wide. */
const lossOf = (c: StopContext, unitId: string, m: Measure, sign: 1 | -1): number =>
  -sign * (widthWhen(c, unitId, m, sign) - widthWhen(c, unitId, m, 0));

/** What to do with a unit that measures so. */
export function judgeStop(c: StopContext, r: StopReading): StopVerdict {
  const m = measureOf(c, r);
  const whole = widthWhen(c, r.unitId, m, 0);
  const off = r.measured - whole;
  const seams = seamNodes(nodeOf(c, r.unitId)).length;
  const result = (verdict: StopVerdict["verdict"], perSeam: Length): StopVerdict => ({
    verdict,
    planned: m.unfinished,
    off,
    seams: perSeam === 0 ? 0 : seams,
    perSeam,
    toTrim: verdict === "sew-on" ? Math.max(0, r.measured - m.unfinished) : 0,
  });
  const tooBig = off > c.reading;
  const tooSmall = r.measured < m.unfinished - c.reading;
  if (!tooBig && !tooSmall) return result("sew-on", 0);
  if (tooBig && whole > m.unfinished + c.reading) return result("sew-on", 0);
  const loss = lossOf(c, r.unitId, m, tooBig ? -1 : 1);
  if (loss <= 0) return result("recut", 0);
  const wanted = tooBig ? off : r.measured - m.unfinished;
  const perSeam = wanted / loss;
  if (tooBig) return result("take-in", perSeam);
  return -perSeam <= c.seam * (1 - LEAST_ALLOWANCE)
    ? result("let-out", perSeam)
    : result("recut", perSeam);
}

export interface LaterStop {
  readonly unitId: string;
  readonly name: string;
  readonly planned: Length;
  /** With the seams as they have shown themselves to be. */
  readonly expected: Length;
}

export interface Replanned {
  /** How much wider than told the seams are (turn of the fabric counted), from all readings. */
  readonly seamsWider: Length;
  /** `seamsWider` is right within this, if each reading is off by no more than `reading`. */
  readonly within: Length;
  readonly stops: readonly LaterStop[];
  /** Finished size of the block, planned and to be expected, both ways. */
  readonly block: { readonly planned: Length; readonly expected: Length };
}

/**
 * The rest of the plan after what was measured: one width for all seams that explains the readings
 * best (least squares), and every stop with it. A block with spare keeps its size while that lasts.
 */
export function replan(c: StopContext, readings: readonly StopReading[]): Replanned {
  let offTimesLoss = 0;
  let lossSquared = 0;
  for (const r of readings) {
    const m = measureOf(c, r);
    const off = r.measured - widthWhen(c, r.unitId, m, 0);
    const loss = lossOf(c, r.unitId, m, off < 0 ? 1 : -1);
    offTimesLoss += off * loss;
    lossSquared += loss * loss;
  }
  const e = lossSquared > 0 ? -offTimesLoss / lossSquared : 0;
  const last = Math.max(0, ...readings.map((r) => c.units.findIndex((u) => u.id === r.unitId) + 1));
  const stops = c.units.slice(last).flatMap((u) =>
    u.measures.map(
      (m): LaterStop => ({
        unitId: u.id,
        name: m.name,
        planned: widthWhen(c, u.id, m, 0),
        expected: widthWhen(c, u.id, m, e),
      }),
    ),
  );
  const whole = c.units.at(-1);
  const across = whole?.measures.find((m) => m.kind === "across");
  const planned = across?.finished ?? c.block.width;
  const rawWhen = (x: Length): Length =>
    whole && across ? widthWhen(c, whole.id, across, x) : planned + 2 * c.seam;
  const raw = rawWhen(e);
  const hasSpare = rawWhen(0) > planned + 2 * c.seam + c.reading;
  const expected = raw - 2 * c.seam;
  return {
    seamsWider: e,
    within: lossSquared > 0 ? c.reading / Math.sqrt(lossSquared) : Number.POSITIVE_INFINITY,
    stops,
    block: { planned, expected: hasSpare ? Math.min(planned, expected) : expected },
  };
}

export interface HalfVerdict {
  readonly straight: boolean;
  /** Along the outer edge of the whole circle; negative: too little. */
  readonly tooMuch: Length;
}

/**
 * The straight edge on the long raw edge of a half. `gap` is the light in the middle when its ends
 * touch; negative: the light at each end when it touches in the middle and is held even. `tooMuch` is
 * what the whole circle will then have too much along its outer edge, if the other half is alike.
 */
export function judgeHalf(gap: Length, reading: Length): HalfVerdict {
  // Two arms that make 180 degrees + x leave arm * x / 2; the circle opens by 2 x over the same arm.
  return { straight: Math.abs(gap) <= reading, tooMuch: 4 * gap };
}
