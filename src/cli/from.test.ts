import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { Ajv } from "ajv";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { canonicalText } from "../core/brief/index.ts";
import { smallBrief } from "../core/brief/sample.ts";
import { ran } from "./ran.testing.ts";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "from-"));
  await writeFile(join(folder, "small.json"), canonicalText(smallBrief()));
});
afterAll(async () => rm(folder, { recursive: true }));

const from = async (list: string, ...more: string[]) => {
  await writeFile(join(folder, "shelf.csv"), list);
  return ran(["from", join(folder, "shelf.csv"), join(folder, "small.json"), ...more]);
};

describe("plan from what is here", () => {
  test("as JSON after its schema: good rows are planned, bad ones told and kept as they stood", async () => {
    const list = [
      "fabric;width;length;how many;kind",
      "=SUM(A1);40;72;1;bolt",
      "Red;101,6 cm;1,75 yd;1;bolt",
      '"Sand";40;2 yd;1;bolt',
      "Sand;18;21;3;quarter",
      "Sand;40;-3;1;bolt",
      "Sand;40;0;1;bolt",
      "Sand;40",
    ].join("\n");
    const { code, out, err } = await from(list, "--json");
    expect(code).toBe(0);
    const json = JSON.parse(out);
    const schema = JSON.parse(await readFile(resolve("docs/schema/from.schema.json"), "utf8"));
    const fits = new Ajv({ strict: false }).compile(schema);
    fits(json);
    expect(fits.errors).toBeNull();
    expect(json.leftOut.map((r: { line: number }) => r.line)).toEqual([6, 7, 8]);
    for (const line of [6, 7, 8]) expect(err).toContain(`line ${line}`);
    const [p] = json.projects;
    expect(p.times).toBeGreaterThanOrEqual(1);
    for (const t of p.taken) expect(t.fromBolt + t.boltLeft).toBeLessThanOrEqual(72 + 1e-6);
    // Every strip of every drawing lies inside the fabric it is cut from.
    for (const cut of p.layouts)
      for (const s of cut.layout.strips)
        expect(s.from + s.times * s.height).toBeLessThanOrEqual(
          (cut.turned ? cut.width : cut.length) + 1e-6,
        );
  });

  test("a drawing to scale of every bolt and every size of piece", async () => {
    const { out } = await from(
      "Red, 40, 2 yd, 1, bolt\nSand, 40, 2 yd, 1, bolt\nSand, 21, 18, 4, quarter\n",
      "--out",
      join(folder, "projects"),
    );
    expect(out).toContain("1. Small");
    const files = (await readdir(join(folder, "projects"))).sort();
    expect(files).toContain("1-1-red-bolt.svg");
    expect(files.some((f) => f.endsWith("sand-piece.svg"))).toBe(true);
    for (const f of files)
      expect(await readFile(join(folder, "projects", f), "utf8")).toMatch(/^<svg /);
  });
});
