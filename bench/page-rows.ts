import { gzipSync } from "node:zlib";
import { type Browser, chromium, type Page } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";
import { frames, grown } from "./page-moves.ts";

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
    const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
    await page.goto(server.address);
    await page.locator("[data-question]").first().waitFor();
    await page.locator('.status[aria-busy="false"]').waitFor();
    const steps: number[] = [];
    // Always onward: an answer that was heard before is not asked for again.
    for (let i = 0; i < 2 * RUNS; i++) steps.push(await stepped(page, "ArrowUp"));
    await page.close();
    const large = await grown(browser, server.address, 40);
    const pans: number[] = [];
    await frames(large, "pan");
    for (let i = 0; i < RUNS; i++) {
      const empty = median(await frames(large, "nothing"));
      pans.push(median(await frames(large, "pan")) / empty);
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
      [
        "Redraw: a word stepped until the page has answered again",
        "the first answer of a new page",
        median(steps) / median(first),
      ],
      ["Pan: a frame of a quilt of 1,600 blocks", "a frame without", median(pans)],
    ];
  } finally {
    await browser.close();
    await server.close();
  }
}
