// Takes the pictures of the README, and of the tour while its steps are done, from the built page:
// `npx tsx scripts/pictures.ts [README | tour]`, then look at each before committing it. They lie under
// docs/pictures/.
import { mkdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { ElementHandle, Page } from "playwright-core";
import { openBrowser, servePage, tab } from "../e2e/harness.ts";
import { stepsOf, TABLET, walk } from "../e2e/tour.ts";

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

const kept = "Kept in this browser, read back and equal";
type Browser = Awaited<ReturnType<typeof openBrowser>>;

async function ofReadme(browser: Browser, address: string): Promise<void> {
  for (const { name, width, height, dark, go } of SHOTS) {
    const profile = await browser.profile({
      viewport: { width, height },
      reducedMotion: "reduce",
      colorScheme: dark ? "dark" : "light",
    });
    const page = await tab(profile, address);
    await page.getByText(kept).waitFor();
    await go?.(page);
    await page.screenshot({ path: resolve(FOLDER, `${name}.jpg`), type: "jpeg", quality: 78 });
    await profile.close();
  }
}

/** Brings the part of the page that the last step was about to the head of the picture. */
const frame = (about: ElementHandle): Promise<void> =>
  about.evaluate((element) => {
    if (!(element instanceof Element) || !element.isConnected) return;
    const tops = [element.closest(".question, section"), element].flatMap((e) =>
      e ? [e.getBoundingClientRect().top + scrollY] : [],
    );
    const [part, own = part] = tops;
    // What lies far down its part stands for itself; what lies near the page's head is seen from there.
    const top = own - part > innerHeight * 0.8 ? own - innerHeight / 8 : part - 24;
    scrollTo({ top: own < innerHeight ? 0 : top, behavior: "instant" });
  });

async function ofTour(browser: Browser, address: string): Promise<void> {
  const profile = await browser.profile(TABLET);
  const page = await tab(profile, address);
  await page.getByText(kept).waitFor();
  await walk(page, stepsOf(readFileSync(resolve(FOLDER, "../tour.md"), "utf8")), {
    picture: async (file, about) => {
      await frame(about);
      // What comes into view is drawn when it does.
      await page.waitForTimeout(300);
      await page.screenshot({ path: resolve(FOLDER, file), type: "jpeg", quality: 72 });
    },
  });
  await profile.close();
}

mkdirSync(resolve(FOLDER, "tour"), { recursive: true });
const [site, browser] = await Promise.all([servePage(), openBrowser()]);
const [only] = process.argv.slice(2);
if (only !== "tour") await ofReadme(browser, site.address);
if (only !== "README") await ofTour(browser, site.address);
await browser.close();
await site.close();
