// Answers follow kinds of block, not their number: 20 x 20 against 2 x 2 of the same blocks, paired.
// `npm run -s bench:answers`
import { performance } from "node:perf_hooks";
import tidepool from "../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../src/core/answer/index.ts";
import { type Brief, readDocument } from "../src/core/brief/index.ts";

const RUNS = 31;
const WARM = 5;

const read = readDocument(tidepool);
if (!read.ok) throw new Error("the sample is refused");
const sized = (rows: number, columns: number): Brief => ({
  ...read.brief,
  quilt: { ...read.brief.quilt, rows, columns },
});
const timed = (brief: Brief): number => {
  const start = performance.now();
  answerBrief(brief);
  return performance.now() - start;
};
const median = (xs: number[]): number => xs.toSorted((a, b) => a - b)[Math.floor(xs.length / 2)];

const base = sized(2, 2);
for (const [rows, columns] of [
  [20, 20],
  [40, 40],
  [100, 100],
] as const) {
  const large = sized(rows, columns);
  for (let i = 0; i < WARM; i++) [base, large].forEach(timed);
  const pairs = Array.from({ length: RUNS }, () => [timed(base), timed(large)] as const);
  const ratio = median(pairs.map(([a, b]) => b / a));
  console.log(
    `${rows} x ${columns}: ${median(pairs.map((p) => p[1])).toFixed(1)} ms, 2 x 2: ${median(pairs.map((p) => p[0])).toFixed(1)} ms, ratio ${ratio.toFixed(2)}`,
  );
}
