import { describe, expect, test } from "vitest";
import type { WedgeBlock } from "../brief/schema.ts";
import { layOutBlock } from "./lay-out.ts";

const SEAM = 0.25;
const A = 3.596718864965186; // half across flats of a sharp 45-degree wedge from 4 1/2 at 1/4

const wedges = (over: Partial<WedgeBlock>): WedgeBlock => ({
  kind: "wedges",
  id: "star",
  n: 8,
  outline: "square",
  strip: "4 1/2",
  setting: "plain",
  fabric: {},
  ...over,
});

const layOut = (over: Partial<WedgeBlock>, a: number = A) =>
  layOutBlock(wedges(over), "in", SEAM, a);

describe("a wedge block of the brief", () => {
  test.each([
    ["plain", {}, 2 * A],
    ["kites", {}, 2 * A],
    ["floating", { side: "9 1/4" }, 9.25],
    ["framed", { side: "10 3/8" }, 10.375],
    ["deep", {}, (2 * A) / Math.cos(Math.PI / 8)],
    ["deep", { side: "8 5/8" }, 8.625],
    ["sectors", {}, 2 * A],
    ["sectors", { turned: "corner", whole: [2, 3] }, (2 * A) / Math.cos(Math.PI / 8)],
    ["sectors", { n: 12, outline: "hexagon", side: "11 cm" }, undefined],
    ["sectors", { n: 12, outline: "hexagon", side: "21 cm" }, 21 / 2.54],
  ] as [WedgeBlock["setting"], Partial<WedgeBlock>, number | undefined][])(
    "%s %o",
    (setting, over, width) => {
      const { geometry, findings } = layOut({ setting, ...over });
      if (width === undefined) {
        expect(geometry).toBeUndefined();
        return;
      }
      expect(findings).toEqual([]);
      expect(geometry?.width).toBeCloseTo(width, 12);
      expect(geometry?.id).toBe("star");
    },
  );

  test("a framed block frames plain corners, or kites when told", () => {
    const roles = (inner: "plain" | "kites" | undefined) =>
      layOut({ setting: "framed", side: "9 1/2", inner }).geometry?.patches.map((p) => p.role);
    expect(roles(undefined)?.filter((r) => r === "corner").length).toBe(4);
    expect(roles("plain")).toEqual(roles(undefined));
    expect(roles("kites")?.filter((r) => r === "kite").length).toBe(4);
  });

  test("without a half width from the ruler there is no geometry and nothing to add", () => {
    expect(layOutBlock(wedges({}), "in", SEAM, undefined)).toEqual({ findings: [] });
  });

  test("metric: the side is read in the unit of the document", () => {
    const block = wedges({ setting: "floating", side: "25 cm" });
    expect(layOutBlock(block, "mm", 7, 93.5).geometry?.width).toBe(250);
  });
});

describe("what is wrong with it", () => {
  test("an octagon that does not fit names the least side that works", () => {
    const { geometry, findings } = layOut({ setting: "deep", side: "7 3/4" });
    expect(geometry).toBeUndefined();
    expect(findings).toMatchObject([
      { code: "octagon-does-not-fit", severity: "blocks", place: "star", found: 7.75, unit: "in" },
    ]);
    const needed = findings[0].needed!;
    expect(needed).toBeCloseTo((2 * A) / Math.cos(Math.PI / 8), 12);
    const again = layOut({ setting: "deep", side: String(needed) });
    expect(again.findings).toEqual([]);
    expect(again.geometry?.width).toBeCloseTo(needed, 12);
  });

  test("floating and framed blocks must be wider than the octagon", () => {
    for (const setting of ["floating", "framed"] as const) {
      const { findings } = layOut({ setting, side: "8" }, 4);
      expect(findings).toMatchObject([
        { code: "octagon-does-not-fit", needed: 8, found: 8, words: { more: "yes" } },
      ]);
      expect(layOut({ setting, side: "8 1/16" }, 4).findings).toEqual([]);
    }
  });

  test("a side is missing where it is free and has no least", () => {
    for (const setting of ["floating", "framed"] as const)
      expect(layOut({ setting }).findings).toMatchObject([
        { code: "side-missing", needed: 2 * A, words: { setting } },
      ]);
  });

  test("a side that the strip decides may not be chosen, but may be said when it agrees", () => {
    const { geometry, findings } = layOut({ setting: "kites", side: "7 1/2" });
    expect(findings).toMatchObject([
      { code: "side-not-free", severity: "blocks", needed: 2 * A, found: 7.5 },
    ]);
    expect(geometry?.width).toBe(2 * A);
    expect(layOut({ setting: "kites", side: "8" }, 4).findings).toEqual([]);
  });

  test.each([
    [
      { setting: "sectors", outline: "hexagon" },
      { why: "hexagon-takes-6-or-12", sectors: "8" },
    ],
    [
      { setting: "plain", n: 12 },
      { why: "named-setting", setting: "plain" },
    ],
    [
      { setting: "deep", n: 6, outline: "hexagon" },
      { why: "named-setting", setting: "deep" },
    ],
    [{ setting: "deep", whole: [0] }, { why: "whole" }],
    [{ setting: "deep", turned: "flat" }, { why: "turned" }],
    [{ setting: "plain", inner: "kites" }, { why: "inner" }],
    [
      { setting: "sectors", whole: [3, 8] },
      { why: "sector-out-of-range", sector: "8", last: "7" },
    ],
    [
      { setting: "sectors", n: 16, whole: [9, 2, 9] },
      { why: "sector-twice", sector: "9" },
    ],
  ] as [Partial<WedgeBlock>, Record<string, string>][])("%o", (over, words) => {
    const { geometry, findings } = layOut(over);
    expect(geometry).toBeUndefined();
    expect(findings).toMatchObject([
      { code: "pattern-of-sectors", severity: "blocks", place: "star", words },
    ]);
  });

  test("a tree it does not have is named with those it has; the block is built all the same", () => {
    const { geometry, findings } = layOut({ tree: "inside-out" });
    expect(geometry?.choice.name).toBe("corners-last");
    expect(findings).toMatchObject([
      {
        code: "tree-not-known",
        severity: "draft",
        words: { asked: "inside-out", known: "corners-last, corners-first" },
      },
    ]);
    expect(layOut({ tree: "corners-last" }).findings).toEqual([]);
    expect(layOut({ tree: "corners-first" }).geometry?.choice.name).toBe("corners-first");
  });
});
