import {
  add,
  between,
  complement,
  crossing,
  depth,
  distance,
  leftHalfPlane,
  ORIGIN,
  type Point,
  scale,
} from "../../geometry/index.ts";
import { type Length, lengthIn, parseLength, type Unit } from "../../measure/index.ts";
import type { LineSaid, PointSaid } from "./grammar.ts";
import { type Letters, sayLength } from "./letters.ts";

/** A thing as it lies in the block, or a sentence saying what would work. */
export type Placed<T> =
  | { readonly ok: true; readonly at: T }
  | { readonly ok: false; readonly works: string };

export const works = (sentence: string): { ok: false; works: string } => ({
  ok: false,
  works: sentence,
});

export interface Line {
  readonly from: Point;
  readonly to: Point;
}

/** Finds said points and lines among the lettered ones. Lengths in the document's unit. */
export class Finder {
  readonly letters: Letters;
  readonly unit: Unit;
  readonly join: Length;

  constructor(letters: Letters, unit: Unit, join: Length) {
    this.letters = letters;
    this.unit = unit;
    this.join = join;
  }

  line([a, b]: LineSaid): Placed<Line> {
    const from = this.#named(a);
    if (!from.ok) return from;
    const to = this.#named(b);
    if (!to.ok) return to;
    if (distance(from.at, to.at) <= this.join)
      return works(`A line needs two different points; ${a}${b} has one.`);
    return { ok: true, at: { from: from.at, to: to.at } };
  }

  point(said: PointSaid): Placed<Point> {
    if (said.kind === "center") return { ok: true, at: ORIGIN };
    if (said.kind === "named") return this.#named(said.name);
    if (said.kind === "crossing") return this.#crossing(said.lines);
    const line = this.line([said.from, said.to]);
    if (!line.ok) return line;
    const { from, to } = line.at;
    if (said.kind === "fraction") {
      return { ok: true, at: between(from, to, said.of / said.parts) };
    }
    const whole = distance(from, to);
    const read = parseLength(said.length, this.unit);
    if (!read.ok) return works(`"${said.length}" is no length; 2 1/2 in or 60 mm is.`);
    const along = lengthIn(read.length, this.unit);
    if (along > whole + this.join)
      return works(`${said.from}${said.to} is only ${sayLength(whole, this.unit)} long.`);
    return { ok: true, at: between(from, to, along / whole) };
  }

  #named(name: string): Placed<Point> {
    const at = this.letters.find(name);
    if (at) return { ok: true, at };
    return works(`There is no point ${name} yet; the points so far are ${this.letters.range}.`);
  }

  #crossing([first, second]: readonly [LineSaid, LineSaid]): Placed<Point> {
    const a = this.line(first);
    if (!a.ok) return a;
    const b = this.line(second);
    if (!b.ok) return b;
    const at = crossing(leftHalfPlane(a.at.from, a.at.to), leftHalfPlane(b.at.from, b.at.to));
    if (at) return { ok: true, at };
    return works(`${first.join("")} and ${second.join("")} are parallel and cross nowhere.`);
  }
}

/** The foot of the perpendicular from p to the line. */
export function footOn(line: Line, p: Point): Point {
  const h = leftHalfPlane(line.from, line.to);
  return add(p, scale(complement(h).n, -depth(h, p)));
}
