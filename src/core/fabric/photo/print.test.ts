import { describe, expect, test } from "vitest";
import { colorDifference, labOf } from "../color/index.ts";
import { blank, checkPixels, finish, MOST_PIXELS } from "./pixels.ts";
import { printPicture } from "./print.testing.ts";
import { repeatFindings, repeatFoundIn } from "./repeat.ts";
import {
  angleToLevel,
  cropped,
  LEAST_TAP_DISTANCE,
  Shrinker,
  scaleFromTaps,
  shrunk,
  straightened,
} from "./shape.ts";
import { seeded } from "./stripes.testing.ts";
import { colorSummary } from "./summary.ts";

describe("the repeat of a print", () => {
  const PRINT = {
    width: 150,
    height: 160,
    across: 43,
    along: 57,
    halfDrop: false,
    noise: 20,
    seed: 3,
  };

  test("found in both directions within 1 per cent, on 12 prints (seeds 1 to 12)", () => {
    let right = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const r = repeatFoundIn(
        printPicture({ ...PRINT, seed, across: 31 + 2 * seed, along: 63 - 1.3 * seed }),
      );
      const near =
        Math.abs(r.across / (31 + 2 * seed) - 1) < 0.01 &&
        Math.abs(r.along / (63 - 1.3 * seed) - 1) < 0.01;
      expect(r.sure && !near, `seed ${seed}`).toBe(false);
      if (r.sure) right++;
    }
    expect(right).toBeGreaterThanOrEqual(10);
  }, 120_000);

  test("a larger picture of it gives its own pixels", () => {
    const r = repeatFoundIn(
      printPicture({ ...PRINT, width: 450, height: 480, across: 129, along: 171 }),
    );
    expect(Math.abs(r.across / 129 - 1)).toBeLessThan(0.01);
    expect(Math.abs(r.along / 171 - 1)).toBeLessThan(0.01);
  });

  test("a half drop is told from a straight repeat", () => {
    const half = { ...PRINT, across: 34, halfDrop: true, noise: 8, seed: 21 };
    const r = repeatFoundIn(printPicture(half));
    expect(r.halfDrop).toBe(true);
    expect(Math.abs(r.across / 68 - 1)).toBeLessThan(0.01);
    expect(repeatFoundIn(printPicture({ ...half, halfDrop: false })).halfDrop).toBe(false);
  });

  test("no repeat: says so", () => {
    const r = repeatFoundIn(printPicture({ ...PRINT, across: 400, along: 410 }));
    expect(r.sure).toBe(false);
    expect(repeatFindings("f", r)[0]).toMatchObject({ code: "repeat-unsure", place: "f" });
  });
});

describe("scale, level, crop", () => {
  test("two taps 20 cm apart", () => {
    expect(scaleFromTaps({ x: 30, y: 40 }, { x: 330, y: 440 }, 200)).toBeCloseTo(2.5, 12);
    expect(
      scaleFromTaps({ x: 1, y: 1 }, { x: 1 + LEAST_TAP_DISTANCE / 2, y: 1 }, 2),
    ).toBeUndefined();
    expect(() => scaleFromTaps({ x: 0, y: 0 }, { x: 99, y: 0 }, 0)).toThrow(RangeError);
  });

  test("a line that falls to the right is turned up, whichever end is tapped first", () => {
    const [a, b] = [
      { x: 10, y: 20 },
      { x: 110, y: 20 + 100 * Math.tan(Math.PI / 15) },
    ];
    expect(angleToLevel(a, b)).toBeCloseTo(12, 9);
    expect(angleToLevel(b, a)).toBeCloseTo(12, 9);
  });

  test("straightened: the tapped line lies level afterward, no empty corners", () => {
    const p = blank(120, 90);
    for (let y = 0; y < 90; y++)
      for (let x = 0; x < 120; x++) {
        // A dark half below a line that falls 12 degrees to the right.
        const dark = y - 45 > (x - 60) * Math.tan(Math.PI / 15);
        p.data.set(dark ? [20, 20, 20, 255] : [230, 230, 230, 255], (y * 120 + x) * 4);
      }
    const flat = finish(straightened(p, 12));
    expect(flat.width / flat.height).toBeCloseTo(120 / 90, 1);
    const edge = (x: number): number => {
      for (let y = 0; y < flat.height; y++) if (flat.data[(y * flat.width + x) * 4] < 128) return y;
      return -1;
    };
    expect(Math.abs(edge(2) - edge(flat.width - 3))).toBeLessThanOrEqual(1);
    for (let i = 3; i < flat.data.length; i += 4) expect(flat.data[i]).toBe(255);
  });

  test("cropped to a box, clamped to the picture", () => {
    const p = blank(7, 5);
    p.data[(3 * 7 + 6) * 4] = 99;
    const c = cropped(p, 5, 2, 9, 9);
    expect([c.width, c.height, c.data[(1 * 2 + 1) * 4]]).toEqual([2, 3, 99]);
    expect(() => cropped(p, 7, 0, 3, 3)).toThrow(RangeError);
  });
});

