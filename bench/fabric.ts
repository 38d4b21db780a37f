// What the fabric's picture costs, and how sure the eye for stripes is. Seeded; prints figures only.
// `npx tsx bench/fabric.ts [pictures]`
import { performance } from "node:perf_hooks";
import { radialBlock } from "../src/core/block/index.ts";
import { blockLook, type Look, Shrinker, stripeFoundIn } from "../src/core/fabric/index.ts";
import { randomStripe, stripePicture } from "../src/core/fabric/photo/stripes.testing.ts";

const pictures = Number(process.argv[2] ?? 200);
const timed = <T>(work: () => T): [T, number] => {
  const start = performance.now();
  const result = work();
  return [result, performance.now() - start];
};

/** Stripe pictures no test uses: seeds from 10 001. */
function stripes(): void {
  let right = 0;
  let unsure = 0;
  const wrong: number[] = [];
  const errors: number[] = [];
  let spent = 0;
  for (let seed = 10_001; seed <= 10_000 + pictures; seed++) {
    const picture = randomStripe(seed);
    const pixels = stripePicture(picture);
    const [found, ms] = timed(() => stripeFoundIn(pixels));
    spent += ms;
    const error = Math.abs(found.period / picture.period - 1);
    if (!found.sure) unsure++;
    else if (error <= 0.01) {
      right++;
      errors.push(error);
    } else wrong.push(seed);
  }
  errors.sort((a, b) => a - b);
  const median = (100 * errors[Math.floor(errors.length / 2)]).toFixed(3);
  console.log(
    `stripe pictures: ${pictures}, right ${right}, unsure ${unsure}, wrong ${wrong.length}` +
      `${wrong.length > 0 ? ` (seeds ${wrong.join(", ")})` : ""}; median error ${median} %; ${(spent / pictures).toFixed(0)} ms each`,
  );
}

/** One block's picture, and 400 all different (a free round from 7 strips). */
function blocks(): void {
  const geometry = radialBlock({
    id: "b",
    n: 8,
    outline: "square",
    turned: "flat",
    a: 4,
    half: 4,
    whole: [],
    join: 1e-9,
  });
  const bands = [1.3, 2, 3.1, 4.4, 5.9].map((to, i, all) => ({
    from: i === 0 ? 0 : all[i - 1],
    to,
    color: `#${String(i + 2).repeat(6)}`,
    fabricId: "s",
  }));
  const look: Look = { kind: "bands", fabricId: "s", bands, period: 5.9, tilt: 0 };
  const plain: Look = { kind: "plain", fabricId: "p", color: "#EEEEEE" };
  const fabricOf = Object.fromEntries(
    geometry.patches.map((p) => [p.id, p.role.startsWith("wedge") ? "s" : "p"]),
  );
  const one = (dealt: number) =>
    blockLook({
      block: {
        kind: "wedges",
        id: "b",
        n: 8,
        outline: "square",
        strip: "4 1/2",
        setting: "plain",
        fabric: { wedge: "s", corner: "p" },
      },
      geometry,
      fabricOf,
      looks: { s: look, p: plain },
      pieceOf: {},
      wedge: { a: 4, seam: 0.25, past: 0.25 },
      unit: "in",
      strips: { "": 7 },
      dealt,
    });
  for (let i = 0; i < 200; i++) one(i);
  const [, single] = timed(() => one(3));
  const [, all] = timed(() => Array.from({ length: 400 }, (_, i) => one(i)));
  console.log(
    `block pictures: one ${single.toFixed(2)} ms, 400 all different ${all.toFixed(0)} ms`,
  );
}

/** 24 megapixels made small row by row. */
function shrink(): void {
  const row = new Uint8ClampedArray(6000 * 4).fill(255);
  const before = process.memoryUsage().arrayBuffers;
  const work = new Shrinker(6000, 4000, 512);
  const [, ms] = timed(() => {
    for (let y = 0; y < 4000; y++) work.push(row);
    return work.finish();
  });
  const kept = (process.memoryUsage().arrayBuffers - before) / 1024 / 1024;
  console.log(`24 megapixels to 512: ${ms.toFixed(0)} ms, ${kept.toFixed(1)} MiB held`);
}

blocks();
shrink();
stripes();
