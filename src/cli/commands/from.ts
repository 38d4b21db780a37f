import { fabricLetters } from "../../core/answer/index.ts";
import { computedText } from "../../core/brief/index.ts";
import { readStock, type StockList } from "../../core/fabric/index.ts";
import { say } from "../../core/findings/index.ts";
import { printLength, stepOf } from "../../core/measure/index.ts";
import { layoutPicture, swatches, toSvg } from "../../core/picture/index.ts";
import {
  type FromHere,
  fromOutput,
  fromStock,
  layoutsOfProject,
  sayTaken,
  sayTimes,
} from "../../core/turn/index.ts";
import type { Command } from "../command.ts";
import { EXIT } from "../exit.ts";
import { readInput, readText, writeAll } from "../files.ts";

export const from: Command = {
  name: "from",
  arguments: { usage: "STOCK BRIEF...", least: 2, most: 60 },
  summary: "which of these designs the fabric that is here makes, how many, and what is left",
  options: {
    out: {
      type: "string",
      short: "o",
      value: "DIR",
      help: "also write each project's layouts there, as drawings to scale",
    },
    json: { type: "boolean", help: "as JSON (docs/schema/from.schema.json), every layout with it" },
  },
  examples: ["eighthwise from shelf.csv examples/*.json --out projects"],
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
    io.out(
      given.flag("json")
        ? computedText(fromOutput(here, list, first.unit))
        : fromText(here) + leftOutText(list),
    );
    const out = given.text("out");
    if (out !== undefined) await writeAll(out, drawings(here), { inputs: given.arguments });
    if (here.done < here.all) return EXIT.stopped;
    return here.projects.length > 0 ? EXIT.fine : EXIT.blocked;
  },
};

/** Rows that were not read, as they stood: nothing is lost. */
const leftOutText = ({ leftOut }: StockList): string =>
  leftOut.length === 0
    ? ""
    : `Not read:\n${leftOut.map((r) => `   line ${r.line}: ${r.text}\n`).join("")}`;

/** One drawing for each bolt and each size of piece, named by project, fabric and place. */
function drawings(here: FromHere): Map<string, string> {
  const files = new Map<string, string>();
  here.projects.forEach((p, i) => {
    const { brief } = p.design;
    const step = stepOf(brief.step, brief.unit);
    const colors = swatches(brief, fabricLetters(brief));
    layoutsOfProject(p).forEach((cut, k) => {
      const drawn = layoutPicture(cut.layout, {
        unit: brief.unit,
        ...p.drawn,
        room: cut.length,
        say: (x) => printLength(x, step),
      });
      files.set(
        `${i + 1}-${k + 1}-${cut.fabricId}-${cut.from}.svg`,
        toSvg(drawn, { swatches: colors }),
      );
    });
  });
  return files;
}

function fromText(here: FromHere): string {
  const lines = here.projects.flatMap((p, i) => [
    `${i + 1}. ${p.design.name}, ${sayTimes(p)}`,
    ...p.taken.map((t) => `   ${sayTaken(t, p.design.brief)}`),
    "",
  ]);
  const not = here.notMade.map(
    (n) => `${n.design.name} cannot be made: too little ${n.short.join(", ")}.`,
  );
  return [...lines, ...not, ...(not.length > 0 ? [""] : [])].join("\n");
}
