/**
 * How often the diagnosis is right: seeded circles with one planted fault, sewn piece by piece and
 * read by hand. `npx tsx bench/sewing-diagnosis.ts [--blocks 1000] [--seed 1] [--wedges 8] [--json]`.
 */
import { runDiagnosis, SETUP } from "../src/core/sewing/trial.testing.ts";

const option = (name: string, otherwise: number): number => {
  const i = process.argv.indexOf(`--${name}`);
  return i === -1 ? otherwise : Number(process.argv[i + 1]);
};

const setup = {
  ...SETUP,
  blocks: option("blocks", 1000),
  seed: option("seed", 1),
  wedges: option("wedges", 8),
};
const started = performance.now();
const result = runDiagnosis(setup);
if (process.argv.includes("--json")) console.log(JSON.stringify({ setup, result }));
else {
  const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
  console.log(`${setup.blocks} circles of ${setup.wedges} wedges, seed ${setup.seed}`);
  console.log(`right cause first        ${percent(result.rightFirst)}`);
  for (const [cause, share] of Object.entries(result.byCause))
    console.log(`  ${cause.padEnd(22)} ${percent(share)}`);
  console.log(`said sure                ${percent(result.sure)}`);
  console.log(`right when sure          ${percent(result.rightWhenSure)}`);
  console.log(`said tie, right among    ${percent(result.tie)}, ${percent(result.rightAmongTied)}`);
  console.log(
    `seam within 1/128 in     ${percent(result.seamWithin)} (worst ${result.seamWorst.toFixed(5)} in)`,
  );
  console.log(
    `angle within 1/12 degree ${percent(result.angleWithin)} (worst ${result.angleWorst.toFixed(4)} degree)`,
  );
  console.log(`no fault, accused        ${percent(result.accused)} of ${setup.blocks}`);
  console.log(`fault of 1/32, missed    ${percent(result.missed)}`);
  for (const [cause, share] of Object.entries(result.missedByCause))
    console.log(`  ${cause.padEnd(22)} ${percent(share)}`);
  console.log(`${(performance.now() - started).toFixed(0)} ms`);
}
