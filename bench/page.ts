// How the page keeps up with a quilt of 400 and of 1,600 blocks of two kinds: longest task on the main
// thread while a word is stepped, and frames of a zoom and of a pan by two fingers beside empty
// frames, in one run. `npm run -s bench:page [-- ADDRESS]`
import { chromium, type Page } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";
import { frames, grown } from "./page-moves.ts";

const RUNS = 5;
const STEPS = 6;

const given = process.argv[2];
const server = given ? { address: given, close: async () => {} } : await servePage();
const browser = await chromium.launch(CHROMIUM);

/** Longest task, in milliseconds, while the strip is stepped up and down again. */
async function longestTask(page: Page): Promise<number> {
  await page.evaluate(() => {
    const w = window as unknown as { tasks: number[] };
    w.tasks = [];
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) w.tasks.push(entry.duration);
    }).observe({ type: "longtask" });
  });
  const strip = page.locator('[data-word^="strip/"]').first();
  await strip.focus();
  for (let i = 0; i < STEPS; i++) {
    await page.keyboard.press(i % 2 === 0 ? "ArrowUp" : "ArrowDown");
    await page
      .locator('.status[aria-busy="true"]')
      .waitFor({ timeout: 2000 })
      .catch(() => {});
    await page.locator('.status[aria-busy="false"]').waitFor();
  }
  const tasks = await page.evaluate(() => (window as unknown as { tasks: number[] }).tasks);
  return Math.max(0, ...tasks);
}

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

const page = await grown(browser, server.address, 20);
await moves(page, "400");
console.log(`edit, 400 blocks: longest task ${(await longestTask(page)).toFixed(0)} ms`);
await page.close();
await moves(await grown(browser, server.address, 40), "1,600");
await browser.close();
await server.close();
