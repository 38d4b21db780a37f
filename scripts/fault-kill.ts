// Kills the browser at random moments in mid-edit and looks whether an edit that the page had
// called kept is lost.
//   npx tsx scripts/fault-kill.ts [--rounds 10] [--seed 11] [--take 25]
import { parseArgs } from "node:util";
import { killInMidEdit, sums } from "../e2e/killing.ts";

const { values } = parseArgs({
  options: {
    rounds: { type: "string", default: "10" },
    seed: { type: "string", default: "11" },
    take: { type: "string", default: "25" },
  },
});
for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(4));

const rounds = Number(values.rounds);
const killed = await killInMidEdit(rounds, Number(values.seed), {
  takeEvery: Number(values.take),
  tell: (round) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${round} of ${rounds}`);
  },
});
console.log(`seed ${values.seed}, ${sums(killed)}`);
for (const line of [...killed.lost, ...killed.broughtBack]) console.error(line);
process.exit(killed.lost.length > 0 ? 1 : 0);
