import { computedText } from "../../core/brief/index.ts";
import { readStock } from "../../core/fabric/index.ts";
import { say } from "../../core/findings/index.ts";
import { printWithUnit, stepOf } from "../../core/measure/index.ts";
import { type FromHere, fromStock } from "../../core/turn/index.ts";
import type { Command } from "../command.ts";
import { EXIT } from "../exit.ts";
import { readInput, readText } from "../files.ts";

export const from: Command = {
  name: "from",
  arguments: { usage: "STOCK BRIEF...", least: 2, most: 60 },
  summary: "which of these designs the fabric that is here makes, how many, and what is left",
  options: { json: { type: "boolean", help: "as JSON, every cutting plan with it" } },
  examples: ["eighthwise from shelf.csv examples/*.json"],
  run: async (given, io) => {
    const [path, ...briefs] = given.arguments;
    const designs = [];
    for (const b of briefs) {
      const { brief } = await readInput(b, io);
      designs.push({ name: brief.title, brief });
    }
    const [{ brief: first }] = designs;
    const list = readStock(await readText(path), first.unit);
    const speech = { step: stepOf(first.step, first.unit) };
    for (const f of list.findings) io.err(`${path}: ${say(f, speech)}\n`);
    const search = fromStock(designs, list.pieces);
    let here: FromHere;
    for (let x = search.next(); ; x = search.next()) {
      here = x.value;
      if (x.done || io.signal.aborted) break;
      if (io.terminal) io.err(`${here.done} of ${here.all} designs\n`);
      await new Promise((go) => setImmediate(go));
    }
    io.out(given.flag("json") ? computedText(here) : fromText(here));
    if (here.done < here.all) return EXIT.stopped;
    return here.projects.length > 0 ? EXIT.fine : EXIT.blocked;
  },
};

function fromText(here: FromHere): string {
  const lines = here.projects.flatMap(({ design, times, taken, uses }, i) => {
    const { brief } = design;
    const step = stepOf(brief.step, brief.unit);
    return [
      `${i + 1}. ${design.name}, ${times === 1 ? "once" : `${times} times`}: ${Math.round(100 * uses)} % of all that is here`,
      ...taken.map((t) => {
        const name = brief.fabrics.find((f) => f.id === t.fabricId)?.name ?? t.fabricId;
        const pieces = t.pieces > 0 ? [`${t.pieces} ${t.pieces === 1 ? "piece" : "pieces"}`] : [];
        const bolt =
          t.fromBolt > 0
            ? [
                `${printWithUnit(t.fromBolt, step)} of the bolt, ${printWithUnit(t.boltLeft, step)} left on it`,
              ]
            : [];
        return `   ${name} from ${t.stock}: ${[...pieces, ...bolt].join(" and ") || "nothing"}`;
      }),
      "",
    ];
  });
  const not = here.notMade.map(
    (n) => `${n.design.name} cannot be made: too little ${n.short.join(", ")}.`,
  );
  return [...lines, ...not, ...(not.length > 0 ? [""] : [])].join("\n");
}
