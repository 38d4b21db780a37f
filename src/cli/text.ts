import {
  type Answer,
  borderSteps,
  circlesOf,
  finishRows,
  gapRows,
  overWords,
  planWords,
  ringRows,
  rulersApart,
  sayMirrored,
  sayReading,
  sayWay,
  seamRows,
  topSteps,
} from "../core/answer/index.ts";
import type { Brief } from "../core/brief/index.ts";
import { say } from "../core/findings/index.ts";
import {
  type Length,
  printLength,
  printWithUnit,
  type Step,
  stepOf,
} from "../core/measure/index.ts";
import { cuttingLines } from "./cutting-text.ts";
import { sewingLines, stopRows } from "./sewing-text.ts";

/** The answer as a page of plain text: sentence, questions, cutting list, supplies, findings. */
export function answerText(brief: Brief, answer: Answer): string {
  const step = stepOf(brief.step, brief.unit);
  return [
    brief.title,
    "",
    wrap(answer.sentence.map((p) => p.text).join("")),
    "",
    ...answer.questions.flatMap((q) => [
      q.heading,
      wrap(q.line, "  "),
      ...(q.because ? [wrap(q.because, "  ")] : []),
      "",
    ]),
    ...table("What does a wedge show, from the center out?", ringRows(brief, answer)),
    ...table("How do rings meet at the seams?", seamRows(brief, answer)),
    ...table("Will the eye part them?", gapRows(brief, answer)),
    ...table("What do I cut?", cutRows(answer, step)),
    ...mirroredLines(brief, answer),
    ...table("Supplies", supplyRows(brief, answer, step)),
    ...cuttingLines(brief, answer, step, wrap),
    ...sewingLines(brief, answer, wrap),
    ...table("What should it measure?", stopRows(brief, answer)),
    ...wedgeLines(brief, answer, step),
    ...topLines(brief, answer),
    ...borderLines(brief, answer),
    ...finishLines(brief, answer),
    ...table("In every size", sizeRows(brief, answer, step)),
    ...findingLines(answer, step),
  ].join("\n");
}

function mirroredLines(brief: Brief, answer: Answer): string[] {
  const lines = sayMirrored(brief, answer);
  if (lines.length === 0) return [];
  return ["Which pieces must be mirrored?", ...lines.map((line) => wrap(line, "  ")), ""];
}

function cutRows(answer: Answer, step: Step): string[][] {
  const rows = answer.pieces.map((p) => {
    const recipe = answer.recipes.find((r) => r.pieceId === p.id);
    return [
      p.letter,
      p.name,
      p.hand === "none" ? "" : p.hand,
      String(p.count),
      recipe
        ? recipe.cuts
            .map((c) => `${c.op} ${c.lengths.map((x) => printLength(x, step)).join(" x ")}`.trim())
            .join(", ")
        : "",
      recipe ? recipe.verdict : "",
      recipe?.spareBySide.length ? `${printWithUnit(recipe.w, step)} least allowance` : "",
    ];
  });
  return [["piece", "", "hand", "count", "cut", "cover", ""], ...rows];
}

function supplyRows(brief: Brief, answer: Answer, step: Step): string[][] {
  const name = (id: string): string => brief.fabrics.find((f) => f.id === id)?.name ?? id;
  const rows = answer.yardages.map((y) => [
    name(y.fabricId),
    `at ${printWithUnit(y.width, step)}`,
    `${inches(y.inPieces, step)} in pieces`,
    `+ ${inches(y.straighten, step)} to straighten`,
    y.wrongStrip > 0 ? `+ ${inches(y.wrongStrip, step)} room for one wrong strip` : "",
    y.buyText,
  ]);
  return [["fabric", "usable", "", "", "", "buy"], ...rows];
}

/** Binding, backing and batting, each with how it is cut. */
function finishLines(brief: Brief, answer: Answer): string[] {
  const rows = finishRows(brief, answer);
  if (rows.length === 0) return [];
  return ["Finishing", ...rows.map((r) => wrap(`${r.what}: ${r.size}; ${r.how}.`, "  ")), ""];
}

