import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, servePage, tab } from "./harness.ts";
import { stepsOf, TABLET, walk } from "./tour.ts";

const TOUR = readFileSync(resolve(import.meta.dirname, "../docs/tour.md"), "utf8");

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

test("the tour's steps are done on a tablet, and the page reads as the tour says", async () => {
  const steps = stepsOf(TOUR);
  const kinds = new Set(steps.map((s) => s.kind));
  expect(kinds).toEqual(new Set(["read", "picture", "press", "type", "find"]));
  const profile = await browser.profile(TABLET);
  const page = await tab(profile, site.address);
  await walk(page, steps);
  expect(profile.complaints).toEqual([]);
  await profile.close();
});

test("a tour that says another number, or presses what is not there, stops there", async () => {
  const profile = await browser.profile(TABLET);
  const page = await tab(profile, site.address);
  await page.getByText("64 × 24 in").first().waitFor();
  const patience = 500;
  const wrong = stepsOf(TOUR.replace("64 × 24 in finished", "64 × 25 in finished"));
  await expect(walk(page, wrong, { patience })).rejects.toThrow("64 × 25 in finished");
  const gone = stepsOf("## 1. One\n\nPress **3 by 88**.");
  await expect(walk(page, gone, { patience })).rejects.toThrow("3 by 88");
  expect(() => stepsOf("## 1. One\n\nLook at **3 by 8**.")).toThrow("no step");
  await profile.close();
});
