// Names and notes made to do harm, in everything that is handed out: they are text and nothing else.
import DxfParser from "dxf-parser";
import Papa from "papaparse";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import tidepool from "../../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../core/answer/index.ts";
import { readDocument } from "../core/brief/index.ts";
import { formFiles, makeSheet, type SheetJob, sheetJob } from "../core/sheet/index.ts";
import { LIVING_DATA, LIVING_TITLE, livingPattern } from "../core/sheet/living.ts";
import { nodeFonts } from "../pdf/fonts.node.ts";
import { writePdf } from "../pdf/index.ts";
import { ran } from "./ran.testing.ts";
import { answerText } from "./text.ts";

const EDITION = { version: "1", date: "November 25, 2026" };
const PLAIN = ["Reef", "Foam", "Rust", "Moss"];

/** Names that a design may have, four to a design: its title, its fabrics, its block in turn. */
const NAMES: Readonly<Record<string, readonly string[]>> = {
  markup: [
    `</title></text></svg><script>alert(1)</script><img src=x onerror=alert(1)>`,
    `" onload="alert(1)" x='`,
    `&lt;b&gt; &#x3c;i&#x3e; ]]> <!-- --> <![CDATA[ <?xml ?>`,
    `javascript:alert(1) <a href="javascript:alert(1)">`,
  ],
  "strings of PDF": [
    `) /JS (app.alert(1)) /S /JavaScript >> endobj (`,
    `(((((\\`,
    `\\) >> /OpenAction << /S /Launch >> \\`,
    `%PDF-1.7 %%EOF stream endstream xref trailer`,
  ],
  "groups of DXF and codes of its texts": [
    `  0 SECTION 2 ENTITIES 0 ENDSEC 0 EOF`,
    `%%c %%010 %%u ^J ^M \\P {\\fArial;x}`,
    `\\U+000A0 ENDSEC`,
    `999`,
  ],
  formulas: [`=HYPERLINK("http://x.invalid","y")`, `+1+1`, `@SUM(A1)`, `-2+3`],
  "cells and separators": [`a","b"`, `a;b|c`, `'=1+1`, `＝1+1`],
  "places of a template": [LIVING_DATA, LIVING_TITLE, `$& $1 $\` $'`, "$" + "{alert(1)} {{1+1}}"],
  "long and strange letters": [
    "W".repeat(120),
    "\u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627 (a)",
    `Z${"\u0351\u036b\u0343".repeat(35)}`,
    "\u{1f9f5}\u200d\u{1f9f5} \ufdfa\u3000\ufeff",
  ],
};

function jobNamed(names: readonly string[]): SheetJob {
  const read = readDocument({
    ...tidepool,
    title: names[0],
    notes: { text: names.join("\n") },
    fabrics: tidepool.fabrics.map((f, i) => ({ ...f, name: names[(i + 1) % names.length] })),
    blocks: tidepool.blocks.map((b, i) => ({ ...b, name: names[(i + 2) % names.length] })),
  });
  if (!read.ok) throw new Error(`refused: ${JSON.stringify(read.refusals)}`);
  return sheetJob(read.brief, answerBrief(read.brief), EDITION);
}

const plain = jobNamed(PLAIN);
const hostile = Object.entries(NAMES).map(([what, names]) => ({
  what,
  names,
  job: jobNamed(names),
}));
const filesOf = (job: SheetJob, end: string) =>
  [...formFiles(job)].filter(([name]) => name.endsWith(end));

const ELEMENTS = new Set(
  "svg g path text tspan title desc defs clipPath use rect circle line polyline polygon image pattern".split(
    " ",
  ),
);
/** XML 1.0, production 2: what a document may hold. */
const NO_XML = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/u;

