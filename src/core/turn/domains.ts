import { FREE_SIDE, leastSide, rulerFor } from "../answer/index.ts";
import {
  knownLength,
  type Length,
  liesOnStep,
  roundDown,
  roundUp,
  type Step,
  stepOf,
} from "../measure/index.ts";
import { type Design, finerStep } from "./design.ts";
import type { FreeWord, Limits, Values } from "./types.ts";

type NamedSetting = NonNullable<Values["setting"]>;
const SETTINGS: readonly NamedSetting[] = ["plain", "kites", "floating", "framed", "deep"];

/** Marks of a step from one length to another, both in. */
function marks(from: Length, to: Length, step: Step): Length[] {
  const [low, high] = [roundUp(from, step), roundDown(to, step)];
  const size = step.size.valueOf();
  const n = Math.round((high - low) / size);
  const first = BigInt(Math.round(low / size));
  return Array.from({ length: Math.max(0, n + 1) }, (_, i) =>
    step.size.mul(first + BigInt(i)).valueOf(),
  );
}

const other = (xs: readonly Length[], now: Length | undefined): Length[] =>
  xs.filter((x) => now === undefined || Math.abs(x - now) > 1e-9);

/** What every word that changes in a sentence may say, within the limits and never what it says now. */
export function* shapesOf(
  d: Design,
  words: readonly FreeWord[],
  limits: Limits,
): Generator<Values> {
  const coarse = stepOf(d.brief.step, d.brief.unit);
  const finer = words.includes("step");
  const step = finer ? finerStep(d.brief) : coarse;
  const { now } = d;
  const has = (w: FreeWord): boolean => words.includes(w);
  const span = (x: Length): [Length, Length] => [x * limits.smaller, x * limits.larger];
  const strips = has("strip") ? stripsOf(d, step, span) : [now.strip];
  const settings: (NamedSetting | undefined)[] = has("setting")
    ? SETTINGS.filter((s) => d.kinds.some((k) => k.setting !== s))
    : [undefined];
  const sashes = has("sashing") ? sashesOf(d, step) : [now.sash];
  const borders = has("borders") ? bordersOf(d, step) : [now.border];
  for (const setting of settings)
    for (const strip of strips) {
      const base: Values = {
        ...now,
        ...(strip !== undefined && { strip }),
        ...(setting && { setting }),
        ...(finer && { finer }),
      };
      for (const shape of has("float") ? floated(d, base, step, span) : asBefore(d, base))
        for (const sash of sashes)
          for (const border of borders) {
            const v: Values = { ...shape, sash, border };
            if (!finer || lengthsOf(v, words).some((x) => !liesOnStep(x, coarse))) yield v;
          }
    }
}

/** Rows and columns of a sentence with these words. */
export const gridOf = (d: Design, words: readonly FreeWord[], { across }: Limits) => {
  const upTo = (now: number): number[] =>
    Array.from({ length: across }, (_, i) => i + 1).filter((n) => n !== now);
  return {
    rows: words.includes("rows") ? upTo(d.now.rows) : [d.now.rows],
    columns: words.includes("columns") ? upTo(d.now.columns) : [d.now.columns],
  };
};

const lengthsOf = (v: Values, words: readonly FreeWord[]): Length[] =>
  [
    words.includes("strip") ? v.strip : undefined,
    words.includes("float") ? v.side : undefined,
    words.includes("sashing") ? v.sash : undefined,
    words.includes("borders") ? v.border : undefined,
  ].filter((x) => x !== undefined);

type Span = (x: Length) => [Length, Length];

/** From half to half again of what it is, within the ruler's own lines. */
function stripsOf(d: Design, step: Step, span: Span): Length[] {
  const { now, brief, kinds } = d;
  if (now.strip === undefined) return [];
  const ruler = rulerFor(brief, kinds[0].n);
  const [low, high] = span(now.strip);
  const from = Math.max(low, ruler.shortest ?? 0);
  return other(marks(from, Math.min(high, ruler.longest ?? high), step), now.strip);
}

/** Sides with room for the wedges. Those a setting takes by itself are no float of their own. */
function floated(d: Design, base: Values, step: Step, span: Span): Values[] {
  const proposed = d.write({ ...base, side: undefined, rows: 1, columns: 1 });
  const kinds = proposed.blocks.filter(
    (k) => k.kind === "wedges" && d.kinds.some((x) => x.id === k.id),
  );
  const wedges = kinds.flatMap((k) => (k.kind === "wedges" ? [k] : []));
  if (!wedges.every((k) => FREE_SIDE.includes(k.setting) || k.setting === "sectors")) return [];
  const least = Math.max(...wedges.map((k) => leastSide(proposed, k, k.setting)));
  const room = wedges.every((k) => k.setting === "deep" || k.setting === "sectors")
    ? 0
    : step.size.valueOf();
  const [low, high] = span(d.block.width);
  const taken =
    base.setting && wedges[0].side ? knownLength(wedges[0].side, d.brief.unit) : d.now.side;
  return other(marks(Math.max(low, least + room), high, step), taken).map((side) => ({
    ...base,
    side,
  }));
}

/** The side as it is, or as another setting proposes; nothing where the wedges do not fit it. */
function asBefore(d: Design, base: Values): Values[] {
  const v: Values = base.setting ? { ...base, side: undefined } : base;
  const b = d.write({ ...v, rows: 1, columns: 1 });
  const fits = b.blocks.every((k) => {
    if (k.kind !== "wedges" || !d.kinds.some((x) => x.id === k.id) || k.side === undefined)
      return true;
    return leastSide(b, k, k.setting) <= knownLength(k.side, b.unit) + 1e-9;
  });
  return fits ? [v] : [];
}

/** Wider than the allowances under it, at most half a block; or none. */
function sashesOf(d: Design, step: Step): Length[] {
  const { sash = 0 } = d.now;
  const most = Math.max(sash, Math.min(d.block.width, d.block.height) / 2);
  const all = marks(2 * d.m.seam + step.size.valueOf(), most, step);
  return other([0, ...all], sash);
}

/** The outermost border, at most as wide as a block; or left out. */
function bordersOf(d: Design, step: Step): Length[] {
  const { border = 0 } = d.now;
  const most = Math.max(border, Math.min(d.block.width, d.block.height));
  return other([0, ...marks(2 * d.m.seam + step.size.valueOf(), most, step)], border);
}
