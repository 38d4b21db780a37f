/**
 * Will it make size, for every setting of an octagon of 8 in: seeded samples beside the closed form.
 * `npx tsx bench/sewing-size.ts [--samples 10000] [--seed 1]`.
 */
import { settings } from "../src/core/sewing/blocks.testing.ts";
import { expectedReach, makeSize, reachesOf, untestedMaker } from "../src/core/sewing/index.ts";

const option = (name: string, otherwise: number): number => {
  const i = process.argv.indexOf(`--${name}`);
  return i === -1 ? otherwise : Number(process.argv[i + 1]);
};
const samples = option("samples", 10_000);
const seed = option("seed", 1);
const maker = untestedMaker("in");
/** Plain corners are cut from squares that leave about 0.4; nothing else is oversize. */
const spareOf = (p: { role: string }): number => (p.role === "corner" ? 0.4 : 0);

console.log(`${samples} blocks each, seed ${seed}, a maker whose seams were not tested`);
for (const [name, block] of Object.entries(settings(4))) {
  const started = performance.now();
  const a = makeSize({
    block,
    seam: 0.25,
    maker,
    spareOf,
    within: 1 / 16,
    seed,
    samples,
  });
  const ms = performance.now() - started;
  const worst = reachesOf(block, 0.25, spareOf).reduce((most, r, i) => {
    const expected = expectedReach(r, block.radial?.n ?? 0, maker);
    const error = a.reaches[i].sd / Math.sqrt(samples);
    return Math.max(most, Math.abs(a.reaches[i].mean - expected.mean) / error);
  }, 0);
  const [w] = a.widths;
  console.log(
    `${name.padEnd(9)} trim ${w.trim.toFixed(3)}  mean ${w.mean.toFixed(4)}  sd ${w.sd.toFixed(4)}  ` +
      `reach it ${(100 * a.share).toFixed(1)} %  off the closed form by at most ${worst.toFixed(2)} standard errors  ${ms.toFixed(0)} ms`,
  );
}
