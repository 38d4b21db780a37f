import { useEffect, useState } from "react";
import { type Theme as PictureTheme, THEMES } from "../../core/picture/theme.ts";
import { useView } from "./view.ts";

const DARK = "(prefers-color-scheme: dark)";

/** The theme pictures are drawn in: what the maker chose, else what the system has; print is gray. */
export function useTheme(): PictureTheme {
  const chosen = useView((v) => v.theme);
  const dark = useMedia(DARK);
  const print = useMedia("print");
  if (print) return THEMES.gray;
  return THEMES[chosen === "system" ? (dark ? "dark" : "light") : chosen];
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
