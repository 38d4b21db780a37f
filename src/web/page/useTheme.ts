import { useEffect, useState } from "react";
import { type Theme as PictureTheme, THEMES } from "../../core/picture/theme.ts";
import { useView } from "./view.ts";

/**
 * On dark paper what is cut may lie on pale fabric or on the paper itself: its lines are light, with
 * a casing of paper under them, and read on both.
 */
const dark: PictureTheme = {
  ...THEMES.dark,
  lines: {
    ...THEMES.dark.lines,
    cut: { color: THEMES.dark.ink, width: 1.4, casing: 3.6 },
    seam: { ...THEMES.dark.lines.seam, color: THEMES.dark.ink, casing: 2.8 },
    outline: { color: THEMES.dark.ink, width: 1 },
  },
};
const themes = { ...THEMES, dark };

const DARK = "(prefers-color-scheme: dark)";

/** The theme pictures are drawn in: what the maker chose, else what the system has; print is gray. */
export function useTheme(): PictureTheme {
  const chosen = useView((v) => v.theme);
  const printing = useView((v) => v.printing);
  const darkOutside = useMedia(DARK);
  if (printing) return THEMES.gray;
  return themes[chosen === "system" ? (darkOutside ? "dark" : "light") : chosen];
}

export function useMedia(query: string): boolean {
  const [matches, setMatches] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const look = (): void => setMatches(list.matches);
    look();
    list.addEventListener("change", look);
    return () => list.removeEventListener("change", look);
  }, [query]);
  return matches;
}
