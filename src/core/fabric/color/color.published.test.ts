import { describe, expect, test } from "vitest";
import { colorDifference, contrast, hexOfLab, labOf } from "./lab.ts";
import { seenAs, seenPixels } from "./simulate.ts";
import { rgbOf } from "./srgb.ts";

// G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000 Color-Difference Formula", Color Research and
// Application 30(1), 2005, Table 1: 22 of its 34 pairs, by their number there.
const SHARMA: readonly [number, number[], number[], number][] = [
  [1, [50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [2, [50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [3, [50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
  [5, [50, -1.1848, -84.8006], [50, 0, -82.7485], 1.0],
  [7, [50, 0, 0], [50, -1, 2], 2.3669],
  [8, [50, -1, 2], [50, 0, 0], 2.3669],
  [9, [50, 2.49, -0.001], [50, -2.49, 0.0009], 7.1792],
  [11, [50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
  [13, [50, -0.001, 2.49], [50, 0.0009, -2.49], 4.8045],
  [15, [50, -0.001, 2.49], [50, 0.0011, -2.49], 4.7461],
  [17, [50, 2.5, 0], [73, 25, -18], 27.1492],
  [18, [50, 2.5, 0], [61, -5, 29], 22.8977],
  [20, [50, 2.5, 0], [58, 24, 15], 19.4535],
  [21, [50, 2.5, 0], [50, 3.1736, 0.5854], 1.0],
  [23, [50, 2.5, 0], [50, 1.8634, 0.5757], 1.0],
  [24, [50, 2.5, 0], [50, 3.2592, 0.335], 1.0],
  [26, [63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.263],
  [27, [61.2901, 3.7196, -5.3901], [61.4292, 2.248, -4.962], 1.8731],
  [29, [22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
  [30, [36.4612, 47.858, 18.3852], [36.2715, 50.5065, 21.2231], 1.4146],
  [32, [90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381],
  [33, [6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377],
];

describe("CIEDE2000 (Sharma, Wu, Dalal 2005, Table 1)", () => {
  test.each(SHARMA)("pair %i, both orders", (_, p, q, expected) => {
    const [one, two] = [p, q].map(([l, a, b]) => ({ l, a, b }));
    expect(colorDifference(one, two).toFixed(4)).toBe(expected.toFixed(4));
    expect(colorDifference(two, one).toFixed(4)).toBe(expected.toFixed(4));
  });
});

// Computed with the D65 white 0.95047, 1, 1.08883 and Lindbloom's sRGB matrix (IEC 61966-2-1).
const LAB: readonly [string, number, number, number][] = [
  ["#FFFFFF", 100, 0, 0],
  ["#000000", 0, 0, 0],
  ["#808080", 53.585, 0, 0],
  ["#FF0000", 53.2408, 80.0925, 67.2032],
  ["#00FF00", 87.7347, -86.1827, 83.1793],
  ["#0000FF", 32.297, 79.1875, -107.8602],
  ["#FFFF00", 97.1393, -21.5537, 94.478],
  ["#C0C0C0", 77.7044, 0, 0],
];

describe("sRGB to CIELAB, D65", () => {
  test.each(LAB)("%s", (hex, l, a, b) => {
    const lab = labOf(hex);
    expect(lab.l).toBeCloseTo(l, 4);
    expect(lab.a).toBeCloseTo(a, 4);
    expect(lab.b).toBeCloseTo(b, 4);
    expect(hexOfLab(lab)).toBe(hex);
  });
});

// W3C, WCAG 2.2, relative luminance and contrast; values recomputed from its formula.
describe("WCAG 2.2 contrast", () => {
  test.each([
    ["#000000", 21],
    ["#767676", 4.5422],
    ["#777777", 4.4781],
    ["#949494", 3.0335],
    ["#808080", 3.9494],
    ["#FF0000", 3.9985],
    ["#0000FF", 8.5925],
  ])("%s on white", (hex, expected) => {
    expect(contrast(hex, "#FFFFFF")).toBeCloseTo(expected, 4);
    expect(contrast("#FFFFFF", hex)).toBeCloseTo(expected, 4);
  });
});

// Machado, Oliveira, Fernandes 2009: rows of each matrix sum to 1, so grays stay gray.
describe("color blindness", () => {
  test.each(["protan", "deutan", "tritan"] as const)("%s leaves grays alone", (sight) => {
    for (const gray of ["#000000", "#3B3B3B", "#808080", "#FFFFFF"])
      expect(seenAs(gray, sight)).toBe(gray);
  });

  test("red and green fall together for protan and deutan sight, not for tritan", () => {
    const apart = (p: string, q: string, sight: "protan" | "deutan" | "tritan" | "full") =>
      colorDifference(labOf(seenAs(p, sight)), labOf(seenAs(q, sight)));
    const [red, green] = ["#B2433A", "#5E7A2E"];
    expect(apart(red, green, "deutan")).toBeLessThan(apart(red, green, "full") / 2);
    expect(apart(red, green, "protan")).toBeLessThan(apart(red, green, "full") / 1.5);
    expect(apart(red, green, "tritan")).toBeGreaterThan(apart(red, green, "full") / 1.5);
  });

  test("a picture's pixels are seen as their colors are, within a step of 255", () => {
    const colors = ["#B2433A", "#1F4E5F", "#F2EBDD", "#5E7A2E", "#000000", "#FFFFFF"];
    for (const sight of ["gray", "protan", "deutan", "tritan", "full"] as const) {
      const data = Uint8ClampedArray.from(colors.flatMap((c) => [...rgbOf(c), 255]));
      seenPixels(data, sight);
      colors.forEach((c, i) => {
        rgbOf(seenAs(c, sight)).forEach((channel, k) => {
          expect(Math.abs(data[4 * i + k] - channel)).toBeLessThanOrEqual(1);
        });
        expect(data[4 * i + 3]).toBe(255);
      });
    }
  });

  test("gray keeps the lightness", () => {
    for (const hex of ["#B2433A", "#1F4E5F", "#F2EBDD"])
      expect(Math.abs(labOf(seenAs(hex, "gray")).l - labOf(hex).l)).toBeLessThan(0.25);
  });
});
