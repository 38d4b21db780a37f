import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  flatTip,
  halfAcross,
  pastCenter,
  readPoint,
  rulerOf,
  stripFor,
  wedgeBase,
} from "./index.ts";

const SIN = Math.sin(Math.PI / 8);
const TAN = Math.tan(Math.PI / 8);

describe("rulerOf", () => {
  it("knows a sharp, a blunt and a flat ruler by the height missing from the tip", () => {
    expect(rulerOf({ point: "sharp" }, 8, "in").missing).toBe(0);
    const blunt = rulerOf({ point: { blunt: "1/4" } }, 8, "in");
    expect(blunt.missing).toBeCloseTo(0.25 / SIN - 0.25, 12);
    const flat = rulerOf({ point: { flat: "3/8" } }, 8, "in");
    expect(flat.missing).toBeCloseTo(0.375 / (2 * TAN), 12);
    expect(flatTip(flat)).toBeCloseTo(0.375, 12);
    expect(rulerOf({ point: { blunt: "5 mm", seam: "7 mm" } }, 8, "mm").missing).toBeCloseTo(
      7 / SIN - 5,
      12,
    );
  });

  it("cannot be blunter than its own sharp point", () => {
    expect(rulerOf({ point: { blunt: "2" } }, 8, "in").missing).toBe(0);
  });

  it("keeps its shortest and longest line", () => {
    const r = rulerOf({ point: "sharp", shortest: "2 1/2", longest: "8" }, 8, "in");
    expect([r.shortest, r.longest]).toEqual([2.5, 8]);
    expect(rulerOf({ point: "sharp" }, 8, "in").longest).toBeUndefined();
  });

  it("reads its point as typed", () => {
    expect(readPoint("sharp", "in")).toBe("sharp");
    expect(readPoint("blunt", "mm")).toEqual({ blunt: "1/4 in" });
    expect(readPoint("blunt:3/16", "in")).toEqual({ blunt: "3/16" });
    expect(readPoint("flat:9 mm", "in")).toEqual({ flat: "9 mm" });
    for (const bad of ["", "sharp:1", "flat", "flat:", "blunt:x", "round", "flat:1:2"])
      expect(readPoint(bad, "in")).toBeUndefined();
  });
});

describe("strip and octagon", () => {
  const flat = rulerOf({ point: { flat: "0.33409" } }, 8, "in");

  it.each([
    [0.25, 8],
    [7 / 25.4, 7.8151],
    [6 / 25.4, 8.0996],
  ])("a 4 1/2 in strip by a 0.33409 in flat tip, seam %s: %s across flats", (seam, across) => {
    expect(2 * halfAcross(flat, 4.5, seam)).toBeCloseTo(across, 4);
  });

  it("a flat tip read 1/32 in wrong moves the octagon by 0.0754 in across flats", () => {
    const across = (tip: number): number =>
      2 * halfAcross(rulerOf({ point: { flat: String(tip) } }, 8, "in"), 4.5, 0.25);
    expect(across(0.375 + 1 / 32) - across(0.375)).toBeCloseTo(0.0754, 4);
  });

  it("4 1/2 in finishes 7.193 sharp and 8 blunt", () => {
    expect(2 * halfAcross(rulerOf({ point: "sharp" }, 8, "in"), 4.5, 0.25)).toBeCloseTo(7.193, 3);
    expect(2 * halfAcross(rulerOf({ point: { blunt: "1/4" } }, 8, "in"), 4.5, 0.25)).toBeCloseTo(
      8,
      12,
    );
  });

  it("a 9 in block wants 5.4033 sharp; 5 1/2 would finish 9.193", () => {
    const sharp = rulerOf({ point: "sharp" }, 8, "in");
    expect(stripFor(sharp, 4.5, 0.25)).toBeCloseTo(5.4033, 4);
    expect(2 * halfAcross(sharp, 5.5, 0.25)).toBeCloseTo(9.193, 3);
  });

  it("a = 4: strip 4.9033 and base 4.0620, to 1e-9 by the formulas", () => {
    const sharp = rulerOf({ point: "sharp" }, 8, "in");
    const strip = stripFor(sharp, 4, 0.25);
    expect(Math.abs(strip - (4 + 0.25 + 0.25 / SIN))).toBeLessThan(1e-9);
    expect(Math.abs(wedgeBase(sharp, strip) - 2 * TAN * strip)).toBeLessThan(1e-9);
    expect(wedgeBase(sharp, strip)).toBeCloseTo(4.062, 4);
  });

  it("each turns the other round, and the tip stays put whatever the seam (seed 5)", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(6, 8, 10, 12, 16),
        fc.double({ min: 2, max: 12, noNaN: true }),
        fc.double({ min: 0.1, max: 0.5, noNaN: true }),
        fc.integer({ min: 0, max: 8 }),
        (n, strip, seam, tip) => {
          const r = rulerOf({ point: { flat: `${tip}/16` } }, n, "in");
          const a = halfAcross(r, strip, seam);
          expect(Math.abs(stripFor(r, a, seam) - strip)).toBeLessThan(1e-9);
          // From the finished flat to the cut tip: the strip less one seam, however it is divided.
          expect(Math.abs(a + pastCenter(r, seam) - (strip - seam))).toBeLessThan(1e-9);
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });
});
