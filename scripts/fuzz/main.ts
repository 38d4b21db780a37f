// Briefs, what they carry, what is typed into their sentences and beside them, command lines, texts,
// bytes and pictures drawn from a seed: none may crash, hang or grow the program, every refusal says
// where and why, and every brief that is accepted keeps the laws (laws.ts).
//   npm run -s fuzz -- [--count 20000] [--seed 1] [--from 0] [--bases 12] [--kind harmed] [--show N]
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import { drawn, KINDS, type Kind, type Plan } from "./cases.ts";
import type { Told } from "./worker.ts";

/** No case may take more than this many seconds of processor time. */
const BUDGET = 10;
/** Nor may the heap grow by more than this between the second tenth of a run and its last. */
const GROWTH = 48 * 2 ** 20;
const MOST_SHOWN = 30;

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "20000" },
    seed: { type: "string", default: "1" },
    from: { type: "string", default: "0" },
    bases: { type: "string", default: "12" },
    kind: { type: "string" },
    show: { type: "string" },
  },
});
const plan: Plan = {
  seed: Number(values.seed),
  bases: Number(values.bases),
  ...(values.kind && { kind: values.kind as Kind }),
};
if (plan.kind && !KINDS.includes(plan.kind)) throw new RangeError(`--kind is one of ${KINDS}`);
for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(4));

if (values.show !== undefined) {
  const { kind, input } = drawn(plan, Number(values.show));
  process.stdout.write(typeof input === "string" || kind === "bytes" ? input : Buffer.from(input));
  process.exit(0);
}

const from = Number(values.from);
const to = from + Number(values.count);
const ends: Record<string, number> = {};
let failures = 0;
let slowest = { seconds: 0, number: from };
const began = cpu();

for (let next = from; next < to; ) next = await stretch(next);

const kinds = Object.entries(ends).sort(([a], [b]) => (a < b ? -1 : 1));
console.log(`${to - from} cases from ${from}, seed ${plan.seed}, ${plan.bases} bases`);
for (const [name, n] of kinds) console.log(`  ${name.padEnd(18)}${n}`);
console.log(
  `slowest case ${slowest.seconds.toFixed(1)} s of processor time (number ${slowest.number}, budget ${BUDGET} s); ${(cpu() - began).toFixed(0)} s in all`,
);
console.log(`${failures} failures`);
process.exit(failures > 0 ? 1 : 0);

function fail(line: string): void {
  if (++failures <= MOST_SHOWN) console.error(line);
}

/** Seconds of processor time this process has used: a busy machine does not make a case slow. */
function cpu(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Runs cases in a worker from `start` until the end, or until one hangs: where to go on. */
function stretch(start: number): Promise<number> {
  const now = new Int32Array(new SharedArrayBuffer(4));
  now[0] = start;
  const worker = new Worker(new URL("./thread.mjs", import.meta.url), {
    workerData: { plan, from: start, to, now },
  });
  return new Promise((resolve, reject) => {
    let last = { number: start, since: cpu() + 5 };
    const watch = setInterval(async () => {
      const number = Atomics.load(now, 0);
      const used = cpu();
      if (process.stderr.isTTY) process.stderr.write(`\r${number - from} of ${to - from}`);
      if (number !== last.number) last = { number, since: used };
      else if (used - last.since > BUDGET) {
        fail(`case ${number}: no end within ${BUDGET} s of processor time`);
        done(number + 1);
      } else if (used - last.since > slowest.seconds)
        slowest = { seconds: used - last.since, number };
    }, 100);
    const done = async (next: number): Promise<void> => {
      clearInterval(watch);
      await worker.terminate();
      resolve(next);
    };
    worker.on("error", (e) => {
      clearInterval(watch);
      reject(e);
    });
    worker.on("message", (told: Told) => {
      if (told.kind === "failed") {
        for (const { law, detail } of told.broken)
          fail(`case ${told.number} (${told.of}): ${law}: ${detail}`);
        return;
      }
      for (const [name, n] of Object.entries(told.ends)) ends[name] = (ends[name] ?? 0) + n;
      const grown = (told.heaps.at(-1) ?? 0) - (told.heaps[1] ?? 0);
      console.log(
        `heap in use by tenths, MB: ${told.heaps.map((h) => Math.round(h / 2 ** 20)).join(" ")}`,
      );
      if (grown > GROWTH) fail(`the heap grew by ${Math.round(grown / 2 ** 20)} MB`);
      done(to);
    });
  });
}
