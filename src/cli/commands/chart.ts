import { lengthProblem } from "../../core/brief/index.ts";
import {
  knownLength,
  type Length,
  printLength,
  type Step,
  stepOf,
  type Unit,
} from "../../core/measure/index.ts";
import { type ChartInput, type ChartRow, chartRows, readPoint } from "../../core/recipe/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { columns } from "../text.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `chart: ${message}`);

/** What is meant when an option is left out, by unit. */
const UNLESS_TOLD: Readonly<Record<Unit, Readonly<Record<string, string>>>> = {
  in: { from: "3", to: "10", by: "1/2", seam: "1/4", usable: "40", step: "1/8" },
  mm: { from: "75", to: "250", by: "5", seam: "7", usable: "1050", step: "1" },
};

/** The chart asked for, every option checked. Ends with code 2 and the option's name otherwise. */
export function chartInput(given: Given): ChartInput {
  const unit = given.text("unit") ?? "in";
  if (unit !== "in" && unit !== "mm") throw bad(`--unit is in or mm, got "${unit}"`);
  const text = (name: string): string => given.text(name) ?? UNLESS_TOLD[unit][name];
  const length = (name: string): Length => {
    const problem = lengthProblem(text(name), unit, false);
    if (problem) throw bad(`--${name}: ${problem}`);
    return knownLength(text(name), unit);
  };
  const point = readPoint(given.text("point") ?? "sharp", unit);
  if (!point)
    throw bad(`--point is sharp, blunt, blunt:3/16 or flat:3/8, got "${given.text("point")}"`);
  const folds = given.text("folds") ?? "0";
  if (folds !== "0" && folds !== "1") throw bad(`--folds is 0 or 1, got "${folds}"`);
  length("step");
  const [from, to, by] = [length("from"), length("to"), length("by")];
  if (to < from) throw bad(`--to ${text("to")} is less than --from ${text("from")}`);
  if ((to - from) / by > MOST_ROWS)
    throw bad(`--by ${text("by")} makes more than ${MOST_ROWS} rows`);
  return {
    wedges: wedgesOf(given),
    point,
    from,
    to,
    by,
    seam: length("seam"),
    usable: length("usable"),
    folds: folds === "0" ? 0 : 1,
    unit,
    step: stepOf(text("step"), unit),
    ...ruleOf(given),
  };
}

const MOST_ROWS = 2000;
const WEDGES = [6, 8, 10, 12, 16];

function wedgesOf(given: Given): number {
  const wedges = given.text("wedges");
  const angle = given.text("angle");
  const n = wedges !== undefined ? Number(wedges) : angle !== undefined ? 360 / Number(angle) : 8;
  if (!WEDGES.includes(n)) {
    const asked = wedges !== undefined ? `--wedges ${wedges}` : `--angle ${angle}`;
    throw bad(`${asked}: wedges to the round are ${WEDGES.join(", ")}`);
  }
  if (angle !== undefined && Math.abs(Number(angle) * n - 360) > 1e-9)
    throw bad(
      `--angle ${angle} and --wedges ${n} do not close the circle: ${n} wedges are ${360 / n} degrees each`,
    );
  return n;
}

function ruleOf(given: Given): Pick<ChartInput, "rule"> {
  const text = given.text("rule");
  if (text === undefined) return {};
  const [piece, rule, ...more] = text.split("=");
  if (
    (piece !== "kite" && piece !== "corner" && piece !== "background") ||
    !rule ||
    more.length > 0
  )
    throw bad(`--rule is said as kite=strip-1/2 (kite, corner or background), got "${text}"`);
  return { rule: { piece, rule } };
}

/** Cut sizes with room are rounded up to the step; sizes that follow, and cuts that set them, never. */
const HEADINGS: readonly (readonly [keyof ChartRow, string])[] = [
  ["strip", "strip"],
  ["finished", "finished"],
  ["unfinished", "unfinished"],
  ["octagonSide", "side"],
  ["wedgeBase", "wedge base"],
  ["cornerSquareText", "corner square"],
  ["kiteSquareCoverText", "kite square"],
  ["kiteSquareSharpText", "sharp kite"],
  ["kiteMark", "kite mark"],
  ["deepSquareText", "deep square"],
  ["deepSlice", "deep slice"],
  ["wedgesPerStrip", "wedges a strip"],
  ["ruleSizeText", "rule"],
  ["ruleVerdict", "verdict"],
];

/** The chart as aligned columns. */
function chartText(rows: readonly ChartRow[], step: Step): string {
  const cell = (row: ChartRow, key: keyof ChartRow): string => {
    const value = row[key] ?? "";
    return typeof value === "number" && key !== "wedgesPerStrip"
      ? printLength(value, step)
      : String(value);
  };
  const table = rows.map((row) => HEADINGS.map(([key]) => cell(row, key)));
  return `${columns([HEADINGS.map(([, heading]) => heading), ...table]).join("\n")}\n`;
}

export const chart: Command = {
  name: "chart",
  arguments: { usage: "", least: 0, most: 0 },
  summary: "the wedge chart of a ruler: every strip with all that follows from it",
  options: {
    angle: { type: "string", value: "DEGREES", help: "angle of the ruler; 45 for eight wedges" },
    wedges: {
      type: "string",
      value: "N",
      help: "wedges to the round: 6, 8, 10, 12 or 16 (8 unless told)",
    },
    point: {
      type: "string",
      value: "POINT",
      help: "sharp, blunt, blunt:3/16 past the center, or flat:3/8 wide (sharp unless told)",
    },
    from: { type: "string", value: "LENGTH", help: "first strip (3 in unless told)" },
    to: { type: "string", value: "LENGTH", help: "last strip (10 in unless told)" },
    by: { type: "string", value: "LENGTH", help: "from strip to strip (1/2 in unless told)" },
    seam: {
      type: "string",
      value: "LENGTH",
      help: "seam allowance, such as 1/4 or 7mm (1/4 in unless told)",
    },
    usable: {
      type: "string",
      value: "LENGTH",
      help: "usable width of the fabric (40 in unless told)",
    },
    folds: {
      type: "string",
      value: "0|1",
      help: "strips cut single or folded once (0 unless told)",
    },
    step: {
      type: "string",
      value: "LENGTH",
      help: "the marks of the ruler, for rounding up (1/8 in unless told)",
    },
    unit: { type: "string", value: "in|mm", help: "unit of the chart (in unless told)" },
    rule: {
      type: "string",
      value: "RULE",
      help: "test a rule of thumb on each row: kite=strip-1/2",
    },
    json: { type: "boolean", help: "rows as JSON (docs/command-line.md lists the keys)" },
  },
  examples: [
    "eighthwise chart",
    "eighthwise chart --point blunt --seam 7mm",
    "eighthwise chart --rule kite=strip-1/2 --json",
  ],
  run: async (given, io) => {
    const input = chartInput(given);
    const rows = chartRows(input);
    io.out(given.flag("json") ? `${JSON.stringify(rows, null, 2)}\n` : chartText(rows, input.step));
    return EXIT.fine;
  },
};
