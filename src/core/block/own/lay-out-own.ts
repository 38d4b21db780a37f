import type { OwnBlock } from "../../brief/schema.ts";
import type { Finding } from "../../findings/finding.ts";
import { boundingBox, type Polygon } from "../../geometry/index.ts";
import { knownLength, type Length, tolerances, type Unit } from "../../measure/index.ts";
import { handOf } from "../hand.ts";
import { hexagon, rectangle } from "../outline.ts";
import { grow, patchesOf } from "../plan.ts";
import type { BlockGeometry, Role, SeamTree } from "../types.ts";
import { Growth } from "./growth.ts";
import type { LetteredPoint, Letters } from "./letters.ts";
import { planOf } from "./parts.ts";

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
  const said = block.outline;
  const half = (text: string) => knownLength(text, unit) / 2;
  const outline =
    "hexagon" in said
      ? hexagon(half(said.hexagon))
      : rectangle(half(said.width), half(said.height));
  const growth = new Growth(block.id, outline, unit, seam);
  for (const text of block.seams) if (!growth.add(text)) break;
  const { id } = block;
  const { join } = tolerances(unit);
  const roles = new Roles(id, block.roles ?? {}, growth.letters);
  const tree: SeamTree = grow(planOf(growth.root), { id, outline, join }, (_, polygon, path) => {
    const patch = `${id}/${path === "" ? "whole" : path}`;
    return { id: patch, role: roles.of(patch, path, polygon), hand: handOf(polygon, join) };
  });
  const box = boundingBox(outline);
  return {
    geometry: {
      id,
      outline,
      width: box.right - box.left,
      height: box.top - box.bottom,
      patches: patchesOf(tree),
      tree,
      choice: { name: "as-said", others: [], why: "said" },
    },
    findings: [...growth.findings, ...roles.notKnown()],
    points: growth.letters.points,
  };
}

/** The roles a maker gave: by a patch's id, its path, or the letters of its corners (`ABE`). */
class Roles {
  readonly #blockId: string;
  readonly #given: Readonly<Record<string, string>>;
  readonly #letters: Letters;
  readonly #used = new Set<string>();

  constructor(blockId: string, given: Readonly<Record<string, string>>, letters: Letters) {
    this.#blockId = blockId;
    this.#given = given;
    this.#letters = letters;
  }

  of(patchId: string, path: string, polygon: Polygon): Role {
    if (Object.keys(this.#given).length === 0) return "patch";
    const keys = [patchId, path, this.#corners(polygon)].filter((key) =>
      Object.hasOwn(this.#given, key),
    );
    for (const key of keys) this.#used.add(key);
    return keys.map((key) => this.#given[key]).find(isRole) ?? "patch";
  }

  /** A role that is none, or one given to a patch that is not there. */
  notKnown(): Finding[] {
    return Object.entries(this.#given)
      .filter(([key, role]) => !this.#used.has(key) || !isRole(role))
      .map(([patch, role]) => ({
        code: "role-not-known",
        severity: "draft",
        place: this.#blockId,
        words: { patch, role, known: OWN_ROLES.join(", ") },
      }));
  }

  /** Corners in the order of the letters. */
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
