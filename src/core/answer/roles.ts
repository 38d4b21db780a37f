import type { Block, Brief } from "../brief/index.ts";

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