/** What is wrong with a text as XML that only draws: read token by token, nothing skipped. */
function xmlFaults(text: string): string[] {
  const faults: string[] = NO_XML.test(text) ? ["a character XML does not know"] : [];
  const token = /<(\/?)([a-zA-Z]+)((?:\s+[a-zA-Z:-]+="[^"<]*")*)\s*(\/?)>|([^<>]+)/gy;
  const open: string[] = [];
  let at = 0;
  for (let m = token.exec(text); m; m = token.exec(text)) {
    at = token.lastIndex;
    const [, close, name, attributes = "", empty, words = ""] = m;
    const raw = (attributes + words).replaceAll(/&(amp|lt|gt|quot|apos|#39);/g, "");
    if (raw.includes("&")) faults.push(`a bare & in ${raw.slice(0, 60)}`);
    if (!name) continue;
    if (!ELEMENTS.has(name)) faults.push(`<${name}>`);
    if (/\son\w+=|href="(?!#|data:image\/)/i.test(attributes)) faults.push(attributes);
    if (close) {
      if (open.pop() !== name) faults.push(`</${name}> closes another`);
    } else if (!empty) open.push(name);
  }
  if (at !== text.length) faults.push(`no XML: ${text.slice(at, at + 60)}`);
  return [...faults, ...open.map((name) => `<${name}> is not closed`)];
}

test("the reader of XML finds what it should", () => {
  expect(xmlFaults(`<svg a="1"><text>x &amp; y</text></svg>`)).toEqual([]);
  for (const bad of [
    `<svg><script>1</script></svg>`,
    `<svg onload="x"></svg>`,
    `<svg><text>a & b</text></svg>`,
    `<svg><text>a</svg>`,
    `<svg a="b"c"></svg>`,
    `<svg>\u0001</svg>`,
  ])
    expect(xmlFaults(bad), bad).not.toEqual([]);
});

describe.each(hostile)("$what", ({ names, job }) => {
  test("every picture is drawing and text", () => {
    const pictures = filesOf(job, ".svg");
    expect(pictures.length).toBeGreaterThan(5);
    for (const [name, svg] of pictures) expect(xmlFaults(svg), name).toEqual([]);
  });

  test("the templates for drawing programs hold the same shapes, each text on one line", () => {
    const read = (of: SheetJob) => {
      const [[, text]] = filesOf(of, ".dxf");
      const parsed = new DxfParser().parseSync(text);
      const entities = (parsed?.entities ?? []).map((e) => [e.type, e.layer]);
      return { lines: text.split("\n").length, entities };
    };
    expect(read(job)).toEqual(read(plain));
  });

  test("every list reads back cell by cell, and no cell is a formula", () => {
    for (const [i, [name, csv]] of filesOf(job, ".csv").entries()) {
      const { data, errors } = Papa.parse<string[]>(csv.trimEnd());
      expect(errors, name).toEqual([]);
      const [, without] = filesOf(plain, ".csv")[i];
      expect(data.map((row) => row.length)).toEqual(
        Papa.parse<string[]>(without.trimEnd()).data.map((row) => row.length),
      );
      // A minus before figures alone is a number; everything else a spreadsheet would run is not there.
      for (const cell of data.flat())
        expect(/^\s*[=+@＝＋＠\t\r]|^\s*[-－](?!\d+(\.\d+)?$)/.exec(cell)?.[0], name).toBe(
          undefined,
        );
    }
  });

  test("the pattern as PDF runs nothing, links to nothing and says its title", async () => {
    const bytes = await writePdf([makeSheet(job, "pattern")], {
      fonts: nodeFonts(),
      created: new Date(Date.UTC(2026, 10, 25)),
    });
    const pdf = await getDocument({ data: bytes, verbosity: 0 }).promise;
    const { info } = await pdf.getMetadata();
    expect((info as { Title: string }).Title).toContain(names[0].trim().slice(0, 20));
    expect(await pdf.getJSActions()).toBeNull();
    expect(await pdf.getOpenAction()).toBeNull();
    expect(await pdf.getAttachments()).toBeNull();
    for (let n = 1; n <= pdf.numPages; n++)
      expect(await (await pdf.getPage(n)).getAnnotations()).toEqual([]);
    await pdf.destroy();
  });

  test("the living pattern carries the names as data, in its own place", () => {
    const template = `<title>${LIVING_TITLE}</title><script type="application/json">${LIVING_DATA}</script><p>`;
    const html = livingPattern(template, job.brief, job.answer, EDITION);
    const parts =
      /^<title>([^<]*)<\/title><script type="application\/json">([^<]*)<\/script><p>$/.exec(html);
    const { brief } = JSON.parse(parts?.[2] ?? "{}");
    expect(brief.title).toBe(names[0]);
    expect(brief.fabrics.map((f: { name: string }) => f.name)).toEqual(
      job.brief.fabrics.map((f) => f.name),
    );
  });

  test("the answer as text holds nothing that a terminal obeys", () => {
    expect(/(?!\n)\p{Cc}/u.test(answerText(job.brief, job.answer))).toBe(false);
  });
});

describe("names that no design may have", () => {
  test.each([
    ["a line break", "Reef\n  0\nENDSEC", /one line/],
    ["a tab", "Reef\tFoam", /one line/],
    ["nothing", "", /1 letter or more/],
    ["121 letters", "x".repeat(121), /long|120/],
    ["NUL", "Reef\u0000", /control/],
    ["an escape of terminals", "\u001b[31mReef", /control/],
    ["a change of direction", "Reef\u202efdp.exe", /control/],
    ["half a character", "Reef\ud83e", /control/],
    ["no character", "Reef\uffff", /control/],
  ])("%s is refused with its place and why", (_, name, why) => {
    const fabrics = tidepool.fabrics.map((f, i) => (i === 1 ? { ...f, name } : f));
    const read = readDocument({ ...tidepool, fabrics });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.refusals[0].path).toBe("fabrics/1/name");
    expect(read.refusals[0].message).toMatch(why);
  });

  test("what a refusal quotes is shown, not obeyed", async () => {
    const brief = { ...tidepool, "\u001b]0;mine\u0007": 1, seam: "\u001b[2J" };
    const { code, out, err } = await ran(["check", "-"], JSON.stringify(brief));
    expect(code).toBe(2);
    expect(/(?!\n)\p{Cc}/u.test(out + err)).toBe(false);
    expect(err).toContain("\\u001b");
  });
});
