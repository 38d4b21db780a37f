// How the page keeps up. The longest task on the main thread while 400 blocks are edited, without photos
// and with: of four kinds, and of as many as a design may have, all different. Then frames of a zoom and of
// a pan by two fingers beside empty frames, 400 and 1,600 blocks, in one run.
// `npm run -s bench:page [-- ADDRESS]`
import { chromium, type Page } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";
import { LONGEST, longestTasks } from "./editing.ts";
import { frames, grown } from "./page-moves.ts";
import { MOST_KINDS, photographed } from "./photo-quilt.ts";

const RUNS = 5;

const given = process.argv[2];
const server = given ? { address: given, close: async () => {} } : await servePage();
const browser = await chromium.launch(CHROMIUM);

const median = (xs: number[]): number => xs.toSorted((a, b) => a - b)[Math.floor(xs.length / 2)];

/** Frames of every way of moving beside empty ones, told in one line each. */
async function moves(page: Page, blocks: string): Promise<void> {
  for (const moving of ["zoom", "pan"] as const) {
    await frames(page, moving);
    const ratios: number[] = [];
    const excesses: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const empty = await frames(page, "nothing");
      const moved = await frames(page, moving);
      ratios.push(median(moved) / median(empty));
      excesses.push(Math.max(...moved) - median(empty));
    }
    console.log(
      `${moving}, ${blocks} blocks: median frame ${median(ratios).toFixed(2)} times an empty one; worst frame ${median(excesses).toFixed(0)} ms over it (median of ${RUNS} runs), ${Math.max(...excesses).toFixed(0)} ms in the worst run`,
    );
  }
}

let over = false;

/** The longest task of an edit, told in one line. */
async function edited(page: Page, what: string): Promise<void> {
  const { clock, thread } = await longestTasks(page);
  over ||= thread > LONGEST;
  console.log(
    `edit, 400 blocks${what}: longest task ${thread.toFixed(0)} ms of the thread's own time (at most ${LONGEST}), ${clock.toFixed(0)} ms by the clock`,
  );
  await page.close();
}

const page = await grown(browser, server.address, 20);
await moves(page, "400");
await edited(page, "");
for (const kinds of [4, MOST_KINDS])
  await edited(
    await photographed(browser, server.address, kinds),
    ` of photographed fabric, ${kinds} kinds`,
  );
await moves(await grown(browser, server.address, 40), "1,600");
await browser.close();
await server.close();
process.exit(over ? 1 : 0);
