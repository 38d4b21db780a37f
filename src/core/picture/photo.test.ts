import { expect, test } from "vitest";
import { applyToPolygon, type Point, type Polygon, point } from "../geometry/index.ts";
import { draw } from "./draw.ts";
import type { Picture } from "./marks.ts";
import type { Swatches } from "./swatch.ts";
import { PAPER } from "./theme.ts";

const swatches: Swatches = {
  bloom: {
    fabricId: "bloom",
    letter: "A",
    name: "Bloom",
    color: "#aabbcc",
    hatch: "rising",
    look: { kind: "photo", fabricId: "bloom", color: "#aabbcc", width: 3, height: 2 },
    photo: "data:image/png;base64,",
  },
};

const patch: Polygon = [point(-4, -3), point(5, -1), point(1, 6)];

/** Is the place covered by a tile? Its matrix carries (0..width, -height..0), y down, to the page. */
function covered(
  at: Point,
  tiles: readonly (readonly number[])[],
  width: number,
  height: number,
): boolean {
  return tiles.some(([a, b, c, d, e, f]) => {
    const det = a * d - b * c;
    const [x, y] = [at.x - e, at.y - f];
    const u = (d * x - c * y) / det;
    const v = (a * y - b * x) / det;
    return u >= -1e-6 && u <= width + 1e-6 && v <= 1e-6 && v >= -height - 1e-6;
  });
}

test.each([0, 0.7, 2.1, -2.6])(
  "photos cover the whole patch, however the fabric lies (turned %d)",
  (turn) => {
    const at = { turn, x: 1.3, y: -0.4, mirrored: false };
    const polygon = applyToPolygon(at, patch);
    const xs = polygon.map((p) => p.x);
    const ys = polygon.map((p) => p.y);
    const picture: Picture = {
      title: "photo",
      unit: "in",
      left: Math.min(...xs),
      bottom: Math.min(...ys),
      width: Math.max(...xs) - Math.min(...xs),
      height: Math.max(...ys) - Math.min(...ys),
      stamps: {},
      marks: [{ kind: "shape", polygon, fill: { kind: "fabric", fabricId: "bloom", at } }],
    };
    const { ops } = draw(picture, { theme: PAPER, swatches, scale: 10 });
    const image = ops[0];
    if (image?.op !== "image") throw new Error("an image expected");
    const [a, b, c] = image.clip;
    for (let i = 0; i <= 10; i++)
      for (let j = 0; j <= 10 - i; j++) {
        const [u, v, w] = [i / 10, j / 10, 1 - (i + j) / 10];
        const inside = point(u * a.x + v * b.x + w * c.x, u * a.y + v * b.y + w * c.y);
        expect(covered(inside, image.tiles, image.width, image.height)).toBe(true);
      }
  },
);
