import type { Brief, Placed } from "../../brief/index.ts";

type Plan = Brief["quilt"]["plan"];

/** How one block of the plan lies: turned anticlockwise by quarters, or mirrored. */
export interface Lying {
  readonly quarters: number;
  readonly mirrored: boolean;
}

const UPRIGHT: Lying = { quarters: 0, mirrored: false };
const turned = (quarters: number): Lying => ({ quarters, mirrored: false });

export const idOf = (cell: Placed): string => (typeof cell === "string" ? cell : cell.block);
const lyingOf = (cell: Placed): Lying => (typeof cell === "string" ? UPRIGHT : cell);

/** The kinds of block in the plan, in the order they first appear. */
export const kindsInPlan = (b: Brief): string[] => [...new Set(b.quilt.plan.flat().map(idOf))];

/** How kinds follow each other, by name: rows of ids that repeat. */
export const MIXES: Readonly<Record<string, (ids: readonly string[]) => string[][]>> = {
  "by turns": (ids) => ids.map((_, r) => ids.map((_, c) => ids[(r + c) % ids.length])),
  "row by row": (ids) => ids.map((id) => [id]),
  "column by column": (ids) => [[...ids]],
};

/** How blocks are turned, by name: two rows of two that repeat. */
export const TURNINGS: Readonly<Record<string, readonly (readonly Lying[])[]>> = {
  "none turned": [[UPRIGHT]],
  "every second one turned": [
    [UPRIGHT, turned(1)],
    [turned(1), UPRIGHT],
  ],
  "turned round in fours": [
    [UPRIGHT, turned(3)],
    [turned(1), turned(2)],
  ],
  "every second one mirrored": [
    [UPRIGHT, { quarters: 0, mirrored: true }],
    [{ quarters: 0, mirrored: true }, UPRIGHT],
  ],
};

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));
const leastCommon = (a: number, b: number): number => (a * b) / greatestCommon(a, b);

const at = <T>(rows: readonly (readonly T[])[], r: number, c: number): T => {
  const row = rows[r % rows.length];
  return row[c % row.length];
};

const across = (rows: readonly (readonly unknown[])[]): number =>
  rows.map((r) => r.length).reduce(leastCommon, 1);

const cellOf = (block: string, { quarters, mirrored }: Lying): Placed =>
  quarters === 0 && !mirrored ? block : { block, quarters, mirrored };

/** The plan of these kinds, so turned; as small as it repeats. */
export function planOf(
  kinds: readonly (readonly string[])[],
  lying: readonly (readonly Lying[])[],
): Plan {
  const rows = leastCommon(kinds.length, lying.length);
  const columns = leastCommon(across(kinds), across(lying));
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) => cellOf(at(kinds, r, c), at(lying, r, c))),
  );
}

/** The plan's kinds alone, and its turnings alone. */
export const kindsOfPlan = (b: Brief): string[][] => b.quilt.plan.map((row) => row.map(idOf));
export const lyingOfPlan = (b: Brief): Lying[][] => b.quilt.plan.map((row) => row.map(lyingOf));

function alike<T>(
  a: readonly (readonly T[])[],
  b: readonly (readonly T[])[],
  same: (x: T, y: T) => boolean,
): boolean {
  const rows = leastCommon(a.length, b.length);
  const columns = leastCommon(across(a), across(b));
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) if (!same(at(a, r, c), at(b, r, c))) return false;
  return true;
}

/** The name of how the kinds follow each other; nothing when it has none. */
export function mixNow(b: Brief): string | undefined {
  const ids = kindsInPlan(b);
  if (ids.length === 1) return "all alike";
  const kinds = kindsOfPlan(b);
  return Object.keys(MIXES).find((m) => alike(kinds, MIXES[m](ids), (x, y) => x === y));
}

/** The name of how the blocks are turned; nothing when it has none. */
export function turningNow(b: Brief): string | undefined {
  const lying = lyingOfPlan(b);
  const same = (x: Lying, y: Lying): boolean =>
    x.quarters === y.quarters && x.mirrored === y.mirrored;
  return Object.keys(TURNINGS).find((t) => alike(lying, TURNINGS[t], same));
}

const TIMES = ["", "turned", "turned twice", "turned three times"];

/** "star, wheel turned; wheel mirrored, star": the plan as it is typed, rows parted by semicolons. */
export const planText = (b: Brief): string =>
  b.quilt.plan
    .map((row) =>
      row
        .map((cell) => {
          const { quarters, mirrored } = lyingOf(cell);
          return [idOf(cell), TIMES[quarters], mirrored ? "mirrored" : ""]
            .filter((t) => t !== "")
            .join(" ");
        })
        .join(", "),
    )
    .join("; ");

const MOST = 40;
const CELL = /^(.+?)(?:\s+turned(?:\s+(once|twice|three times))?)?(\s+mirrored)?$/i;
const QUARTERS: Readonly<Record<string, number>> = { once: 1, twice: 2, "three times": 3 };

/** A typed plan read; a sentence when it cannot be. Blocks by their short names or their names. */
export function readPlan(b: Brief, text: string): Plan | { readonly problem: string } {
  const ids = new Map(
    b.blocks.flatMap((k): [string, string][] => [
      [k.id, k.id],
      [(k.name ?? k.id).toLowerCase(), k.id],
    ]),
  );
  const rows = text
    .split(/[;\n]/)
    .map((row) => row.split(",").map((cell) => cell.trim().replace(/\s+/g, " ")))
    .filter((row) => row.some((cell) => cell !== ""));
  if (rows.length === 0 || rows.length > MOST || rows.some((r) => r.length > MOST))
    return { problem: `Type up to ${MOST} rows, parted by semicolons, such as ${planText(b)}.` };
  const plan: Placed[][] = [];
  for (const row of rows) {
    const cells: Placed[] = [];
    for (const cell of row) {
      const m = CELL.exec(cell);
      const id = m && ids.get(m[1].toLowerCase());
      if (!m || !id)
        return {
          problem: `There is no block called ${JSON.stringify(m?.[1] ?? cell)}; there are ${[...new Set(ids.values())].join(", ")}.`,
        };
      const quarters = / turned/i.test(` ${cell.slice(m[1].length)}`)
        ? (QUARTERS[m[2]?.toLowerCase() ?? "once"] ?? 1)
        : 0;
      cells.push(cellOf(id, { quarters, mirrored: m[3] !== undefined }));
    }
    plan.push(cells);
  }
  return plan;
}
