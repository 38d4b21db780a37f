/**
 * What the program costs, each figure a ratio to a baseline of the same run, so that machines and
 * their moods cancel out. Writes the table of docs/figures.md. `npm run -s bench [-- --dry]`
 */
import { writeFileSync } from "node:fs";
import { performance } from "node:perf_hooks";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import tidepool from "../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../src/core/answer/index.ts";
import { layOutBlock } from "../src/core/block/index.ts";
import { type Brief, canonicalText, readDocument } from "../src/core/brief/index.ts";
import { area } from "../src/core/geometry/index.ts";
import { type Demand, planFirst, planHandbook } from "../src/core/layout/index.ts";
import { layOutQuilt, placements } from "../src/core/quilt/index.ts";
import { prove } from "../src/core/recipe/proof.ts";
import { makeSheet, sheetJob } from "../src/core/sheet/index.ts";
import { readPin, turnRound } from "../src/core/turn/index.ts";
import { nodeFonts } from "../src/pdf/fonts.node.ts";
import { writePdf } from "../src/pdf/index.ts";
import { pageRows } from "./page-rows.ts";

setFlagsFromString("--expose_gc");
const collect = runInNewContext("gc") as () => void;

const RUNS = 15;
const median = (xs: readonly number[]): number =>
  xs.toSorted((a, b) => a - b)[Math.floor(xs.length / 2)];

type Work = () => unknown;

/** Milliseconds a go, of enough goes to be told apart from the clock's grain. */
async function timed(work: Work, goes: number): Promise<number> {
  const start = performance.now();
  for (let i = 0; i < goes; i++) await work();
  return (performance.now() - start) / goes;
}

/** How many times as long `work` takes as `base`: the median of pairs taken in turn. */
async function ratio(work: Work, base: Work, goes = 1, baseGoes = goes): Promise<number> {
  await timed(work, goes);
  await timed(base, baseGoes);
  const pairs: number[] = [];
  for (let i = 0; i < RUNS; i++)
    pairs.push((await timed(work, goes)) / (await timed(base, baseGoes)));
  return median(pairs);
}

/** Bytes that one result keeps in use: batches of them with nothing left to collect, their median. */
function held(work: Work): number {
  const BATCH = 8;
  const batch = (): number => {
    collect();
    const before = process.memoryUsage().heapUsed;
    const kept = Array.from({ length: BATCH }, work);
    collect();
    return (process.memoryUsage().heapUsed - before) / kept.length;
  };
  for (let i = 0; i < 3; i++) batch();
  return median(Array.from({ length: 7 }, batch));
}

const read = readDocument(tidepool);
if (!read.ok) throw new Error("the sample is refused");
const { brief } = read;
const square = (side: number): Brief => ({
  ...brief,
  quilt: { ...brief.quilt, rows: side, columns: side },
});

interface Row {
  readonly what: string;
  readonly to: string;
  readonly found: number;
  readonly most?: number;
}
const rows: Row[] = [];
function row(what: string, to: string, found: number, most?: number): void {
  rows.push({ what, to, found, ...(most !== undefined && { most }) });
  console.log(
    `${what}, to ${to}: ${found.toFixed(2)}${most === undefined ? "" : ` (at most ${most})`}`,
  );
}

const kites = brief.blocks[0];
const lay = () => layOutBlock(kites, "in", 0.25, 4);
const one = lay().geometry;
if (!one) throw new Error("the block is not laid out");
row(
  "Geometry: a block laid out, its seam tree and all",
  "the areas of its patches, measured 100 times",
  await ratio(
    lay,
    () => {
      for (let i = 0; i < 100; i++) one.patches.reduce((s, p) => s + area(p.polygon), 0);
    },
    20,
  ),
);

const [wedge] = answerBrief(brief).recipes.filter((r) => r.kind === "wedge");
const laid = {
  finished: wedge.patch,
  allowances: wedge.patch.map(() => 0.25),
  raw: wedge.polygon,
  setEdges: [],
};
row(
  "Proof: one piece held against its cut, free to slide",
  "the areas of both, measured 100 times",
  await ratio(
    () => prove(laid, "in"),
    () => {
      for (let i = 0; i < 100; i++) area(laid.finished) + area(laid.raw);
    },
    20,
  ),
);

const hundred = square(10);
const answered = () => answerBrief(hundred);
const answer = answered();
row(
  "Answer: everything for 100 blocks",
  "that answer written as text",
  await ratio(answered, () => canonicalText(answer)),
);
/** A stage at so many blocks beside the same stage at 100. */
async function atEverySize(
  what: string,
  work: (of: Brief) => Work,
  goes: number,
  most?: number,
): Promise<void> {
  const base = work(hundred);
  for (const side of [1, 40, 100])
    row(
      `${what}, ${counted(side * side)}`,
      "100 blocks of the same kinds",
      await ratio(work(square(side)), base, goes),
      side > 10 ? most : undefined,
    );
}
const counted = (n: number): string =>
  `${n.toLocaleString("en-US")} ${n === 1 ? "block" : "blocks"}`;
