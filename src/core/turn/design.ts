import {
  blocksOf,
  changed,
  type Finished,
  FREE_SIDE,
  finishedBlock,
  type Measures,
  measuresOf,
  nextBorder,
  outerFabric,
  rulerFor,
  shapeNow,
  takesSashing,
  withSetting,
} from "../answer/index.ts";
import { type Brief, blockIn, type WedgeBlock } from "../brief/index.ts";
import { knownLength, type Step, stepOf } from "../measure/index.ts";
import type { TopShape } from "../quilt/index.ts";
import { halfAcross } from "../recipe/index.ts";
import { lengthText } from "./given.ts";
import type { FreeWord, Stuck, Values } from "./types.ts";

/** The design whose words move: what the words say now, and which of them can move at all. */
export interface Design {
  readonly brief: Brief;
  readonly m: Measures;
  readonly kinds: readonly WedgeBlock[];
  readonly block: Finished;
  readonly now: Values;
  /** The shape of the quilt as it is. */
  readonly top: TopShape;
  /** The brief that says these values. */
  readonly write: (v: Values) => Brief;
  /** One finished block, from the values that decide it; undefined where it cannot be. */
  readonly blockFor: (v: Values) => Finished | undefined;
}

/** Undefined when the design has no size itself: its findings say why. */
export function designOf(brief: Brief): Design | undefined {
  const m = measuresOf(brief);
  const block = finishedBlock(brief, blocksOf(brief, m));
  if (!block) return undefined;
  const kinds = kindsIn(brief);
  const [first] = kinds;
  const q = brief.quilt;
  const border = q.borders.at(-1);
  const length = (text: string | undefined): number =>
    text === undefined ? 0 : knownLength(text, brief.unit);
  const now: Values = {
    ...(first && { strip: length(first.strip), side: block.width }),
    rows: q.rows,
    columns: q.columns,
    sash: length(q.sashing?.width),
    border: length(border?.width),
  };
  const write = (v: Values): Brief => written(brief, now, v);
  const top = shapeNow(brief, block);
  return { brief, m, kinds, block, now, top, write, blockFor: blockMaker(brief, m, now, write) };
}

/** Wedge blocks of the plan. */
function kindsIn(b: Brief): WedgeBlock[] {
  const named = new Set(b.quilt.plan.flat().map(blockIn));
  return b.blocks.filter((k): k is WedgeBlock => named.has(k.id) && k.kind === "wedges");
}

const ofEight = (k: WedgeBlock): boolean => k.n === 8 && k.outline === "square";
const isSideFree = (k: WedgeBlock): boolean =>
  FREE_SIDE.includes(k.setting) || k.setting === "sectors";

/** Freed words that cannot move in this design, each with its reason. */
export function stuckWords(d: Design, free: readonly FreeWord[]): Stuck[] {
  const { brief, kinds } = d;
  const named = new Set(brief.quilt.plan.flat().map(blockIn));
  const alone = kinds.length === named.size;
  const why: Partial<Record<FreeWord, string | false>> = {
    strip: !alone
      ? "a block without wedges would not follow it"
      : kinds.some((k) => k.strip !== kinds[0].strip) && "the blocks are cut from different strips",
    setting:
      !(alone && kinds.every(ofEight)) &&
      "the settings with a name are for eight wedges in a square",
    float:
      !(alone && kinds.every(isSideFree)) &&
      !(free.includes("setting") && alone && kinds.every(ofEight)) &&
      "the strip decides the size of these blocks; free the setting with it",
    sashing:
      !takesSashing(brief.quilt) && "sashing goes with straight rows or with blocks on point",
    step:
      !free.some((w) => w === "strip" || w === "float" || w === "sashing" || w === "borders") &&
      "finer marks move nothing by themselves; free a length with it",
  };
  return free.flatMap((word) => {
    const reason = why[word];
    return reason ? [{ word, why: reason }] : [];
  });
}

