// What a zoom about a moving point over 400 blocks of photographed fabric costs beside empty frames: one kind of
// block stamped 400 times, and as many kinds as a design may have, all different, over 400 blocks.
// `npx tsx bench/photo-pan.ts`
import { chromium } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";
import { frames } from "./page-moves.ts";
import { MOST_KINDS, photographed } from "./photo-quilt.ts";

const RUNS = 5;

const server = await servePage();
const browser = await chromium.launch(CHROMIUM);
const median = (xs: number[]): number => xs.toSorted((a, b) => a - b)[Math.floor(xs.length / 2)];

for (const kinds of [1, MOST_KINDS]) {
  const page = await photographed(browser, server.address, kinds);
  await frames(page, "zoom");
  const ratios: number[] = [];
  const worst: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const empty = await frames(page, "nothing");
    const moved = await frames(page, "zoom");
    ratios.push(median(moved) / median(empty));
    worst.push(Math.max(...moved) - median(empty));
  }
  console.log(
    `400 blocks with a photo, ${kinds} ${kinds === 1 ? "kind" : "kinds, all different"}: median frame ${median(ratios).toFixed(2)} times an empty one; worst frame ${median(worst).toFixed(0)} ms over it (median of ${RUNS} runs)`,
  );
  await page.close();
}
await browser.close();
await server.close();
