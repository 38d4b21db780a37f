import { type Brief, seamOf } from "../../brief/index.ts";
import { lengthToInch } from "../../measure/index.ts";
import { type TopRow, type TopRows, topRows } from "../../quilt/index.ts";
import { assemble } from "../../sewing/assembly.ts";
import { minutesFor } from "../../sewing/minutes.ts";
import { EVEN_ROWS, ODD_ROWS, ROW_JOIN } from "../../sewing/rowCrossings.ts";
import type { RowPressing } from "../../sewing/rowPressing.ts";
import type { Answer } from "../types/answer.ts";
import { inWords } from "../words/word.ts";
import { holdsOf } from "./row-items.ts";

/** Rows of the top that are alike: what lies in them and how their seams are pressed. */
export interface RowStep {
  /** "Rows 1 and 3", "Strips of sashing 1 to 4", "Two corners". */
  readonly name: string;
  /** Indices of these rows in `top.rows`. */
  readonly rows: readonly number[];
  /** "B1, 3 star, B1": left to right. */
  readonly holds: string;
  /** "press to the left"; empty where there is nothing to press. */
  readonly press: string;
  /** In all of these rows. */
  readonly seams: number;
}

export interface TopSteps {
  readonly top: TopRows;
  readonly steps: readonly RowStep[];
  /** How the rows are joined, and what meets there: a sentence each. */
  readonly lines: readonly string[];
  readonly seams: number;
  readonly minutes: number;
}

/**
 * The top row by row, from the upper edge down, on point from the upper left corner. Nothing for a
 * single block, or without a quilt. `sewnIn` says where a seam was sewn: by the letter of its unit,
 * unless steps have numbers.
 */
export function topSteps(
  brief: Brief,
  answer: Answer,
  sewnIn: SewnIn = (id) => letterOf(id, answer),
): TopSteps | undefined {
  const { quilt, rows: pressing } = answer;
  if (!quilt || !pressing) return undefined;
  const outlines = new Map(answer.blocks.map((b) => [b.id, b.outline]));
  const top = topRows(brief, quilt, (id) => outlines.get(id));
  const sewn = assemble(top, Math.max(quilt.width, quilt.height) * 1e-7);
  const seam = seamOf(brief);
  const inches = lengthToInch(sewn.length + 2 * seam * sewn.seams, brief.unit);
  const all = alike(top.rows, (row) => ({
    holds: holdsOf(row, brief, answer),
    press: pressOf(top, row, pressing),
  })).map(
    ({ rows, holds, press }): RowStep => ({
      name: nameOf(top, rows),
      rows,
      holds,
      press: sewn.rows[rows[0]].seams === 0 ? "" : press,
      seams: rows.reduce((n, i) => n + sewn.rows[i].seams, 0),
    }),
  );
  // Corners go on when the rows are joined.
  const isCorner = (s: RowStep): boolean => top.rows[s.rows[0]].kind === "corner";
  const steps = [...all.filter((s) => !isCorner(s)), ...all.filter(isCorner)];
  const { seams } = sewn;
  const work = { seams, inches, presses: seams };
  return {
    top,
    steps,
    lines: [
      ...joinLines(top, pressing, sewn.joins.seams),
      ...secondLine(pressing, sewnIn),
      ...meetingLines(pressing, sewnIn),
    ],
    seams,
    minutes: minutesFor(work, steps.length + 1).total,
  };
}

/** Rows that hold the same and are pressed the same way stand together, in the order of the first. */
function alike<T extends { holds: string; press: string }>(
  rows: readonly TopRow[],
  look: (row: TopRow) => T,
): (T & { rows: number[] })[] {
  const found = new Map<string, T & { rows: number[] }>();
  rows.forEach((row, i) => {
    const seen = look(row);
    const key = `${row.kind} ${seen.holds} ${seen.press}`;
    const known = found.get(key);
    if (known) known.rows.push(i);
    else found.set(key, { ...seen, rows: [i] });
  });
  return [...found.values()];
}

const nthOfKind = (top: TopRows, i: number): number =>
  top.rows.slice(0, i + 1).filter((r) => r.kind === top.rows[i].kind).length;

