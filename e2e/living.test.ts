import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, beforeAll, expect, test } from "vitest";
import tidepool from "../examples/tidepool-runner.json" with { type: "json" };
import { livingTemplate } from "../scripts/build-living.mjs";
import { answerBrief } from "../src/core/answer/index.ts";
import { readDocument } from "../src/core/brief/index.ts";
import { livingPattern } from "../src/core/sheet/living.ts";
import { openBrowser } from "./harness.ts";

let browser: Awaited<ReturnType<typeof openBrowser>>;
let folder: string;
let file: string;

/** A title and names that try to get out of their place. */
const NASTY = `</script><script>document.title="out"</script>$& <img src=x onerror="document.title='out'">`;

const EDITION = { version: "2", date: "November 25, 2026" };

beforeAll(async () => {
  browser = await openBrowser();
  folder = mkdtempSync(join(tmpdir(), "living-"));
  file = join(folder, "pattern.html");
  const read = readDocument({
    ...tidepool,
    title: `Tidepool ${NASTY}`,
    notes: "for the teacher alone",
    fabrics: tidepool.fabrics.map((f, i) =>
      i === 0 ? { ...f, name: `Kelp ${NASTY.slice(0, 60)}` } : f,
    ),
  });
  if (!read.ok) throw new Error("the sample is refused");
  writeFileSync(
    file,
    livingPattern(await livingTemplate(), read.brief, answerBrief(read.brief), EDITION),
  );
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

test("from disk, with no network, on a phone: it answers again, marks what changed, and goes back", async () => {
  expect(statSync(file).size).toBeLessThanOrEqual(1_500_000);
  expect(readFileSync(file, "utf8")).not.toContain("for the teacher alone");
  const profile = await browser.profile({
    viewport: { width: 390, height: 844 },
    reducedMotion: "reduce",
    offline: true,
  });
  const page = await profile.context.newPage();
  await page.goto(pathToFileURL(file).href);
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  expect(violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html}`))).toEqual([]);
  const supplies = page.locator("#supplies");
  const original = await supplies.textContent();
  expect(await page.locator(".changed").count()).toBe(0);
  expect(await page.locator("#edition").textContent()).toBe("Version 2, November 25, 2026.");
  expect(await page.locator("#quilt svg").count()).toBe(1);
  const layouts = page.locator("#layouts");
  const cut = await layouts.innerHTML();
  expect(await page.locator("#layouts figure svg").count()).toBe(4);

  // Her own width: each fabric is planned anew and says what was; the original is one tap away.
  await page.getByLabel("My fabric's usable width").fill("36");
  await page.getByText(/places have changed/).waitFor();
  expect(await page.locator("#layouts figure.changed").count()).toBe(4);
  expect(await page.locator("#layouts figure").first().textContent()).toContain("36 in usable");
  expect(await page.locator("#layouts .was").first().textContent()).toContain("40 in usable");
  await page.getByRole("button", { name: "Show the original" }).click();
  expect(await layouts.innerHTML()).toBe(cut);
  await page.getByLabel("My fabric's usable width").fill("40");
  await page.getByText("The pattern as it was printed").waitFor();

  await page.getByLabel("Strips for the wedges").fill("6");
  await page.getByText(/places have changed/).waitFor();
  // Blunt 1/4 past the center: the octagon is twice the strip less 1/2 in, so 11 in.
  expect(await page.locator("#sizes tr.changed").first().textContent()).toContain("11 in");
  expect(await page.locator("#supplies .was").count()).toBeGreaterThan(0);

  await page.getByRole("button", { name: "Show the original" }).click();
  expect(await supplies.textContent()).toBe(original);
  await page.getByRole("button", { name: "Show mine" }).click();

  await page.getByLabel("My seam").fill("nonsense");
  await page.getByText("Type a length").waitFor();
  await page.getByLabel("My seam").fill("1/4");
  await page.getByLabel("Strips for the wedges").fill("4 1/2");
  await page.getByText("The pattern as it was printed").waitFor();
  expect(await supplies.textContent()).toBe(original);

  expect(await page.title()).toContain("</script>");
  expect(await page.locator("main img").count()).toBe(0);
  expect(
    await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    ),
  ).toBeLessThanOrEqual(0);
  expect(profile.complaints).toEqual([]);
  await profile.close();
});