/** The brief with other values; parts that stay the same keep the text the maker typed. */
function written(brief: Brief, now: Values, v: Values): Brief {
  const step = v.finer ? finerStep(brief) : stepOf(brief.step, brief.unit);
  let b = brief;
  const named = new Set(brief.quilt.plan.flat().map(blockIn));
  const each = (change: (k: WedgeBlock) => void): void => {
    b = changed(b, (d) => {
      for (const k of d.blocks) if (named.has(k.id) && k.kind === "wedges") change(k);
    });
  };
  const { strip, setting, side } = v;
  if (v.finer)
    b = changed(b, (d) => {
      d.step = lengthText(step.size.valueOf(), step);
    });
  if (strip !== undefined && strip !== now.strip)
    each((k) => {
      k.strip = lengthText(strip, step);
    });
  if (setting !== undefined)
    for (const k of kindsIn(b))
      if (k.setting !== setting) b = changed(b, withSetting(b, k, setting));
  if (side !== undefined && (side !== now.side || setting !== undefined))
    each((k) => {
      if (isSideFree(k)) k.side = lengthText(side, step);
    });
  return changed(b, (d) => {
    const { sash, border } = v;
    d.quilt.rows = v.rows;
    d.quilt.columns = v.columns;
    if (sash !== undefined && sash !== now.sash) {
      if (sash === 0) delete d.quilt.sashing;
      else
        d.quilt.sashing = {
          ...(d.quilt.sashing ?? { fabric: outerFabric(d, d.blocks[0]) }),
          width: lengthText(sash, step),
        };
    }
    if (border !== undefined && border !== now.border) {
      if (border === 0) d.quilt.borders.pop();
      else {
        if (now.border === 0) d.quilt.borders.push(nextBorder(d));
        d.quilt.borders[d.quilt.borders.length - 1].width = lengthText(border, step);
      }
    }
  });
}

/** Sentences with one key have one block. */
export const shapeKey = (v: Values): string => `${v.strip} ${v.setting} ${v.side} ${v.finer}`;

/** Marks half as far apart as the maker's. */
export function finerStep(brief: Brief): Step {
  const step = stepOf(brief.step, brief.unit);
  return { ...step, size: step.size.div(2n) };
}

/**
 * The finished block by values: as the strip makes it, or the side it is given. Other blocks than
 * squares of eight wedges are laid out in full.
 */
function blockMaker(brief: Brief, m: Measures, now: Values, write: (v: Values) => Brief) {
  const known = new Map<string, Finished | undefined>();
  let last: { v: Values; made: Finished | undefined } | undefined;
  const plain = kindsIn(brief).every(ofEight) && kindsIn(brief).length > 0;
  const named = new Set(brief.quilt.plan.flat().map(blockIn));
  const allWedges = kindsIn(brief).length === named.size;
  const squares = plain && allWedges;
  const allFree = kindsIn(brief).every(isSideFree);
  /** Given as a side of its own, it is the block. */
  const isGiven = ({ side, setting }: Values): boolean =>
    side !== undefined &&
    (setting !== undefined ? FREE_SIDE.includes(setting) : side !== now.side && allFree);
  const make = (v: Values): Finished | undefined => {
    if (squares && isGiven(v)) return { width: v.side ?? 0, height: v.side ?? 0 };
    const key = shapeKey(v);
    if (known.has(key)) return known.get(key);
    const b = write({ ...v, rows: 1, columns: 1 });
    const made = squares ? squareOf(b, m) : finishedBlock(b, blocksOf(b, m));
    known.set(key, made);
    return made;
  };
  return (v: Values): Finished | undefined => {
    // Sentences come shape by shape: most have the block of the one before.
    if (last && isSameShape(last.v, v)) return last.made;
    last = { v, made: make(v) };
    return last.made;
  };
}

const isSameShape = (a: Values, b: Values): boolean =>
  a.strip === b.strip && a.setting === b.setting && a.side === b.side && a.finer === b.finer;

function squareOf(b: Brief, m: Measures): Finished | undefined {
  const sides = kindsIn(b).map((k) => {
    if (isSideFree(k) && k.side !== undefined) return knownLength(k.side, b.unit);
    if (k.setting === "sectors" || FREE_SIDE.includes(k.setting)) return undefined;
    return 2 * halfAcross(rulerFor(b, k.n), knownLength(k.strip, b.unit), m.seam);
  });
  const [side] = sides;
  if (side !== undefined && sides.every((s) => s !== undefined && Math.abs(s - side) < 1e-9))
    return { width: side, height: side };
  return sides.includes(undefined) ? finishedBlock(b, blocksOf(b, m)) : undefined;
}
