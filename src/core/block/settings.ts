import type { WedgeBlock } from "../brief/schema.ts";
import type { Turned } from "./sectors.ts";

export type WedgeSetting = WedgeBlock["setting"];

/** What a setting fixes; what it leaves out, the brief says. */
export interface SettingRule {
  readonly turned?: Turned;
  readonly whole?: readonly number[];
  /** Finished side: as the strip makes it, that or wider, or wider only. */
  readonly side: "fixed" | "least-or-more" | "more";
}

const CORNER_SECTORS = [1, 3, 5, 7];

/** The settings of a wedge block. All but "sectors" are for eight wedges in a square. */
export const WEDGE_SETTINGS: Readonly<Record<WedgeSetting, SettingRule>> = {
  plain: { turned: "flat", whole: [], side: "fixed" },
  kites: { turned: "flat", whole: CORNER_SECTORS, side: "fixed" },
  floating: { turned: "flat", whole: [], side: "more" },
  framed: { turned: "flat", side: "more" },
  deep: { turned: "corner", whole: [], side: "least-or-more" },
  sectors: { side: "least-or-more" },
};

/** The sectors a block leaves whole, by its setting or as its brief says. */
export function leftWhole(block: WedgeBlock): readonly number[] {
  if (block.setting === "framed" && block.inner === "kites") return CORNER_SECTORS;
  return WEDGE_SETTINGS[block.setting].whole ?? block.whole ?? [];
}

/** Whether every block of this setting finishes as wide as its circle of wedges. */
export const sideIsFixed = (setting: WedgeSetting): boolean =>
  WEDGE_SETTINGS[setting].side === "fixed";