/** The top row by row: what lies in each, how it is pressed, how the rows are joined. */
function topLines(brief: Brief, answer: Answer): string[] {
  const made = topSteps(brief, answer);
  if (!made) return [];
  const rows = made.steps.map((s) => {
    const press = s.press === "" ? "" : `; ${s.press}`;
    return wrap(`${s.name}: ${s.holds}${press}.`, "  ");
  });
  return [
    `The top, row by row, ${made.seams} seam${made.seams === 1 ? "" : "s"}, about ${Math.round(made.minutes)} minutes`,
    ...rows,
    ...made.lines.map((line) => wrap(line, "  ")),
    "",
  ];
}

/** How each border goes on, with about how long it takes. */
function borderLines(brief: Brief, answer: Answer): string[] {
  const steps = borderSteps(brief, answer);
  if (steps.length === 0) return [];
  const lines = steps.flatMap((s) => [
    `  Border ${s.border}, ${s.seams} seams, about ${Math.round(s.minutes.total)} minutes`,
    ...s.lines.map((line) => wrap(line, "    ")),
  ]);
  return ["Borders, from inside out", ...lines, ""];
}

/** One design in every size: rows by columns, what changes, what is over or under, what to buy. */
function sizeRows(brief: Brief, answer: Answer, step: Step): string[][] {
  const size = (w: Length, h: Length): string => `${printLength(w, step)} x ${inches(h, step)}`;
  const named = new Map(brief.fabrics.map((f) => [f.id, f.name]));
  const rows = (answer.sizes ?? []).map((s) => {
    const buy = s.yardages.filter(
      (y, i) => s.yardages.findIndex((x) => x.fabricId === y.fabricId) === i,
    );
    return [
      s.name,
      size(s.wanted.width, s.wanted.length),
      planWords(s.plan, step),
      s.width === undefined || s.height === undefined ? "" : size(s.width, s.height),
      overWords(s.plan.over, step),
      buy.map((y) => `${named.get(y.fabricId) ?? y.fabricId} ${y.buyText}`).join(", "),
    ];
  });
  return [["size", "wanted", "rows by columns", "finished", "", "buy"], ...rows];
}

const inches = (x: Length, step: Step): string => printWithUnit(x, step);

function wedgeLines(brief: Brief, answer: Answer, step: Step): string[] {
  const circles = circlesOf(brief, answer);
  return answer.wedges.flatMap((guide, i) => [
    `The ${printWithUnit(guide.strip, step)} wedge by any ruler, or none`,
    ...guide.ways.flatMap((way) => {
      const { how, slip } = sayWay(way, step);
      return [wrap(`${how} ${slip}`, "  ")];
    }),
    "",
    "How to read your ruler",
    ...sayReading(guide.reading, step).map((line) => wrap(line, "  ")),
    "",
    "Two rulers, the same number",
    ...rulersApart(brief, circles[i]).map((line) => wrap(line, "  ")),
    "",
  ]);
}

function findingLines(answer: Answer, step: Step): string[] {
  if (answer.findings.length === 0) return [];
  return [
    "Findings",
    ...answer.findings.map((f) => wrap(`${f.severity}: ${say(f, { step })}`, "  ")),
    "",
  ];
}

/** A titled table; nothing when there are only headings. */
function table(title: string, rows: readonly string[][]): string[] {
  if (rows.length < 2) return [];
  return [title, ...columns(rows).map((line) => `  ${line}`), ""];
}

/** Rows as columns aligned with spaces; columns that are empty below their heading are dropped. */
export function columns(rows: readonly string[][]): string[] {
  const kept = rows[0].map((_, c) => c).filter((c) => rows.slice(1).some((r) => r[c] !== ""));
  const widths = kept.map((c) => Math.max(...rows.map((r) => r[c].length)));
  return rows.map((r) =>
    kept
      .map((c, i) => r[c].padEnd(widths[i]))
      .join("  ")
      .trimEnd(),
  );
}

const WIDTH = 88;

export function wrap(text: string, indent = ""): string {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(" ")) {
    if (line.length + word.length + 1 > WIDTH && line.trim() !== "") {
      lines.push(line.trimEnd());
      line = indent;
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()].join("\n");
}
