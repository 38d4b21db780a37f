import { blank, type Pixels } from "./pixels.ts";
import { seeded } from "./stripes.testing.ts";

export interface PrintPicture {
  readonly width: number;
  readonly height: number;
  readonly across: number;
  readonly along: number;
  readonly halfDrop: boolean;
  readonly noise: number;
  readonly seed: number;
}

/** A print of overlapping dots, drawn from the seed within one repeat and laid out again and again. */
export function printPicture(p: PrintPicture): Pixels {
  const random = seeded(p.seed);
  const dots = Array.from({ length: 9 }, () => ({
    x: random() * p.across,
    y: random() * p.along,
    r: (0.1 + 0.14 * random()) * Math.min(p.across, p.along),
    rgb: [0, 1, 2].map(() => 255 * random()),
  }));
  const out = blank(p.width, p.height);
  const near = (d: number, period: number): number => Math.abs(d - period * Math.round(d / period));
  for (let y = 0; y < p.height; y++)
    for (let x = 0; x < p.width; x++) {
      const column = Math.floor(x / p.across);
      const drop = p.halfDrop && column % 2 !== 0 ? p.along / 2 : 0;
      const hit = dots.findLast(
        (d) => Math.hypot(near(x - d.x, p.across), near(y + drop - d.y, p.along)) < d.r,
      );
      const i = (y * p.width + x) * 4;
      for (let c = 0; c < 3; c++)
        out.data[i + c] = (hit ? hit.rgb[c] : 214) + p.noise * (random() + random() - 1);
      out.data[i + 3] = 255;
    }
  return out;
}
