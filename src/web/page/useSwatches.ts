import { useMemo } from "react";
import { fabricLetters } from "../../core/answer/cut/fabrics.ts";
import { looksOf } from "../../core/answer/look/looks.ts";
import type { Brief } from "../../core/brief/index.ts";
import type { PatchLook } from "../../core/fabric/index.ts";
import { type Swatches, swatches } from "../../core/picture/swatch.ts";
import type { Answered } from "./answers.ts";

const known = new WeakMap<Brief, Swatches>();

/** Color, letter and hatch of every fabric of a brief; worked out once. */
export function swatchesOf(brief: Brief): Swatches {
  const there = known.get(brief);
  if (there) return there;
  const made = swatches(brief, fabricLetters(brief));
  known.set(brief, made);
  return made;
}

export const useSwatches = (brief: Brief): Swatches => useMemo(() => swatchesOf(brief), [brief]);

const looked = new WeakMap<object, Readonly<Record<string, PatchLook[]>>>();

/** What really shows in every patch, by kind of block; worked out once for an answer. */
export function looksFor({ brief, answer }: Answered): Readonly<Record<string, PatchLook[]>> {
  const there = looked.get(answer);
  if (there) return there;
  const made = looksOf(brief, answer);
  looked.set(answer, made);
  return made;
}
