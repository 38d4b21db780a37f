import { answerBrief } from "../../core/answer/index.ts";
import { type Brief, computedText, type ShopText } from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { stepOf } from "../../core/measure/index.ts";
import { sheetJob } from "../../core/sheet/index.ts";
import { costSheet, type KitJob, kitLabels, runSheet } from "../../core/sheet/shop/index.ts";
import {
  afterRun,
  bagWeight,
  costsOf,
  type KitPlan,
  LABEL_SHEETS,
  type LabelSheet,
  labelsOf,
  MOST_KITS,
  planKits,
  readLabelSheet,
  readShelf,
  rulesOf,
  type Shelf,
  sayBolt,
  sayCosts,
  sayCut,
  sayLeft,
  sayPlan,
  sayTicks,
  sayWay,
  sayWeight,
  shelfCsv,
  ticksText,
} from "../../core/shop/index.ts";
import { csvText } from "../../core/table/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readable, readInput, readText, writeAll } from "../files.ts";
import { PRINTING, pdfOf, printingOf } from "../printing.ts";
import { columns } from "../text.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `kits: ${message}`);

/** The brief with what is said on the command line in place of what it decides itself. */
function decided(brief: Brief, given: Given): Brief {
  const shop: Partial<ShopText> = { ...brief.shop };
  const kits = given.text("kits");
  if (kits !== undefined) {
    shop.kits = Number(kits);
    if (!Number.isInteger(shop.kits) || shop.kits < 1 || shop.kits > MOST_KITS)
      throw bad(`--kits is a whole number from 1 to ${MOST_KITS}, got "${kits}"`);
  }
  const basis = given.text("basis");
  if (basis !== undefined) {
    if (basis !== "yards" && basis !== "trimmed")
      throw bad(`--basis is yards or trimmed, got "${basis}"`);
    shop.basis = basis;
  }
  const from = new Map(Object.entries(shop.from ?? {}));
  const named = new Set<string>();
  for (const text of given.texts("from")) {
    const at = text.indexOf("=");
    const id = fabricCalled(brief, text.slice(0, at));
    if (at < 0 || !text.slice(at + 1).trim())
      throw bad(`--from is said as FABRIC=BOLT, got "${text}"`);
    from.set(id, [...(named.has(id) ? (from.get(id) ?? []) : []), text.slice(at + 1).trim()]);
    named.add(id);
  }
  if (from.size > 0) shop.from = Object.fromEntries(from);
  const without = given.texts("leave-out").map((text) => fabricCalled(brief, text));
  if (without.length > 0) shop.leaveOut = [...(shop.leaveOut ?? []), ...without];
  return { ...brief, shop: shop as ShopText };
}

function fabricCalled(brief: Brief, text: string): string {
  const asked = text.trim().toLowerCase();
  const found = brief.fabrics.find((f) => f.id === asked || f.name.toLowerCase() === asked);
  if (!found)
    throw bad(
      `no fabric "${text.trim()}"; there are: ${brief.fabrics.map((f) => f.name).join(", ")}`,
    );
  return found.id;
}

/** One of the known sheets by the beginning of its name, or one of the shop's own by its dimensions. */
function labelSheetOf(given: Given, unit: Brief["unit"]): LabelSheet {
  const text = given.text("labels");
  const paper = given.text("paper") ?? (unit === "mm" ? "a4" : "letter");
  const known = LABEL_SHEETS.filter((s) => s.paper === paper);
  if (text === undefined) return known[0] ?? LABEL_SHEETS[0];
  const found = LABEL_SHEETS.find((s) => s.name.startsWith(text.trim()));
  if (found) return found;
  const own = readLabelSheet(text, paper === "a4" ? "a4" : "letter");
  if (typeof own !== "string") return own;
  throw bad(`--labels: ${own}; or one of: ${LABEL_SHEETS.map((s) => s.name).join("; ")}`);
}

/** All that there is to say, for the terminal. */
function kitText(brief: Brief, plan: KitPlan, shelf: Shelf): string {
  const rules = rulesOf(brief);
  const costs = costsOf(plan, shelf, rules);
  const needs = plan.fabrics.map((f) => {
    const cut = f.bolts[0]?.cut ?? f.cut;
    return [f.letter, f.name, cut ? sayCut(cut, brief) : "", `gives ${f.most}`, f.uses];
  });
  const runs = plan.runs.map((r) => [
    sayBolt(r),
    sayTicks(r.length, brief),
    `${r.cuts.length} cuts`,
    `${sayTicks(r.used, brief)} used`,
    `${sayLeft(r.left, brief)} left`,
  ]);
  const block = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ["", title, ...lines.map((l) => `  ${l}`)];
  return [
    brief.title,
    "",
    ...sayPlan(plan, brief),
    ...block(
      "More kits",
      plan.ways.map((w) => sayWay(w, plan, shelf)),
    ),
    ...block("In each kit", columns([["", "fabric", "cut", "kits", "for"], ...needs])),
    ...(runs.length > 0
      ? block("From the bolts", columns([["bolt", "has", "", "", ""], ...runs]))
      : []),
    ...(costs ? block("What a kit costs", sayCosts(costs, rules, brief)) : []),
    ...(plan.kits > 0 ? block("Bags", [sayWeight(bagWeight(plan, rules), rules)]) : []),
    "",
  ].join("\n");
}

