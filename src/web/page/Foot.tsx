import { type Theme, useView, view } from "./view.ts";

const THEMES: readonly { readonly theme: Theme; readonly label: string }[] = [
  { theme: "system", label: "as the system" },
  { theme: "light", label: "light" },
  { theme: "dark", label: "dark" },
  { theme: "gray", label: "gray, with hatches" },
];

/** How the page is shown: nothing here belongs to a design. */
export function Foot() {
  const theme = useView((v) => v.theme);
  const leftHanded = useView((v) => v.leftHanded);
  return (
    <footer className="foot">
      <fieldset>
        <legend className="soft">The page</legend>
        {THEMES.map((t) => (
          <label key={t.theme} className="pick">
            <input
              type="radio"
              name="theme"
              checked={theme === t.theme}
              onChange={() => view.setState({ theme: t.theme })}
            />
            <span>{t.label}</span>
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend className="soft">Cutting and pressing pictures</legend>
        {[false, true].map((left) => (
          <label key={String(left)} className="pick">
            <input
              type="radio"
              name="hand"
              checked={leftHanded === left}
              onChange={() => view.setState({ leftHanded: left })}
            />
            <span>{left ? "left-handed" : "right-handed"}</span>
          </label>
        ))}
      </fieldset>
    </footer>
  );
}
