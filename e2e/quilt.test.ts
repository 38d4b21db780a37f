import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, type Profile, servePage, tab } from "./harness.ts";

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;
let profile: Profile;
let page: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
  profile = await browser.profile();
  page = await tab(profile, site.address);
  await page.getByText("Kept in this browser, read back and equal").waitFor();
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

const ask = (name: string) => page.getByRole("button", { name, exact: true }).click();
const takeBack = () => page.getByRole("button", { name: /^Take back/ }).click();
const grid = (text: string) =>
  page.getByRole("button", { name: `Rows by columns: ${text}` }).waitFor();

test("a size typed gives its ways; one is taken by a touch and taken back", async () => {
  await ask("How big is it?");
  await page.getByLabel("Make it").fill("60 x 72");
  await page.keyboard.press("Enter");
  await page.getByText("exactly").first().waitFor();
  await page.getByRole("button", { name: "Take it: wedges from 3 1/2 in strips" }).click();
  await grid("12 by 10");
  await takeBack();
  await grid("3 by 8");
});

test("a size is offered, planned, and opened", async () => {
  await page.locator('[data-word="size/more"]').click();
  await page.getByRole("textbox", { name: /One more size/ }).fill("throw 48 by 64");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Open the size throw" }).click();
  await grid("8 by 6");
  await takeBack();
});

test("the same blocks are laid otherwise, and a figure across them is lit", async () => {
  await ask("What appears where blocks meet?");
  await page.getByRole("button", { name: "Take it: on point" }).click();
  const figure = page.locator(".figures-seen button").first();
  await figure.click();
  expect(await figure.getAttribute("aria-pressed")).toBe("true");
  await takeBack();
});

test("a block of one's own is said seam by seam", async () => {
  await ask("Say a block of your own");
  await page.locator('[data-word="own/own/more"]').click();
  await page.getByRole("radio", { name: "8 wedges round the center" }).click();
  await page.getByRole("button", { name: "Take it", exact: true }).click();
  await page.locator('[data-word="own/own/seam/0"]').waitFor();
  expect(profile.complaints).toEqual([]);
});

test("stamps that take many frames make the picture that they make in one", async () => {
  const picture = (of: Page) =>
    of.evaluate(() => (document.querySelector("canvas") as HTMLCanvasElement).toDataURL());
  const slow = await profile.context.newPage();
  // By this clock every stamp takes longer than a frame has for them.
  await slow.addInitScript(() => {
    const plain = performance.now.bind(performance);
    let late = 0;
    performance.now = () => plain() + 10 * ++late;
  });
  await slow.goto(site.address);
  const plain = await tab(profile, site.address);
  for (const p of [slow, plain]) await p.locator("canvas").waitFor();
  await expect.poll(async () => (await picture(slow)) === (await picture(plain))).toBe(true);
  const blank = await plain.evaluate(() => {
    const { width, height } = document.querySelector("canvas") as HTMLCanvasElement;
    return Object.assign(document.createElement("canvas"), { width, height }).toDataURL();
  });
  expect(await picture(slow)).not.toBe(blank);
});
