import { type Answer, answerBrief } from "../core/answer/index.ts";
import type { Brief } from "../core/brief/index.ts";
import { DEFAULT_NODES, type FabricLayout } from "../core/layout/index.ts";
import type { Given, OptionWords } from "./command.ts";
import { Ending, EXIT } from "./exit.ts";
import type { BestAnswer, Io, Search } from "./io.ts";

/** In this thread, which hears nothing while the solver works. The solver is loaded here, if at all. */
export const answerBest: BestAnswer = async (brief, search, told, signal) => {
  const { default: load } = await import("highs");
  const solver = await load();
  return answerBrief(brief, { ...search, solver, signal, onProgress: told });
};

/** The options of every command that plans. */
export const PLANNING: Readonly<Record<string, OptionWords>> = {
  best: { type: "boolean", help: "look for the least fabric, with a proof of how near it is" },
  nodes: {
    type: "string",
    value: "N",
    help: `how long to look; equal numbers give equal plans (${DEFAULT_NODES} unless told)`,
  },
  stacks: { type: "boolean", help: "equal pieces may stand on one another in a taller strip" },
};

function searchOf(given: Given, command: string): Search {
  const nodes = Number(given.text("nodes") ?? DEFAULT_NODES);
  if (!Number.isSafeInteger(nodes) || nodes < 1)
    throw new Ending(
      EXIT.bad,
      `${command}: --nodes is a whole number above 0, got "${given.text("nodes")}"`,
    );
  return { nodes, stacks: given.flag("stacks") };
}

/**
 * The answer as the options ask for it: the first plan, or with --best the best one. `stopped`: the
 * maker stopped the search, and this is the best that had been found.
 */
export async function plannedAnswer(
  brief: Brief,
  given: Given,
  io: Io,
  command: string,
): Promise<{ readonly answer: Answer; readonly stopped: boolean }> {
  const search = searchOf(given, command);
  if (!given.flag("best"))
    return { answer: answerBrief(brief, { stacks: search.stacks }), stopped: false };
  const told = io.terminal ? (l: FabricLayout) => io.err(progress(brief, l)) : () => {};
  const answer = await (io.best ?? answerBest)(brief, search, told, io.signal);
  if (io.terminal) io.err(CLEAR);
  const stopped = io.signal.aborted;
  if (stopped) io.err("stopped; this is the best plan found so far\n");
  return { answer, stopped };
}

/** Back to the start of the line, and nothing on it. */
const CLEAR = "\r\u001b[K";

function progress(brief: Brief, l: FabricLayout): string {
  const name = brief.fabrics.find((f) => f.id === l.fabricId)?.name ?? l.fabricId;
  const gap = l.length > 0 ? (100 * (l.length - l.lowerBound)) / l.length : 0;
  const near = l.proven ? "proved least" : `within ${gap.toFixed(2)} % of the least`;
  return `${CLEAR}${name}, ${Number(l.length.toFixed(3))} ${brief.unit}: ${near}`;
}
