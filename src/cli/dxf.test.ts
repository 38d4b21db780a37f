import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import DxfParser from "dxf-parser";
import { expect, test } from "vitest";
import { ran } from "./ran.testing.ts";

// What a cutting machine is given, read back by a reader that is not ours and held against the
// answer of the same run, which the DXF writer does not write.

type P = { readonly x: number; readonly y: number };
interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly shape?: boolean;
  readonly vertices: readonly P[];
}
interface Told {
  readonly seam: number;
  readonly pieces: readonly { id: string; letter: string; count: number; finished: readonly P[] }[];
  readonly recipes: readonly { pieceId: string; kind: string; polygon: readonly P[] }[];
}

const folder = new URL("../../examples/", import.meta.url).pathname;

test.each([
  { name: "harbor-mat", unit: 4, metric: 1, seam: 7, kinds: ["kite", "square-once", "wedge"] },
  { name: "quiet-field", unit: 1, metric: 0, seam: 0.25, kinds: ["half-square-sliced", "wedge"] },
  {
    name: "compass-panel",
    unit: 1,
    metric: 0,
    seam: 0.25,
    kinds: ["parallel", "two-marks", "wedge"],
  },
  { name: "reef-window", unit: 1, metric: 0, seam: 0.25, kinds: ["square-once", "wedge"] },
])("$name: make's DXF has every shape, layer and unit, to 1e-6", async (of) => {
  const out = await mkdtemp(join(tmpdir(), "dxf-"));
  try {
    const { code } = await ran(["make", `${folder}${of.name}.json`, "--out", out]);
    expect(code).toBe(0);
    const answer: Told = JSON.parse(await readFile(join(out, "answer.json"), "utf8"));
    const dxf = new DxfParser().parseSync(await readFile(join(out, "templates.dxf"), "utf8"));
    expect(dxf?.header.$INSUNITS).toBe(of.unit);
    expect(dxf?.header.$MEASUREMENT).toBe(of.metric);
    const entities = (dxf?.entities ?? []) as unknown as Entity[];
    const on = (layer: string): Entity[] => entities.filter((e) => e.layer === layer);
    const [cuts, seams] = [on("CUT"), on("SEAM")];
    for (const e of [...cuts, ...seams]) expect([e.type, e.shape]).toEqual(["LWPOLYLINE", true]);
    expect(on("GRAIN").length).toBe(seams.length);
    expect(on("GRAIN").every((e) => Math.abs(e.vertices[0].y - e.vertices[1].y) < 1e-9)).toBe(true);

    const shaped = answer.recipes.filter((r) => r.kind !== "rectangle");
    expect([...new Set(shaped.map((r) => r.kind))].sort()).toEqual(of.kinds);
    const used = new Set<number>();
    for (const recipe of shaped) {
      const piece = answer.pieces.find((p) => p.id === recipe.pieceId);
      if (!piece) throw new Error(`no piece ${recipe.pieceId}`);
      const i = seams.findIndex((s) => shifted(s.vertices, piece.finished) < 1e-6);
      expect(i, `${piece.letter} has a seam line of its own shape`).toBeGreaterThanOrEqual(0);
      used.add(i);
      // The words name the piece that the shape is.
      expect(JSON.stringify(on("LABEL"))).toContain(`"${piece.letter} `);
      // Nowhere less than the allowance inside the cut, as the ruler would measure it.
      for (const [a, b] of sides(seams[i].vertices))
        for (const end of [a, b])
          expect(beyond(cuts[i].vertices, a, b, end)).toBeGreaterThan(of.seam - 0.002 * of.seam);
      // Wedges and kites are what their ruler or square really yields.
      if (recipe.kind === "wedge" || recipe.kind === "kite")
        expect(shifted(cuts[i].vertices, recipe.polygon)).toBeLessThan(1e-6);
    }
    expect(used.size).toBe(seams.length);
  } finally {
    await rm(out, { recursive: true, force: true });
  }
});

const sides = (p: readonly P[]): [P, P][] => p.map((a, i) => [a, p[(i + 1) % p.length]]);

/** How far the corners are off when one outline is slid onto the other, corner by corner. */
function shifted(a: readonly P[], b: readonly P[]): number {
  if (a.length !== b.length) return Number.POSITIVE_INFINITY;
  const turns = a.map((_, k) => {
    const [dx, dy] = [b[0].x - a[k].x, b[0].y - a[k].y];
    return Math.max(
      ...b.map((q, i) => {
        const p = a[(i + k) % a.length];
        return Math.hypot(p.x + dx - q.x, p.y + dy - q.y);
      }),
    );
  });
  return Math.min(...turns);
}

/** From a point of the seam a-b, square to it and outward, to the first cut line. */
function beyond(cut: readonly P[], a: P, b: P, at: P): number {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [nx, ny] = [(b.y - a.y) / length, (a.x - b.x) / length];
  const reaches = sides(cut).flatMap(([p, q]) => {
    const [ex, ey] = [q.x - p.x, q.y - p.y];
    const cross = nx * ey - ny * ex;
    if (Math.abs(cross) < 1e-12) return [];
    const t = ((p.x - at.x) * ey - (p.y - at.y) * ex) / cross;
    const u = ((p.x - at.x) * ny - (p.y - at.y) * nx) / cross;
    return t > -1e-9 && u > -1e-9 && u < 1 + 1e-9 ? [t] : [];
  });
  return Math.min(...reaches);
}
