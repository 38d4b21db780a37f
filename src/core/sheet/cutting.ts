import type { Demand, FabricLayout, Strip } from "../layout/types.ts";
import { type Length, printLength, roundUp } from "../measure/index.ts";
import {
  counted,
  fabricLetter,
  listed,
  pieceOf,
  plural,
  recipeOf,
  type SheetJob,
  say,
} from "./job.ts";

/** One line of the cutting list: so many strips so wide, cut into so many pieces. */
export interface CutRow {
  readonly fabricId: string;
  /** Missing on a line that cuts more from the strips of the line before. */
  readonly strips?: number;
  readonly height: Length;
  readonly demandId: string;
  /** Cut from what longer cuts leave, or from a piece in hand: no fabric is bought for it. */
  readonly from?: string;
  readonly into: string;
  readonly letters: readonly string[];
  readonly pieceName: string;
  /** Pieces wanted in all; on the last line of its pieces only. */
  readonly pieces?: number;
}

/** Strips of one piece of fabric, and how that piece is called when it is not the bolt. */
interface Source {
  readonly strips: readonly Strip[];
  readonly from?: string;
}

/**
 * The cutting list in cutting order: strips of one height that are cut alike stand on one line, with
 * one line more for each further shape cut from them; last what is cut from leftovers.
 */
export function cutRows(job: SheetJob, layout: FabricLayout): CutRow[] {
  const last = new Map<string, CutRow>();
  const rows = sourcesOf(job, layout).flatMap((source) =>
    alike(job, source.strips).flatMap((group) => rowsOf(job, layout, group, source.from)),
  );
  const demandOf = (row: CutRow) => job.answer.demands.find((d) => d.id === row.demandId);
  // One piece may be cut in two ways, for which there are two demands.
  const keyOf = (row: CutRow) => demandOf(row)?.pieceIds.join() || row.demandId;
  for (const row of rows) last.set(keyOf(row), row);
  return rows.map((row) => {
    const demand = demandOf(row);
    const isLast = last.get(keyOf(row)) === row;
    return isLast && demand && (row.letters.length > 0 || demand.pieceIds.length > 0)
      ? { ...row, pieces: wanted(job, demand) }
      : row;
  });
}

function sourcesOf(job: SheetJob, layout: FabricLayout): Source[] {
  const cutting = job.answer.cutting.find((c) => c.fabricId === layout.fabricId);
  const sheets = (cutting?.pieces?.sheets ?? []).map((s): Source => {
    const size = `${say(job, s.width)} × ${say(job, s.length)}`;
    const from = /^offcut-\d+$/.test(s.sheetId)
      ? `from the leftover ${size}`
      : `from the piece in hand ${size}`;
    return { strips: s.strips.map((strip) => ({ ...strip, times: strip.times * s.times })), from };
  });
  return [{ strips: layout.strips.map(withoutOffcuts) }, ...sheets];
}

/** What is cut beside long cuts is drawn where it lies, but listed with the leftover it comes from. */
const withoutOffcuts = (strip: Strip): Strip => ({
  ...strip,
  runs: strip.runs.filter((r) => !r.leftover),
});

/** All pieces of a demand that the quilt needs. */
export const wanted = (job: SheetJob, demand: Demand): number =>
  demand.pieceIds.reduce((sum, id) => sum + (pieceOf(job, id)?.count ?? 0), 0) ||
  demand.count * demand.piecesEach;

/** Strips of one printed height that serve the same demands, whatever their numbers. */
function alike(job: SheetJob, strips: readonly Strip[]): Strip[][] {
  const groups = new Map<string, Strip[]>();
  for (const strip of strips) {
    const ids = strip.runs.map((r) => `${r.demandId}${r.segment ? "+" : ""}`);
    const key = `${say(job, strip.height)} ${[...new Set(ids)].join(" ")}`;
    groups.set(key, [...(groups.get(key) ?? []), strip]);
  }
  return [...groups.values()];
}

function rowsOf(
  job: SheetJob,
  layout: FabricLayout,
  strips: readonly Strip[],
  from: string | undefined,
): CutRow[] {
  const ids = [...new Set(strips.flatMap((s) => s.runs.map((r) => r.demandId)))];
  const number = strips.reduce((sum, s) => sum + s.times, 0);
  return ids.map((id, i): CutRow => {
    const demand = job.answer.demands.find((d) => d.id === id);
    const letters = (demand?.pieceIds ?? []).flatMap((p) => pieceOf(job, p)?.letter ?? []);
    const source = i === 0 && from ? `${from}: ` : "";
    const and = i > 0 ? "and from the same: " : "";
    return {
      fabricId: layout.fabricId,
      ...(i === 0 ? { strips: number } : {}),
      ...(from ? { from } : {}),
      height: strips[0].height,
      demandId: id,
      into: `${source}${and}${intoWords(job, demand, served(strips, id))}`,
      letters,
      pieceName: nameFor(job, demand),
    };
  });
}

function nameFor(job: SheetJob, demand: Demand | undefined): string {
  const first = demand?.pieceIds[0];
  if (!demand || first === undefined) return setOf(job, demand);
  const name = pieceOf(job, first)?.name ?? first;
  return demand.pieceIds.length > 1 ? plural(name.replace(/^(left|right) /, "")) : name;
}

