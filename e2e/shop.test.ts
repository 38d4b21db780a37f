import { mkdirSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, servePage, tab } from "./harness.ts";

const PICTURES = resolve(import.meta.dirname, "../dist/pictures");
/** `LOOK=1` also takes a picture at every size, to be looked at. */
const LOOK = process.env.LOOK !== undefined;
const SHELF =
  "fabric;kind;length;cost\nKelp;bolt;8 yd;12,95\nShell;bolt;433;11\nCurrent;bolt;14 yd;13,50\nBasalt;bolt;5 yd;9,80\nSlate;bolt;6 yd;9\nRust;bolt;-3;4\n";

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;

beforeAll(async () => {
  mkdirSync(PICTURES, { recursive: true });
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

async function toShop(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Kits and class" }).click();
  await page.getByRole("heading", { name: "What lies on the shelf?" }).waitFor();
}

async function violations(page: Page, colorsAlone: boolean): Promise<string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode(true);
  if (colorsAlone) axe.withRules(["color-contrast"]);
  const { violations } = await axe.analyze();
  return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html}`));
}

const tooWide = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What is to be touched and is lower than a finger wants, by its words. */
const tooLow = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        "button, select, input[type=text], summary, .tick, .choose",
      ),
    ]
      .filter((e) => e.offsetHeight > 0 && e.offsetHeight < 44)
      .map((e) => e.getAttribute("aria-label") ?? e.textContent ?? ""),
  );

test("a pasted shelf gives kits; ticks, undo and the shelf outlive the visit; sheets are written", async () => {
  const profile = await browser.profile({ reducedMotion: "reduce" });
  const page = await tab(profile, site.address);
  await toShop(page);
  await page.getByLabel(/^Put bolts on it/).fill(SHELF);
  await page.getByRole("button", { name: "Put them on the shelf" }).click();
  await page.getByText("5 bolts.", { exact: true }).waitFor();
  // The bad row is told, and stays in the box.
  await page.getByRole("alert").getByText("line 7").waitFor();
  const box = page.getByLabel(/^Put bolts on it/);
  expect(await box.inputValue()).toBe("fabric | kind | length | cost\nRust | bolt | -3 | 4");
  await page.getByText("9 kits can be cut.").first().waitFor();

  // A way out is taken and taken back.
  await page.getByRole("button", { name: /^Take it: Slate in place of Basalt/ }).click();
  await page.getByText("11 kits can be cut.").first().waitFor();
  await page.keyboard.press("Control+z");
  await page.getByText("9 kits can be cut.").first().waitFor();

  await page.getByRole("button", { name: "Begin the run of 9" }).click();
  await page.getByRole("checkbox", { name: /^Cut 1, kit 1, A Kelp/ }).check();
  await page.getByText("1 of 36 cuts").waitFor();

  const [paper] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Run sheet" }).click(),
  ]);
  expect((await readFile((await paper.path()) as string)).subarray(0, 5).toString()).toBe("%PDF-");

  await page.reload();
  await page.getByRole("heading", { name: "What lies on the shelf?" }).waitFor();
  await page.getByText("5 bolts.", { exact: true }).waitFor();
  expect(await page.getByRole("checkbox", { name: /^Cut 1, kit 1, A Kelp/ }).isChecked()).toBe(
    true,
  );

  await page
    .getByRole("button", { name: "All is cut, with 35 not ticked: take it off the shelf" })
    .click();
  await page.getByLabel("Length of Basalt").and(page.locator('[value="17 in"]')).waitFor();
  // The design's record has the kits, and the run what it took of each bolt.
  await page.getByText("All that is noted (1)").click();
  await page.getByText(/^Kits, version 1, 9 of them, cut \d{4}-\d\d-\d\d$/).waitFor();
  await page.getByText("Basalt: 163 in taken, 17 in left").waitFor({ state: "attached" });
  await page.getByRole("button", { name: /^Take back .*taken off the shelf/ }).click();
  await page.getByLabel("Length of Basalt").and(page.locator('[value="5 yd"]')).waitFor();

  const [list] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "The shelf as CSV" }).click(),
  ]);
  expect(await readFile((await list.path()) as string, "utf8")).toContain("Basalt,bolt,,5 yd,9.80");
  expect(profile.complaints).toEqual([]);
  await profile.close();
});

test("what was handed out is noted; a change of the design tells on the page, and is put right", async () => {
  const profile = await browser.profile({ reducedMotion: "reduce" });
  const page = await tab(profile, site.address);
  await toShop(page);
  await page.getByLabel("To whom, or where it lies").fill("spring class");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Note it" }).click();
  await page.getByText("Nothing that left this design is wrong.").waitFor();
  await page.getByRole("link", { name: "Back to the design" }).click();
  await page.locator('[data-word="seam"]').first().click();
  const choices = page.getByRole("radio");
  await choices.first().waitFor();
  await page.keyboard.press("ArrowRight");
  await page.getByRole("button", { name: "Take it" }).click();
  await page.getByRole("link", { name: "See which, and print a correction" }).click();
  await page.getByText("One thing that left this design is now wrong.").waitFor();
  await page.getByRole("button", { name: "Print as version 2" }).click();
  await page.getByText("which is out with").waitFor({ state: "detached" });
  const [slip] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Print the correction" }).click(),
  ]);
  expect(slip.suggestedFilename()).toBe("tidepool-runner-correction.pdf");
  await page.getByRole("button", { name: "The correction is given out" }).click();
  await page.getByText("Nothing that left this design is wrong.").waitFor();
  await profile.close();
});

test("at every size all of it is within the screen, touchable, and axe finds nothing", async () => {
  const profile = await browser.profile({ reducedMotion: "reduce" });
  const page = await tab(profile, site.address);
  await toShop(page);
  await page.getByLabel(/^Put bolts on it/).fill(SHELF);
  await page.getByRole("button", { name: "Put them on the shelf" }).click();
  await page.getByRole("button", { name: "Begin the run of 9" }).click();
  // The teacher's own pace: a seam of a minute where three quarters were taken for it.
  await page.getByText("Minutes by stage").click();
  const about = page.getByText(/^About .* a student finishes/);
  const before = await about.textContent();
  await page.getByLabel("Minutes for each seam: pinning and matching").fill("5");
  await page.keyboard.press("Enter");
  await page.waitForFunction((was) => !document.body.textContent?.includes(was ?? ""), before);
  await page.getByRole("button", { name: "Add a student" }).click();
  await page.getByLabel("Three strips of Student 1 measured").fill("3 3/8");
  await page.keyboard.press("Enter");
  await page
    .getByText(/too wide/)
    .first()
    .waitFor();
  await page.evaluate(() => {
    for (const shut of document.querySelectorAll("details")) shut.open = true;
  });
  for (const [name, width, height] of [
    ["desktop", 1440, 900],
    ["tablet", 834, 1112],
    ["phone", 390, 844],
  ] as const) {
    await page.setViewportSize({ width, height });
    expect(await tooWide(page), name).toBe(0);
    expect(await tooLow(page), name).toEqual([]);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      const path = resolve(PICTURES, `shop-${name}-${colorScheme}.png`);
      if (LOOK) await page.screenshot({ path, fullPage: true });
      // Narrowest shows all that a size could change; in the dark only colors can be wrong.
      if (name === "phone") expect(await violations(page, colorScheme === "dark")).toEqual([]);
    }
  }
  expect(profile.complaints).toEqual([]);
  await profile.close();
});
