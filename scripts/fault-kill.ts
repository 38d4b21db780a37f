// Kills the browser at random moments in mid-edit and looks whether an edit that the page had
// called kept is lost.
//   npx tsx scripts/fault-kill.ts [--rounds 10] [--seed 11]
import { parseArgs } from "node:util";
import { killInMidEdit } from "../e2e/killing.ts";

const { values } = parseArgs({
  options: { rounds: { type: "string", default: "10" }, seed: { type: "string", default: "11" } },
});
for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(4));

const rounds = Number(values.rounds);
const { kills, confirmed, inFlight, lost } = await killInMidEdit(
  rounds,
  Number(values.seed),
  (round) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${round} of ${rounds}`);
  },
);
console.log(
  `${kills} kills (seed ${values.seed}): ${confirmed} edits confirmed, ` +
    `${inFlight} kills with an edit under way, ${lost.length} confirmed edits lost`,
);
for (const line of lost) console.error(line);
process.exit(lost.length > 0 ? 1 : 0);
