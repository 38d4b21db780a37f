// Every fault the work must outlive, one after another: the tests of each, then the browser killed in
// mid-edit. Says how many of each were tried and held; ends with code 1 when one did not.
//   npm run -s fault -- [--kills 20] [--seed 11]
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { killInMidEdit, sums } from "../e2e/killing.ts";

/** What is put wrong, and the tests that do it: file, and words in their names. */
const FAULTS: readonly (readonly [string, string, RegExp])[] = [
  ["storage quota reached", "src/web/keep/faults", /^storage full/],
  ["storage quota reached, in Chromium", "e2e/keep", /a full storage/],
  ["storage cleared", "src/web/keep/faults", /storage cleared/],
  ["storage cleared, in Chromium", "e2e/keep", /a storage cleared/],
  ["storage switched off", "src/web/keep/faults", /without any storage/],
  ["storage that lies", "src/web/keep/faults", /read back and differs/],
  ["database of an older or newer version", "src/web/keep/faults", /^databases of other/],
  ["corrupted record", "src/web/keep/faults", /^a damaged record/],
  ["corrupted record, in Chromium", "e2e/keep", /^the crash page/],
  ["two and five tabs", "src/web/keep/store", /^several tabs/],
  ["two and five tabs, in Chromium", "e2e/keep", /^in several tabs/],
  ["clock set back", "src/web/keep/store", /a clock set back/],
  ["file changed by another program", "e2e/keep", /a file another program changed/],
  ["any one question of the page fails", "e2e/page", /^when a part of the page fails/],
  [
    "any one question throws, in the core",
    "src/core/answer/stages.fail",
    /^a question that throws/,
  ],
  ["a stage or the sentence throws", "src/core/answer/stages.fail", /^(a stage|the sentence)/],
  ["second copies keep up", "src/web/keep/second", /./],
  ["a database thrown away, in Chromium", "e2e/keep", /a database lost between two visits/],
  ["answering worker crashes or hangs", "src/web/worker/rpc", /^what goes wrong/],
  ["answering worker crashes, in Chromium", "e2e/fault", /workers? that die/],
  ["solver crashes, in Chromium", "e2e/fault", /a solver that/],
  ["brief saved by an editor while a command has it", "src/cli/cli", /an editor saves/],
  ["files worked on since they were written", "src/cli/cli", /not written over/],
  ["disk full on the command line", "src/cli/cli", /on a disk without room/],
];

const { values } = parseArgs({
  options: { kills: { type: "string", default: "20" }, seed: { type: "string", default: "11" } },
});
for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(4));

interface Assertion {
  readonly ancestorTitles: readonly string[];
  readonly title: string;
  readonly status: string;
}
interface Report {
  readonly testResults: readonly { name: string; assertionResults: readonly Assertion[] }[];
}

const folder = mkdtempSync(join(tmpdir(), "fault-"));
const report = join(folder, "report.json");
const files = [...new Set(FAULTS.map(([, file]) => `${file}.test.ts`))];
spawnSync(
  process.execPath,
  ["node_modules/vitest/vitest.mjs", "run", ...files, "--reporter=json", `--outputFile=${report}`],
  { stdio: ["ignore", "ignore", "inherit"] },
);
const { testResults } = JSON.parse(readFileSync(report, "utf8")) as Report;
rmSync(folder, { recursive: true, force: true });

let held = true;
const row = (name: string, tried: number, of: number): void => {
  held &&= tried === of && of > 0;
  console.log(`${name.padEnd(50)}${String(of).padStart(5)} tried${String(tried).padStart(6)} held`);
};
for (const [name, file, words] of FAULTS) {
  const tests = testResults
    .filter((t) => t.name.endsWith(`${file}.test.ts`))
    .flatMap((t) => t.assertionResults)
    .filter((a) => words.test([...a.ancestorTitles, a.title].filter(Boolean).join(" ")));
  row(name, tests.filter((t) => t.status === "passed").length, tests.length);
}

const kills = Number(values.kills);
const tell = (round: number): void => {
  if (process.stderr.isTTY) process.stderr.write(`\rkill ${round} of ${kills}`);
};
const killed = await killInMidEdit(kills, Number(values.seed), { tell });
row(`browser killed in mid-edit (seed ${values.seed})`, kills - killed.lost.length, kills);
console.log(sums(killed));
for (const line of [...killed.lost, ...killed.broughtBack]) console.error(line);
process.exit(held ? 0 : 1);
