import {
  angleToLevel,
  colorSummary,
  cropped,
  finish,
  type Pixels,
  repeatFindings,
  repeatFoundIn,
  scaleFromTaps,
  straightened,
  stripeFindings,
  stripeFoundIn,
} from "../../src/core/fabric/photo/index.ts";
import { say } from "../../src/core/findings/index.ts";
import { stepOf } from "../../src/core/measure/index.ts";
import { type Broken, infinite } from "./laws.ts";
import { type Luck, luckOf } from "./luck.ts";

/** A decoded picture and what is done with it, drawn from one number so that a case stays small. */
export interface PixelsCase {
  readonly seed: number;
  readonly width: number;
  readonly height: number;
  readonly kind: "noise" | "flat" | "stripe" | "clear" | "check";
  readonly crop: readonly [number, number, number, number];
  readonly taps: readonly [number, number, number, number];
  readonly known: number;
}

export function pixels(luck: Luck): PixelsCase {
  const side = (): number => luck.pick([1, 2, 7, 24, 90, 240, 700]);
  const [width, height] = [side(), side()];
  const at = (size: number): number => luck.int(-4, size + 4);
  return {
    seed: luck.int(0, 1 << 30),
    width,
    height: width * height > 60_000 ? 60 : height,
    kind: luck.pick(["noise", "flat", "stripe", "clear", "check"] as const),
    crop: [at(width), at(height), luck.int(0, width), luck.int(0, height)],
    taps: [at(width), at(height), at(width), at(height)],
    known: luck.pick([0.001, 1, 24, 4000]),
  };
}

function drawn({ seed, width, height, kind }: PixelsCase): Pixels {
  const luck = luckOf(seed, 0);
  const data = new Uint8ClampedArray(width * height * 4);
  const period = luck.int(2, 60);
  const slope = luck.pick([0, 0, 0.1, 1, 50]);
  const colors = Array.from({ length: 4 }, () => luck.int(0, 255));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const band = Math.floor((4 * (y + slope * x)) / period) % 4;
      const square = (Math.floor(x / period) + Math.floor(y / period)) % 2;
      const level =
        kind === "noise"
          ? luck.int(0, 255)
          : colors[kind === "stripe" ? band : kind === "check" ? square : 0];
      const i = (y * width + x) * 4;
      data.set([level, 255 - level, level >> 1, kind === "clear" ? luck.pick([0, 128]) : 255], i);
    }
  return { width, height, data };
}

/** What holds of every picture that was decoded: numbers, bands that fill their repeat, doubts said. */
export function ofPixels(c: PixelsCase): Broken[] {
  const found: Broken[] = [];
  const no = (law: string, detail: string): void =>
    void found.push({ law, detail: `${JSON.stringify(c)}: ${detail}` });
  const whole = drawn(c);
  const [left, top, width, height] = c.crop;
  const inside =
    Math.min(c.width, left + width) > Math.max(0, left) &&
    Math.min(c.height, top + height) > Math.max(0, top);
  const part = inside ? cropped(whole, left, top, width, height) : whole;
  const [a, b] = [
    { x: c.taps[0], y: c.taps[1] },
    { x: c.taps[2], y: c.taps[3] },
  ];
  const scale = scaleFromTaps(a, b, c.known);
  if (scale !== undefined && !(scale > 0 && Number.isFinite(scale)))
    no("a scale is a number", String(scale));
  const level = finish(straightened(part, angleToLevel(a, b)));
  const stripe = stripeFoundIn(level);
  const repeat = repeatFoundIn(level);
  const color = colorSummary(level);
  for (const path of [
    ...infinite(stripe, "stripe"),
    ...infinite(repeat, "repeat"),
    ...infinite(color, "color"),
  ])
    no("what a picture tells is numbers", path);
  if (!/^#[0-9a-f]{6}$/i.test(color.color)) no("a color is a color", color.color);
  const filled = stripe.bands.reduce((sum, x) => sum + x.to - x.from, 0);
  if (stripe.bands.length > 0 && Math.abs(filled - 1) > 1e-6)
    no("bands fill their repeat", String(filled));
  if (stripe.sure && !(stripe.period > 0)) no("a sure stripe repeats", String(stripe.period));
  const step = { step: stepOf("1/8", "in") };
  for (const f of [...stripeFindings("reef", stripe), ...repeatFindings("reef", repeat)])
    if (say(f, step).length < 15 || /undefined|NaN/.test(say(f, step)))
      no("a doubt is said", f.code);
  return found.slice(0, 3);
}