/** Strips without pieces of their own are sewn into a strip set: "for set D". */
function setOf(job: SheetJob, demand: Demand | undefined): string {
  const set = demand && job.brief.fabrics.find((f) => demand.id.startsWith(`${f.id}-strip-`));
  return set ? `set ${fabricLetter(job, set.id)}` : "";
}

/** Strips or runs that give alike: how often, and copies from each. */
interface Times {
  readonly times: number;
  readonly copies: number;
}

/** What strips of one kind give of one shape. */
interface Served {
  /** For each kind of strip. */
  readonly perStrip: readonly Times[];
  /** For each kind of run: a strip of its own where runs lie along the length. */
  readonly perRun: readonly Times[];
  readonly copies: number;
  readonly height: Length;
  readonly turned: boolean;
  readonly segments: boolean;
}

function served(strips: readonly Strip[], id: string): Served {
  const own = (s: Strip) => s.runs.filter((r) => r.demandId === id);
  const perStrip = strips
    .filter((s) => own(s).length > 0)
    .map((s) => ({
      times: s.times,
      copies: s.layers * own(s).reduce((sum, r) => sum + r.copies, 0),
    }));
  const runs = strips.flatMap(own);
  return {
    perStrip,
    perRun: strips.flatMap((s) =>
      own(s).map((r) => ({ times: s.times * s.layers, copies: r.copies })),
    ),
    copies: perStrip.reduce((sum, s) => sum + s.times * s.copies, 0),
    height: strips[0].height,
    turned: runs.every((r) => r.turned),
    segments: runs.some((r) => r.segment),
  };
}

/** A length that is cut generously: what is over is trimmed, so it is rounded up to the step. */
export const sayUp = (job: SheetJob, x: Length): string =>
  printLength(roundUp(x, job.step), job.step);

function intoWords(job: SheetJob, demand: Demand | undefined, s: Served): string {
  if (!demand) return counted(s.copies, "piece");
  const { first, height, kind } = demand.shape;
  if (s.segments)
    return `to be joined to ${counted(demand.count, "length")} of ${sayUp(job, first)}`;
  if (demand.pieceIds.length === 0) return "left whole, to be sewn into the strip set";
  if (!pieceOf(job, demand.pieceIds[0]))
    return `${counted(s.copies, "rectangle")} ${sayUp(job, height)} × ${sayUp(job, first)}`;
  if (kind === "along")
    return `along the length: ${counted(s.copies, "rectangle")} ${say(job, height)} × ${say(job, first)}`;
  return kind === "nested" ? nestedWords(job, demand, s) : boxWords(job, demand, s);
}

/** Wedges and other slanted pieces, laid on in a row. */
function nestedWords(job: SheetJob, demand: Demand, s: Served): string {
  const { first, pitch, height } = demand.shape;
  const recipe = recipeOf(job, demand.pieceIds[0] ?? "");
  const what = recipe?.kind === "wedge" ? "wedges" : "pieces on the slant";
  const way = pitch < first - 1e-9 ? "turned end for end" : "all one way up";
  if (s.turned) {
    const runs = s.perRun.reduce((sum, r) => sum + r.times, 0);
    return `along the length, ${counted(runs, "strip")} ${say(job, height)}; ${what}, ${way}: ${perStripWords(s.perRun)}`;
  }
  const lower = height < s.height - 1e-6 ? `end, trimmed to ${say(job, height)}; ` : "";
  return `${lower}${what}, ${way}: ${perStripWords(s.perStrip)}`;
}

/** Squares and rectangles, and what each is cut into. */
function boxWords(job: SheetJob, demand: Demand, s: Served): string {
  const { first, height } = demand.shape;
  const square = say(job, first) === say(job, height);
  const size = square ? say(job, height) : `${say(job, height)} × ${say(job, first)}`;
  const cells = `${counted(s.copies, square ? "square" : "rectangle")} ${size}`;
  switch (recipeOf(job, demand.pieceIds[0] ?? "")?.kind) {
    case "square-once":
    case "half-rectangle":
      return `${cells}; cut each once, corner to corner`;
    case "square-twice":
      return `${cells}; cut each twice, corner to corner`;
    case "kite":
      return `${cells}; slice each to a kite`;
    case "half-square-sliced":
      return `${cells}; cut each once, then slice both halves`;
    case "rectangle":
      return cells;
    case "corner-off":
      return `${cells}; cut the corner off each`;
    default:
      return `${cells}; cut each by its template`;
  }
}

/** "17 a strip", "17, 17 and 14", "17 a strip, 14 from the last". */
export function perStripWords(perStrip: readonly Times[]): string {
  const each = perStrip.flatMap((s) => Array<number>(s.times).fill(s.copies));
  if (each.length === 1) return String(each[0]);
  if (each.every((n) => n === each[0])) return `${each[0]} a strip`;
  const rest = each.slice(0, -1);
  if (rest.length > 1 && rest.every((n) => n === rest[0]))
    return `${rest[0]} a strip, ${each[each.length - 1]} from the last`;
  return each.length <= 4 ? listed(each.map(String)) : counts(each);
}

/** "17 from 5 strips, 11 from 1". */
function counts(each: readonly number[]): string {
  const kinds = [...new Set(each)];
  return kinds.map((k) => `${k} from ${each.filter((n) => n === k).length}`).join(", ");
}
