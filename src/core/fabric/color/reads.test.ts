import { describe, expect, test } from "vitest";
import { radialBlock } from "../../block/index.ts";
import { type Brief, readDocument } from "../../brief/index.ts";
import type { PatchLook } from "../blockLook.ts";
import { colorings } from "./colorings.ts";
import { labOf } from "./lab.ts";
import { eyeFindings, neighborGaps, neighborsOf, readingOf } from "./reads.ts";
import { valueGap, valueWord } from "./value.ts";

const spec = {
  id: "b",
  n: 8,
  outline: "square",
  turned: "flat",
  a: 4,
  half: 4,
  join: 1e-9,
} as const;
const kites = radialBlock({ ...spec, whole: [1, 3, 5, 7] });
const plain = radialBlock({ ...spec, whole: [] });

/** Each role in one color. */
const looksOf = (g: typeof kites, colors: Record<string, string>): PatchLook[] =>
  g.patches.map((p) => {
    const color = colors[p.role] ?? "#FF00FF";
    const shown = [{ polygon: p.polygon, band: 0, color, fabricId: color }];
    return { patchId: p.id, fabricId: color, way: "up", start: 0, shown };
  });
const read = (g: typeof kites, colors: Record<string, string>) => {
  const looks = looksOf(g, colors);
  return readingOf(g, looks, neighborGaps(g, looks, 1e-9));
};

const DARK = "#23303A";
const MID = "#7F8A86";
const LIGHT = "#EFE9DC";

describe("will the eye part them", () => {
  test("by lightness, by color only, barely, not at all", () => {
    const gap = (p: string, q: string) => valueGap(labOf(p), labOf(q)).eye;
    expect(gap(DARK, LIGHT)).toBe("parts");
    expect(gap("#B2433A", "#1D6F66")).toBe("by-color-only");
    expect(gap("#808080", "#939393")).toBe("barely");
    expect(gap("#808080", "#878787")).toBe("will-not");
    expect([DARK, MID, LIGHT].map((c) => valueWord(labOf(c)))).toEqual(["dark", "medium", "light"]);
  });
});

describe("neighbors in a block", () => {
  test("kites: eight seams from the center, each the octagon's circumradius long", () => {
    const pairs = neighborsOf(kites.patches, 1e-9);
    expect(pairs).toHaveLength(8);
    for (const p of pairs) expect(p.seam).toBeCloseTo(4 / Math.cos(Math.PI / 8), 9);
  });

  test("plain corners: eight seams from the center and four along the corners", () => {
    const pairs = neighborsOf(plain.patches, 1e-9);
    expect(pairs).toHaveLength(12);
    const corner = pairs.filter((p) => p.seam < 4);
    expect(corner).toHaveLength(4);
    for (const p of corner) expect(p.seam).toBeCloseTo(8 * Math.tan(Math.PI / 8), 9);
  });

  test("each pair of fabrics too near in value is named once, alike ones never", () => {
    const looks = looksOf(plain, { "wedge-even": MID, "wedge-odd": MID, corner: "#7D8884" });
    const gaps = neighborGaps(plain, looks, 1e-9);
    expect(eyeFindings("b", gaps)).toEqual([
      {
        code: "eye-will-not-part",
        severity: "advice",
        place: "b",
        words: { a: "#7D8884", b: MID },
      },
    ]);
  });
});

