import type { Finding } from "../../findings/finding.ts";
import {
  contains,
  distance,
  ORIGIN,
  type Point,
  type Polygon,
  subtract,
} from "../../geometry/index.ts";
import { type Length, tolerances, type Unit } from "../../measure/index.ts";
import { readSeam, type SeamSaid } from "./grammar.ts";
import { Letters } from "./letters.ts";
import { nearestForm } from "./nearest.ts";
import { crossed, exitOf, leastWidth, type Part, partAround, split, uncut } from "./parts.ts";
import { Finder, footOn } from "./place.ts";
import { cutRound, firstRay, rays, roundOf, straightThrough } from "./wedges.ts";

/** The block as it grows, one said seam after another. */
export class Growth {
  readonly findings: Finding[] = [];
  readonly #id: string;
  readonly #outline: Polygon;
  readonly #root: Part;
  readonly #letters: Letters;
  readonly #finder: Finder;
  readonly #unit: Unit;
  readonly #seam: Length;
  readonly #join: Length;
  #said = 0;

  constructor(id: string, outline: Polygon, unit: Unit, seam: Length) {
    this.#id = id;
    this.#outline = outline;
    this.#root = { polygon: outline };
    this.#unit = unit;
    this.#seam = seam;
    this.#join = tolerances(unit).join;
    this.#letters = new Letters(outline, this.#join);
    this.#finder = new Finder(this.#letters, unit, this.#join);
  }

  get letters(): Letters {
    return this.#letters;
  }

  get root(): Part {
    return this.#root;
  }

  /** Cuts by one seam. False, with a finding, when it cannot be cut. */
  add(text: string): boolean {
    this.#said++;
    const read = readSeam(text);
    if (!read.ok) {
      this.#refuse("seam-not-understood", text, nearestForm(read.text, read.kind));
      return false;
    }
    const parts =
      read.said.kind === "wedges"
        ? this.#addWedges(read.said, text)
        : this.#addSeam(read.said, text);
    if (parts) this.#reportSlivers(parts);
    return parts !== undefined;
  }

