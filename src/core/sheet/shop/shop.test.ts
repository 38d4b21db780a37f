import { expect, test } from "vitest";
import tidepool from "../../../../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../../answer/index.ts";
import { type Brief, readDocument } from "../../brief/index.ts";
import {
  LABEL_SHEETS,
  labelsOf,
  leaving,
  planClass,
  planKits,
  readShelf,
  remembering,
  rippleOf,
  rulesOf,
} from "../../shop/index.ts";
import { sheetJob } from "../job.ts";
import type { Glyphs, Item, Sheet } from "../model.ts";
import {
  correctionSheet,
  costSheet,
  type KitJob,
  kitLabels,
  runSheet,
  studentSheet,
  teacherSheet,
} from "./index.ts";

const MARGIN = (10 * 72) / 25.4;
const LONG = "Wren of the long and winding name that hardly fits any line of any list at all";

function made(): Brief {
  const read = readDocument({
    ...structuredClone(tidepool),
    shop: { hour: "24", margin: 40, extras: [{ name: "pattern", cost: "6" }] },
    class: {
      irons: 1,
      students: [
        { name: LONG, usable: "20", test: { strips: 3, width: "1 1/2", size: "3 3/8" } },
        { name: "Lark", point: "sharp" },
      ],
    },
  });
  if (!read.ok) throw new RangeError(JSON.stringify(read.refusals));
  return read.brief;
}
const brief = made();
const answer = answerBrief(brief);
const job = sheetJob(brief, answer, { version: "1", date: "25 November 2026" });
const { shelf } = readShelf(
  "fabric,kind,length,cost\nKelp,bolt,28 yd,12.95\nShell,bolt,40 yd,11\nCurrent,bolt,44 yd,13.50\nBasalt,bolt,25 yd,9.80",
  "in",
);
const plan = planKits(brief, answer, shelf);
const kit: KitJob = { job, plan, shelf, rules: rulesOf(brief) };

const glyphsOf = (item: Item): readonly Glyphs[] =>
  item.kind === "text" || item.kind === "furniture"
    ? item.glyphs
    : item.kind === "table"
      ? item.rows.flat().flatMap((c) => c.glyphs)
      : [];
const wordsOf = (sheet: Sheet): string =>
  sheet.pages.flatMap((p) => p.items.flatMap((i) => glyphsOf(i).map((g) => g.text))).join(" ");

function wrong(): Sheet {
  const out = made();
  remembering([
    leaving(out, answer, { what: "handed-out", of: "pattern", version: "1", date: "2026-11-25" }),
  ])(out);
  out.quilt.rows += 1;
  const after = answerBrief(out);
  return correctionSheet(
    sheetJob(out, after, { version: "1", date: "26 November 2026" }),
    rippleOf(out, after),
  );
}

const students = planClass(brief, answer);
const sheets: [string, Sheet][] = [
  ["run sheet", runSheet(kit)],
  ["costs", costSheet(kit)],
  ["teacher", teacherSheet(job, students)],
  ...[students.everyone, ...students.students].map((s): [string, Sheet] => [
    s.name,
    studentSheet(job, s),
  ]),
  ["correction", wrong()],
];

test.each(sheets)("%s keeps its margins and is set in 9 points or more", (_, sheet) => {
  expect(sheet.pages.length).toBeGreaterThan(0);
  for (const page of sheet.pages)
    for (const g of page.items.flatMap(glyphsOf)) {
      expect(g.size).toBeGreaterThanOrEqual(8.999);
      expect(g.x, g.text).toBeGreaterThanOrEqual(MARGIN - 0.01);
      expect(g.x + g.width, g.text).toBeLessThanOrEqual(page.width - MARGIN + 0.01);
      expect(g.y, g.text).toBeLessThanOrEqual(page.height - MARGIN);
    }
});

test("the run sheet has one box for each cut, each straightening and each bag", () => {
  const boxes = runSheet(kit).pages.flatMap((p) => p.items.filter((i) => i.kind === "box"));
  const cuts = plan.runs.reduce((n, r) => n + r.cuts.length, 0);
  expect(boxes).toHaveLength(cuts + plan.runs.length + plan.kits);
});

test.each(LABEL_SHEETS.map((s) => [s.name, s] as const))(
  "labels %s: every word within its label, every label there once",
  (_, sheet) => {
    const first = 3;
    const pages = kitLabels(kit, { sheet, first }).pages;
    const per = sheet.rows * sheet.columns;
    expect(pages).toHaveLength(Math.ceil((labelsOf(plan, brief).length + first - 1) / per));
    const seen = new Set<string>();
    pages.forEach((page, p) => {
      for (const g of page.items.flatMap(glyphsOf)) {
        const column = Math.floor((g.x - sheet.left) / sheet.across);
        const row = Math.floor((g.y - sheet.top) / sheet.down);
        const right = sheet.left + column * sheet.across + sheet.width;
        expect(g.x + g.width, g.text).toBeLessThanOrEqual(right);
        expect(g.y, g.text).toBeLessThanOrEqual(sheet.top + row * sheet.down + sheet.height);
        seen.add(`${p} ${row} ${column}`);
      }
    });
    expect(seen.size).toBe(labelsOf(plan, brief).length);
  },
);

test("label sheets lie within their paper, alike on both sides", () => {
  for (const s of LABEL_SHEETS) {
    const [width, height] =
      s.paper === "letter" ? [612, 792] : [(210 * 72) / 25.4, (297 * 72) / 25.4];
    const right = s.left + (s.columns - 1) * s.across + s.width;
    const bottom = s.top + (s.rows - 1) * s.down + s.height;
    expect(right + s.left).toBeCloseTo(width, 0);
    expect(bottom + s.top).toBeCloseTo(height, 0);
  }
});

test("the slip says where, what it says, and what to read", () => {
  const words = wordsOf(wrong());
  expect(words).toContain("the top, finished");
  expect(words).toContain("64 × 24 in");
  expect(words).toContain("64 × 32 in");
});
