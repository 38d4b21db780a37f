import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, servePage, tab } from "./harness.ts";

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

test("at the sewing table: a step ticked off by key and a size as typed are there after a reload", async () => {
  const profile = await browser.profile({ viewport: { width: 820, height: 1180 } });
  const page = await tab(profile, `${site.address}#sewing`);
  const first = page.getByRole("checkbox").first();
  await first.waitFor();
  // Typed before the step is ticked off: a step that is done is its name alone.
  const size = page.getByRole("textbox", { name: /half .*across/ }).first();
  await size.fill("8 1/4");
  await size.press("Enter");
  const verdict = page.locator(".verdict").first();
  await verdict
    .getByText(/Let out|Cut again/)
    .first()
    .waitFor();
  await first.focus();
  await page.keyboard.press("Space");
  await page.getByText(/^1 of \d+ steps done/).waitFor();
  await page.waitForTimeout(300);
  await page.reload();
  await page.getByText(/^1 of \d+ steps done/).waitFor();
  expect(await first.isChecked()).toBe(true);
  expect(await size.inputValue()).toBe("8 1/4");
  const box = await page.locator(".tick-box").first().boundingBox();
  expect(box?.height).toBeGreaterThanOrEqual(44);
  expect(profile.complaints).toEqual([]);
  await profile.close();
});

test("blocks are sewn in numbers in a worker; a measured seam changes the share", async () => {
  const profile = await browser.profile();
  const page = await tab(profile, site.address);
  await page.getByRole("button", { name: "Will it make size?" }).click();
  const share = page.getByText(/\d+ of 100 star blocks/).first();
  await share.waitFor();
  const before = await share.textContent();
  await page
    .getByText(/20,000 blocks sewn in numbers, seed 1; every side agrees/)
    .first()
    .waitFor();
  const test = page.getByRole("textbox", { name: "Measured across four strips cut 1 1/2 in" });
  await test.fill("4 5/16");
  await test.press("Enter");
  await page
    .getByText(/By the test, the seam is/)
    .first()
    .waitFor();
  await share.waitFor();
  expect(await share.textContent()).not.toBe(before);
  expect(profile.complaints).toEqual([]);
  await profile.close();
});

test("two widths alone leave a tie, and the page asks for what would part it", async () => {
  const profile = await browser.profile();
  const page = await tab(profile, site.address);
  await page.getByRole("button", { name: "Why is mine off?" }).click();
  for (const name of ["one way", "the other way"]) {
    const field = page
      .getByRole("textbox", { name: `Measured: unfinished width across flats, ${name}` })
      .first();
    await field.fill("8 1/4");
    await field.press("Enter");
  }
  await page.getByText(/The readings do not part these causes/).waitFor();
  await page.getByText("This would tell the most now.").waitFor();
  expect(await page.locator(".causes li").count()).toBeGreaterThan(1);
  expect(profile.complaints).toEqual([]);
  await profile.close();
});
