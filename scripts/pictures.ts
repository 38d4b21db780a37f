// Takes the pictures of the README from the built page: `npx tsx scripts/pictures.ts`, then look at
// each before committing it. They lie under docs/pictures/.
import { mkdirSync } from "node:fs";
import { resolve } from "node:path";
import type { Page } from "playwright-core";
import { openBrowser, servePage, tab } from "../e2e/harness.ts";

const FOLDER = resolve(import.meta.dirname, "../docs/pictures");

interface Shot {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly dark?: boolean;
  readonly go?: (page: Page) => Promise<void>;
}

const openWord = async (page: Page): Promise<void> => {
  await page.locator('[data-word="setting/star"]').click();
  await page.getByRole("button", { name: "Take it" }).waitFor();
  await page.getByText("working it out").first().waitFor({ state: "detached" });
};

const openCover = async (page: Page): Promise<void> => {
  const heading = page.getByRole("button", { name: "Does it cover?" });
  await heading.click();
  await page.getByRole("group", { name: /in four lives$/ }).waitFor();
  await heading.evaluate((el) => el.scrollIntoView({ block: "start", behavior: "instant" }));
};

const SHOTS: readonly Shot[] = [
  { name: "desktop", width: 1440, height: 1000 },
  { name: "word", width: 1440, height: 1000, go: openWord },
  { name: "tablet-dark", width: 834, height: 1112, dark: true },
  { name: "phone", width: 390, height: 844, go: openCover },
];

mkdirSync(FOLDER, { recursive: true });
const [site, browser] = await Promise.all([servePage(), openBrowser()]);
for (const { name, width, height, dark, go } of SHOTS) {
  const profile = await browser.profile({
    viewport: { width, height },
    reducedMotion: "reduce",
    colorScheme: dark ? "dark" : "light",
  });
  const page = await tab(profile, site.address);
  await page.getByText("Kept in this browser, read back and equal").waitFor();
  await go?.(page);
  await page.screenshot({ path: resolve(FOLDER, `${name}.jpg`), type: "jpeg", quality: 78 });
  await profile.close();
}
await browser.close();
await site.close();
