import type { Fabric } from "../brief/index.ts";

/** Invented fabrics for tests. Every width differs, so that a swapped one shows. */
const common = {
  name: "Test fabric",
  usable: "40",
  folds: 0 as const,
  directional: false,
  reversible: false,
  color: "#DDDDDD",
};

export const plainFabric = (id: string, color: string, usable = "40"): Fabric => ({
  kind: "plain",
  ...common,
  id,
  color,
  usable,
});

/** A 6 in repeat of four uneven bands. */
export const UNEVEN: Fabric = {
  kind: "stripe",
  ...common,
  id: "tide",
  runs: "across",
  tilt: 0,
  bands: [
    { width: "2 1/4", color: "#1F4E5F" },
    { width: "3/8", color: "#C9A24B" },
    { width: "1 7/8", color: "#F2EBDD" },
    { width: "1 1/2", color: "#7C9DB0" },
  ],
};

/** Two equal bands. */
export const EVEN: Fabric = {
  kind: "stripe",
  ...common,
  id: "reed",
  runs: "along",
  tilt: 0,
  bands: [
    { width: "5/8", color: "#223322" },
    { width: "5/8", color: "#EEF2E6" },
  ],
};

export const strips = (cuts: readonly [fabric: string, cut: string][]): Fabric => ({
  kind: "strip-set",
  ...common,
  id: "set",
  strips: cuts.map(([fabric, cut]) => ({ fabric, cut })),
});
