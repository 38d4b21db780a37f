import type { WedgeSetting } from "../../block/index.ts";
import type { Block, Brief, WedgeBlock } from "../../brief/index.ts";

/** The fabric a new outer role takes: what lies round the wedges now, else one they do not use. */
export function outerFabric(b: Brief, block: Block): string {
  const outer = ["corner", "kite", "background", "trapezoid", "bar"].find((r) => block.fabric[r]);
  if (outer) return block.fabric[outer];
  const used = Object.values(block.fabric);
  return (b.fabrics.find((f) => !used.includes(f.id)) ?? b.fabrics[0]).id;
}

/** Trade names of roles, several, as they stand in a sentence. */
export const ROLE_NAMES: Readonly<Record<string, string>> = {
  wedge: "wedges",
  "wedge-even": "even wedges",
  "wedge-odd": "odd wedges",
  kite: "kites",
  corner: "corners",
  trapezoid: "trapezoids",
  background: "backgrounds",
  "background-left": "left backgrounds",
  "background-right": "right backgrounds",
  bar: "bars",
  patch: "patches",
  sash: "sashing",
  cornerstone: "cornerstones",
  border: "border",
  "setting-triangle": "setting triangles",
  "corner-triangle": "corner triangles",
};

/** Roles each setting adds to its wedges, by the names a brief gives their fabrics. */
export const OUTER_ROLES: Readonly<Record<WedgeSetting, readonly string[]>> = {
  plain: ["corner"],
  kites: ["kite"],
  floating: ["trapezoid", "corner"],
  framed: ["corner", "bar"],
  deep: ["background"],
  sectors: ["background"],
};

/** Gives every outer role of the setting a fabric, unless "background" stands for them all. */
export function fillRoles(b: Brief, before: WedgeBlock, d: WedgeBlock): void {
  if (d.fabric.background) return;
  const outer = outerFabric(b, before);
  const kites = d.inner === "kites" ? ["kite"] : [];
  for (const role of [...OUTER_ROLES[d.setting], ...kites]) d.fabric[role] ??= outer;
}
