import { type Opened, printedDate } from "../../../core/sheet/options.ts";
import type { Answered } from "../answers.ts";
import { useView, view } from "../view.ts";
import { choose, useChoices, versionOf } from "./choices.ts";

const PAPERS = [
  { paper: "letter", label: "Letter" },
  { paper: "a4", label: "A4" },
] as const;

/** What each open question adds to the pattern. */
const AT_LENGTH: readonly { readonly id: Opened; readonly label: string }[] = [
  { id: "cover", label: "every piece in its four lives" },
  { id: "enough", label: "the cutting layouts" },
  { id: "measure", label: "every width to check" },
];

interface OptionsProps {
  readonly shown: Answered;
  readonly opened: readonly Opened[];
  readonly forPattern: boolean;
}

/** Paper, hand, edition and date; and what the pattern says at length, which is what stands open. */
export function Options({ shown, opened, forPattern }: OptionsProps) {
  const { paper, edition, day } = useChoices();
  const leftHanded = useView((v) => v.leftHanded);
  const chosen = paper ?? (shown.brief.unit === "mm" ? "a4" : "letter");
  const open = (id: Opened, on: boolean): void =>
    view.setState((v) => ({ questions: { ...v.questions, [id]: on } }));
  return (
    <div className="options">
      <fieldset className="picks">
        <legend className="soft">Paper</legend>
        {PAPERS.map((p) => (
          <label key={p.paper} className="pick">
            <input
              type="radio"
              name="paper"
              checked={p.paper === chosen}
              onChange={() => choose({ paper: p.paper })}
            />
            <span>{p.label}</span>
          </label>
        ))}
      </fieldset>
      <fieldset className="picks">
        <legend className="soft">Cutting pictures</legend>
        {[false, true].map((left) => (
          <label key={String(left)} className="pick">
            <input
              type="radio"
              name="sheet-hand"
              checked={left === leftHanded}
              onChange={() => view.setState({ leftHanded: left })}
            />
            <span>{left ? "left-handed" : "right-handed"}</span>
          </label>
        ))}
      </fieldset>
      <label className="field">
        <span className="soft">Version</span>
        <input
          type="text"
          size={6}
          maxLength={20}
          value={edition ?? versionOf(shown.brief, edition)}
          onChange={(e) => choose({ edition: e.target.value })}
        />
      </label>
      <label className="field">
        <span className="soft">Date</span>
        <input
          type="date"
          required
          value={day}
          onChange={(e) => printedDate(e.target.value) && choose({ day: e.target.value })}
        />
      </label>
      {forPattern && (
        <fieldset className="picks at-length">
          <legend className="soft">
            What stands open on the page prints at length behind the pattern
          </legend>
          {AT_LENGTH.map(({ id, label }) => (
            <label key={id} className="pick tick">
              <input
                type="checkbox"
                checked={opened.includes(id)}
                onChange={(e) => open(id, e.target.checked)}
              />
              <span>{label}</span>
            </label>
          ))}
        </fieldset>
      )}
    </div>
  );
}
