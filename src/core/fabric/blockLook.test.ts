import { describe, expect, test } from "vitest";
import { type BlockGeometry, radialBlock } from "../block/index.ts";
import type { Block } from "../brief/index.ts";
import { area, distance, ORIGIN } from "../geometry/index.ts";
import { piecesOf } from "../piece/index.ts";
import { blockLook, placeOf } from "./blockLook.ts";
import { EVEN, plainFabric, UNEVEN } from "./fabrics.testing.ts";
import { lookOf } from "./look.ts";
import { ringsOf } from "./rings.ts";
import type { Look, WedgeCut } from "./types.ts";

const SA = 0.25;
const cut: WedgeCut = { a: 4, seam: SA, past: 0.31 };
const geometry = radialBlock({
  id: "star",
  n: 8,
  outline: "square",
  turned: "flat",
  a: 4,
  half: 4,
  whole: [1, 3, 5, 7],
  join: 1e-9,
});
const looks: Record<string, Look> = {
  tide: lookOf(UNEVEN, [], "in", SA).look,
  reed: lookOf(EVEN, [], "in", SA).look,
  quiet: lookOf(plainFabric("quiet", "#EEEEEE"), [], "in", SA).look,
};

const brief = (place: Block["place"]): Block => ({
  kind: "wedges",
  id: "star",
  n: 8,
  outline: "square",
  strip: "4.56",
  setting: "kites",
  fabric: { wedge: "tide", kite: "reed" },
  place,
});

function look(place: Block["place"], g: BlockGeometry = geometry, dealt = 0) {
  const fabricOf = Object.fromEntries(
    g.patches.map((p) => [
      p.id,
      p.role === "kite" ? "reed" : p.role.startsWith("wedge") ? "tide" : "quiet",
    ]),
  );
  const known = { name: "x", letter: "A", directional: false, reversible: false };
  const { pieces, pieceOf } = piecesOf({
    unit: "in",
    seam: SA,
    blocks: [{ geometry: g, count: 3, fabricOf }],
    extras: [],
    fabrics: { tide: known, reed: { ...known, letter: "B" }, quiet: { ...known, letter: "C" } },
  });
  const byId = Object.fromEntries(pieces.map((p) => [p.id, p]));
  return blockLook({
    block: brief(place),
    geometry: g,
    fabricOf,
    looks,
    pieceOf: Object.fromEntries(Object.entries(pieceOf).map(([k, id]) => [k, byId[id]])),
    wedge: cut,
    unit: "in",
    strips: Object.fromEntries(pieces.map((p) => [p.id, 3])),
    dealt,
  });
}

describe("the fabric of a whole block", () => {
  test("every patch is filled exactly, in the block's own frame", () => {
    for (const p of look({ wedge: { round: "mixed", way: "up", start: "1 3/8", tilt: 7 } })) {
      const patch = geometry.patches.find((q) => q.id === p.patchId)!;
      const total = p.shown.reduce((sum, s) => sum + area(s.polygon), 0);
      expect(total).toBeCloseTo(area(patch.polygon), 8);
      for (const s of p.shown) expect(area(s.polygon)).toBeGreaterThan(0);
    }
  });

  test("matched wedges: the rings of every sector lie at the radii of the closed formula", () => {
    const rings = ringsOf(looks.tide, cut, "down", 0.7);
    const wedges = look({ wedge: { round: "matched", way: "down", start: "0.7" } }).filter(
      (p) => p.fabricId === "tide",
    );
    expect(wedges).toHaveLength(4);
    for (const w of wedges) {
      expect(w.shown.map((s) => s.color).sort()).toEqual(rings.map((r) => r.color).sort());
      for (const s of w.shown) {
        const reach = Math.max(...s.polygon.map((v) => distance(v, ORIGIN)));
        const ring = rings.find((r) => Math.abs(r.outer / Math.cos(Math.PI / 8) - reach) < 1e-9);
        expect(ring?.color).toBe(s.color);
      }
    }
  });

  test("mixed goes by turns round the circle, whatever order the block lists its patches in", () => {
    const seen = look({ wedge: { round: "mixed", way: "up" } });
    const ways = [0, 2, 4, 6].map((s) => seen.find((p) => p.patchId === `star/s${s}/wedge`)?.way);
    expect(ways).toEqual(["up", "down", "up", "down"]);
  });

  test("a patch's own place wins over its role's", () => {
    const place = {
      wedge: { round: "matched" as const, way: "up" as const },
      "star/s4/wedge": { round: "matched" as const, way: "down" as const, start: "1/2" },
    };
    const seen = look(place);
    expect(seen.find((p) => p.patchId === "star/s4/wedge")).toMatchObject({
      way: "down",
      start: 0.5,
    });
    expect(seen.find((p) => p.patchId === "star/s2/wedge")?.way).toBe("up");
    expect(placeOf(brief(undefined), { id: "x", role: "kite" }, "in")).toMatchObject({
      round: "free",
      way: "up",
      start: 0,
    });
  });

  test("equal input, equal picture; another block of a free round differs", () => {
    expect(look({})).toEqual(look({}));
    const starts = (dealt: number) =>
      look({}, geometry, dealt)
        .filter((p) => p.fabricId === "tide")
        .map((p) => p.start);
    expect(new Set(starts(0)).size).toBe(3);
    expect(starts(1)).not.toEqual(starts(0));
  });
});
