import { readFileSync } from "node:fs";
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { beforeAll, describe, expect, test } from "vitest";
import { makeSheet, type SheetName } from "../core/sheet/index.ts";
import { jobOf } from "../core/sheet/job.testing.ts";
import { nodeFonts } from "./fonts.node.ts";
import { writePdf } from "./write.ts";

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), "utf8");
const fonts = nodeFonts();
const options = {
  fonts,
  created: new Date(Date.UTC(2026, 10, 25)),
  version: "Version 1",
  compress: false,
};
const write = (example_: string, name: SheetName, more = {}) =>
  writePdf([makeSheet(jobOf(example(example_)), name)], { ...options, ...more });

/** Closed four-sided paths of a page as width and height in points, the page's transforms applied. */
async function boxesOf(pdf: Uint8Array, number: number): Promise<[number, number][]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const page = await document.getPage(number);
  const list = await page.getOperatorList();
  const boxes: [number, number][] = [];
  let scale: [number, number] = [1, 1];
  const stack: [number, number][] = [];
  list.fnArray.forEach((fn, i) => {
    const args = list.argsArray[i];
    if (fn === OPS.save) stack.push(scale);
    else if (fn === OPS.restore) scale = stack.pop() ?? [1, 1];
    else if (fn === OPS.transform)
      scale = [scale[0] * Math.hypot(args[0], args[1]), scale[1] * Math.hypot(args[2], args[3])];
    else if (fn === OPS.constructPath) {
      const [ops, coords] = args as [number[], number[]];
      if (ops.length !== 5 || ops[4] !== OPS.closePath || coords.length !== 8) return;
      const xs = [0, 2, 4, 6].map((k) => coords[k]);
      const ys = [1, 3, 5, 7].map((k) => coords[k]);
      boxes.push([
        (Math.max(...xs) - Math.min(...xs)) * scale[0],
        (Math.max(...ys) - Math.min(...ys)) * scale[1],
      ]);
    }
  });
  await document.destroy();
  return boxes;
}

describe("templates, read back by another reader", () => {
  let pdf: Uint8Array;
  beforeAll(async () => {
    pdf = await write("tidepool-runner", "templates");
  });

  test("on every page a square of 72.000 points and one of 56.693", async () => {
    const pages = (latin1(pdf).match(/\/Type \/Page\b/g) ?? []).length;
    expect(pages).toBeGreaterThan(0);
    for (let n = 1; n <= pages; n++) {
      const boxes = await boxesOf(pdf, n);
      const has = (side: number): boolean =>
        boxes.some(([w, h]) => Math.abs(w - side) < 0.0011 && Math.abs(h - side) < 0.0011);
      expect(has(72)).toBe(true);
      expect(has((2 / 2.54) * 72)).toBe(true);
    }
  });

  test("the print dialog is asked for no scaling", () => {
    expect(latin1(pdf)).toMatch(/\/PrintScaling \/None/);
  });
});

describe("the file", () => {
  let pdf: Uint8Array;
  beforeAll(async () => {
    pdf = await write("quiet-field", "pattern");
  });

  test("is tagged, in a language, with headings, tables and pictures that say what they show", () => {
    const text = latin1(pdf);
    expect(text).toMatch(/\/MarkInfo/);
    expect(text).toMatch(/\/Marked true/);
    expect(text).toMatch(/\/Lang \(en-US\)/);
    for (const tag of ["H1", "H2", "H3", "P", "Table", "TR", "TH", "TD", "Figure"])
      expect(text, tag).toMatch(new RegExp(`/S /${tag}\\b`));
    const figures = (text.match(/\/S \/Figure\b/g) ?? []).length;
    const told = (text.match(/\/Alt \(/g) ?? []).length;
    expect(told).toBe(figures);
  });

  test("embeds every face it names and no other", () => {
    const text = latin1(pdf);
    const named = new Set([...text.matchAll(/\/FontName \/([^\s/]+)/g)].map((m) => m[1]));
    const files = (text.match(/\/FontFile2/g) ?? []).length;
    expect(named.size).toBeGreaterThanOrEqual(3);
    expect(files).toBe(named.size);
    expect(text).not.toMatch(/Helvetica|Times|Courier/);
  });

  test("carries its title, version and date, and not the clock's", async () => {
    const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({
      Title: "Quiet field bed quilt",
      Subject: "Version 1",
      CreationDate: "D:20261125000000Z",
      ModDate: "D:20261125000000Z",
      PDFFormatVersion: "1.7",
    });
    await document.destroy();
  });

  test("equal input gives equal bytes", async () => {
    expect(
      Buffer.compare(Buffer.from(await write("quiet-field", "pattern")), Buffer.from(pdf)),
    ).toBe(0);
  });

  test("words are drawn as wide as the core set them", async () => {
    const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
    const page = await document.getPage(1);
    const sheet = makeSheet(jobOf(example("quiet-field")), "pattern");
    const set = sheet.pages[0].items.flatMap((i) => (i.kind === "text" ? i.glyphs : []));
    let compared = 0;
    for (const item of (await page.getTextContent()).items) {
      if (!("str" in item)) continue;
      const glyphs = set.find(
        (g) => g.text === item.str && Math.abs(g.x - item.transform[4]) < 0.01,
      );
      if (!glyphs || item.str.endsWith(" ")) continue;
      // The reader adds up advances without kerning between pieces it got; half a point is its noise.
      expect(Math.abs(item.width - glyphs.width)).toBeLessThan(0.5);
      compared++;
    }
    expect(compared).toBeGreaterThan(20);
    await document.destroy();
  });
});

test("a stamp stands once in the file, however often it is put down", async () => {
  const small = latin1(await write("lantern-throw", "pattern"));
  const forms = (small.match(/\/Subtype \/Form/g) ?? []).length;
  const uses = (small.match(/\/F\d+ Do/g) ?? []).length;
  expect(forms).toBe(1);
  expect(uses).toBe(20);
});

const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("latin1");
