import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { openBrowser, type Profile, servePage, tab } from "./harness.ts";

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;
let profile: Profile;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});
beforeEach(async () => {
  profile = await browser.profile();
});
afterEach(async () => {
  expect(profile.complaints).toEqual([]);
  await profile.close();
});

const kept = (page: Page) => page.getByText("Kept in this browser, read back and equal").waitFor();
const strip = (page: Page) => page.locator('[data-word^="strip/"]').first();

/** A page whose next `torn` questions end their worker instead of being answered. */
async function tearable(): Promise<Page> {
  const page = await profile.context.newPage();
  await page.addInitScript(() => {
    const ask = Worker.prototype.postMessage;
    Object.assign(globalThis, { torn: 0 });
    Worker.prototype.postMessage = function (this: Worker, ...args: never[]): void {
      const state = globalThis as unknown as { torn: number };
      if (state.torn <= 0) {
        ask.apply(this, args as never);
        return;
      }
      state.torn--;
      this.terminate();
      setTimeout(() => this.dispatchEvent(new ErrorEvent("error", { message: "torn" })));
    };
  });
  await page.goto(site.address);
  await kept(page);
  return page;
}

const tear = (page: Page, times: number): Promise<void> =>
  page.evaluate((times) => void Object.assign(globalThis, { torn: times }), times);

/** Steps the strip by one mark. */
async function press(page: Page): Promise<void> {
  await strip(page).focus();
  await page.keyboard.press("ArrowUp");
}

/** Steps the strip by one mark and waits until the page shows it. */
async function step(page: Page): Promise<void> {
  const before = await strip(page).textContent();
  await press(page);
  await expect.poll(() => strip(page).textContent()).not.toBe(before);
}

test("a worker that dies is started again; nobody notices", async () => {
  const page = await tearable();
  const before = await strip(page).textContent();
  await tear(page, 1);
  await step(page);
  await kept(page);
  expect(await strip(page).textContent()).not.toBe(before);
  expect(await page.getByText("could not be worked out").count()).toBe(0);
});

test("workers that die again and again: it is said, the edit is kept, and the next one is answered", async () => {
  const page = await tearable();
  const before = await strip(page).textContent();
  await tear(page, 1000);
  await press(page);
  await page.getByText(/could not be worked out/).waitFor();
  await kept(page);
  await tear(page, 0);
  await step(page);
  await page.getByText(/could not be worked out/).waitFor({ state: "detached" });
  await page.reload();
  await kept(page);
  await page.getByRole("button", { name: /^Take back/ }).click();
  await page.getByRole("button", { name: /^Take back/ }).click();
  await expect.poll(() => strip(page).textContent()).toBe(before);
});

test("a solver that cannot be had: the first plan stays, it is said, and asking again works", async () => {
  await profile.context.route("**/*.wasm", (route) => route.abort());
  const page = await tab(profile, site.address);
  await kept(page);
  await page.getByRole("button", { name: "Is there enough?" }).click();
  const least = page.locator(".least");
  await least
    .getByText("The search for a shorter plan stopped by itself; this plan holds.")
    .waitFor();
  await profile.context.unroute("**/*.wasm");
  await least.getByRole("button").click();
  await least.getByText("Proved least.").waitFor();
});

test("a solver that dies in mid-search: the first plan stays, edits are kept, and it is started again", async () => {
  const page = await profile.context.newPage();
  await page.addInitScript(() => {
    const ask = Worker.prototype.postMessage;
    Object.assign(globalThis, { deaths: 1 });
    Worker.prototype.postMessage = function (this: Worker, ...args: never[]): void {
      ask.apply(this, args as never);
      const state = globalThis as unknown as { deaths: number };
      // Only what looks for plans is asked with a design alone.
      if (state.deaths <= 0 || !("format" in (args[0] as object))) return;
      state.deaths--;
      setTimeout(() => {
        this.terminate();
        this.dispatchEvent(new ErrorEvent("error", { message: "out of memory" }));
      }, 20);
    };
  });
  await page.goto(site.address);
  await kept(page);
  await page.getByRole("button", { name: "Is there enough?" }).click();
  const least = page.locator(".least");
  await least.getByText("stopped by itself; this plan holds.").waitFor();
  await step(page);
  await kept(page);
  await least.getByText("Proved least.").waitFor();
});
