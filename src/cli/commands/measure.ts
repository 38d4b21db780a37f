import {
  type Answer,
  answerBrief,
  changed,
  type StopRow,
  type StopTable,
  stopTables,
} from "../../core/answer/index.ts";
import { type Brief, canonicalText, computedText, keepMeasured } from "../../core/brief/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readable, readInput, writeNew } from "../files.ts";
import { columns, wrap } from "../text.ts";
import { exitOf } from "./answer.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `measure: ${message}`);

/** "U2 = 8 7/16": which stop, and what was read there, as typed. */
function takenFrom(text: string, rows: readonly StopRow[]): { row: StopRow; size: string } {
  const at = text.indexOf("=");
  const name = text.slice(0, Math.max(0, at)).trim().toLowerCase();
  const row = rows.find((r) => r.stop.toLowerCase() === name);
  const known = rows.map((r) => r.stop).join(", ") || "none";
  if (!row)
    throw bad(`--measured is said as STOP=LENGTH, got "${text}"; stops of this brief: ${known}`);
  return { row, size: text.slice(at + 1).trim() };
}

/** The brief with what was measured kept in it, beside what was kept before. */
function withMeasured(brief: Brief, answer: Answer, texts: readonly string[]): Brief {
  const rows = stopTables(brief, answer).flatMap((t) => t.rows);
  const taken = texts.map((text) => takenFrom(text, rows));
  const kept = changed(brief, (d) => {
    for (const { row, size } of taken) keepMeasured(row.unitId, row.width, size, row.should)(d);
  });
  const judged = stopTables(kept, answer).flatMap((t) => t.rows);
  const problems = taken.flatMap(({ row, size }) => {
    const problem =
      size === "" ? "nothing is measured" : judged.find((r) => r.id === row.id)?.problem;
    return problem ? [`measure: ${row.stop}: ${problem}`] : [];
  });
  if (problems.length > 0) throw new Ending(EXIT.bad, ...problems);
  return kept;
}

const HEADS = ["stop", "", "should measure", "finished", "before trimming", "measured", "now"];

function tableText(t: StopTable): string[] {
  const rows = t.rows.map((r) => [r.stop, r.name, r.should, r.finished, r.before, r.typed, r.now]);
  const said = t.rows.flatMap((r) => {
    const text = r.problem ?? r.verdict?.text;
    return text ? [wrap(`${r.stop}: ${text}`, "  ")] : [];
  });
  return [
    t.block.name,
    ...columns([HEADS, ...rows]).map((line) => `  ${line}`),
    wrap(t.spare, "  "),
    ...said,
    ...(t.outcome ? [wrap(t.outcome, "  ")] : []),
    "",
  ];
}

const asData = (t: StopTable) => ({
  block: t.block.id,
  spare: t.spare,
  outcome: t.outcome,
  stops: t.rows.map(({ measure: _, ...row }) => row),
});

const tablesAsked = (given: Given, tables: readonly StopTable[]): readonly StopTable[] => {
  const id = given.text("block");
  const found = tables.filter((t) => id === undefined || t.block.id === id);
  if (found.length > 0) return found;
  const known = tables.map((t) => t.block.id).join(", ") || "none";
  throw bad(`--block ${id ?? ""}: blocks that are sewn in this brief: ${known}`);
};

export const measure: Command = {
  name: "measure",
  arguments: { usage: "BRIEF", least: 1, most: 1 },
  summary: "what each stop should measure; what was measured in, what to do and what follows out",
  options: {
    measured: {
      type: "string",
      short: "m",
      value: "STOP=LENGTH",
      multiple: true,
      help: 'what was measured at a stop of the list: "U2=8 7/16"; "U5 gap=1/16" is the light under a straight edge, with a minus at both ends',
    },
    block: { type: "string", value: "ID", help: "only this block (all unless told)" },
    out: {
      type: "string",
      short: "o",
      value: "FILE",
      help: "a new file for the brief with what was measured kept in it",
    },
    json: { type: "boolean", help: "the stops as JSON" },
  },
  examples: [
    "eighthwise measure tidepool.json",
    'eighthwise measure tidepool.json --measured "U2=8 7/16" -o tidepool-2.json',
  ],
  run: async (given, io) => {
    const { brief } = await readInput(given.arguments[0], io);
    const answer = answerBrief(brief);
    const kept = withMeasured(brief, answer, given.texts("measured"));
    const tables = tablesAsked(given, stopTables(kept, answer));
    io.out(
      given.flag("json")
        ? computedText(tables.map(asData))
        : `${tables.flatMap(tableText).join("\n")}`,
    );
    const out = given.text("out");
    if (out !== undefined) await writeNew(out, canonicalText(readable("measure", kept)));
    return exitOf(answer);
  },
};
