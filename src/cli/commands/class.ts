import { answerBrief } from "../../core/answer/index.ts";
import {
  type Brief,
  type ClassText,
  computedText,
  readDocument,
  type StudentText,
} from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { parseLength, printWithUnit, stepOf } from "../../core/measure/index.ts";
import { sheetJob } from "../../core/sheet/index.ts";
import { studentSheet, teacherSheet } from "../../core/sheet/shop/index.ts";
import {
  type ClassPlan,
  planClass,
  readPointText,
  STOP_AT_HOME,
  type StudentPlan,
  sayHomework,
  saySeam,
  sayStage,
  sayStepOut,
  saySupplies,
  sayTime,
} from "../../core/shop/index.ts";
import { csvText, readTable } from "../../core/table/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readable, readInput, readText, writeAll } from "../files.ts";
import { PRINTING, pdfOf, printingOf } from "../printing.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `class: ${message}`);

/** As many as a brief may hold. */
const MOST_STUDENTS = 60;

/** Columns of a list of students: the first must be there. */
const HEADS = ["name", "usable", "longest", "top", "strips", "width", "size", "point"] as const;

/**
 * A list of students as CSV: name, usable (her fabric), longest and point (of her ruler), top (which
 * size), and her seam test as strips, width, size. Bad rows are told and left out.
 */
function studentsOf(text: string, brief: Brief, tell: (line: string) => void): StudentText[] {
  const [head, ...all] = readTable(text).rows;
  const rows = all.slice(0, MOST_STUDENTS);
  if (all.length > rows.length)
    tell(
      `a class holds at most ${MOST_STUDENTS}; what follows line ${rows.at(-1)?.line} is left out`,
    );
  if (!head) return [];
  const at = HEADS.map((h) => head.cells.findIndex((c) => c.trim().toLowerCase() === h));
  if (at[0] < 0)
    throw bad(`the list of students needs a column "name"; there are: ${head.cells.join(", ")}`);
  return rows.flatMap((row): StudentText[] => {
    const cell = (i: number): string => (at[i] < 0 ? "" : (row.cells[at[i]] ?? "").slice(0, 120));
    const [name, usable, longest, top, strips, width, size, pointed] = HEADS.map((_, i) => cell(i));
    const wrong = [usable, longest, width, size].find((x) => x !== "" && !positive(x, brief.unit));
    const count = Number(strips || 3);
    const point = readPointText(pointed, brief.unit);
    const half = (width === "") !== (size === "");
    const why =
      name === ""
        ? "has no name"
        : wrong !== undefined
          ? `has "${wrong}" where a length is wanted`
          : pointed !== "" && !point
            ? `has the point "${pointed}"; say sharp, blunt, blunt:3/16 or flat:3/8`
            : half || !Number.isInteger(count) || count < 2 || count > 12
              ? "has half a seam test: say width and size, of 2 to 12 strips"
              : undefined;
    const student: StudentText = {
      name,
      ...(usable && { usable }),
      ...(longest && { longest }),
      ...(top && { top }),
      ...(point && { point }),
      ...(width && { test: { strips: count, width, size } }),
    };
    const problem = why ?? unreadable(brief, student);
    if (problem) tell(`line ${row.line} ${problem}; it is left out`);
    return problem ? [] : [student];
  });
}

/** Why a student could not stand in a brief, as the reader of briefs judges it. */
function unreadable(brief: Brief, student: StudentText): string | undefined {
  const read = readDocument({ ...brief, class: { students: [student] } });
  if (read.ok) return undefined;
  const [{ path, message }] = read.refusals;
  return `has a ${path.split("/").slice(3).join(" ")} that cannot be: ${message}`;
}

const positive = (text: string, unit: Brief["unit"]): boolean => {
  const r = parseLength(text, unit);
  return r.ok && r.length.value.compare(0) > 0;
};

function decided(brief: Brief, students: readonly StudentText[] | undefined, given: Given): Brief {
  const whole = (name: string, most: number): number | undefined => {
    const text = given.text(name);
    if (text === undefined) return undefined;
    const n = Number(text);
    if (!(n > 0 && n <= most)) throw bad(`--${name} is a number from 1 to ${most}, got "${text}"`);
    return n;
  };
  const room: Partial<ClassText> = { ...brief.class };
  const [hours, irons, blocks] = [whole("hours", 60), whole("irons", 60), whole("blocks", 999)];
  return {
    ...brief,
    class: {
      hours: hours ?? room.hours ?? 3,
      irons: Math.ceil(irons ?? room.irons ?? 1),
      blocks: Math.ceil(blocks ?? room.blocks ?? 1),
      ...(room.rates && { rates: room.rates }),
      students: [...(students ?? room.students ?? [])],
    },
  };
}

