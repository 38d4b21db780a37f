import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import { chromium } from "playwright-core";
import { expect, test } from "vitest";
import { buildIfNeeded } from "../scripts/build-web.mjs";
import { serve } from "../scripts/serve.mjs";
import { jobOf } from "../src/core/sheet/job.testing.ts";
import { nodeFonts } from "../src/pdf/fonts.node.ts";
import { pdfFiles } from "../src/pdf/index.ts";
import { CHROMIUM } from "./harness.ts";

const site = {
  config: "e2e/sheets/vite.config.ts",
  out: resolve(import.meta.dirname, "../dist/sheets"),
};

test("the browser and Node make the same bytes of every sheet", async () => {
  const brief = readFileSync(new URL("../examples/orchard-wall.json", import.meta.url), "utf8");
  const created = new Date(Date.UTC(2026, 10, 25));
  const files = await pdfFiles(jobOf(brief), { fonts: nodeFonts(), created, compress: false });
  const here = Object.fromEntries([...files].map(([name, b]) => [name, bytesToHex(sha256(b))]));
  buildIfNeeded(site, ["e2e/sheets"]);
  const server = await serve(site.out);
  const browser = await chromium.launch(CHROMIUM);
  try {
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on("pageerror", (e) => faults.push(String(e)));
    await page.goto(`${server.address}e2e/sheets/sheets.html`);
    await page.waitForFunction(() => window.hashesOf !== undefined);
    const there = await page.evaluate((text) => window.hashesOf?.(text), brief);
    expect(faults).toEqual([]);
    expect(Object.keys(here).length).toBeGreaterThan(5);
    expect(there).toEqual(here);
  } finally {
    await browser.close();
    await server.close();
  }
});
