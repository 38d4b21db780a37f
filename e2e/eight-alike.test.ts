import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, type Profile, servePage, tab } from "./harness.ts";
import { drawnPrint, openBrief, openLook, printBrief } from "./prints.ts";

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;
let profile: Profile;
let page: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
  profile = await browser.profile({ reducedMotion: "reduce" });
  page = await tab(profile, site.address);
  await page.getByText("Kept in this browser").waitFor();
  await openBrief(page, printBrief(await drawnPrint(page)));
  await openLook(page);
});
afterAll(async () => {
  expect(profile.complaints).toEqual([]);
  await browser.close();
  await site.close();
});

const grip = () => page.getByRole("button", { name: /^The wedge on Bloom/ });
const place = async () =>
  /Bloom, (.*)\. Arrow/.exec((await grip().getAttribute("aria-label")) ?? "")?.[1];
/** How the pictures lie in the block of the four lives. */
const pictures = () =>
  page
    .locator(".placing image")
    .evaluateAll((all) => all.map((x) => x.getAttribute("transform")).join(";"));

test("the wedge is moved by keys, and the round changes at once; left, all is as it was", async () => {
  const before = await pictures();
  await grip().focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowUp");
  expect(await place()).toBe("3 and three eighths inches across and 13 and one quarter inches up");
  expect(await pictures()).not.toBe(before);
  await page.getByRole("button", { name: "Leave it" }).click();
  await expect.poll(pictures).toBe(before);
});

test("it is dragged, and typed as fractions; taken, it is a word of the sentence", async () => {
  const box = await grip().boundingBox();
  if (!box) throw new Error("the wedge expected in sight");
  await page.mouse.move(box.x + 22, box.y + 22);
  await page.mouse.down();
  await page.mouse.move(box.x + 62, box.y + 52, { steps: 4 });
  await page.mouse.up();
  expect(await place()).not.toBe(
    "3 and one quarter inches across and 12 and one quarter inches up",
  );
  await page.getByLabel("Its middle across").fill("8 3/");
  await page.getByText("That is not a length").waitFor();
  await page.getByLabel("Its middle across").fill("8 3/4");
  await page.getByLabel("Its middle up").fill("5 1/2");
  await page.getByRole("button", { name: "Take this place" }).click();
  const word = page.locator('[data-word="place/petal/wedge/at"]').first();
  await expect
    .poll(() => word.getAttribute("aria-label"))
    .toContain("all from 8 and three quarters inches across and 5 and a half inches up");
});

test("up to four of the most different rounds are sentences with one lit part, one is taken", async () => {
  await page.getByText("The most different rounds this print holds").click();
  const found = page.locator(".colorings .blocks button", { hasText: "Bloom in petal: all from" });
  await found.first().waitFor();
  const lit = await page.locator(".colorings .blocks .lit").allTextContents();
  expect(lit.length).toBeGreaterThan(1);
  expect(lit.length).toBeLessThanOrEqual(4);
  expect(new Set(lit).size).toBe(lit.length);
  await found.nth(1).click();
  await page.getByRole("button", { name: /Take back .*cut from one place/ }).waitFor();
});

test("in a gray print the picture is gray too", async () => {
  const picture = page.locator(".body .blocks image").first();
  const before = await picture.getAttribute("href");
  await page.getByText("in a gray print").click();
  await expect.poll(() => picture.getAttribute("href")).not.toBe(before);
  const colored = await picture.evaluate(async (el) => {
    const image = new Image();
    image.src = el.getAttribute("href") ?? "";
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const c = canvas.getContext("2d");
    if (!c) throw new Error("a canvas expected");
    c.drawImage(image, 0, 0);
    const { data } = c.getImageData(0, 0, image.width, image.height);
    let most = 0;
    for (let i = 0; i < data.length; i += 4)
      most = Math.max(most, Math.abs(data[i] - data[i + 1]), Math.abs(data[i] - data[i + 2]));
    return most;
  });
  expect(colored).toBeLessThan(8);
});

test("a fabric's own sentence, its color and its kind are edited by keys alone", async () => {
  await page.getByRole("button", { name: "Chalk", exact: true }).focus();
  await page.keyboard.press("Enter");
  const editor = page.getByRole("region", { name: "Chalk", exact: true });
  await editor.waitFor();
  const kind = page.locator('[data-word="of/chalk/kind"]');
  await kind.focus();
  await page.keyboard.press("Enter");
  await page.getByRole("radio", { name: "a printed stripe" }).waitFor();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  const width = page.getByLabel("Width of band 2");
  await width.fill("1 3/8");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /Take back .*the bands of "Chalk"/ }).waitFor();
  const axe = new AxeBuilder({ page }).setLegacyMode(true);
  const { violations } = await axe.analyze();
  expect(violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html}`))).toEqual([]);
});
