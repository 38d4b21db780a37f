import type { Line } from "./marks.ts";

export interface Stroke {
  readonly color: string;
  /** In output units (points on paper, CSS pixels on the screen). */
  readonly width: number;
  readonly dash?: readonly number[];
  /** Round dots rather than dashes. */
  readonly round?: boolean;
  /** A casing of paper under the line, so that it reads on any fabric. */
  readonly casing?: number;
}

/** color: as seen. hatch: black line and hatch, for diagrams. gray: gray value under the hatch. */
export type FabricLook = "color" | "hatch" | "gray";

export interface Theme {
  readonly name: "light" | "dark" | "gray" | "paper";
  /** Output units to the inch at true size: 72 points or 96 CSS pixels. */
  readonly perInch: number;
  readonly ink: string;
  readonly soft: string;
  readonly paper: string;
  readonly accent: string;
  readonly lost: string;
  /** Ink of lines and letters that lie on fabric, the same in every theme. */
  readonly fabricInk: string;
  readonly fabrics: FabricLook;
  /** Small print, in output units. */
  readonly small: number;
  readonly dot: number;
  readonly arrow: number;
  readonly halo: number;
  /** Distance of hatch lines and their width. */
  readonly hatch: { readonly gap: number; readonly width: number };
  readonly lines: Readonly<Record<Line, Stroke>>;
}

interface Inks {
  readonly ink: string;
  readonly soft: string;
  readonly lost: string;
  readonly accent: string;
}

const FABRIC_INK = "#1d1a16";

/** Widths on the page, in CSS pixels. */
const screenLines = (c: Inks): Record<Line, Stroke> => ({
  cut: { color: FABRIC_INK, width: 1.4 },
  seam: { color: FABRIC_INK, width: 1, dash: [4, 3.2] },
  sewn: { color: FABRIC_INK, width: 0.75 },
  rule: { color: c.ink, width: 1 },
  hair: { color: c.lost, width: 0.75 },
  lost: { color: c.lost, width: 1 },
  ghost: { color: c.lost, width: 1, dash: [2.5, 2.5] },
  lit: { color: c.accent, width: 2.25, casing: 5.5 },
  fold: { color: c.ink, width: 1.4, dash: [0, 3.6], round: true },
  doubt: { color: c.ink, width: 1.9, dash: [0, 3.7], round: true },
  outline: { color: FABRIC_INK, width: 1 },
  step: { color: c.accent, width: 2.25, dash: [6.5, 3] },
  press: { color: c.accent, width: 1.5 },
  grain: { color: c.ink, width: 1 },
});

/** Widths on paper, in points. */
const paperLines = (c: Inks): Record<Line, Stroke> => ({
  cut: { color: c.ink, width: 0.9 },
  seam: { color: c.ink, width: 0.75, dash: [3.2, 2] },
  sewn: { color: c.ink, width: 0.5 },
  rule: { color: c.ink, width: 0.45 },
  hair: { color: c.lost, width: 0.35 },
  lost: { color: c.lost, width: 0.5 },
  ghost: { color: c.lost, width: 0.6, dash: [1.6, 1.6] },
  lit: { color: c.accent, width: 1.6, casing: 3.2 },
  fold: { color: c.ink, width: 0.8, dash: [0, 2.4], round: true },
  doubt: { color: c.ink, width: 1.3, dash: [0, 2.7], round: true },
  outline: { color: c.ink, width: 0.9 },
  step: { color: c.accent, width: 1.7, dash: [5, 2.2] },
  press: { color: c.accent, width: 1.1 },
  grain: { color: c.ink, width: 0.7 },
});

function screen(name: Theme["name"], paper: string, inks: Inks, fabrics: FabricLook): Theme {
  return {
    name,
    perInch: 96,
    paper,
    ...inks,
    fabricInk: FABRIC_INK,
    fabrics,
    small: 14,
    dot: 4.5,
    arrow: 7,
    halo: 4,
    hatch: { gap: 6, width: 1 },
    lines: screenLines(inks),
  };
}

const PAPER_INKS: Inks = { ink: "#1c1a18", soft: "#57524d", lost: "#8b857d", accent: "#a3195b" };

export const LIGHT: Theme = screen(
  "light",
  "#fcf9f3",
  { ink: "#1d1a16", soft: "#5f574b", lost: "#9a8f7e", accent: "#a3195b" },
  "color",
);
export const DARK: Theme = screen(
  "dark",
  "#181613",
  { ink: "#efe9dd", soft: "#b3a996", lost: "#8a8070", accent: "#ff8db8" },
  "color",
);
export const GRAY: Theme = screen(
  "gray",
  "#ffffff",
  { ink: "#111111", soft: "#555555", lost: "#888888", accent: "#111111" },
  "gray",
);
/** White paper, points. */
export const PAPER: Theme = {
  name: "paper",
  perInch: 72,
  paper: "#ffffff",
  ...PAPER_INKS,
  fabricInk: PAPER_INKS.ink,
  fabrics: "color",
  small: 9,
  dot: 2.4,
  arrow: 5,
  halo: 2.6,
  hatch: { gap: 3.4, width: 0.45 },
  lines: paperLines(PAPER_INKS),
};
/** The same in black line and hatch: every diagram of a printed pattern. */
export const PAPER_HATCH: Theme = { ...PAPER, fabrics: "hatch" };

export const THEMES = { light: LIGHT, dark: DARK, gray: GRAY, paper: PAPER, line: PAPER_HATCH };
export type ThemeName = keyof typeof THEMES;
