import {
  inchToLength,
  type Length,
  printWithUnit,
  stepOf,
  type Unit,
} from "../../measure/index.ts";
import { leftWhenOff } from "../sewing/spare-left.ts";
import type { Question } from "../types/answer.ts";
import type { Facts } from "./facts.ts";

/** Whole kinds of block that are sewn: halves come out of them. */
const wholeBlocks = (f: Facts) =>
  f.blocks.filter((b) => !b.id.includes("~") && b.tree.kind === "seam");

/** A careful maker's ruler: every cut off by this, in inches. */
const OFF = 1 / 32;

/** Both rest on the error laws, docs/geometry/error-laws.md. */
export function makeSizeQuestion(f: Facts): Question | undefined {
  const blocks = wholeBlocks(f);
  if (blocks.length === 0 || f.recipes.length === 0 || f.blocked) return undefined;
  const off = inchToLength(OFF, f.brief.unit);
  const left = blocks
    .map((block) => ({ block, left: leftWhenOff(f.recipes, block, f.seam, off) }))
    .reduce((a, b) => (b.left < a.left ? b : a));
  const which = blocks.length > 1 ? `${left.block.name} block` : "block";
  const text = aboutText(Math.abs(left.left), f.brief.unit);
  return {
    id: "make-size",
    heading: "Will it make size?",
    trade: "what sewing leaves",
    line: sayLeft(left.left, off, which, f.brief.unit),
    doubt: false,
    margin: {
      number: {
        value: left.left,
        unit: f.brief.unit,
        text: `${left.left < 0 ? "-" : ""}${text}`,
        status: "exact",
        from: [left.block.id],
      },
      caption: left.left < 0 ? "at a side, by cutting alone" : "left at a side",
    },
    from: [left.block.id],
  };
}

/** What is left at each side of a block when every cut is `off` too small; negative: it comes short. */
export function sayLeft(left: Length, off: Length, which: string, unit: Unit): string {
  const fine = stepOf(unit === "in" ? "1/64" : "0.1", unit);
  const each = `with every cut ${printWithUnit(off, fine)} small`;
  const text = aboutText(Math.abs(left), unit);
  return left >= 0
    ? `There is room: ${each} and every seam true, ${text} is still left to trim at each side of a ${which}.`
    : `Nothing to spare: ${each} and every seam true, a ${which} comes ${text} short at each side.`;
}

/** To a 64th: finer is no help at a cutting table. */
function aboutText(x: number, unit: "in" | "mm"): string {
  const fine = stepOf(unit === "in" ? "1/64" : "0.1", unit);
  return printWithUnit(Math.round(x / fine.size.valueOf()) * fine.size.valueOf(), fine);
}

export function whyQuestion(f: Facts): Question | undefined {
  const wedges = wholeBlocks(f).filter((b) => b.radial);
  if (wedges.length === 0 || f.blocked) return undefined;
  return {
    id: "why",
    heading: "Why is mine off?",
    trade: "what went wrong",
    line: "Measure a sewn circle of wedges, and the likeliest causes are named with what to do.",
    doubt: false,
    margin: { caption: "with a ruler and a straight edge" },
    from: wedges.map((b) => b.id),
  };
}
