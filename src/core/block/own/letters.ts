import { between, distance, type Point, type Polygon } from "../../geometry/index.ts";
import type { Length, Unit } from "../../measure/index.ts";

export interface LetteredPoint {
  readonly name: string;
  readonly at: Point;
}

/**
 * The lettered points of a block of one's own. The corners of the outline come first, anticlockwise
 * from the lower left; then every end of a seam that has no letter yet, in the order the seams are
 * said, its start before its end (and, between them, where it crosses seams, from start to end).
 * After Z come A2, B2 and so on.
 */
export class Letters {
  readonly #points: LetteredPoint[] = [];
  /** Straight stretches whose two ends are lettered: the sides and the seams. */
  readonly #lines: (readonly [LetteredPoint, LetteredPoint])[] = [];
  readonly #join: Length;

  constructor(outline: Polygon, join: Length) {
    this.#join = join;
    const corners = outline.map((at) => this.letter(at));
    corners.forEach((corner, i) => {
      this.#lines.push([corner, corners[(i + 1) % corners.length]]);
    });
  }

  get points(): readonly LetteredPoint[] {
    return this.#points;
  }

  find(name: string): Point | undefined {
    return this.#points.find((p) => p.name === name)?.at;
  }

  nameOf(at: Point): string | undefined {
    return this.#points.find((p) => distance(p.at, at) <= this.#join)?.name;
  }

  /** The letter of this point, a new one if it has none. */
  letter(at: Point): LetteredPoint {
    const known = this.#points.find((p) => distance(p.at, at) <= this.#join);
    if (known) return known;
    const count = this.#points.length;
    const round = Math.floor(count / 26);
    const name = String.fromCharCode(65 + (count % 26)) + (round === 0 ? "" : String(round + 1));
    const point = { name, at };
    this.#points.push(point);
    return point;
  }

  addLine(from: LetteredPoint, to: LetteredPoint): void {
    this.#lines.push([from, to]);
  }

  /** Says where a point is, in words that the grammar reads. Undefined when it lies on no line. */
  say(at: Point, unit: Unit): string | undefined {
    const name = this.nameOf(at);
    if (name) return name;
    for (const [from, to] of this.#lines) {
      const whole = distance(from.at, to.at);
      const along = distance(from.at, at);
      const off = distance(at, between(from.at, to.at, along / whole));
      if (off > this.#join || along > whole) continue;
      const line = from.name + to.name;
      for (const [k, words] of PLAIN_FRACTIONS)
        if (Math.abs(along - k * whole) <= this.#join) return `${words} of ${line}`;
      return `${sayLength(along, unit)} from ${from.name} along ${line}`;
    }
    return undefined;
  }

  /** `A to F, H`: the letters there are. */
  get range(): string {
    const names = this.#points.map((p) => p.name);
    return names.length < 3 ? names.join(", ") : `${names[0]} to ${names[names.length - 1]}`;
  }
}

const PLAIN_FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 2, "the middle"],
  [1 / 3, "a third"],
  [2 / 3, "two thirds"],
  [1 / 4, "a quarter"],
  [3 / 4, "three quarters"],
];

/** For suggestions only: a thousandth of an inch or a tenth of a millimetre, as a plain decimal. */
export const sayLength = (x: Length, unit: Unit): string =>
  `${Number(x.toFixed(unit === "in" ? 3 : 1))} ${unit}`;