function pressOf(top: TopRows, row: TopRow, p: RowPressing): string {
  if (row.kind === "corner") return "";
  if (row.items.some((i) => i.what === "sash")) {
    const way = p.sashes[row.kind === "blocks" ? "blocks" : "cornerstones"];
    return way === "sash" ? "press to the sashes" : "press away from the sashes";
  }
  const nth = nthOfKind(top, top.rows.indexOf(row));
  return `press to the ${nth % 2 === 1 ? p.odd : p.even}`;
}

function nameOf(top: TopRows, rows: readonly number[]): string {
  const { kind } = top.rows[rows[0]];
  if (kind === "corner")
    return rows.length === 1 ? "A corner" : `${capital(inWords(rows.length))} corners`;
  const numbers = rows.map((i) => nthOfKind(top, i));
  const what = kind === "blocks" ? "Row" : "Sash row";
  return `${what}${numbers.length === 1 ? "" : "s"} ${ranged(numbers)}`;
}

/** "1 to 4, 6 and 8". */
function ranged(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const n of numbers) {
    const last = runs.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else runs.push([n, n]);
  }
  const said = runs.flatMap(([a, b]) =>
    a === b ? [`${a}`] : b === a + 1 ? [`${a}`, `${b}`] : [`${a} to ${b}`],
  );
  return said.length === 1 ? said[0] : `${said.slice(0, -1).join(", ")} and ${said.at(-1)}`;
}

function joinLines(top: TopRows, p: RowPressing, joins: number): string[] {
  const corners = top.rows.filter((r) => r.kind === "corner").length;
  const sashed = top.rows.some((r) => r.kind === "sashes");
  const rows = joins - corners;
  const diagonal = top.along.y !== 0;
  const lines = diagonal
    ? ["Row 1 is the one at the upper left; the rows run up to the right."]
    : [];
  if (rows > 0)
    lines.push(
      sashed
        ? `Join rows and sashes in turn, ${seamsOf(rows)}, and press to the sashes.`
        : `Join the rows, ${seamsOf(rows)}, and press all to one side.`,
    );
  if (!sashed && rows > 0 && p.odd !== p.even)
    lines.push("Rows that follow one another are pressed opposite ways, so their seams lock.");
  if (corners > 0) lines.push(`Sew the ${inWords(corners)} corners on last, pressed outward.`);
  return lines;
}

const seamsOf = (n: number): string => `${n} seam${n === 1 ? "" : "s"}`;

/** Units that every second block has pressed the other way. */
function secondLine(p: RowPressing, sewnIn: SewnIn): string[] {
  if (p.second.length === 0) return [];
  const letters = new Set(p.second.flatMap((id) => sewnIn(id) ?? []));
  const which = letters.size === 0 ? "" : `: ${[...letters].join(", ")}`;
  return [
    `Press every second block the other way${which}, like the dark squares of a checkerboard.`,
  ];
}

/** Where a seam is sewn, in words: "U4", "step 4". Nothing where no unit has it. */
type SewnIn = (seamId: string) => string | undefined;

/** The seam itself; blocks of the other pressing and arms of a fanned seam count as it. */
export const plainSeam = (seamId: string): string =>
  seamId.replace(/\*$/, "").replace(/@(from|to)$/, "");

/** The unit whose seam it is. */
function letterOf(seamId: string, answer: Answer): string | undefined {
  const id = plainSeam(seamId);
  return answer.units.find((u) => u.id === id || u.seamIds.includes(id))?.letter;
}

function meetingLines(p: RowPressing, sewnIn: SewnIn): string[] {
  if (p.crossings === 0) return [];
  if (p.misses.length === 0)
    return [
      "Wherever seams meet at a join, of blocks or of rows, they lie opposite ways and nest.",
    ];
  const seamOf = (id: string): string => {
    if (id === ODD_ROWS || id === EVEN_ROWS) return "a seam between blocks";
    const at = sewnIn(id);
    return at ? `the seam of ${at}` : "a seam between blocks and sashes";
  };
  const where = p.misses.map(
    ({ joinedBy, seams }) =>
      `${joinedBy === ROW_JOIN ? "where rows join" : "between blocks"}, ${seams.map(seamOf).join(" and ")}`,
  );
  return [
    `${p.nesting} of ${p.crossings} crossings nest. The others cannot, whichever way is pressed: ${[...new Set(where)].join("; ")}. Press one of the two open there.`,
  ];
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
