import { gzipSync } from "node:zlib";
import { type Browser, chromium, type Page } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";
import { LONGEST, longestTasks } from "./editing.ts";
import { frames, grown } from "./page-moves.ts";
import { MOST_KINDS, photographed } from "./photo-quilt.ts";

const RUNS = 7;
const median = (xs: readonly number[]): number =>
  xs.toSorted((a, b) => a - b)[Math.floor(xs.length / 2)];

/** Most bytes of script, compressed, before the first answer stands there (e2e/page.test.ts). */
const MOST_BYTES = 250_000;

/** What the page costs beside baselines of the same run: name, baseline, ratio, the most it may be. */
export type PageRow = readonly [string, string, number, number?];

/** Milliseconds from asking for an address until `selector` is there, in a profile never used before. */
async function shownAfter(browser: Browser, address: string, selector: string): Promise<number> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.addInitScript((selector) => {
    new MutationObserver((_, watching) => {
      if (!document.querySelector(selector)) return;
      performance.mark("shown");
      watching.disconnect();
    }).observe(document, { childList: true, subtree: true });
  }, selector);
  await page.goto(address);
  await page.locator(selector).first().waitFor();
  const [{ startTime }] = await page.evaluate(() =>
    performance.getEntriesByName("shown").map(({ startTime }) => ({ startTime })),
  );
  await context.close();
  return startTime;
}

/** Bytes of script, compressed, that were asked for before the first question stood there. */
async function startBytes(browser: Browser, address: string): Promise<number> {
  const page = await browser.newPage();
  await page.addInitScript(() => {
    new MutationObserver((_, watching) => {
      if (!document.querySelector("[data-question]")) return;
      performance.mark("answered");
      watching.disconnect();
    }).observe(document, { childList: true, subtree: true });
  });
  await page.goto(address);
  await page.locator("[data-question]").first().waitFor();
  const names = await page.evaluate(() => {
    const [{ startTime: answered }] = performance.getEntriesByName("answered");
    const asked = performance.getEntriesByType("resource").filter((r) => r.startTime < answered);
    return [...new Set(asked.map((r) => r.name))].filter((name) => name.endsWith(".js"));
  });
  await page.close();
  const sizes = await Promise.all(
    names.map(async (name) => {
      const bytes = Buffer.from(await (await fetch(name)).arrayBuffer());
      return gzipSync(bytes, { level: 9 }).length;
    }),
  );
  return sizes.reduce((a, b) => a + b, 0);
}

/** Milliseconds from a key that steps the strip until the page has answered again. */
async function stepped(page: Page, key: string): Promise<number> {
  await page.locator('[data-word^="strip/"]').first().focus();
  const before = await page.locator('[data-word^="strip/"]').first().textContent();
  const start = performance.now();
  await page.keyboard.press(key);
  await page.waitForFunction(
    (before) =>
      document.querySelector('[data-word^="strip/"]')?.textContent !== before &&
      document.querySelector('.status[aria-busy="false"]') !== null,
    before,
    { polling: "raf" },
  );
  return performance.now() - start;
}

const blocks = (side: number): string =>
  side === 1 ? "1 block" : `${(side * side).toLocaleString("en-US")} blocks`;

/** A word stepped, and a frame of a pan, in quilts of 100, 1, 1,600 and 10,000 blocks. */
async function redrawn(browser: Browser, address: string, start: number): Promise<PageRow[]> {
  const redraws: PageRow[] = [];
  const pans: PageRow[] = [];
  let hundred = 0;
  for (const side of [10, 1, 40, 100]) {
    const page = await grown(browser, address, side);
    const steps: number[] = [];
    // Always onward: an answer that was heard before is not asked for again.
    for (let i = 0; i < 2 * RUNS; i++) steps.push(await stepped(page, "ArrowUp"));
    const step = median(steps);
    if (side === 10) hundred = step;
    redraws.push(
      side === 10
        ? [
            "Redraw: a word stepped until 100 blocks are answered again",
            "the first answer of a new page",
            step / start,
          ]
        : [
            `Redraw: a word stepped, ${blocks(side)}`,
            "100 blocks of the same kinds",
            step / hundred,
          ],
    );
    const ratios: number[] = [];
    await frames(page, "pan");
    for (let i = 0; i < RUNS; i++) {
      const empty = median(await frames(page, "nothing"));
      ratios.push(median(await frames(page, "pan")) / empty);
    }
    pans.push([`Pan: a frame of a quilt of ${blocks(side)}`, "a frame without", median(ratios)]);
    await page.close();
  }
  return [...redraws, ...pans];
}

/** The longest task on the main thread while 400 blocks are edited, without photos and with. */
async function edited(browser: Browser, address: string): Promise<PageRow[]> {
  const told = async (what: string, page: Page): Promise<PageRow> => {
    const { thread } = await longestTasks(page);
    await page.close();
    return [
      `Edit: the longest task on the main thread, ${what}`,
      `the most it may be, ${LONGEST} ms`,
      thread / LONGEST,
      1,
    ];
  };
  return [
    await told("400 blocks", await grown(browser, address, 20)),
    await told(
      "400 blocks of photographed fabric, 4 kinds",
      await photographed(browser, address, 4),
    ),
    await told(
      `400 blocks of photographed fabric, ${MOST_KINDS} kinds, as many as there may be`,
      await photographed(browser, address, MOST_KINDS),
    ),
  ];
}

export async function pageRows(): Promise<PageRow[]> {
  const server = await servePage();
  const browser = await chromium.launch(CHROMIUM);
  try {
    const bytes = await startBytes(browser, server.address);
    const first: number[] = [];
    const bare: number[] = [];
    for (let i = 0; i <= RUNS; i++) {
      const one = await shownAfter(browser, server.address, "[data-question]");
      const other = await shownAfter(browser, `${server.address}crash.html`, "main li, main p");
      // The first pair finds nothing in the machine's own memory.
      if (i > 0) {
        first.push(one);
        bare.push(other);
      }
    }
    return [
      [
        "Start: script before the first answer, compressed",
        `the most it may be, ${MOST_BYTES / 1000} kB`,
        bytes / MOST_BYTES,
        1,
      ],
      [
        "Start: until the first answer stands there",
        "until the crash page does",
        median(first.map((t, i) => t / bare[i])),
      ],
      ...(await redrawn(browser, server.address, median(first))),
      ...(await edited(browser, server.address)),
    ];
  } finally {
    await browser.close();
    await server.close();
  }
}