/** The run as a list: one row a cut, lengths as plain numbers of the brief's unit. */
export function runCsv(plan: KitPlan): string {
  const n = (t: number): string => ticksText(t, plan.unit);
  const u = plan.unit;
  const rows = plan.runs.flatMap((r) => [
    [
      sayBolt(r),
      "",
      "",
      "straighten",
      n(r.straighten),
      "0",
      n(r.straighten),
      n(r.length - r.straighten),
    ],
    ...r.cuts.map((c, i) => [
      sayBolt(r),
      i + 1,
      c.kit,
      plan.fabrics.find((f) => f.fabricId === c.fabricId)?.name ?? c.fabricId,
      n(c.length),
      n(c.loss),
      n(c.soFar),
      n(c.left),
    ]),
  ]);
  const head = [
    "bolt",
    "cut",
    "kit",
    "fabric",
    `length ${u}`,
    `lost before ${u}`,
    `so far ${u}`,
    `left ${u}`,
  ];
  return csvText([head, ...rows]);
}

const labelsCsv = (plan: KitPlan, brief: Brief): string =>
  csvText([
    ["title", "kit", "of", "fabric", "what", "for"],
    ...labelsOf(plan, brief).map((l) => [l.title, l.kit, l.of, l.fabric ?? "", l.what, l.uses]),
  ]);

export const kits: Command = {
  name: "kits",
  arguments: { usage: "BRIEF --bolts FILE", least: 1, most: 1 },
  summary: "how many kits the bolts give, every cut in order, labels, costs",
  options: {
    bolts: {
      type: "string",
      value: "FILE",
      help: "the shelf: a list of bolts as CSV (docs/kits-and-class.md)",
    },
    kits: {
      type: "string",
      short: "n",
      value: "N",
      help: "how many are wanted (the most, unless told)",
    },
    basis: {
      type: "string",
      value: "yards|trimmed",
      help: "cut what the pattern says to buy, or what its pieces take with their margin",
    },
    from: {
      type: "string",
      value: "FABRIC=BOLT",
      multiple: true,
      help: "a bolt for a fabric, where their names differ; several may be said",
    },
    "leave-out": {
      type: "string",
      value: "FABRIC",
      multiple: true,
      help: "a fabric that is not in the kit",
    },
    out: {
      type: "string",
      short: "o",
      value: "DIR",
      help: "also write run sheet, costs, labels and the shelf after the run",
    },
    labels: {
      type: "string",
      value: "SIZE",
      help: `label sheet: ${LABEL_SHEETS.map((s) => s.name).join("; ")}; or your own, "3 by 8 of 70 x 37 mm, left 0, top 0.5, gap 0 x 0"`,
    },
    "first-label": {
      type: "string",
      value: "N",
      help: "the first label left on the first sheet",
      default: "1",
    },
    ...PRINTING,
    json: { type: "boolean", help: "the plan as JSON; lengths in 1/1600 in or 1/1000 mm" },
  },
  examples: [
    "eighthwise kits tidepool.json --bolts shelf.csv",
    "eighthwise kits tidepool.json --bolts shelf.csv --from Shell=Foam --kits 12 --out kits",
  ],
  run: async (given, io) => {
    const list = given.text("bolts");
    if (list === undefined) throw bad("say which bolts with --bolts FILE");
    const read = await readInput(given.arguments[0], io);
    const brief = readable("kits", decided(read.brief, given));
    const labels = labelSheetOf(given, brief.unit);
    const first = Number(given.text("first-label"));
    const printing = printingOf(given, "kits", brief);
    const { shelf, list: rows } = readShelf(await readText(list), brief.unit);
    const step = stepOf(brief.step, brief.unit);
    for (const f of rows.findings) io.err(`${list}: ${say(f, { step })}\n`);
    if (shelf.bolts.length === 0) throw bad(`${list} holds no bolt`);
    const answer = answerBrief(brief);
    const plan = planKits(brief, answer, shelf);
    for (const f of plan.findings) io.err(`${f.severity}: ${say(f, { step })}\n`);
    io.out(given.flag("json") ? computedText(plan) : kitText(brief, plan, shelf));
    const out = given.text("out");
    if (out !== undefined) {
      const kit: KitJob = {
        job: sheetJob(brief, answer, printing),
        plan,
        shelf,
        rules: rulesOf(brief),
      };
      const files = new Map<string, string | Uint8Array>([
        ["run.csv", runCsv(plan)],
        ["labels.csv", labelsCsv(plan, brief)],
        ["shelf-after.csv", shelfCsv(afterRun(shelf, plan))],
      ]);
      const sheets = [
        runSheet(kit),
        costSheet(kit),
        ...(plan.kits > 0 ? [kitLabels(kit, { sheet: labels, first })] : []),
      ];
      for (const s of sheets) files.set(`${s.name}.pdf`, await pdfOf(s, printing));
      await writeAll(out, files, { inputs: [read.path, list] });
      for (const name of files.keys()) io.err(`wrote ${name}\n`);
    }
    const short = plan.kits === 0 || (plan.wanted ?? 0) > plan.most;
    return short || answer.findings.some((f) => f.severity === "blocks") ? EXIT.blocked : EXIT.fine;
  },
};
