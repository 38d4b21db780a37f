import { describe, expect, test } from "vitest";
import type { Fabric } from "../brief/index.ts";
import { applyTo, area, boundingBox, type Polygon, point, type Rigid } from "../geometry/index.ts";
import { toRadians } from "../measure/index.ts";
import { bandsIn, movedShown, shownIn } from "./bands.ts";
import { EVEN, plainFabric, strips, UNEVEN } from "./fabrics.testing.ts";
import { lookOf } from "./look.ts";
import { bestStarts, roundMatch, seamMatch } from "./meeting.ts";
import { layOnPhoto } from "./motion.ts";
import { ringsOf, ringWidth } from "./rings.ts";
import type { BandLook, Look, WedgeCut } from "./types.ts";

const SA = 0.25;
const SIN = Math.sin(Math.PI / 8);
/** 4 1/2 in strip, sharp: a = 3.5967, p = 0.6533. */
const SHARP: WedgeCut = { a: 4.5 - SA - SA / SIN, seam: SA, past: SA / SIN };
/** 4 1/2 in strip, blunt 1/4 past the center: a = 4. */
const BLUNT: WedgeCut = { a: 4, seam: SA, past: SA };
const look = (f: Fabric, all: readonly Fabric[] = []): Look => lookOf(f, all, "in", SA).look;
const uneven = look(UNEVEN) as BandLook;
const even = look(EVEN) as BandLook;

describe("a printed stripe in a wedge", () => {
  test("up: the first band is at the outer edge, less the seam; sharp point, own calculation", () => {
    const rings = ringsOf(uneven, SHARP, "up", 0);
    // Band edges at 2 1/4 and 2 5/8 of the strip: a + SA - y = 3.84672 - y.
    expect(rings.map((r) => r.color)).toEqual(["#F2EBDD", "#C9A24B", "#1F4E5F"]);
    expect(rings[0].outer).toBeCloseTo(3.84672 - 2.625, 4);
    expect(rings[1].outer).toBeCloseTo(3.84672 - 2.25, 4);
    expect(ringWidth(rings[2])).toBeCloseTo(2, 9);
  });

  test("down: the point takes p of the first band before anything shows", () => {
    const rings = ringsOf(uneven, SHARP, "down", 0);
    expect(rings.map((r) => r.color)).toEqual(["#1F4E5F", "#C9A24B", "#F2EBDD"]);
    expect(rings[0].outer).toBeCloseTo(2.25 - 0.65328, 4);
  });

  test("with a sharp point, up and down show stretches 0.403 in apart (own calculation)", () => {
    expect(SHARP.past - SHARP.seam).toBeCloseTo(0.4033, 4);
  });

  test("crosswise bands run to the center: every band polygon is bounded by vertical lines", () => {
    const wedge = [point(0, 4.25), point(-1.6569, 0.25), point(1.6569, 0.25)];
    const shown = bandsIn(wedge, uneven, { way: "up", start: 0.3, crosswise: true, strip: 4.5 });
    expect(shown.length).toBeGreaterThan(1);
    const lefts = shown.map((s) => boundingBox(s.polygon).left).sort((p, q) => p - q);
    expect(lefts[0]).toBeCloseTo(-1.6569, 9);
    // The pattern frame's y is x + start: the repeat begins at x = -0.3.
    expect(lefts.some((x) => Math.abs(x + 0.3) < 1e-9)).toBe(true);
  });

  test("tilted bands: an edge through (0, y) runs at the tilt", () => {
    const square = [point(-3, 0), point(3, 0), point(3, 4), point(-3, 4)];
    const shown = bandsIn(square, uneven, { way: "up", start: 0, tilt: 10, strip: 4 });
    const gold = shown.find((s) => s.color === "#C9A24B");
    const slopes = (gold?.polygon ?? []).map((p, i, all) => {
      const q = all[(i + 1) % all.length];
      return (q.y - p.y) / (q.x - p.x);
    });
    const slanted = slopes.filter((m) => Math.abs(m) < 1e3 && Math.abs(m) > 1e-9);
    expect(slanted.length).toBeGreaterThanOrEqual(2);
    for (const m of slanted) expect(m).toBeCloseTo(Math.tan(toRadians(10)), 9);
  });

  test("a photo patch carries the motion to its place on the photo", () => {
    const print: Fabric = {
      ...(plainFabric("print", "#AA6644") as object),
      kind: "print",
      photo: { data: "data:,", width: "9", height: "7" },
    } as Fabric;
    const seen = look(print);
    const patch: Polygon = [point(1, 0), point(3, 0), point(2, 5)];
    const [one] = shownIn(patch, seen, layOnPhoto(patch, { x: 4.4, y: 3.1, turn: 90 }));
    expect(one.photo?.turn).toBeCloseTo(Math.PI / 2, 12);
    const moved = movedShown([one], { turn: 0.7, x: 2, y: -1, mirrored: false })[0];
    expect(area(moved.polygon)).toBeCloseTo(area(patch), 12);
    patch.forEach((p, i) => {
      const before = applyTo(one.photo as Rigid, p);
      const after = applyTo(moved.photo as Rigid, moved.polygon[i]);
      expect(after.x).toBeCloseTo(before.x, 9);
      expect(after.y).toBeCloseTo(before.y, 9);
    });
  });
});

