import type { Demand, FabricLayout, Strip } from "../layout/types.ts";
import type { Length } from "../measure/index.ts";
import { counted, listed, pieceOf, plural, recipeOf, type SheetJob, say } from "./job.ts";

/** One line of the cutting list: so many strips so wide, cut into so many pieces. */
export interface CutRow {
  readonly fabricId: string;
  /** Missing on a line that cuts more from the strips of the line before. */
  readonly strips?: number;
  readonly height: Length;
  readonly demandId: string;
  /** Copies of the shape this line gives, over all its strips and layers. */
  readonly copies: number;
  readonly into: string;
  readonly letters: readonly string[];
  readonly pieceName: string;
  /** Pieces wanted in all; on the last line of its pieces only. */
  readonly pieces?: number;
}

/**
 * The cutting list in cutting order: strips of one height that are cut alike stand on one line, with
 * one line more for each further shape cut from them.
 */
export function cutRows(job: SheetJob, layout: FabricLayout): CutRow[] {
  const groups = alike(layout.strips);
  const last = new Map<string, CutRow>();
  const rows = groups.flatMap((group) => rowsOf(job, layout, group));
  for (const row of rows) last.set(row.demandId, row);
  return rows.map((row) => {
    const demand = job.answer.demands.find((d) => d.id === row.demandId);
    const isLast = last.get(row.demandId) === row;
    return isLast && demand ? { ...row, pieces: wanted(job, demand) } : row;
  });
}

/** All pieces of a demand that the quilt needs. */
export const wanted = (job: SheetJob, demand: Demand): number =>
  demand.pieceIds.reduce((sum, id) => sum + (pieceOf(job, id)?.count ?? 0), 0) ||
  demand.count * demand.piecesEach;

/** Strips of one height that serve the same demands, whatever their numbers. */
function alike(strips: readonly Strip[]): Strip[][] {
  const groups = new Map<string, Strip[]>();
  for (const strip of strips) {
    const ids = strip.runs.map((r) => `${r.demandId}${r.segment ? "+" : ""}`);
    const key = `${strip.height.toFixed(6)} ${[...new Set(ids)].join(" ")}`;
    groups.set(key, [...(groups.get(key) ?? []), strip]);
  }
  return [...groups.values()];
}

function rowsOf(job: SheetJob, layout: FabricLayout, strips: readonly Strip[]): CutRow[] {
  const ids = [...new Set(strips.flatMap((s) => s.runs.map((r) => r.demandId)))];
  const number = strips.reduce((sum, s) => sum + s.times, 0);
  return ids.map((id, i): CutRow => {
    const demand = job.answer.demands.find((d) => d.id === id);
    const perStrip = strips.map((s) => ({
      times: s.times,
      copies:
        s.layers * s.runs.filter((r) => r.demandId === id).reduce((sum, r) => sum + r.copies, 0),
    }));
    const copies = perStrip.reduce((sum, s) => sum + s.times * s.copies, 0);
    const segments = strips.some((s) => s.runs.some((r) => r.demandId === id && r.segment));
    const letters = (demand?.pieceIds ?? []).flatMap((p) => pieceOf(job, p)?.letter ?? []);
    const name = pieceOf(job, demand?.pieceIds[0] ?? "")?.name ?? "";
    return {
      fabricId: layout.fabricId,
      ...(i === 0 ? { strips: number } : {}),
      height: strips[0].height,
      demandId: id,
      copies,
      into: `${i > 0 ? "and from the same " : ""}${intoWords(job, demand, perStrip, copies, segments)}`,
      letters,
      pieceName: (demand?.pieceIds.length ?? 0) > 1 ? plural(handless(name)) : name,
    };
  });
}

/** "left background" and "right background" together are backgrounds. */
const handless = (name: string): string => name.replace(/^(left|right) /, "");

function intoWords(
  job: SheetJob,
  demand: Demand | undefined,
  perStrip: readonly { readonly times: number; readonly copies: number }[],
  copies: number,
  segments: boolean,
): string {
  if (!demand) return counted(copies, "piece");
  const recipe = recipeOf(job, demand.pieceIds[0] ?? "");
  const { first, height } = demand.shape;
  if (segments) return `joined to ${counted(demand.count, "length")} of ${say(job, first)}`;
  const square = Math.abs(first - height) < 1e-9;
  const size = square ? say(job, height) : `${say(job, height)} × ${say(job, first)}`;
  const cells = counted(copies, square ? "square" : "rectangle");
  switch (recipe?.kind) {
    case "square-once":
      return `${cells} ${size}; cut each once, corner to corner`;
    case "square-twice":
      return `${cells} ${size}; cut each twice, corner to corner`;
    case "half-rectangle":
      return `${cells} ${size}; cut each once, corner to corner`;
    case "kite":
      return `${cells} ${size}; slice each to a kite`;
    case "half-square-sliced":
      return `${cells} ${size}; cut each once, then slice both halves`;
    case "rectangle":
      return `${cells} ${size}`;
    case "corner-off":
      return `${cells} ${size}; cut the corner off each`;
    case "wedge":
      return `wedges, turned end for end: ${perStripWords(perStrip)}`;
    case "trapezoid":
    case "diamond":
    case "parallel":
      return `pieces on the slant: ${perStripWords(perStrip)}`;
    default:
      return `${cells} ${size}; cut each by its template`;
  }
}

/** "17 a strip", "17, 17 and 14", "17 a strip, 11 from the last". */
export function perStripWords(
  perStrip: readonly { readonly times: number; readonly copies: number }[],
): string {
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
