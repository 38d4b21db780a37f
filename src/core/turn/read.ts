import { fabricLetters } from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import { inchToLength, type Length, lengthIn, parseLength } from "../measure/index.ts";
import { FREE_WORDS, type FreeWord, type Pin, type Relation } from "./types.ts";

export interface PinProblem {
  readonly problem: string;
}

/** Sizes that are pinned with "=" may be this far off, unless told: a quilter trims no more. Common
 * practice, no source. */
const WITHIN_INCHES = 2;
/** The same for one block, whose size every row repeats. */
const BLOCK_WITHIN_INCHES = 0.25;

const FORMS =
  'Say it as "size = 60 x 72", "size <= 60 x any", "block = 9", "blocks = 12", "yardage B <= 2 1/2 yd", "ruler <= 8" or "width B = 40".';

/**
 * A pin as people say it. Fabrics by letter, short name or name; lengths in the brief's unit unless
 * they say theirs. "size = 60 x 72 within 1/2" says how near is near enough.
 */
export function readPin(text: string, brief: Brief): Pin | PinProblem {
  const m =
    /^\s*(size|blocks?|yardage|ruler|width)\b\s*([^<>=≤≥]*?)\s*(<=|>=|=|≤|≥)\s*(.+?)\s*$/i.exec(
      text,
    );
  if (!m) return { problem: `"${text}" is not a pin. ${FORMS}` };
  const [, kind, what, sign, rest] = m;
  const relation = ({ "≤": "<=", "≥": ">=" }[sign] ?? sign) as Relation;
  const [amount, near] = rest.split(/\s+within\s+/i);
  const length = (s: string): Length | undefined => {
    const r = parseLength(s, brief.unit);
    return r.ok && r.length.value.n > 0n ? lengthIn(r.length, brief.unit) : undefined;
  };
  const zero = near !== undefined && /^0+$/.test(near.trim());
  const within = zero ? 0 : near === undefined ? undefined : length(near);
  if (near !== undefined && within === undefined) return { problem: `"${near}" is not a length.` };
  const notLength = (s: string): PinProblem => ({
    problem: `"${s}" is not a length. ${FORMS}`,
  });
  switch (kind.toLowerCase()) {
    case "size": {
      const sides = amount.split(/\s*(?:x|×|\*|\bby\b)\s*/i);
      if (sides.length !== 2) return { problem: `"${amount}" is not a size. ${FORMS}` };
      const [w, l] = sides.map((s) => (/^(any|\?|)$/i.test(s.trim()) ? "any" : length(s)));
      if (w === undefined || l === undefined) return notLength(amount);
      if (w === "any" && l === "any") return { problem: `Pin one side of the size at least.` };
      return {
        kind: "size",
        relation,
        ...(w !== "any" && { width: w }),
        ...(l !== "any" && { length: l }),
        within: within ?? inchToLength(WITHIN_INCHES, brief.unit),
      };
    }
    case "block": {
      const side = length(amount);
      if (side === undefined) return notLength(amount);
      const near = within ?? inchToLength(BLOCK_WITHIN_INCHES, brief.unit);
      return { kind: "block", relation, side, within: near };
    }
    case "blocks": {
      const count = /^\d{1,5}$/.test(amount) ? Number(amount) : 0;
      if (count < 1) return { problem: `"${amount}" is not a number of blocks, such as 12.` };
      return { kind: "blocks", relation, count };
    }
    case "ruler": {
      const line = length(amount);
      if (line === undefined) return notLength(amount);
      if (relation === ">=") return { kind: "ruler", shortest: line };
      return { kind: "ruler", longest: line };
    }
    case "yardage": {
      if (relation === ">=") return { problem: `A fabric is pinned to what there is: use <=.` };
      const most = length(amount);
      if (most === undefined) return notLength(amount);
      const fabricId = fabricNamed(what, brief);
      if (typeof fabricId !== "string") return fabricId;
      const kindOf = brief.fabrics.find((f) => f.id === fabricId)?.kind;
      if (kindOf === "strip-set")
        return {
          problem: "A strip set is sewn, not bought: pin one of the fabrics of its strips.",
        };
      return { kind: "yardage", fabricId, most };
    }
    default: {
      const usable = length(amount);
      if (usable === undefined) return notLength(amount);
      if (what === "") return { kind: "width", usable };
      const fabricId = fabricNamed(what, brief);
      return typeof fabricId === "string" ? { kind: "width", fabricId, usable } : fabricId;
    }
  }
}

/** A fabric by its letter, its short name or its name, whatever the case. */
function fabricNamed(text: string, brief: Brief): string | PinProblem {
  const letters = fabricLetters(brief);
  const said = text.trim().toLowerCase();
  const found = brief.fabrics.find((f) =>
    [letters[f.id], f.id, f.name].some((n) => n.toLowerCase() === said),
  );
  if (found) return found.id;
  const known = brief.fabrics.map((f) => `${letters[f.id]} (${f.name})`).join(", ");
  return { problem: `No fabric is called "${text.trim()}". There are: ${known}.` };
}

/** "strip, rows and columns": freed words by name. "grid" is rows and columns; "all" is every word. */
export function readFree(text: string): FreeWord[] | PinProblem {
  const names = text
    .toLowerCase()
    .split(/[\s,;+]+|\band\b/)
    .filter((s) => s !== "");
  const out: FreeWord[] = [];
  for (const name of names) {
    const words: readonly FreeWord[] | undefined =
      name === "all"
        ? FREE_WORDS
        : name === "grid"
          ? ["rows", "columns"]
          : FREE_WORDS.filter((w) => w === name || w === `${name}s` || `${w}s` === name);
    if (words.length === 0)
      return { problem: `"${name}" is not a word that can be freed: ${FREE_WORDS.join(", ")}.` };
    out.push(...words.filter((w) => !out.includes(w)));
  }
  if (out.length === 0) return { problem: `Free a word at least: ${FREE_WORDS.join(", ")}.` };
  return out;
}
