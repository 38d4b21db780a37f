import type { Length, Unit } from "../measure/index.ts";

/**
 * The shop counts fabric in whole ticks, so that sums of cuts are exact: 1/1600 in holds every
 * sixty-fourth and every hundredth of an inch, 1/1000 mm every length that is typed in millimetres.
 */
export type Ticks = number;

const PER: Readonly<Record<Unit, number>> = { in: 1600, mm: 1000 };
/** What float64 may have lost of a length that was a whole number of ticks. */
const NOISE = 1e-4;

/** What must be there: up to the next tick. */
export const ticksUp = (x: Length, unit: Unit): Ticks => Math.ceil(+x * PER[unit] - NOISE);
/** What is there: down to the last whole tick. */
export const ticksDown = (x: Length, unit: Unit): Ticks => Math.floor(+x * PER[unit] + NOISE);
export const lengthOfTicks = (t: Ticks, unit: Unit): Length => t / PER[unit];

/**
 * What a price is for, in ticks of the design as a quotient of whole numbers: a yard where the shelf
 * is in inches, a meter where it is metric. An inch is 25.4 mm exactly.
 */
export function ticksOfPrice(shelf: Unit, design: Unit): readonly [above: number, below: number] {
  if (shelf === design) return [PER[design] * (design === "in" ? 36 : 1000), 1];
  return shelf === "in" ? [914_400, 1] : [PER.in * 10_000, 254];
}

/** As text that reads back to the same ticks: a ruler's fraction where it is one, else a decimal. */
export function ticksText(t: Ticks, unit: Unit): string {
  if (unit === "mm") return String(t / PER.mm);
  const perEighth = PER.in / 64;
  if (t % perEighth !== 0) return String(Number((t / PER.in).toFixed(6)));
  let above = t / perEighth;
  let below = 64;
  while (below > 1 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  const whole = Math.floor(above / below);
  const rest = above % below;
  if (rest === 0) return String(whole);
  return whole === 0 ? `${rest}/${below}` : `${whole} ${rest}/${below}`;
}
