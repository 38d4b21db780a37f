import { mkdirSync } from "node:fs";
import { resolve } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openBrowser, servePage, tab } from "./harness.ts";

const PICTURES = resolve(import.meta.dirname, "../dist/pictures");
const SIZES = {
  desktop: { width: 1440, height: 900 },
  tablet: { width: 834, height: 1112 },
  phone: { width: 390, height: 844 },
} as const;

/** Each screen by the way to it from the page as it opens. */
const SCREENS: Record<string, (page: Page) => Promise<void>> = {
  rest: async () => {},
  word: async (page) => {
    await page.locator('[data-word="seam"]').first().click();
    await page.getByRole("button", { name: "Take it" }).waitFor();
    await page.getByText("working it out").first().waitFor({ state: "detached" });
  },
  questions: async (page) => {
    for (;;) {
      const shut = page.locator('h2 button[aria-expanded="false"]');
      if ((await shut.count()) === 0) break;
      await shut.first().click();
    }
  },
  designs: async (page) => {
    await page.getByRole("link", { name: "All designs" }).click();
    await page.getByRole("button", { name: "Keep the present state" }).click();
    await page.getByRole("button", { name: "Go back to the state of" }).waitFor();
    await page.getByRole("button", { name: /^Duplicate/ }).click();
    await page.getByRole("button", { name: /^Delete Copy/ }).click();
    await page.getByRole("button", { name: /^Bring back/ }).waitFor();
  },
  crash: async (page) => {
    await page.goto(new URL("crash.html", page.url()).href);
    await page.getByText(/kept\.$/).waitFor();
  },
};

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

describe.each(Object.keys(SIZES) as (keyof typeof SIZES)[])("%s", (size) => {
  test.each(Object.keys(SCREENS))(
    "%s, light and dark: within the screen, and axe finds nothing",
    async (screen) => {
      const profile = await browser.profile({ viewport: SIZES[size] });
      const page = await tab(profile, site.address);
      await page.getByText("Kept in this browser, read back and equal").waitFor();
      await SCREENS[screen](page);
      const { wide, room } = await page.evaluate(() => ({
        wide: document.documentElement.scrollWidth,
        room: document.documentElement.clientWidth,
      }));
      expect(wide).toBeLessThanOrEqual(room);
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
        await page.screenshot({
          path: resolve(PICTURES, `${screen}-${size}-${colorScheme}.png`),
          fullPage: true,
        });
        // The tree is the same at every size; only colors and targets could differ.
        const { violations } = await new AxeBuilder({ page }).analyze();
        const found = violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html}`));
        expect(found, colorScheme).toEqual([]);
      }
      expect(profile.complaints).toEqual([]);
      await profile.close();
    },
  );
});
