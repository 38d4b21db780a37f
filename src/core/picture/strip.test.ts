import { describe, expect, it } from "vitest";
import { type BandLook, ringsOf, ringWidth } from "../fabric/index.ts";
import { area } from "../geometry/index.ts";
import type { Mark } from "./marks.ts";
import { stripPicture } from "./strip.ts";

const band = (from: number, to: number, color: string) => ({ from, to, color, fabricId: "f" });
const look: BandLook = {
  kind: "bands",
  fabricId: "f",
  bands: [band(0, 1.3, "#111111"), band(1.3, 1.9, "#999999"), band(1.9, 5, "#EEEEEE")],
  period: 5,
  tilt: 0,
};
const wedge = { a: 3.4, seam: 0.25, past: 0.65 };
const made = stripPicture({
  unit: "in",
  fabricId: "f",
  look,
  wedge,
  angle: 45,
  start: 0.4,
  words: { up: "edge out", down: "edge in" },
  title: "A strip",
  small: 0.3,
});

/** Area by color of what is seen in a sewn wedge. */
function colors(mark: Mark | undefined): Record<string, number> {
  const out: Record<string, number> = {};
  if (mark?.kind !== "shape" || mark.fill?.kind !== "fabric") return out;
  for (const s of mark.fill.shown ?? []) out[s.color] = (out[s.color] ?? 0) + area(s.polygon);
  return out;
}

describe("a strip with wedges up and down", () => {
  const sewn = made.marks.filter((m) => m.kind === "shape" && m.line === "seam");

  it.each([
    ["up", 0],
    ["down", 1],
  ] as const)("shows in a wedge cut %s what the rings say", (way, place) => {
    // A ring from r to q of a sewn wedge covers (q^2 - r^2) tan 22.5 of it.
    const expected: Record<string, number> = {};
    for (const r of ringsOf(look, wedge, way, 0.4)) {
      expect(ringWidth(r)).toBeGreaterThan(0);
      expected[r.color] =
        (expected[r.color] ?? 0) + (r.outer ** 2 - r.inner ** 2) * Math.tan(Math.PI / 8);
    }
    const seen = colors(sewn[place]);
    expect(Object.keys(seen).sort()).toEqual(Object.keys(expected).sort());
    for (const [color, a] of Object.entries(expected)) expect(seen[color]).toBeCloseTo(a, 9);
  });

  it("lays neighbors leg to leg", () => {
    const cuts = made.marks.flatMap((m) =>
      m.kind === "shape" && m.line === "cut" && !m.fill ? [m.polygon] : [],
    );
    expect(cuts).toHaveLength(4);
    const [up, down] = cuts;
    // Right leg of the first, left leg of the second: one line.
    const right = Math.max(...up.map((p) => p.x));
    expect(Math.min(...down.filter((p) => p.y < 1e-9).map((p) => p.x))).toBeCloseTo(right, 9);
  });
});
