// How the page keeps up with a quilt of 400 and of 1,600 blocks of two kinds: longest task on the main
// thread while a word is stepped, and frames of a zoom and of a pan by two fingers beside empty
// frames, in one run. `npm run -s bench:page [-- ADDRESS]`
import { chromium, type Page } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";

const RUNS = 5;
const FRAMES = 60;
const STEPS = 6;

const given = process.argv[2];
const server = given ? { address: given, close: async () => {} } : await servePage();
const browser = await chromium.launch(CHROMIUM);

/** The sample grown to so many rows and columns, as a maker would: the word touched, the number typed. */
async function grown(rows: number): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
  // The runner of this script names functions by a helper that the page does not have.
  await page.addInitScript("globalThis.__name = (f) => f");
  await page.goto(server.address);
  await page.locator('[data-word="grid"]').first().click();
  await page.getByRole("textbox", { name: "Rows by columns, typed" }).fill(`${rows} by ${rows}`);
  await page.keyboard.press("Enter");
  await page
    .getByRole("button", {
      name: `How many blocks: ${(rows * rows).toLocaleString("en-US").replace(",", "")} blocks`,
    })
    .waitFor();
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

type Moving = "nothing" | "zoom" | "pan";

/** Times between frames, in milliseconds, while the quilt is moved in every frame, or not at all. */
const frames = (page: Page, moving: Moving): Promise<number[]> =>
  page.evaluate(
    ([count, moving]) =>
      new Promise<number[]>((done) => {
        const canvas = document.querySelector("canvas") as HTMLCanvasElement;
        const box = canvas.getBoundingClientRect();
        const middle = { x: box.left + box.width / 2, y: box.top + box.height / 2 };
        const said = { bubbles: true, cancelable: true };
        const wheel = (deltaY: number, clientX: number): void => {
          const at = { clientX, clientY: middle.y };
          canvas.dispatchEvent(new WheelEvent("wheel", { ...said, ...at, ctrlKey: true, deltaY }));
        };
        const fingers = (what: string, dx: number): void => {
          for (const [pointerId, side] of [
            [1, -40],
            [2, 40],
          ]) {
            const at = { clientX: middle.x + side + dx, clientY: middle.y + dx / 3 };
            const touch = { ...said, ...at, pointerId, pointerType: "touch" };
            canvas.dispatchEvent(new PointerEvent(what, touch));
          }
        };
        if (moving === "pan") {
          for (let i = 0; i < 20; i++) wheel(-14, middle.x);
          fingers("pointerdown", 0);
        }
        const times: number[] = [];
        let last = performance.now();
        const frame = (now: number): void => {
          times.push(now - last);
          last = now;
          if (times.length > count) {
            if (moving === "pan") {
              fingers("pointerup", 0);
              for (let i = 0; i < 20; i++) wheel(14, middle.x);
            }
            done(times.slice(1));
            return;
          }
          const n = times.length;
          if (moving === "zoom")
            wheel(n < count / 2 ? -14 : 14, box.left + box.width * (0.3 + 0.004 * n));
          if (moving === "pan") fingers("pointermove", 120 * Math.sin(n / 8));
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
      }),
    [FRAMES, moving] as const,
  );

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

const page = await grown(20);
await moves(page, "400");
console.log(`edit, 400 blocks: longest task ${(await longestTask(page)).toFixed(0)} ms`);
await page.close();
await moves(await grown(40), "1,600");
await browser.close();
await server.close();
