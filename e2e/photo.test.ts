import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { openBrowser, type Profile, servePage, tab } from "./harness.ts";
import { bytesOf, drawnPrint, drawnStripe, openBrief, openLook, printBrief } from "./prints.ts";

const FILES = resolve(import.meta.dirname, "fixtures/photos");

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;
let profile: Profile;
let page: Page;
let print: string;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
  profile = await browser.profile();
  page = await tab(profile, site.address);
  await page.getByText("Kept in this browser").waitFor();
  print = await drawnPrint(page);
});
afterAll(async () => {
  expect(profile.complaints).toEqual([]);
  await browser.close();
  await site.close();
});
beforeEach(async () => {
  await openBrief(page, printBrief(print));
  await openLook(page);
  await page.getByText("A fabric from its picture").click();
});

const give = (name: string, mimeType: string, buffer: Buffer) =>
  page.getByLabel("its picture").setInputFiles({ name, mimeType, buffer });
/** What the page says of a file it will not open. */
const refusal = async (name: string, mimeType: string, buffer: Buffer): Promise<string> => {
  const said = page.locator(".photo .problem");
  const before = (await said.count()) > 0 ? await said.textContent() : null;
  await give(name, mimeType, buffer);
  await expect.poll(async () => (await said.allTextContents())[0] ?? null).not.toBe(before);
  return (await said.textContent()) ?? "";
};
const rings = () => page.getByRole("button", { name: "Set the rings for the arrow keys" }).click();
const found = async (): Promise<void> => {
  await page.getByRole("button", { name: "Find its stripe or repeat" }).click();
  await page.locator(".taking").waitFor();
};

/** A chunk put before the one that ends a PNG's head; its check is not looked at before decoding. */
const withChunk = (png: Buffer, name: string): Buffer => {
  const chunk = Buffer.alloc(20);
  chunk.writeUInt32BE(8, 0);
  chunk.write(name, 4, "latin1");
  return Buffer.concat([png.subarray(0, 33), chunk, png.subarray(33)]);
};

test("what is no still picture is refused, each in a sentence of its own", async () => {
  const png = bytesOf(print);
  const jpeg = bytesOf(await drawnStripe(page, "image/jpeg"));
  const svg = "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>";
  const huge = Buffer.from(png);
  huge.writeUInt32BE(30_000, 16);
  huge.writeUInt32BE(30_000, 20);
  const said: [string, string, Buffer, RegExp][] = [
    ["notes.png", "image/png", Buffer.from("a list of things to buy"), /not a picture/],
    ["cut.png", "image/png", png.subarray(0, png.length - 40), /breaks off before its end/],
    ["drawing.png", "image/png", Buffer.from(svg), /is a drawing \(SVG\)/],
    ["cut.jpg", "image/jpeg", jpeg.subarray(0, jpeg.length / 2), /breaks off before its end/],
    ["huge.png", "image/png", huge, /900000000 pixels; the most this works with is 25000000/],
    ["moving.png", "image/png", withChunk(png, "acTL"), /moves; use a still one/],
    ["moving.gif", "image/gif", readFileSync(resolve(FILES, "moving.gif")), /looks like a GIF/],
    [
      "moving.webp",
      "image/webp",
      readFileSync(resolve(FILES, "moving.webp")),
      /moves; use a still/,
    ],
    ["inks.jpg", "image/jpeg", readFileSync(resolve(FILES, "inks.jpg")), /printing inks \(CMYK\)/],
  ];
  for (const [name, type, bytes, sentence] of said)
    expect(await refusal(name, type, bytes), name).toMatch(sentence);
});

