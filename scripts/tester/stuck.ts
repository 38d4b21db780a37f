import type { CutLine, Reading } from "./reading.ts";

/** A place where a stranger who has only the printed words would be stuck, or would go wrong. */
export interface Stuck {
  readonly where: string;
  readonly why: string;
}

export const stuck = (where: string, why: string | false | undefined): Stuck[] =>
  why ? [{ where, why }] : [];

/** Blocks edge to edge in straight rows, which is all a stranger can multiply out. */
export const plainRows = (r: Reading): boolean =>
  /straight rows/.test(r.sentence) && !/in hexagons/.test(r.sentence);
export const plainTop = (r: Reading): boolean =>
  plainRows(r) && /no sashing/.test(r.sentence) && /no border/.test(r.sentence);

/** What a line says after where it is cut from. */
export const bare = (c: CutLine): string =>
  c.into
    .replace(/^from the (leftover|piece in hand)[^:]*: /, "")
    .replace(/^and from the same: /, "");
