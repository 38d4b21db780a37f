import { type BlockGeometry, BROADER_ROLES } from "../../block/index.ts";
import type { Block, Brief } from "../../brief/index.ts";
import type { Finding } from "../../findings/index.ts";

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
    const names = [whole, patch.role, ...(BROADER_ROLES[patch.role] ?? []), "patch"];
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

/** Letters as in a column heading: A ... Z, AA, AB ... */
export function letterOf(i: number): string {
  const last = String.fromCharCode(65 + (i % 26));
  return i < 26 ? last : letterOf(Math.floor(i / 26) - 1) + last;
}