describe("a fabric washed before it is cut", () => {
  const washed = (f: Fabric): Fabric => ({ ...f, shrinkage: { length: 4, width: 1.5 } });

  test("bands across the fabric shrink with its length, bands along it with its width", () => {
    expect((look(washed(UNEVEN)) as BandLook).period).toBeCloseTo(6 * 0.96, 12);
    expect((look(washed(EVEN)) as BandLook).period).toBeCloseTo(1.25 * 0.985, 12);
  });

  test("a photo shrinks both ways", () => {
    const print: Fabric = {
      ...(plainFabric("print", "#AA6644") as object),
      kind: "print",
      photo: { data: "data:,", width: "9", height: "7" },
      repeat: { along: "3", across: "5" },
    } as Fabric;
    const seen = look(washed(print));
    if (seen.kind !== "photo") throw new Error("a photo expected");
    expect([seen.width, seen.height]).toEqual([9 * 0.985, 7 * 0.96]);
    expect(seen.repeat).toEqual({ along: 3 * 0.96, across: 5 * 0.985 });
  });
});

describe("what a look can lack", () => {
  test("a print without its photo is drawn plain and says so", () => {
    const r = lookOf(
      { ...(plainFabric("p", "#123456") as object), kind: "print" } as Fabric,
      [],
      "in",
      SA,
    );
    expect(r.look).toEqual({ kind: "plain", fabricId: "p", color: "#123456" });
    expect(r.findings).toEqual([{ code: "photo-missing", severity: "draft", place: "p" }]);
  });

  test("a set made of itself is a finding, not a loop", () => {
    const set = strips([
      ["set", "2"],
      ["x", "3"],
    ]);
    const r = lookOf(set, [set, plainFabric("x", "#010203")], "in", SA);
    expect(r.findings.map((f) => f.code)).toEqual(["strip-set-in-itself"]);
  });

  test("a strip of an unknown fabric is named", () => {
    const r = lookOf(strips([["gone", "4"]]), [plainFabric("x", "#010203")], "in", SA);
    expect(r.findings[0]).toMatchObject({ code: "fabric-not-defined", words: { fabric: "gone" } });
  });

  test("a printed stripe inside a strip set shows from under its seam", () => {
    const set = strips([
      ["x", "1 3/4"],
      ["tide", "3 1/4"],
    ]);
    const seen = look(set, [plainFabric("x", "#010203"), UNEVEN]) as BandLook;
    // The second strip's raw edge lies at 1.75 - 0.5 = 1.25; its first band ends 2.25 above it.
    expect(seen.bands.map((b) => [b.from, b.to])).toEqual([
      [0, 1.5],
      [1.5, 3.5],
      [3.5, 3.875],
      [3.875, 4.5],
    ]);
  });
});

describe("rings at a seam", () => {
  test("two wedges alike meet all round", () => {
    const lay = { way: "up", start: 0.2 } as const;
    const all = roundMatch(uneven, SHARP, [lay, lay, lay], toRadians(22.5));
    for (const m of all) expect(m.most).toBeCloseTo(0, 12);
  });

  test("an uneven stripe of four colors never meets its own other way", () => {
    const m = seamMatch(
      uneven,
      SHARP,
      { way: "up", start: 0 },
      { way: "down", start: 0 },
      toRadians(22.5),
    );
    expect(m.most).toBeUndefined();
    expect(bestStarts(uneven, SHARP).meet).toBeUndefined();
  });

  test("an even stripe meets itself when its middle band lies at the middle of the strip", () => {
    const best = bestStarts(even, SHARP);
    expect(best.meet?.most).toBeCloseTo(0, 12);
    // Half of 4.5 from the lower edge is the middle of a 5/8 band: start = 0.3125 - 2.25 mod 5/8.
    const off = ((best.meet?.start ?? 0) - (0.3125 - 2.25)) / 0.625;
    expect(Math.abs(off - Math.round(off))).toBeLessThan(1e-9);
    expect(best.miss?.least).toBeCloseTo(0.625 / 2, 9);
  });

  test("a start 1/16 in off misses by 1/8 along the axis, more along the seam", () => {
    const start = (bestStarts(even, SHARP).meet?.start ?? 0) + 1 / 16;
    const m = seamMatch(even, SHARP, { way: "up", start }, { way: "down", start }, toRadians(22.5));
    expect(m.most).toBeCloseTo(0.125, 9);
    for (const e of m.edges) expect(e.alongSeam).toBeCloseTo(0.125 / Math.cos(Math.PI / 8), 9);
  });

  test("blunt at one seam: up and down are mirror images of one stretch", () => {
    const up = ringsOf(even, BLUNT, "up", 0.1);
    const down = ringsOf(even, BLUNT, "down", 0.1);
    expect(down.map(ringWidth).reverse()).toEqual(up.map((r) => expect.closeTo(ringWidth(r), 9)));
  });
});