describe("smaller pictures in bounded memory", () => {
  test("black and white lines mean half the light, not half the number", () => {
    const p = blank(64, 64);
    for (let i = 0; i < 64 * 64; i++) {
      const v = Math.floor(i / 64) % 2 ? 255 : 0;
      p.data.set([v, v, v, 255], 4 * i);
    }
    const small = finish(shrunk(p, 8));
    // Half the light of white is sRGB 188 (IEC 61966-2-1).
    expect([small.width, small.height, small.data[0]]).toEqual([8, 8, 188]);
  });

  test("rows may come one by one; missing rows and more than 25 megapixels are refused", () => {
    const work = new Shrinker(6000, 90, 300);
    const row = new Uint8ClampedArray(6000 * 4).fill(200);
    for (let i = 3; i < row.length; i += 4) row[i] = 255;
    expect(() => work.finish()).toThrow(/90 rows expected, got 0/);
    for (let y = 0; y < 90; y++) work.push(row);
    const small = work.finish();
    expect([small.width, small.height, small.data[0]]).toEqual([300, 5, 200]);
    expect(() => new Shrinker(6000, 5000, 300)).toThrow(RangeError);
  });

  test("see-through pixels are white fabric", () => {
    const p = blank(4, 4);
    expect(finish(shrunk(p, 2)).data[0]).toBe(255);
  });

  test("sizes and bytes that do not belong together are refused", () => {
    expect(() => checkPixels({ width: 3, height: 3, data: new Uint8Array(35) })).toThrow(
      RangeError,
    );
    expect(() => checkPixels({ width: 0, height: 3, data: new Uint8Array(0) })).toThrow(RangeError);
    const data = new Uint8Array(0);
    expect(() => checkPixels({ width: MOST_PIXELS, height: 2, data })).toThrow(/at most/);
  });
});

describe("color summary", () => {
  test("main colors with their shares, mean and value", () => {
    const colors: [string, number][] = [
      ["#1F4E5F", 0.5],
      ["#F2EBDD", 0.3],
      ["#C9A24B", 0.2],
    ];
    const random = seeded(8);
    const p = blank(80, 60);
    for (let i = 0; i < 80 * 60; i++) {
      const t = random();
      const hex = t < 0.5 ? colors[0][0] : t < 0.8 ? colors[1][0] : colors[2][0];
      const n = Number.parseInt(hex.slice(1), 16);
      p.data.set([n >> 16, (n >> 8) & 255, n & 255, 255], 4 * i);
    }
    const s = colorSummary(p);
    expect(s.main).toHaveLength(3);
    s.main.forEach((m, i) => {
      expect(colorDifference(m.lab, labOf(colors[i][0]))).toBeLessThan(0.5);
      expect(m.share).toBeCloseTo(colors[i][1], 1);
    });
    expect(s.mean.l).toBeCloseTo(
      colors.reduce((x, [c, w]) => x + labOf(c).l * w, 0),
      -1,
    );
    expect(s.darkest).toBeCloseTo(labOf("#1F4E5F").l, 1);
    expect(s.lightest).toBeCloseTo(labOf("#F2EBDD").l, 1);
    expect(s.value).toBe("medium");
  });
});