describe("which figure reads", () => {
  test("dark kites among light wedges: the star", () => {
    const r = read(kites, { "wedge-even": LIGHT, kite: DARK });
    expect(r.reads).toBe("star");
    expect(r.beside).toEqual([]);
  });

  test("wedges all alike against light corners: the octagon", () => {
    expect(read(plain, { "wedge-even": DARK, "wedge-odd": DARK, corner: LIGHT }).reads).toBe(
      "octagon",
    );
  });

  test("wedges by turns, corners between the two in value: the pinwheel", () => {
    const r = read(plain, { "wedge-even": DARK, "wedge-odd": LIGHT, corner: MID });
    expect(r.figures.map((f) => f.figure)).toEqual(["pinwheel", "octagon"]);
    expect(r.reads).toBe("pinwheel");
  });

  test("bands in quiet surroundings: rings", () => {
    const looks = looksOf(plain, { "wedge-even": MID, "wedge-odd": MID, corner: MID }).map((l) =>
      l.patchId.endsWith("wedge")
        ? { ...l, shown: [l.shown[0], { ...l.shown[0], color: LIGHT }] }
        : l,
    );
    expect(readingOf(plain, looks, neighborGaps(plain, looks, 1e-9)).reads).toBe("rings");
  });

  test("one value throughout: nothing reads", () => {
    const r = read(kites, { "wedge-even": MID, kite: MID });
    expect(r.reads).toBeUndefined();
  });
});

const BRIEF = {
  format: "eighthwise-brief",
  version: 1,
  title: "Four fabrics",
  unit: "in",
  seam: "1/4",
  step: "1/8",
  ruler: { point: "sharp" },
  fabrics: [
    { kind: "plain", id: "peat", name: "Peat", usable: "41", color: DARK },
    { kind: "plain", id: "foam", name: "Foam", usable: "40", color: LIGHT },
    { kind: "plain", id: "moss", name: "Moss", usable: "42", color: MID },
    { kind: "plain", id: "clay", name: "Clay", usable: "43", color: "#B2653A" },
  ],
  blocks: [
    {
      kind: "wedges",
      id: "star",
      strip: "4 1/2",
      setting: "kites",
      fabric: { wedge: "peat", kite: "foam", background: "moss", bar: "clay" },
    },
  ],
  quilt: { rows: 2, columns: 3, plan: [["star"]] },
};

describe("other colorings", () => {
  const given = readDocument(BRIEF);
  if (!given.ok) throw new Error(JSON.stringify(given.refusals));
  const brief: Brief = given.brief;
  const all = colorings(brief, "star");

  test("four at most, of three kinds, none twice and none as it was", () => {
    expect(all.map((c) => c.kind)).toEqual(["exchanged", "inverted", "one-swapped", "exchanged"]);
    const texts = all.map((c) => JSON.stringify(c.brief.blocks[0].fabric));
    expect(new Set([...texts, JSON.stringify(brief.blocks[0].fabric)]).size).toBe(5);
    expect(all[0].label).toBe("wedges and kites exchanged");
    expect(all[0].changes).toEqual([
      { path: ["blocks", 0, "fabric", "kite"], from: "foam", to: "peat" },
      { path: ["blocks", 0, "fabric", "wedge"], from: "peat", to: "foam" },
    ]);
    for (const c of all) expect(c.label).toContain(c.word);
  });

  test("nothing but fabrics changes, and each is a brief that can be read again", () => {
    for (const c of all) {
      expect(readDocument(c.brief).ok).toBe(true);
      const { fabric: _now, ...now } = c.brief.blocks[0];
      const { fabric: _was, ...was } = brief.blocks[0];
      expect(now).toEqual(was);
      expect(c.brief.quilt).toBe(brief.quilt);
    }
  });

  test("inverted: darkest for lightest, the two between for each other", () => {
    const inverted = all.find((c) => c.kind === "inverted");
    expect(inverted?.brief.blocks[0].fabric).toEqual({
      wedge: "foam",
      kite: "peat",
      background: "clay",
      bar: "moss",
    });
  });

  test("with two fabrics inverting is the exchange itself, and is not offered twice", () => {
    const two = {
      ...brief,
      blocks: [{ ...brief.blocks[0], fabric: { wedge: "peat", kite: "clay" } }],
    };
    const kinds = colorings(two as Brief, "star").map((c) => c.kind);
    expect(kinds).toEqual(["exchanged", "one-swapped", "one-swapped", "one-swapped"]);
  });
});
