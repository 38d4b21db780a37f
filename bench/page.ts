// How the page keeps up with a quilt of 400 blocks: longest task on the main thread while a word is
// stepped, and frames of a zoom beside empty frames, in one run. `npm run -s bench:page [-- ADDRESS]`
import { chromium, type Page } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";

const RUNS = 5;
const FRAMES = 60;
const STEPS = 6;

const given = process.argv[2];
const server = given ? { address: given, close: async () => {} } : await servePage();
const browser = await chromium.launch(CHROMIUM);

/** The sample grown to 20 by 20, as a maker would: the word touched, the number typed. */
async function grown(): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
  // The runner of this script names functions by a helper that the page does not have.
  await page.addInitScript("globalThis.__name = (f) => f");
  await page.goto(server.address);
  await page.locator('[data-word="grid"]').first().click();
  await page.getByRole("textbox", { name: "Rows by columns, typed" }).fill("20 by 20");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "How many blocks: 400 blocks" }).waitFor();
  await page.locator('.status[aria-busy="false"]').waitFor();
  return page;
}

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

/** Times between frames, in milliseconds: with a zoom in every frame, or with nothing. */
const frames = (page: Page, zooming: boolean): Promise<number[]> =>
  page.evaluate(
    ([count, zooming]) =>
      new Promise<number[]>((done) => {
        const canvas = document.querySelector("canvas") as HTMLCanvasElement;
        const box = canvas.getBoundingClientRect();
        const times: number[] = [];
        let last = performance.now();
        const frame = (now: number): void => {
          times.push(now - last);
          last = now;
          if (times.length > count) {
            done(times.slice(1));
            return;
          }
          if (zooming)
            canvas.dispatchEvent(
              new WheelEvent("wheel", {
                ctrlKey: true,
                deltaY: times.length < count / 2 ? -14 : 14,
                clientX: box.left + box.width * (0.3 + 0.004 * times.length),
                clientY: box.top + box.height / 2,
                bubbles: true,
                cancelable: true,
              }),
            );
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
      }),
    [FRAMES, zooming] as const,
  );

const median = (xs: number[]): number => xs.toSorted((a, b) => a - b)[Math.floor(xs.length / 2)];

const page = await grown();
await frames(page, true);
const ratios: number[] = [];
const excesses: number[] = [];
for (let run = 0; run < RUNS; run++) {
  const empty = await frames(page, false);
  const zoom = await frames(page, true);
  ratios.push(median(zoom) / median(empty));
  excesses.push(Math.max(...zoom) - median(empty));
  console.log(
    `run ${run + 1}: empty ${median(empty).toFixed(1)} ms, zoom ${median(zoom).toFixed(1)} ms, worst ${Math.max(...zoom).toFixed(1)} ms`,
  );
}
console.log(
  `zoom, 400 blocks: median frame ${median(ratios).toFixed(2)} times an empty one; worst frame ${median(excesses).toFixed(0)} ms over it (median of ${RUNS} runs)`,
);
console.log(`edit, 400 blocks: longest task ${(await longestTask(page)).toFixed(0)} ms`);
await browser.close();
await server.close();
