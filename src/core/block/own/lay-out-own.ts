import type { OwnBlock } from "../../brief/schema.ts";
import type { Finding } from "../../findings/finding.ts";
import {
  boundingBox,
  contains,
  distance,
  ORIGIN,
  type Point,
  type Polygon,
  subtract,
} from "../../geometry/index.ts";
import { knownLength, type Length, tolerances, type Unit } from "../../measure/index.ts";
import { handOf } from "../hand.ts";
import { hexagon, rectangle } from "../outline.ts";
import { grow, patchesOf } from "../plan.ts";
import type { BlockGeometry, Role } from "../types.ts";
import { readSeam, type SeamSaid } from "./grammar.ts";
import { type LetteredPoint, Letters } from "./letters.ts";
import {
  crossed,
  exitOf,
  leastWidth,
  type Part,
  partAround,
  planOf,
  split,
  uncut,
} from "./parts.ts";
import { Finder, footOn } from "./place.ts";
import { cutRound, firstRay, rays, roundOf, straightThrough } from "./wedges.ts";

export interface OwnLaidOut {
  readonly geometry: BlockGeometry;
  readonly findings: readonly Finding[];
  /** Letters for the picture: outline corners, then ends of seams as they were said. */
  readonly points: readonly LetteredPoint[];
}

/**
 * A block of one's own: its outline cut by seams said in words (docs/geometry/own-blocks.md). Each
 * seam cuts every part it runs across, so the first one said is the last one sewn. At the first seam
 * that cannot be cut it stops: the geometry has the seams before it and the finding says what would
 * work. Lengths in the document's unit.
 */
export function layOutOwn(block: OwnBlock, unit: Unit, seam: Length): OwnLaidOut {
  const outline =
    "hexagon" in block.outline
      ? hexagon(knownLength(block.outline.hexagon, unit) / 2)
      : rectangle(
          knownLength(block.outline.width, unit) / 2,
          knownLength(block.outline.height, unit) / 2,
        );
  const growth = new Growth(block.id, outline, unit, seam);
  for (const text of block.seams) if (!growth.add(text)) break;
  const { geometry, unknownRoles } = growth.finish(block.roles ?? {});
  return { geometry, findings: [...growth.findings, ...unknownRoles], points: growth.points };
}

/** The block as it grows, one said seam after another. */
class Growth {
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

  get points(): readonly LetteredPoint[] {
    return this.#letters.points;
  }

  /** Cuts by one seam. False, with a finding, when it cannot be cut. */
  add(text: string): boolean {
    this.#said++;
    const read = readSeam(text);
    if (!read.ok) return this.#refuse("seam-not-understood", text, read.works);
    const before = uncut(this.#root);
    const done =
      read.said.kind === "wedges"
        ? this.#addWedges(read.said, text)
        : this.#addSeam(read.said, text);
    if (done) this.#reportSlivers(before);
    return done;
  }

  #refuse(
    code: Finding["code"],
    seam: string,
    works: string,
    numbers: Partial<Finding> = {},
  ): false {
    this.findings.push({
      code,
      severity: "blocks",
      place: `${this.#id}/seam-${this.#said}`,
      ...numbers,
      words: { seam, works },
    });
    return false;
  }

  #addSeam(said: Exclude<SeamSaid, { kind: "wedges" }>, text: string): boolean {
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

  #cutAlong(from: Point, to: Point, text: string): boolean {
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
    return true;
  }

  #goOn(verb: string, advice: string, at: Point): string {
    const where = this.#letters.say(at, this.#unit);
    return `It ${verb} inside a part.${where ? ` ${advice} ${where}.` : ""}`;
  }

  #addWedges(said: Extract<SeamSaid, { kind: "wedges" }>, text: string): boolean {
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
    return true;
  }

  /** Parts narrower than two allowances that were not there before this seam. */
  #reportSlivers(before: readonly Part[]): void {
    const needed = 2 * this.#seam;
    const cutNow = before.filter((part) => part.split && leastWidth(part.polygon) >= needed);
    const widths = cutNow.flatMap(uncut).map((part) => leastWidth(part.polygon));
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

  finish(roles: Readonly<Record<string, string>>): {
    geometry: BlockGeometry;
    unknownRoles: Finding[];
  } {
    const id = this.#id;
    const ground = { id, outline: this.#outline, join: this.#join };
    const used = new Set<string>();
    const tree = grow(planOf(this.#root), ground, (_, polygon, path) => {
      const patch = `${id}/${path === "" ? "whole" : path}`;
      const keys = [patch, path, this.#corners(polygon)].filter((k) => Object.hasOwn(roles, k));
      for (const key of keys) used.add(key);
      const role = keys.map((k) => roles[k]).find(isRole) ?? "patch";
      return { id: patch, role, hand: handOf(polygon, this.#join) };
    });
    const box = boundingBox(this.#outline);
    const unknownRoles = Object.entries(roles)
      .filter(([key, role]) => !used.has(key) || !isRole(role))
      .map(
        ([key, role]): Finding => ({
          code: "role-not-known",
          severity: "draft",
          place: id,
          words: { patch: key, role, known: OWN_ROLES.join(", ") },
        }),
      );
    return {
      geometry: {
        id,
        outline: this.#outline,
        width: box.right - box.left,
        height: box.top - box.bottom,
        patches: patchesOf(tree),
        tree,
        choice: { name: "as-said", others: [], why: "said" },
      },
      unknownRoles,
    };
  }

  /** A patch by its corners, in the order of the letters: `ABE`. */
  #corners(polygon: Polygon): string {
    const order = this.#letters.points.map((p) => p.name);
    return polygon
      .map((v) => this.#letters.nameOf(v) ?? "?")
      .sort((a, b) => order.indexOf(a) - order.indexOf(b))
      .join("");
  }
}

/** Roles a maker may give to a patch of her own block. */
export const OWN_ROLES = [
  "wedge-even",
  "wedge-odd",
  "kite",
  "corner",
  "trapezoid",
  "background-left",
  "background-right",
  "background",
  "bar",
  "patch",
] as const satisfies readonly Role[];

const isRole = (role: string): role is (typeof OWN_ROLES)[number] =>
  (OWN_ROLES as readonly string[]).includes(role);