  #refuse(
    code: Finding["code"],
    seam: string,
    works: string,
    numbers: Partial<Finding> = {},
  ): undefined {
    this.findings.push({
      code,
      severity: "blocks",
      place: `${this.#id}/seam-${this.#said}`,
      ...numbers,
      words: { seam, works },
    });
    return undefined;
  }

  /** The parts it cut, or undefined with a finding. */
  #addSeam(said: Exclude<SeamSaid, { kind: "wedges" }>, text: string): Part[] | undefined {
    const miss = (works: string) => this.#refuse("seam-misses-outline", text, works);
    const from = this.#finder.point(said.from);
    if (!from.ok) return miss(from.works);
    const to = this.#farEnd(said, from.at);
    if (!to.ok) return miss(to.works);
    for (const end of [from.at, to.at])
      if (!contains(this.#outline, end, this.#join))
        return miss(
          "One of its ends lies outside the block; take both on the outline or on seams.",
        );
    return this.#cutAlong(from.at, to.at, text);
  }

  #farEnd(said: Exclude<SeamSaid, { kind: "wedges" }>, from: Point) {
    if (said.kind === "to") return this.#finder.point(said.to);
    const line = this.#finder.line(said.line);
    if (!line.ok) return line;
    if (said.kind === "square") return { ok: true, at: footOn(line.at, from) } as const;
    const along = subtract(line.at.to, line.at.from);
    const ways = [along, subtract(ORIGIN, along)]
      .flatMap((way) => uncut(this.#root).map((part) => this.#within(part, from, way)))
      .filter((end): end is Point => end !== undefined);
    if (ways.length === 1) return { ok: true, at: ways[0] } as const;
    const name = said.line.join("");
    return {
      ok: false,
      works:
        ways.length === 0
          ? `Nothing lies beside it in the direction of ${name}; start on another side.`
          : `It could run both ways beside ${name}; say where it ends: "from ... to ...".`,
    } as const;
  }

  /** Where a ray from a point on the edge of the part leaves it; undefined when it does not enter. */
  #within(part: Part, from: Point, way: Point): Point | undefined {
    if (!contains(part.polygon, from, this.#join)) return undefined;
    const end = exitOf(part.polygon, from, way);
    if (distance(from, end) <= this.#join) return undefined;
    return crossed(part, from, end, this.#join).length === 1 ? end : undefined;
  }

  #cutAlong(from: Point, to: Point, text: string): Part[] | undefined {
    const miss = (works: string) => this.#refuse("seam-misses-outline", text, works);
    const length = distance(from, to);
    if (length <= this.#join) return miss("It starts and ends at the same point; name two.");
    const pieces = crossed(this.#root, from, to, this.#join);
    const covered = pieces.reduce(
      (sum, p) => sum + Math.min(p.to, length) - Math.max(p.from, 0),
      0,
    );
    if (covered < length - 4 * this.#join * (pieces.length + 1))
      return this.#refuse("seam-twice", text, "Leave it out, or say only the stretch that is new.");
    const first = pieces[0];
    const last = pieces[pieces.length - 1];
    if (first.from < -this.#join) return miss(this.#goOn("starts", "Start at", first.start));
    if (last.to > length + this.#join) return miss(this.#goOn("stops", "Go on to", last.end));
    const start = this.#letters.letter(from);
    for (const { part, line, end } of pieces) {
      split(part, line, this.#join);
      if (part !== last.part) this.#letters.letter(end);
    }
    this.#letters.addLine(start, this.#letters.letter(to));
    return pieces.map((piece) => piece.part);
  }

  #goOn(verb: string, advice: string, at: Point): string {
    const where = this.#letters.say(at, this.#unit);
    return `It ${verb} inside a part.${where ? ` ${advice} ${where}.` : ""}`;
  }

  #addWedges(said: Extract<SeamSaid, { kind: "wedges" }>, text: string): Part[] | undefined {
    const miss = (works: string) => this.#refuse("seam-misses-outline", text, works);
    const center = this.#finder.point(said.round);
    if (!center.ok) return miss(center.works);
    const toward = said.toward && this.#finder.point(said.toward);
    if (toward && !toward.ok) return miss(toward.works);
    const part = partAround(this.#root, center.at, this.#join);
    if (!part) return miss("Wedges go round a point inside one part; say them before its seams.");
    const round = roundOf(said.count, said.angles);
    if (!round.ok)
      return this.#refuse("circle-not-closed", text, round.works, {
        needed: 360,
        found: round.found as number,
        unit: "degrees",
      });
    const through = straightThrough(round.angles);
    if (!through)
      return miss(
        "No two of its seams make one straight line; an even number of equal wedges does.",
      );
    const first = firstRay(center.at, toward?.at);
    if (distance(first, ORIGIN) <= this.#join)
      return miss("Its first seam must point away from the center; name another point.");
    const seams = rays(round.angles, first);
    const middle = this.#letters.letter(center.at);
    for (const ray of seams)
      this.#letters.addLine(middle, this.#letters.letter(exitOf(part.polygon, center.at, ray)));
    cutRound(part, center.at, seams, through, this.#join);
    return [part];
  }

  /** What is left of these parts narrower than two allowances, where they were wide enough. */
  #reportSlivers(cut: readonly Part[]): void {
    const needed = 2 * this.#seam;
    const widths = cut
      .filter((part) => leastWidth(part.polygon) >= needed - this.#join)
      .flatMap(uncut)
      .map((part) => leastWidth(part.polygon));
    const found = Math.min(...widths, needed);
    if (found >= needed - this.#join) return;
    this.findings.push({
      code: "sliver",
      severity: "draft",
      place: `${this.#id}/seam-${this.#said}`,
      needed,
      found,
      unit: this.#unit,
    });
  }
}
