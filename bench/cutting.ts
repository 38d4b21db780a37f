/**
 * How good the cutting plans are. Reads instances, plans each, recounts each plan by code that
 * shares nothing with the planner, and prints what it took.
 *
 *   npm run -s bench:cutting -- FILE [ID ...] [--json | --table] [--stacks] [--nodes N]
 *
 * FILE is in the form of bench/instances/quilts.json (one fabric) or cintra2008.json (several stock
 * sizes). --table prints the Markdown table of docs/cutting-plans.md, with a general-purpose packer
 * beside the plans.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import type { Highs } from "highs";
import {
  DEFAULT_NODES,
  planBest,
  planFirst,
  planPieces,
  replay,
  replaySheets,
} from "../src/core/layout/index.ts";
import type { QuiltInstance, StockInstance } from "./cutting-instances.ts";
import { demandsOf, sheetsOf, stockDemandsOf, stockOf, yardsFor } from "./cutting-instances.ts";
import {
  printQuilts,
  printStocks,
  type QuiltRow,
  quiltTable,
  type StockRow,
  stockTable,
} from "./cutting-print.ts";
import { packedLength } from "./packer.ts";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: "boolean", default: false },
    table: { type: "boolean", default: false },
    stacks: { type: "boolean", default: false },
    nodes: { type: "string", default: String(DEFAULT_NODES) },
  },
});
const nodes = Number(values.nodes);
if (positionals.length < 1 || !Number.isInteger(nodes) || nodes < 1) {
  process.stderr.write(
    "usage: bench:cutting -- FILE [ID ...] [--json | --table] [--stacks] [--nodes N]\n",
  );
  process.exit(2);
}
const [path, ...ids] = positionals;
const asked = (id: string): boolean => ids.length === 0 || ids.includes(id);
const file = JSON.parse(readFileSync(path, "utf8"));
if (Array.isArray(file.instances))
  await quilts((file.instances as QuiltInstance[]).filter((q) => asked(q.id)));
else await stocks((file as StockInstance[]).filter((g) => asked(g.name)));

async function quilts(instances: readonly QuiltInstance[]): Promise<void> {
  // All first plans are made before the solver is even loaded.
  const firsts = instances.map((q) => {
    const began = performance.now();
    const layout = planFirst(demandsOf(q), stockOf(q), { stacks: values.stacks });
    return { layout, ms: performance.now() - began };
  });
  const solver = await loadSolver();
  const rows = instances.map((q, i) => quiltRow(q, firsts[i], solver));
  if (values.json) print(JSON.stringify(rows, undefined, 1));
  else print(values.table ? quiltTable(rows, instances, values.stacks) : printQuilts(rows));
}

function quiltRow(
  q: QuiltInstance,
  first: { layout: ReturnType<typeof planFirst>; ms: number },
  solver: Highs,
): QuiltRow {
  const demands = demandsOf(q);
  const stock = stockOf(q);
  const began = performance.now();
  const best = planBest(demands, stock, { solver, nodes, stacks: values.stacks });
  const ms = performance.now() - began;
  const clean = (l: typeof best) => replay(l, demands, stock).length === 0;
  process.stderr.write(`${q.id} ${best.length} of ${best.lowerBound}\n`);
  return {
    id: q.id,
    types: q.items.length,
    pieces: q.items.reduce((t, item) => t + item.n, 0),
    handbook: best.handbook,
    first: first.layout.length,
    best: best.length,
    lowerBound: best.lowerBound,
    proven: best.proven,
    yards: yardsFor(best.length, q.unit),
    boundYards: yardsFor(best.lowerBound, q.unit),
    firstMs: Math.round(first.ms),
    ms: Math.round(ms),
    replayed: clean(best) && clean(first.layout),
    ...(values.table ? { areaBound: q.areaBound, packer: packedLength(q) } : {}),
  };
}

async function stocks(instances: readonly StockInstance[]): Promise<void> {
  const solver = await loadSolver();
  const rows = instances.flatMap((g) => [false, true].map((rotate) => stockRow(g, rotate, solver)));
  if (values.json) print(JSON.stringify(rows, undefined, 1));
  else print(values.table ? stockTable(rows) : printStocks(rows));
}

function stockRow(g: StockInstance, rotate: boolean, solver: Highs): StockRow {
  const demands = stockDemandsOf(g, rotate);
  const sheets = sheetsOf(g);
  const began = performance.now();
  const plan = planPieces(demands, sheets, { solver, stacks: values.stacks });
  const ms = Math.round(performance.now() - began);
  process.stderr.write(`${g.name} ${plan.cost} of ${plan.lowerBound}\n`);
  return {
    id: g.name,
    rotate,
    cost: plan.cost,
    lowerBound: plan.lowerBound,
    bestKnown: g.reported[rotate ? "2nhr" : "2nho"].bestKnownCost,
    ms,
    replayed: replaySheets(plan, demands, sheets).length === 0 && plan.unplaced.length === 0,
  };
}

async function loadSolver(): Promise<Highs> {
  const { default: load } = await import("highs");
  return load();
}

function print(text: string): void {
  process.stdout.write(`${text}\n`);
}
