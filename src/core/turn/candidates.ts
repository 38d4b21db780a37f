import { blocksIn } from "../answer/index.ts";
import { topSize } from "../quilt/index.ts";
import type { Design } from "./design.ts";
import { gridOf, shapesOf } from "./domains.ts";
import { rulerMiss, sizeOver, standsBy, stepsMissed } from "./holds.ts";
import { changeOf, type Ranked, roundedArea } from "./order.ts";
import type { FreeWord, Limits, OverUnder, Pin, Values } from "./types.ts";

export interface Candidates {
  /** Those that what is known without cutting lets through: sizes, blocks, ruler. */
  readonly left: Ranked[];
  /** How many there were. */
  readonly all: number;
}

/**
 * Every sentence in which exactly these words change, by its sizes alone: the same numbers as laying
 * the quilt out. What a size, a block, a count or the ruler forbids is gone.
 */
export function candidatesOf(
  d: Design,
  words: readonly FreeWord[],
  pins: readonly Pin[],
  limits: Limits,
): Candidates {
  const { rows, columns } = gridOf(d, words, limits);
  const left: Ranked[] = [];
  let all = 0;
  const { width, height } = sidesOf(pins);
  const apart = d.brief.quilt.arrangement !== "hexagon-rows";
  for (const shape of shapesOf(d, words, limits)) {
    all += rows.length * columns.length;
    if (!onRuler(d, pins, shape)) continue;
    const sized = sizerOf(d, shape);
    if (!sized) continue;
    // Straight rows and on point, each side follows its own number alone.
    const c1 = apart
      ? columns.filter((c) => sized(width, rows[0] ?? 1, c).over.every(standsBy))
      : columns;
    const r1 = apart
      ? rows.filter((r) => sized(height, r, columns[0] ?? 1).over.every(standsBy))
      : rows;
    for (const r of r1)
      for (const c of c1) {
        const { over, area } = sized(pins, r, c);
        if (!over.every(standsBy)) continue;
        const values = { ...shape, rows: r, columns: c };
        const steps = stepsMissed(over, d.m.step);
        left.push({ words, values, steps, area, change: changeOf(d, values) });
      }
  }
  return { left, all };
}

/** The pins of each side of the top by itself. */
function sidesOf(pins: readonly Pin[]): { width: Pin[]; height: Pin[] } {
  const sizes = pins.filter((p) => p.kind === "size");
  return {
    width: sizes.map(({ length: _, ...p }) => p),
    height: sizes.map(({ width: _, ...p }) => p),
  };
}

const onRuler = (d: Design, pins: readonly Pin[], v: Values): boolean =>
  pins.every(
    (p) =>
      p.kind !== "ruler" || rulerMiss(p, v.strip === d.now.strip ? d.brief : d.write(v)) <= 1e-6,
  );

/** What a shape's sizes are over its pins, by rows and columns; undefined when it has no block. */
export function sizerOf(d: Design, shape: Values) {
  const block = d.blockFor(shape);
  if (!block) return undefined;
  const { top: before, now } = d;
  const borders = before.borders - (now.border ?? 0) + (shape.border ?? 0);
  const top = { ...before, block, sash: shape.sash ?? before.sash, borders };
  return (pins: readonly Pin[], rows: number, columns: number) => {
    const size = topSize(top, rows, columns);
    const over: OverUnder[] = [];
    for (const pin of pins) {
      if (pin.kind === "size") over.push(...sizeOver(pin, size));
      if (pin.kind === "block") over.push({ pin, what: "block", by: block.width - pin.side });
      if (pin.kind === "blocks")
        over.push({ pin, what: "blocks", by: blocksIn(d.brief.quilt, rows, columns) - pin.count });
    }
    return { over, area: roundedArea(size.width, size.height) };
  };
}
