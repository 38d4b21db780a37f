import type { PaperName } from "./grid.ts";

/** Questions that the pattern answers at length when they stand open; shut, each has its short form. */
export const OPENED = ["cover", "enough", "measure"] as const;
export type Opened = (typeof OPENED)[number];

export interface SheetOptions {
  readonly paper?: PaperName;
  readonly leftHanded?: boolean;
  /** What the maker has opened prints at length behind the pattern's own sides. */
  readonly opened?: readonly Opened[];
  /** As printed: "1", "1.2". */
  readonly version: string;
  /** As printed: "25 November 2026". The core knows no clock. */
  readonly date: string;
}

const MONTHS =
  "January February March April May June July August September October November December".split(
    " ",
  );

/** `2026-11-25` as it stands on a sheet, "November 25, 2026"; undefined where it is no day. */
export function printedDate(day: string): string | undefined {
  const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day);
  const date = m ? new Date(`${day}T12:00:00Z`) : undefined;
  if (!m || !date || Number.isNaN(date.getTime()) || date.getUTCDate() !== Number(m[3]))
    return undefined;
  return `${MONTHS[Number(m[2]) - 1]} ${Number(m[3])}, ${Number(m[1])}`;
}
