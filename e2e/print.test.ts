import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inflateSync } from "node:zlib";
import { AxeBuilder } from "@axe-core/playwright";
import { unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../src/cli/run.ts";
import type { Answer } from "../src/core/answer/types/answer.ts";
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

/**
 * Every stream of a PDF file as it is before compression, with its dictionary: two compressors give
 * other bytes for the same ones, and with them other lengths and offsets.
 */
function streamsOf(pdf: Uint8Array): string[] {
  const text = Buffer.from(pdf).toString("latin1");
  const out: string[] = [];
  for (const m of text.matchAll(/obj\n(<<[\s\S]*?>>)\nstream\n/g)) {
    const from = m.index + m[0].length;
    const length = Number(/\/Length (\d+)/.exec(m[1])?.[1]);
    const bytes = pdf.subarray(from, from + length);
    const plain = /FlateDecode/.test(m[1]) ? inflateSync(bytes) : bytes;
    out.push(m[1].replace(/\/Length \d+/, ""), Buffer.from(plain).toString("latin1"));
  }
  return out;
}

async function downloaded(page: Page, button: string): Promise<Uint8Array> {
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 60_000 }),
    page.getByRole("button", { name: button }).click(),
  ]);
  return new Uint8Array(readFileSync(await download.path()));
}

/**
 * The seam line of every template, as the browser lays it out at 96 CSS pixels to the inch (CSS
 * Values and Units 4, section 6.2), beside the finished edges of its piece: to 0.01 mm.
 */
async function trueToSize(page: Page, files: Readonly<Record<string, Uint8Array>>): Promise<void> {
  const text = (name: string): string => Buffer.from(files[name]).toString("utf8");
  const answer: Answer = JSON.parse(text("answer.json"));
  const names = Object.keys(files).filter((n) => /^template-.*\.svg$/.test(n));
  expect(names.length).toBeGreaterThan(2);
  for (const name of names) {
    const edges = await page.evaluate((svg) => {
      const box = document.body.appendChild(document.createElement("div"));
      box.innerHTML = svg;
      const line = box.querySelector("path[stroke-dasharray]") as SVGPathElement;
      const m = line.getScreenCTM() as DOMMatrix;
      const xy = (line.getAttribute("d") ?? "").match(/[\d.]+ [\d.]+/g) ?? [];
      const at = xy.map((p) => new DOMPoint(...p.split(" ").map(Number)).matrixTransform(m));
      box.remove();
      return at.map((p, i) => {
        const q = at[(i + 1) % at.length];
        return Math.hypot(q.x - p.x, q.y - p.y) / 96;
      });
    }, text(name));
    const letter = name.split(/[-.]/)[1];
    const id = answer.pieces.find((p) => p.letter === letter)?.id;
    const [patch] = answer.blocks.flatMap((b) => b.patches.filter((p) => b.pieceOf[p.id] === id));
    const finished = patch.polygon.map((p, i, all) => {
      const q = all[(i + 1) % all.length];
      return Math.hypot(q.x - p.x, q.y - p.y);
    });
    const sorted = (xs: number[]): number[] => [...xs].sort((x, y) => x - y);
    const off = sorted(edges).map((x, i) => 25.4 * Math.abs(x - sorted(finished)[i]));
    expect(edges).toHaveLength(finished.length);
    expect(Math.max(...off), name).toBeLessThan(0.01);
  }
}

test("a teacher finds the print, sees and hears every page, and gets the bytes of the command line", async () => {
  const profile = await browser.profile({ acceptDownloads: true, reducedMotion: "reduce" });
  const page = await tab(profile, site.address);
  await page.getByRole("button", { name: "Print the pattern" }).click();
  const pages = page.locator(".pages > li");
  await pages.first().locator("svg text").first().waitFor();
  expect(await pages.count()).toBe(2);
  await expect
    .poll(() => page.getByRole("heading", { level: 4 }).allTextContents())
    .toEqual(expect.arrayContaining(["How big is it?", "What do I cut?", "And then?"]));
  const axe = new AxeBuilder({ page }).setLegacyMode(true).include(".question.sheets");
  const { violations } = await axe.analyze();
  expect(violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html}`))).toEqual([]);

  // What she opens is what prints, on the paper she takes.
  await page.getByLabel("every piece in its four lives").check();
  await page.getByLabel("A4").check();
  await expect.poll(() => pages.count()).toBeGreaterThan(2);
  expect(await page.locator('[data-question="cover"] .heading').getAttribute("aria-expanded")).toBe(
    "true",
  );
  await page.locator('[data-question="cover"] .heading').click();
  await expect.poll(() => pages.count()).toBe(2);
  await page.getByLabel("every width to check").check();
  await expect.poll(() => pages.count()).toBeGreaterThan(2);

  const day = await page.locator('.sheets input[type="date"]').inputValue();
  const files = unzipSync(await downloaded(page, "Download everything"));
  const folder = mkdtempSync(join(tmpdir(), "print-"));
  try {
    writeFileSync(join(folder, "brief.json"), files["brief.json"]);
    const options = ["--date", day, "--paper", "a4", "--open", "measure"];
    const code = await run(
      ["make", join(folder, "brief.json"), "--out", join(folder, "out"), ...options],
      {
        input: async function* () {},
        out: () => {},
        err: () => {},
        signal: new AbortController().signal,
      },
    );
    expect(code).toBe(0);
    expect(Object.keys(files).length).toBeGreaterThan(15);
    for (const [name, bytes] of Object.entries(files)) {
      const made = new Uint8Array(readFileSync(join(folder, "out", name)));
      if (name.endsWith(".pdf")) expect(streamsOf(bytes), name).toEqual(streamsOf(made));
      else expect(Buffer.from(bytes).equals(Buffer.from(made)), name).toBe(true);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  expect(profile.complaints).toEqual([]);
  // The files' own styles are refused by the page's policy, which is complained of: so they come last.
  await trueToSize(page, files);
  await profile.close();
});
