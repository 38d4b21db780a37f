import { useId } from "react";
import { lengthTextProblem } from "../../../../core/answer/words/word.ts";
import type { PlaceText } from "./place.ts";

interface PlaceFieldsProps {
  readonly unit: string;
  readonly at: PlaceText;
  readonly wrong: string | undefined;
  readonly changed: boolean;
  readonly onChange: (at: PlaceText) => void;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

/** The place as figures: typed as fractions, taken or left. */
export function PlaceFields({
  unit,
  at,
  wrong,
  changed,
  onChange,
  onTake,
  onLeave,
}: PlaceFieldsProps) {
  const id = useId();
  const field = (what: "x" | "y", label: string, name: string) => (
    <label>
      {label}{" "}
      <input
        type="text"
        size={7}
        value={at[what]}
        aria-label={name}
        aria-invalid={lengthTextProblem(at[what], unit === "in" ? "in" : "mm", true) !== undefined}
        aria-describedby={wrong ? id : undefined}
        onChange={(e) => onChange({ ...at, [what]: e.target.value })}
      />{" "}
      {unit}
    </label>
  );
  return (
    <>
      <p className="fields">
        {field("x", "Its middle across", "Its middle across")} {field("y", "up", "Its middle up")}{" "}
        <label>
          turned{" "}
          <input
            type="number"
            min={-180}
            max={180}
            value={at.turn}
            onChange={(e) => onChange({ ...at, turn: turnOf(e.target.value) })}
          />{" "}
          degrees
        </label>{" "}
        <button type="button" className="touch tall" disabled={!!wrong} onClick={onTake}>
          Take this place
        </button>{" "}
        {changed && (
          <button type="button" className="touch tall" onClick={onLeave}>
            Leave it
          </button>
        )}
      </p>
      {wrong && (
        <p id={id} role="alert" className="small problem">
          {wrong}
        </p>
      )}
    </>
  );
}

const turnOf = (text: string): number => {
  const n = Number(text);
  return Number.isFinite(n) ? Math.max(-180, Math.min(180, n)) : 0;
};
