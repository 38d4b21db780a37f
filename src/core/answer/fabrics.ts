import type { BlockGeometry, Role } from "../block/index.ts";
import type { Block, Brief } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";

/** What a role falls back to when the brief does not name it: "wedge" stands for both wedges. */
const BROADER: Readonly<Partial<Record<Role, readonly string[]>>> = {
  "wedge-even": ["wedge"],
  "wedge-odd": ["wedge"],
  "background-left": ["background"],
  "background-right": ["background"],
  corner: ["background"],
  trapezoid: ["background"],
  kite: ["background"],
  bar: ["background"],
};

export interface Clothed {
  readonly fabricOf: Readonly<Record<string, string>>;
  readonly findings: readonly Finding[];
}

/**
 * The fabric of every patch: by its id in the whole block first, then by its role, then by the broader role. A
 * patch without any is a finding, and takes the first fabric so that the rest can be drawn.
 */
export function fabricsOf(block: Block, geometry: BlockGeometry, brief: Brief): Clothed {
  const fabricOf: Record<string, string> = {};
  const bare = new Set<string>();
  for (const patch of geometry.patches) {
    const whole = `${block.id}/${patch.id.slice(patch.id.indexOf("/") + 1)}`;
    const names = [whole, patch.role, ...(BROADER[patch.role] ?? []), "patch"];
    const name = names.find((n) => Object.hasOwn(block.fabric, n));
    if (name === undefined) bare.add(patch.role);
    fabricOf[patch.id] = name === undefined ? brief.fabrics[0].id : block.fabric[name];
  }
  const place = `${geometry.id}/fabric`;
  return {
    fabricOf,
    findings: [...bare].sort().map((role) => ({
      code: "fabric-not-chosen",
      severity: "blocks",
      place,
      words: { role, block: geometry.id },
    })),
  };
}

/** Printed letters of fabrics: A, B ... Z, AA ..., in the order of the brief. */
export function fabricLetters(brief: Brief): Readonly<Record<string, string>> {
  return Object.fromEntries(brief.fabrics.map((f, i) => [f.id, letterOf(i)]));
}

function letterOf(i: number): string {
  const last = String.fromCharCode(65 + (i % 26));
  return i < 26 ? last : letterOf(Math.floor(i / 26) - 1) + last;
}
