import { describe, expect, it } from "vitest";
import { complement, intersect, leftHalfPlane, type Polygon, point } from "../geometry/index.ts";
import { type Laid, prove } from "./proof.ts";

const SEAM = 0.25;
const T = Math.tan(Math.PI / 8);
const SIN = Math.sin(Math.PI / 8);

/** The corner triangle of an octagon `2a` across: legs on the axes, and a square of side q cut once. */
function corner(a: number, q: number): Laid {
  const leg = a * (2 - Math.SQRT2);
  const at = q / 2 - (SEAM * Math.SQRT1_2 + leg / 2);
  return {
    finished: [point(at, at), point(at + leg, at), point(at, at + leg)],
    allowances: [SEAM, SEAM, SEAM],
    raw: [point(0, 0), point(q, 0), point(0, q)],
    setEdges: [1],
  };
}

/** The kite of an octagon `2a` across, its point at the origin, cut from a square of side q. */
function kite(a: number, q: number): Laid {
  const finished = [point(0, 0), point(a, a * T), point(a, a), point(a * T, a)];
  const near = a + SEAM - q;
  const leg = (v: { x: number; y: number }, other: boolean) => {
    const out = point(SEAM * SIN, -SEAM * Math.cos(Math.PI / 8));
    const from = other ? point(out.y, out.x) : out;
    const to = point(from.x + v.x, from.y + v.y);
    return other ? complement(leftHalfPlane(from, to)) : leftHalfPlane(from, to);
  };
  const raw: Polygon = intersect(
    [
      leftHalfPlane(point(a + SEAM, 0), point(a + SEAM, 1)),
      leftHalfPlane(point(1, a + SEAM), point(0, a + SEAM)),
      leg(finished[1], false),
      leg(finished[3], true),
      leftHalfPlane(point(near, 1), point(near, 0)),
      leftHalfPlane(point(0, near), point(1, near)),
    ],
    100,
    1e-12,
  );
  const onSquare = (i: number) => {
    const b = raw[(i + 1) % raw.length];
    const same = (u: number, v: number) => Math.abs(u - near) < 1e-9 && Math.abs(v - near) < 1e-9;
    return same(raw[i].x, b.x) || same(raw[i].y, b.y);
  };
  return {
    finished,
    allowances: [SEAM, SEAM, SEAM, SEAM],
    raw,
    setEdges: raw.map((_, i) => i).filter((i) => !onSquare(i)),
  };
}

const SHARP_HALF = 4.5 - SEAM - SEAM / SIN;

describe("prove", () => {
  it("a 4 in square cut once covers the corner of a 4 1/2 in sharp strip with 0.520 to spare", () => {
    const p = prove(corner(SHARP_HALF, 4), "in");
    expect(SHARP_HALF).toBeCloseTo(3.5967, 4);
    expect(p.verdict).toBe("proved");
    expect(p.w).toBeCloseTo(0.77, 3);
    expect(p.spare).toBeCloseTo(0.52, 3);
    expect(p.spareBySide[1].spare).toBe(0);
    expect(p.offCenter).toBeCloseTo(p.spare * Math.SQRT2, 9);
    expect(p.thin).toEqual([]);
  });

  it("finds the middle when the piece was laid off center along its set edge", () => {
    const laid = corner(SHARP_HALF, 4);
    const slid = { ...laid, finished: laid.finished.map((v) => point(v.x + 0.3, v.y - 0.3)) };
    expect(prove(slid, "in").w).toBeCloseTo(prove(laid, "in").w, 9);
    expect(prove(slid, "in").shift.x).toBeCloseTo(-0.3, 9);
  });

  it("a 4 in square for the kites of a 4 1/2 in strip is thin with a sharp point", () => {
    const p = prove(kite(SHARP_HALF, 4), "in");
    expect(p.verdict).toBe("thin");
    expect(p.w).toBeCloseTo(0.1659, 4);
    expect(p.reach).toBeCloseTo(0.1533, 4);
    expect(p.reach * Math.SQRT2).toBeCloseTo(0.2168, 4);
    expect(p.shift).toEqual(point(0, 0));
    // Both long sides lose their allowance over the last stretch to the point.
    expect(p.thin.map((t) => t.edge)).toEqual([0, 3]);
    expect(p.thin[0].over).toBeCloseTo((SEAM * Math.cos(Math.PI / 8) - p.reach) / SIN, 6);
    expect(p.offCenter).toBe(0);
  });

  it("and blocked with a blunt point, 0.3536 short of the center", () => {
    const p = prove(kite(4, 4), "in");
    expect(p.verdict).toBe("blocked");
    expect(p.reach).toBeCloseTo(-0.25, 12);
    expect(p.reach * Math.SQRT2).toBeCloseTo(-0.3536, 4);
  });

  it("the kite square with every stitch its full allowance is a + SA + SA cos 22.5, exactly", () => {
    const least = 4 + SEAM + SEAM * Math.cos(Math.PI / 8);
    expect(least).toBeCloseTo(4.481, 4);
    expect(prove(kite(4, least), "in").verdict).toBe("proved");
    expect(prove(kite(4, least), "in").spare).toBe(0);
    expect(prove(kite(4, least - 1e-5), "in").verdict).toBe("thin");
  });

  it("is exact when all edges are set: spare 0 everywhere", () => {
    const p = prove(
      { ...corner(4, 4 * (2 - Math.SQRT2) + SEAM * (2 + Math.SQRT2)), setEdges: [0, 1, 2] },
      "in",
    );
    expect(p).toMatchObject({ verdict: "proved", spare: 0, w: SEAM, reach: SEAM, offCenter: 0 });
    expect(p.spareBySide.every((s) => s.spare === 0)).toBe(true);
  });

  it("moves freely when no edge is set, and wants each side its own allowance", () => {
    const p = prove(
      {
        finished: [point(0, 0), point(3, 0), point(3, 2), point(0, 2)],
        allowances: [0.25, 0.25, 0.5, 0.25],
        raw: [point(0, 0), point(4, 0), point(4, 3.25), point(0, 3.25)],
        setEdges: [],
      },
      "in",
    );
    // Across 1 in to spare less two quarters: 0.25 each side. Up 1.25 less 0.25 and 0.5: 0.25 each.
    expect(p.spare).toBeCloseTo(0.25, 12);
    expect(p.shift).toEqual({ x: expect.closeTo(0.5, 9), y: expect.closeTo(0.5, 9) });
    expect(p.w).toBeCloseTo(0.5, 12);
    expect(p.offCenter).toBeCloseTo(0.25, 12);
  });
});
