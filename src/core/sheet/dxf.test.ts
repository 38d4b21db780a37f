import { readFileSync } from "node:fs";
import DxfParser from "dxf-parser";
import { expect, test } from "vitest";
import { boundingBox } from "../geometry/index.ts";
import { dxfText } from "./dxf.ts";
import { jobOf } from "./job.testing.ts";
import { templatesOf } from "./shapes.ts";

const example = (name: string): string =>
  readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), "utf8");

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly shape?: boolean;
  readonly vertices: readonly { readonly x: number; readonly y: number }[];
}

test.each([
  ["tidepool-runner", 1, 0, 1],
  ["harbor-mat", 4, 1, 25.4],
])(
  "%s: an independent reader gets the layers, the unit and every corner to 1e-6",
  (name, unit, metric, gap) => {
    const job = jobOf(example(name));
    const dxf = new DxfParser().parseSync(dxfText(job));
    expect(dxf?.header.$INSUNITS).toBe(unit);
    expect(dxf?.header.$MEASUREMENT).toBe(metric);
    const entities = (dxf?.entities ?? []) as unknown as Entity[];
    const templates = templatesOf(job);
    expect(templates.length).toBeGreaterThan(1);
    let x = 0;
    templates.forEach((t, i) => {
      const box = boundingBox(t.cut);
      for (const [layer, shape] of [
        ["CUT", t.cut],
        ["SEAM", t.finished],
      ] as const) {
        const found = entities.filter((e) => e.layer === layer)[i];
        expect(found.type).toBe("LWPOLYLINE");
        expect(found.shape).toBe(true);
        expect(found.vertices.length).toBe(shape.length);
        found.vertices.forEach((v, k) => {
          expect(Math.abs(v.x - (shape[k].x - box.left + x))).toBeLessThan(1e-6);
          expect(Math.abs(v.y - (shape[k].y - box.bottom))).toBeLessThan(1e-6);
        });
      }
      x += box.right - box.left + gap;
    });
    expect(entities.filter((e) => e.layer === "GRAIN").length).toBe(templates.length);
  },
);

test("a name with a line break stays a name", () => {
  const brief = JSON.parse(example("tidepool-runner"));
  brief.fabrics[0].name = "Kelp\n0\nENDSEC";
  const dxf = new DxfParser().parseSync(dxfText(jobOf(JSON.stringify(brief))));
  expect(
    dxf?.entities.some(
      (e) => e.type === "TEXT" && /Kelp 0 ENDSEC/.test((e as unknown as { text: string }).text),
    ),
  ).toBe(true);
});
