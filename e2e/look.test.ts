import { mkdirSync } from "node:fs";
import { resolve } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, servePage, tab } from "./harness.ts";

const PICTURES = resolve(import.meta.dirname, "../dist/pictures");
/** `LOOK=1` also takes a picture of every screen, to be looked at. */
const LOOK = process.env.LOOK !== undefined;
const SIZES = {
  desktop: { width: 1440, height: 900 },
  tablet: { width: 834, height: 1112 },
  phone: { width: 390, height: 844 },
} as const;

/** The screens in the order one comes by them, each with the way to it from the one before. */
const SCREENS: [string, (page: Page) => Promise<void>][] = [
  ["rest", async () => {}],
  [
    "word",
    async (page) => {
      await page.locator('[data-word="seam"]').first().click();
      await page.getByRole("button", { name: "Take it" }).waitFor();
      await page.getByText("working it out").first().waitFor({ state: "detached" });
    },
  ],
  [
    "questions",
    async (page) => {
      await page.getByRole("button", { name: "Leave it" }).click();
      const shut = page.locator('h2 button[aria-expanded="false"]');
      while ((await shut.count()) > 0) await shut.first().click();
    },
  ],
  [
    "designs",
    async (page) => {
      await page.getByRole("link", { name: "All designs" }).click();
      await page.getByRole("button", { name: "Keep the present state" }).click();
      await page.getByRole("button", { name: "Go back to the state of" }).waitFor();
      await page.getByRole("button", { name: /^Duplicate/ }).click();
      await page.getByRole("button", { name: /^Delete Copy/ }).click();
      await page.getByRole("button", { name: /^Bring back/ }).waitFor();
    },
  ],
  [
    "crash",
    async (page) => {
      await page.goto(new URL("crash.html", page.url()).href);
      await page.getByText(/kept\.$/).waitFor();
    },
  ],
];

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

/** What is wider than the screen, by how much. */
const tooWide = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Tables with a column that is cut off, on the tablet held either way and on narrow desks. */
async function cutTables(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const width of [768, 834, 1024, 1112, 1180, 1280]) {
    await page.setViewportSize({ width, height: 834 });
    const cut = await page
      .locator(".scroll:visible")
      .evaluateAll((all) =>
        all.filter((e) => e.scrollWidth > e.clientWidth).map((e) => e.textContent?.slice(0, 60)),
      );
    found.push(...cut.map((text) => `${width} px: ${text}`));
  }
  return found;
}

test.each(Object.keys(SIZES) as (keyof typeof SIZES)[])(
  "on a %s every screen, light and dark, is within the screen and axe finds nothing",
  async (size) => {
    const profile = await browser.profile({ viewport: SIZES[size], reducedMotion: "reduce" });
    const page = await tab(profile, site.address);
    await page.getByText("Kept in this browser, read back and equal").waitFor();
    for (const [screen, go] of SCREENS) {
      await go(page);
      expect(await tooWide(page), screen).toBe(0);
      if (size === "tablet" && screen === "questions") {
        expect(await cutTables(page)).toEqual([]);
        await page.setViewportSize(SIZES[size]);
      }
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme });
        const path = resolve(PICTURES, `${screen}-${size}-${colorScheme}.png`);
        if (LOOK) await page.screenshot({ path, fullPage: true });
        // Widest and narrowest show all that a size could change.
        if (size === "tablet") continue;
        // The phone shows every screen and every color; the desktop what it sets side by side.
        if (size === "desktop" && (colorScheme === "dark" || screen !== "questions")) continue;
        // There are no frames: it need not open a page of its own to gather from them.
        const axe = new AxeBuilder({ page }).setLegacyMode(true);
        // The tree is the same in the dark: only colors can be wrong there.
        if (colorScheme === "dark") axe.withRules(["color-contrast"]);
        const { violations } = await axe.analyze();
        const found = violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html}`));
        expect(found, `${screen}, ${colorScheme}`).toEqual([]);
      }
    }
    expect(profile.complaints).toEqual([]);
    await profile.close();
  },
);