function classText(brief: Brief, plan: ClassPlan): string {
  const block = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ["", title, ...lines.map((l) => `  ${l}`)];
  const step = stepOf(brief.step, brief.unit);
  const list = (s: StudentPlan): string[] => [
    ...block(
      `What ${s.name} ${s.name === "everyone" ? "brings" : `brings (${s.own.join(", ") || "as the class"})`}`,
      saySupplies(s),
    ),
    ...block("What is cut at home", [...sayHomework(s), STOP_AT_HOME]),
  ];
  return [
    plan.title,
    "",
    ...sayTime(plan),
    ...block("Minutes", plan.stages.map(sayStage)),
    ...list(plan.everyone),
    ...block("Tools", plan.everyone.tools),
    ...block("The ruler", plan.everyone.rulerCheck),
    ...plan.students.filter((s) => s.own.length > 0).flatMap(list),
    ...block("Step-outs to prepare", plan.stepOuts.samples.map(sayStepOut)),
    ...block(
      "Fabric for them",
      plan.stepOuts.fabric.map((f) => `${f.letter} ${f.name}: ${printWithUnit(f.length, step)}`),
    ),
    ...plan.students.flatMap((s) =>
      s.seam ? block(`Seam of ${s.name}`, saySeam(s.seam, brief)) : [],
    ),
    "",
  ].join("\n");
}

const minutesCsv = (plan: ClassPlan): string =>
  csvText([
    [
      "stage",
      "seams",
      "sewing minutes",
      "pressing minutes",
      "other minutes",
      "one student",
      "in class",
      "iron waited for",
    ],
    ...plan.stages.map((s) => [
      s.name,
      s.seams,
      ...[s.sewing, s.pressing, s.laying, s.own, s.inClass].map((m) => Number(m.toFixed(2))),
      s.queue ? "yes" : "no",
    ]),
  ]);

export const classCommand: Command = {
  name: "class",
  arguments: { usage: "BRIEF", least: 1, most: 1 },
  summary: "supply lists, homework, step-outs, minutes and seam tests of a class",
  options: {
    students: {
      type: "string",
      value: "FILE",
      help: `students as CSV with the columns ${HEADS.join(", ")} (only name must be there)`,
    },
    hours: { type: "string", value: "N", help: "length of the class (3 unless told)" },
    irons: { type: "string", value: "N", help: "irons in the room (1 unless told)" },
    blocks: {
      type: "string",
      value: "N",
      help: "blocks of each kind a student means to finish (1 unless told)",
    },
    out: {
      type: "string",
      short: "o",
      value: "DIR",
      help: "also write the teacher's sheet and a list for every student",
    },
    ...PRINTING,
    json: { type: "boolean", help: "times, samples and seams as JSON" },
  },
  examples: [
    "eighthwise class tidepool.json",
    "eighthwise class tidepool.json --students class.csv --hours 6 --irons 3 --out class",
  ],
  run: async (given, io) => {
    const read = await readInput(given.arguments[0], io);
    const file = given.text("students");
    const tell = (line: string): void => io.err(`${file}: ${line}\n`);
    const students =
      file === undefined ? undefined : studentsOf(await readText(file), read.brief, tell);
    const brief = readable("class", decided(read.brief, students, given));
    const printing = printingOf(given, "class", brief);
    const answer = answerBrief(brief);
    const plan = planClass(brief, answer);
    const step = stepOf(brief.step, brief.unit);
    for (const s of plan.students)
      for (const f of s.own.length > 0 ? s.findings : [])
        io.err(`${s.name}: ${f.severity}: ${say(f, { step })}\n`);
    io.out(given.flag("json") ? computedText(bare(plan)) : classText(brief, plan));
    const out = given.text("out");
    if (out !== undefined) {
      const job = sheetJob(brief, answer, printing);
      const files = new Map<string, string | Uint8Array>([["minutes.csv", minutesCsv(plan)]]);
      const sheets = [
        teacherSheet(job, plan),
        ...[plan.everyone, ...plan.students].map((s) => studentSheet(job, s)),
      ];
      for (const [i, s] of sheets.entries()) {
        const name = files.has(`${s.name}.pdf`) ? `${s.name}-${i}` : s.name;
        files.set(`${name}.pdf`, await pdfOf(s, printing));
      }
      await writeAll(out, files, { inputs: [read.path, ...(file === undefined ? [] : [file])] });
      for (const name of files.keys()) io.err(`wrote ${name}\n`);
    }
    const blocked = answer.findings.some((f) => f.severity === "blocks");
    return blocked ? EXIT.blocked : EXIT.fine;
  },
};

/** The plan without the briefs and answers it was worked out from. */
const bare = (plan: ClassPlan): unknown => {
  const without = ({ brief: _b, answer: _a, ...rest }: StudentPlan) => rest;
  return { ...plan, everyone: without(plan.everyone), students: plan.students.map(without) };
};
