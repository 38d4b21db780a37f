import { type Line, linesOf, type Print } from "./read.ts";

export const HEADINGS = [
  "How big is it?",
  "Is there enough?",
  "What do I cut?",
  "Does it cover?",
  "In what order?",
  "And then?",
] as const;
export type Heading = (typeof HEADINGS)[number];

export function headingY(lines: readonly Line[], h: Heading): number {
  return lines.find((l) => l.text.startsWith(h))?.y ?? Number.POSITIVE_INFINITY;
}

export const orderOf = (l: { readonly page: number; readonly y: number }): number =>
  l.page * 1e5 + l.y;

export function bounds(lines: readonly Line[], h: Heading): readonly [number, number] | undefined {
  const start = lines.find((l) => l.text.startsWith(h) && l.size > 12);
  if (!start) return undefined;
  const later = lines
    .filter((l) => HEADINGS.some((o) => o !== h && l.text.startsWith(o)) && l.size > 12)
    .map(orderOf)
    .filter((y) => y > orderOf(start) + 1);
  return [orderOf(start), Math.min(...later, Number.POSITIVE_INFINITY)];
}

/** A heading beside a picture begins at its own column: what lies left of it is not its text. */
export function section(lines: readonly Line[], h: Heading): Line[] {
  const range = bounds(lines, h);
  const start = lines.find((l) => l.text.startsWith(h) && l.size > 12);
  if (!range || !start) return [];
  const inColumn = (l: Line): Line[] =>
    l.page !== start.page || l.x >= start.x - 2
      ? [l]
      : linesOf(l.parts.filter((p) => p.x >= start.x - 2));
  return lines
    .filter((l) => orderOf(l) > range[0] + 1 && orderOf(l) < range[1] - 1)
    .flatMap(inColumn);
}

export function sectionPrint(print: readonly Print[], lines: readonly Line[], h: Heading): Print[] {
  const range = bounds(lines, h);
  return range ? print.filter((p) => orderOf(p) > range[0] + 1 && orderOf(p) < range[1] - 1) : [];
}

export const joined = (lines: readonly Line[]): string => lines.map((l) => l.text).join(" ");

export const near95 = (size: number): boolean => Math.abs(size - 9.5) < 0.06;