const layouts = brief.blocks.flatMap((b) => layOutBlock(b, brief.unit, 0.25, 4).geometry ?? []);
await atEverySize(
  "Geometry: the quilt laid out, every block placed",
  (b) => () => {
    const { geometry } = layOutQuilt(b, layouts);
    return geometry && [...placements(b, geometry)].length;
  },
  20,
);
await atEverySize(
  "Proof: every piece held against its cut",
  (b) => {
    const { recipes } = answerBrief(b);
    return () =>
      recipes.map((r) =>
        prove(
          { finished: r.patch, allowances: r.patch.map(() => 0.25), raw: r.polygon, setEdges: [] },
          "in",
        ),
      );
  },
  5,
);
await atEverySize(
  "Planner: a first plan of every fabric",
  (b) => {
    const { demands: all } = answerBrief(b);
    const fabrics = [...new Set(all.map((d) => d.fabricId))];
    return () =>
      fabrics.map((fabricId) =>
        planFirst(
          all.filter((d) => d.fabricId === fabricId),
          { fabricId, width: 40, folds: 0 },
        ),
      );
  },
  5,
);
await atEverySize("Answer", (b) => () => answerBrief(b), 1, 3);
const small = held(answered);
const large = square(100);
row(
  "Memory: an answer for 10,000 blocks",
  "one for 100",
  held(() => answerBrief(large)) / small,
  1.5,
);

const demands: Demand[] = answer.demands.filter((d) => d.fabricId === answer.demands[0].fabricId);
const stock = { fabricId: demands[0].fabricId, width: 40, folds: 0 } as const;
row(
  "Planner: a first plan of one fabric, with its bound",
  "one size a strip, without a bound",
  await ratio(
    () => planFirst(demands, stock),
    () => planHandbook(demands, stock),
    5,
    50,
  ),
);

const pin = readPin("size = 72 x 27", brief);
if ("problem" in pin) throw new Error(pin.problem);
const searched = (): number => {
  const search = turnRound({ brief, pins: [pin], free: ["strip", "rows", "columns", "borders"] });
  for (let x = search.next(); ; x = search.next()) if (x.done) return x.value.weighed;
};
row(
  `Turned round: one size pinned, ${searched().toLocaleString("en-US")} sentences weighed`,
  "the answer to one sentence",
  await ratio(searched, () => answerBrief(brief), 1, 5),
);

const job = sheetJob(brief, answerBrief(brief), { version: "1", date: "November 25, 2026" });
const sheet = makeSheet(job, "pattern");
const fonts = nodeFonts();
row(
  "Sheets: the pattern set on its pages",
  "the answer it prints",
  await ratio(
    () => makeSheet(job, "pattern"),
    () => answerBrief(brief),
  ),
);
row(
  "PDF: the pattern written",
  "the pattern set on its pages",
  await ratio(
    () => writePdf([sheet], { fonts, created: new Date(0) }),
    () => makeSheet(job, "pattern"),
  ),
);

for (const [what, to, found, most] of await pageRows()) row(what, to, found, most);

const over = rows.filter((r) => r.most !== undefined && r.found > r.most);
const table = [
  "# Figures",
  "",
  "What the program costs. Every figure is how many times as much as a baseline of the same run, the",
  `median of ${RUNS} pairs taken in turn; the machine and its load cancel out, so no times are given.`,
  "Written by `npm run -s bench` from the sample design (`bench/all.ts`, the page in Chromium by",
  "`bench/page-rows.ts`, the median of its own runs); all rows are of that one command. A task on the",
  "main thread is measured by the processor time the thread itself took (`bench/editing.ts`), so that",
  "other programs do not lengthen it. More of the page, of cutting plans, of fabrics and of sheets",
  "against bare drawing calls: `npm run -s bench:page`, `npm run -s bench:cutting`, `bench/fabric.ts`,",
  "`bench/sheets.ts`.",
  "",
  "| cost | beside | times as much | at most |",
  "| --- | --- | --- | --- |",
  ...rows.map((r) => `| ${r.what} | ${r.to} | ${r.found.toFixed(2)} | ${r.most ?? ""} |`),
  "",
].join("\n");
if (!process.argv.includes("--dry")) writeFileSync("docs/figures.md", table);
for (const r of over) console.error(`${r.what}: ${r.found.toFixed(2)} is more than ${r.most}`);
process.exit(over.length > 0 ? 1 : 0);
