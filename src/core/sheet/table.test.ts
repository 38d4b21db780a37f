import { expect, test } from "vitest";
import { paginate, stacked } from "./column.ts";
import { paper } from "./grid.ts";
import { tableBlocks } from "./table.ts";

const columns = [
  { head: "bolt", at: 0, width: 200 },
  { head: "kits", at: 300, align: "end" },
  { head: "left", at: 400, align: "number" },
] as const;
const rows = Array.from({ length: 60 }, (_, i) => ({
  cells: [`bolt ${i + 1}`, String(60 - i), `${i} 1/2`],
}));

test("a long table goes on overleaf, its rows under the heads of the first page", () => {
  const pages = paginate(tableBlocks(columns, rows), paper("letter"), 0);
  expect(pages).toHaveLength(2);
  const tables = pages.flat().filter((item) => item.kind === "table");
  expect(tables).toHaveLength(61);
  expect(tables.filter((t) => !t.continues)).toHaveLength(1);
  expect(tables[0].rows[0].every((c) => c.header)).toBe(true);
  const first = (page: number) =>
    pages[page].flatMap((i) => (i.kind === "table" ? i.rows[0][0].glyphs[0].text : []));
  expect([...first(0), ...first(1)].slice(1)).toEqual(rows.map((r) => r.cells[0]));
});

test("whole numbers end on one axis, ends stand flush", () => {
  const items = stacked(tableBlocks(columns, rows.slice(9, 11)), 0).items;
  const cells = items.flatMap((i) => (i.kind === "table" ? [i.rows[0]] : [])).slice(1);
  const [nine, ten] = cells.map((row) => row[2].glyphs[0]);
  expect(nine.x + nine.width).toBeCloseTo(400, 6);
  expect(ten.x + ten.width).toBeCloseTo(400, 6);
  expect(ten.x).toBeLessThan(nine.x);
  for (const row of cells) {
    const last = row[1].glyphs.at(-1)!;
    expect(last.x + last.width).toBeCloseTo(300, 6);
  }
});
