import { type Brief, seamOf } from "../../brief/index.ts";
import { type Finding, say } from "../../findings/index.ts";
import { type Length, printLength, printWithUnit } from "../../measure/index.ts";
import type { Answer } from "../types/answer.ts";
import { stepOfBrief } from "../words/word.ts";
import { howCut, nameOfFabric, spareText } from "./phrases.ts";
import { placeName } from "./place-names.ts";

/** A text that may not be proved yet, with the ids it speaks of. */
export interface Cell {
  readonly text: string;
  readonly doubt: boolean;
}

const cell = (text: string, doubt = false): Cell => ({ text, doubt });

export interface SizeRow {
  readonly id: string;
  readonly what: string;
  readonly finished: string;
  readonly unfinished: string;
}

/** Blocks and top, finished and with their outer allowances still on. */
export function sizeRows(b: Brief, a: Answer): SizeRow[] {
  const step = stepOfBrief(b);
  const seam = seamOf(b);
  const size = (w: Length, h: Length): string =>
    `${printLength(w, step)} × ${printWithUnit(h, step)}`;
  const row = (id: string, what: string, w: Length, h: Length): SizeRow => ({
    id,
    what,
    finished: size(w, h),
    unfinished: size(w + 2 * seam, h + 2 * seam),
  });
  const blocks = a.blocks.map((k) => row(k.id, `${k.count} ${k.name}`, k.width, k.height));
  return a.quilt ? [...blocks, row("quilt", "top", a.quilt.width, a.quilt.height)] : blocks;
}

export interface CutRow {
  readonly id: string;
  readonly letter: string;
  readonly name: string;
  readonly fabric: string;
  readonly fabricId: string;
  readonly count: number;
  readonly cut: string;
  readonly cover: Cell;
}

const RANK = { blocked: 0, thin: 1, proved: 2 } as const;

/** Every piece, how it is cut and what its proof says; those in doubt first, then by letter. */
export function cutRows(b: Brief, a: Answer): CutRow[] {
  const step = stepOfBrief(b);
  const seam = seamOf(b);
  const rows = a.pieces.map((p) => {
    const recipe = a.recipes.find((r) => r.pieceId === p.id);
    const doubt = recipe !== undefined && recipe.verdict !== "proved";
    const row: CutRow = {
      id: p.id,
      letter: p.letter,
      name: p.name,
      fabric: nameOfFabric(b, p.fabricId),
      fabricId: p.fabricId,
      count: p.count,
      cut: recipe ? howCut(recipe, step) : "no way to cut it yet",
      cover: recipe ? cell(spareText(recipe, seam, step), doubt) : cell("not proved", true),
    };
    return { row, rank: recipe ? RANK[recipe.verdict] : 0 };
  });
  return rows
    .sort((x, y) => x.rank - y.rank || (x.row.letter < y.row.letter ? -1 : 1))
    .map(({ row }) => row);
}

export interface SupplyRow {
  readonly id: string;
  readonly name: string;
  readonly strips: string;
  readonly least: string;
  readonly withMargins: string;
  readonly buy: string;
  /** At the next narrower width, where one is given. */
  readonly narrower: string;
  readonly proven: boolean;
}

export interface Supplies {
  readonly rows: readonly SupplyRow[];
  /** "40 in" and "38 in", when all fabrics share them. */
  readonly stated: string;
  readonly narrower: string;
}

/** "3 sets": a strip set is sewn, not bought. */
function setsText(a: Answer, fabricId: string): string {
  const sets = a.cutting.find((c) => c.fabricId === fabricId)?.sets;
  return sets === undefined ? "" : `${sets} ${sets === 1 ? "set" : "sets"}`;
}

/** What to buy of each fabric and what it is made of, at the stated width and the next narrower. */
export function supplies(b: Brief, a: Answer): Supplies {
  const step = stepOfBrief(b);
  const print = (x: Length | undefined): string => (x === undefined ? "" : printWithUnit(x, step));
  const rows = a.layouts.map((l): SupplyRow => {
    const [stated, ...others] = a.yardages.filter((y) => y.fabricId === l.fabricId);
    const narrow = others.find((y) => y.width < (stated?.width ?? 0));
    return {
      id: l.fabricId,
      name: nameOfFabric(b, l.fabricId),
      strips: print(l.length),
      least: print(l.lowerBound),
      withMargins: print(stated?.total),
      buy: stated?.buyText ?? setsText(a, l.fabricId),
      narrower: narrow?.buyText ?? "",
      proven: l.proven,
    };
  });
  const one = (texts: readonly (string | undefined)[]): string =>
    new Set(texts).size === 1 ? (texts[0] ?? "") : "";
  return {
    rows,
    stated: one(b.fabrics.map((f) => f.usable)),
    narrower: one(b.fabrics.map((f) => f.narrower)),
  };
}

export interface Told {
  readonly key: string;
  readonly code: Finding["code"];
  readonly severity: "blocks" | "draft" | "advice";
  readonly place: string;
  readonly sentence: string;
}

/** Findings as sentences, worst first, each said once. */
export function toldFindings(b: Brief, a: Answer): Told[] {
  const step = stepOfBrief(b);
  return a.findings.map((f, i) => ({
    key: `${f.code}/${f.place}/${i}`,
    code: f.code,
    severity: f.severity,
    place: f.place,
    sentence: capital(say({ ...f, place: placeName(a, f.place) }, { step })),
  }));
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
