import type { QuiltInstance } from "./cutting-instances.ts";

export interface QuiltRow {
  readonly id: string;
  readonly types: number;
  readonly pieces: number;
  readonly handbook: number;
  readonly first: number;
  readonly best: number;
  readonly lowerBound: number;
  readonly proven: boolean;
  readonly yards: number;
  readonly boundYards: number;
  readonly firstMs: number;
  readonly ms: number;
  readonly replayed: boolean;
  readonly areaBound?: number;
  readonly packer?: number;
}

export interface StockRow {
  readonly id: string;
  readonly rotate: boolean;
  readonly cost: number;
  readonly lowerBound: number;
  readonly bestKnown: number;
  readonly ms: number;
  readonly replayed: boolean;
}

const percent = (part: number, digits = 2): string => `${(100 * part).toFixed(digits)} %`;
const mean = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0) / xs.length;

/** Against the larger of the published bound and the run's own. */
const gapOf = (row: QuiltRow, known = 0): number => row.best / Math.max(known, row.lowerBound) - 1;

export function printQuilts(rows: readonly QuiltRow[]): string {
  const lines = rows.map((r) =>
    [
      r.id,
      `handbook ${r.handbook}`,
      `first ${r.first}`,
      `best ${r.best}`,
      `bound ${r.lowerBound}${r.proven ? " (proved)" : ""}`,
      `${r.yards} yd of ${r.boundYards}`,
      r.replayed ? "recounted" : "FAILED THE RECOUNT",
    ].join("  "),
  );
  return [...lines, `mean saving ${percent(mean(rows.map((r) => 1 - r.best / r.handbook)))}`].join(
    "\n",
  );
}

export function quiltTable(
  rows: readonly QuiltRow[],
  instances: readonly QuiltInstance[],
  stacks: boolean,
): string {
  const known = (i: number) => instances[i][stacks ? "lowerBoundStacked" : "lowerBound"];
  const body = rows.map((r, i) => {
    const gap = gapOf(r, known(i));
    return `| ${[
      r.id,
      r.types,
      r.pieces,
      r.handbook,
      r.first,
      r.best,
      r.lowerBound,
      r.proven ? "proved" : percent(gap, 3),
      percent(1 - r.best / r.handbook, 1),
      r.yards,
      r.boundYards,
      r.areaBound ?? "",
      r.packer ?? "",
    ].join(" | ")} |`;
  });
  const gaps = rows.map((r, i) => gapOf(r, known(i)));
  const head =
    "id | types | pieces | handbook | first | best | bound | gap | saved | yards | bound yards | area bound | packer";
  return [
    `| ${head} |`,
    `|${" --- |".repeat(head.split("|").length)}`,
    ...body,
    "",
    `Mean gap ${percent(mean(gaps), 3)}, largest ${percent(Math.max(...gaps), 3)}; mean saving over the handbook ${percent(mean(rows.map((r) => 1 - r.best / r.handbook)))}.`,
  ].join("\n");
}

export const printStocks = (rows: readonly StockRow[]): string =>
  rows
    .map((r) =>
      [
        r.id,
        r.rotate ? "turning" : "not turning",
        `cost ${r.cost}`,
        `bound ${Math.round(r.lowerBound)}`,
        `best known ${Math.round(r.bestKnown)} (${percent(r.cost / r.bestKnown - 1, 3)})`,
        r.replayed ? "recounted" : "FAILED THE RECOUNT",
      ].join("  "),
    )
    .join("\n");

export const stockTable = (rows: readonly StockRow[]): string =>
  [
    "| id | pieces may turn | cost | own bound | best known | over it |",
    `|${" --- |".repeat(6)}`,
    ...rows.map(
      (r) =>
        `| ${r.id} | ${r.rotate ? "yes" : "no"} | ${r.cost} | ${Math.round(r.lowerBound)} | ${Math.round(r.bestKnown)} | ${percent(r.cost / r.bestKnown - 1, 3)} |`,
    ),
  ].join("\n");
