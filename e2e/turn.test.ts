import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, servePage, tab } from "./harness.ts";

let browser: Awaited<ReturnType<typeof openBrowser>>;
let server: Awaited<ReturnType<typeof servePage>>;

beforeAll(async () => {
  [browser, server] = [await openBrowser(), await servePage()];
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

test("an answer is pinned, words are freed, and a sentence found is taken and undone", async () => {
  const profile = await browser.profile();
  const page = await tab(profile, server.address);
  await page.getByRole("button", { name: /^Pin the size/ }).click();
  const pin = page.getByRole("textbox", { name: "Pin 1" });
  await pin.fill("size = 72 x 27");
  // The words that can move say so in the sentence, and are freed and held there by the keyboard.
  await expect.poll(() => page.locator('.word.freed[data-word="grid"]').count()).toBe(1);
  const border = page.locator('.sentence .word[data-word^="border"][aria-pressed]').first();
  expect(await border.getAttribute("aria-pressed")).toBe("false");
  expect(await border.getAttribute("aria-label")).toContain("free to move");
  await border.focus();
  await page.keyboard.press("Enter");
  await expect.poll(() => border.getAttribute("aria-pressed")).toBe("true");
  await page.getByRole("checkbox", { name: "outer border", checked: true }).waitFor();
  await page.locator("#saying", { hasText: "free to move." }).waitFor();
  expect(await page.locator('.word[data-word="seam"]').getAttribute("aria-pressed")).toBe(null);
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .include(".sentence")
    .include(".can-pin")
    .analyze();
  expect(violations.map((v) => v.id)).toEqual([]);
  const found = page.locator(".turn .sentences li");
  await page.getByText(/sentences within the limits weighed/).waitFor();
  expect(await found.count()).toBeGreaterThanOrEqual(3);
  expect(await found.first().locator("mark").count()).toBeGreaterThan(0);
  await found.first().getByRole("button", { name: "Take it" }).click();
  await page.locator(".turn").waitFor({ state: "detached" });
  const size = page.locator(".question", { hasText: "How big is it?" }).locator(".line");
  await expect.poll(() => size.textContent()).toContain("72");
  await page.keyboard.press("Control+z");
  await expect.poll(() => size.textContent()).toContain("64");
  expect(profile.complaints).toEqual([]);
  await profile.close();
});

test("nothing fits: the pin to loosen is named; a pin that is not one says why; axe finds nothing", async () => {
  const profile = await browser.profile({ viewport: { width: 390, height: 844 } });
  const page = await tab(profile, server.address);
  await page
    .getByRole("button", { name: /^Pin .* yd of/ })
    .first()
    .click();
  const pin = page.getByRole("textbox", { name: "Pin 1" });
  await pin.fill("joy = 3");
  await page.getByText("is not a pin").first().waitFor();
  await pin.fill("yardage B <= 1/8 yd");
  await page.getByRole("checkbox", { name: "rows" }).uncheck();
  await page.getByRole("checkbox", { name: "strip" }).uncheck();
  await page.locator(".turn b", { hasText: "Nothing fits." }).waitFor();
  await page.locator(".turn .lead").first().waitFor();
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .include(".turn")
    .analyze();
  expect(violations.map((v) => v.id)).toEqual([]);
  await page.getByRole("button", { name: "Let all pins go" }).press("Enter");
  await page.locator(".turn").waitFor({ state: "detached" });
  await profile.close();
});

test("what the fabric that is here makes: bad rows told, layouts to scale, the design opened", async () => {
  const profile = await browser.profile({ viewport: { width: 820, height: 1100 } });
  const page = await tab(profile, server.address);
  await page.getByRole("link", { name: "All designs" }).click();
  const list = page.getByRole("textbox", { name: /Bolts, quarters, strips and scraps/ });
  await list.fill(
    ["Shell", "Current", "Kelp", "Basalt"].map((f) => `${f};40;3 yd;1;bolt`).join("\n") +
      "\nKelp;21;18;2;quarter\nShell;40;-3;1;bolt",
  );
  await page.getByText("5 rows read.").waitFor();
  expect(await page.locator(".from-here li").allTextContents()).toEqual([
    expect.stringContaining("ine 6"),
  ]);
  await page.getByRole("button", { name: "See what it makes" }).click();
  const made = page.locator(".projects > li").first();
  await made.getByText(/of all that is here/).waitFor();
  await made.getByRole("button", { name: /Its cutting layouts/ }).click();
  await expect.poll(() => made.locator("figure svg").count()).toBeGreaterThanOrEqual(4);
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .include(".from-here")
    .analyze();
  expect(violations.map((v) => v.id)).toEqual([]);
  await made.getByRole("button", { name: /^Open it/ }).click();
  await page.locator(".sentence").first().waitFor();
  expect(profile.complaints).toEqual([]);
  await profile.close();
});