test("a stripe is cropped and straightened, corrected by keys, and taken", async () => {
  const jpeg = bytesOf(await drawnStripe(page, "image/jpeg"));
  await give("stripe.jpg", "image/jpeg", jpeg);
  await rings();
  // 512 pixels between the rings, 40 to the inch.
  await page.getByLabel("From ring to ring").fill("12.8");
  const left = page.getByRole("slider", { name: "Crop, left side" });
  await left.focus();
  await page.keyboard.press("Shift+ArrowRight");
  expect(await left.getAttribute("aria-valuetext")).toBe("10 of 640 pixels");
  await found();
  expect(await page.locator(".taking").textContent()).toContain("A stripe of 3 bands, seen 4");
  const widths = page.getByLabel(/^Width of band/);
  const read = async () => {
    const all = await widths.all();
    return Promise.all(all.map((w) => w.inputValue()));
  };
  const inches = (text: string): number =>
    text.split(" ").reduce((sum, part) => {
      const [above, below = 1] = part.split("/").map(Number);
      return sum + above / below;
    }, 0);
  const before = (await read()).map(inches);
  // Bands of 1 1/2, 1/2 and 1 in were drawn.
  for (const [i, real] of [0.5, 1, 1.5].entries())
    expect(Math.abs(before.toSorted((a, b) => a - b)[i] - real)).toBeLessThan(0.06);
  await page.getByRole("slider", { name: "Between bands 1 and 2" }).focus();
  await page.keyboard.press("ArrowUp");
  const after = (await read()).map(inches);
  expect(after[0]).toBeGreaterThan(before[0]);
  expect(after[0] + after[1]).toBeCloseTo(before[0] + before[1], 1);
  await widths.first().fill("1 17/32");
  await page.getByLabel("The bands run").selectOption("along");
  await page.getByRole("button", { name: "Take it as a stripe" }).click();
  await page.getByRole("button", { name: /Take back .*Bloom.* as a stripe/ }).waitFor();
});

test("a print keeps its picture without what the camera wrote, and the repeat framed by hand where it is unsure", async () => {
  const jpeg = bytesOf(await drawnPrint(page, "image/jpeg"));
  // EXIF as a camera writes it, with a place in it (ISO/IEC 10918-1 segment APP1).
  const trace = Buffer.from("Exif\0\0MM\0*\0\0\0\x08\0\0 taken at 12 Weir Lane", "latin1");
  const head = Buffer.from([0xff, 0xe1, 0, trace.length + 2]);
  const traced = Buffer.concat([jpeg.subarray(0, 2), head, trace, jpeg.subarray(2)]);
  expect(traced.includes("Weir Lane")).toBe(true);
  await give("print.jpg", "image/jpeg", traced);
  await rings();
  await page.getByLabel("From ring to ring").fill("9.6");
  await found();
  await page.getByText("a print", { exact: true }).click();
  expect(await page.locator(".taking").textContent()).toContain("Unsure of its repeat");
  await page.getByLabel("It repeats across the fabric every").fill("12");
  await page.getByRole("slider", { name: "Upper side of one repeat" }).focus();
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Shift+ArrowUp");
  await page.getByLabel("along it every").fill("16");
  await page.getByRole("button", { name: "Take it as a print" }).click();
  await page.getByRole("button", { name: /Take back .*with its picture/ }).waitFor();
  const kept = () => page.locator(".body image").first().getAttribute("href");
  await expect.poll(async () => (await kept())?.slice(0, 15)).toBe("data:image/jpeg");
  const bytes = bytesOf((await kept()) ?? ",");
  expect(bytes.length).toBeLessThan(200_000);
  expect(bytes.includes("Weir Lane") || bytes.includes("Exif")).toBe(false);
});

test("24 megapixels, see-through in part, are opened with progress, and may be stopped", async () => {
  const big = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(6000, 4000);
    const c = canvas.getContext("2d");
    if (!c) throw new Error("a canvas expected");
    c.fillStyle = "#1f4e5f";
    for (let y = 0; y < 4000; y += 500) c.fillRect(0, y, 6000, 260);
    const blob = await canvas.convertToBlob({ type: "image/webp", quality: 0.5 });
    return Array.from(new Uint8Array(await blob.arrayBuffer()));
  });
  await give("big.webp", "image/webp", Buffer.from(big));
  await page.getByRole("progressbar", { name: "Looking at the picture" }).waitFor();
  await page.getByRole("button", { name: "Stop" }).click();
  await expect.poll(() => page.locator(".photo progress").count()).toBe(0);
  expect(await page.locator(".photo .marks").count()).toBe(0);
  await give("big.webp", "image/webp", Buffer.from([...big]));
  await page.locator(".photo .marks").waitFor();
  expect(await page.locator(".photo").textContent()).toContain("taken as white fabric");
  await rings();
  await found();
  expect(await page.locator(".taking").textContent()).toContain("A stripe of 2 bands");
});

test("a design whose picture is missing opens, and says which", async () => {
  const brief = printBrief(print) as { fabrics: Record<string, unknown>[] };
  delete brief.fabrics[0].photo;
  await openBrief(page, brief);
  await page.getByText("The picture of Bloom is not in the file").first().waitFor();
});
