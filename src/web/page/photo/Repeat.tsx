import { lengthTextProblem } from "../../../core/answer/words/word.ts";
import { knownLength, type Unit } from "../../../core/measure/index.ts";
import { type Mark, Marks } from "./Marks.tsx";
import type { Found } from "./messages.ts";
import { markStep, textOf } from "./taken.ts";

/** One repeat as it stands in the form: empty where none is known; its corner in pixels. */
export interface RepeatText {
  readonly across: string;
  readonly along: string;
  readonly left: number;
  readonly bottom: number;
}

export function repeatTexts(unit: Unit, found: Found, perUnit: number): RepeatText {
  const { across, along } = found.repeat;
  const text = (pixels: number): string => (pixels > 0 ? textOf(unit, pixels / perUnit) : "");
  return { across: text(across), along: text(along), left: 0, bottom: found.height };
}

interface RepeatProps {
  readonly unit: Unit;
  readonly found: Found;
  readonly perUnit: number;
  readonly repeat: RepeatText;
  readonly onRepeat: (r: RepeatText) => void;
}

/** Nearer than this two lines mark no repeat, in pixels. */
const LEAST = 6;

export const repeatProblem = (r: RepeatText, unit: Unit): string | undefined =>
  [r.across, r.along]
    .filter((t) => t.trim() !== "")
    .map((t) => lengthTextProblem(t, unit)?.problem)
    .find((p) => p !== undefined);

/** One repeat framed on the picture by four lines: a motif at one side is there again at the other. */
export function Repeat({ unit, found, perUnit, repeat: r, onRepeat }: RepeatProps) {
  const { width, height, data } = found;
  const size = (text: string, whole: number): number =>
    text.trim() === "" || lengthTextProblem(text, unit) ? whole : knownLength(text, unit) * perUnit;
  const right = r.left + size(r.across, width);
  const top = r.bottom - size(r.along, height);
  const says = (text: string, word: string): string =>
    text.trim() === "" ? `no repeat ${word} yet` : `${text} ${unit} ${word}`;
  const line = (
    id: string,
    kind: "level" | "upright",
    at: number,
    label: string,
    said: string,
  ): Mark => ({ id, kind, at, label, says: said });
  const move = (id: string, to: { x: number; y: number }): void => {
    const text = (pixels: number): string => textOf(unit, Math.max(LEAST, pixels) / perUnit);
    if (id === "left") onRepeat({ ...r, left: to.x });
    else if (id === "bottom") onRepeat({ ...r, bottom: to.y });
    else if (id === "right") onRepeat({ ...r, across: text(to.x - r.left) });
    else onRepeat({ ...r, along: text(r.bottom - to.y) });
  };
  const field = (key: "across" | "along", label: string) => (
    <label>
      {label}{" "}
      <input
        type="text"
        size={8}
        value={r[key]}
        placeholder="not known"
        aria-invalid={r[key].trim() !== "" && lengthTextProblem(r[key], unit) !== undefined}
        onChange={(e) => onRepeat({ ...r, [key]: e.target.value })}
      />{" "}
      {unit}
    </label>
  );
  return (
    <>
      <Marks
        box={{ x: 0, y: 0, width, height }}
        label="One repeat of the print, framed on the picture"
        marks={[
          line(
            "left",
            "upright",
            r.left,
            "Left side of one repeat",
            `${Math.round(r.left)} pixels`,
          ),
          line(
            "right",
            "upright",
            Math.min(width, right),
            "Right side of one repeat",
            says(r.across, "across"),
          ),
          line(
            "bottom",
            "level",
            r.bottom,
            "Lower side of one repeat",
            `${Math.round(r.bottom)} pixels`,
          ),
          line(
            "top",
            "level",
            Math.max(0, top),
            "Upper side of one repeat",
            says(r.along, "along"),
          ),
        ]}
        step={markStep(unit, perUnit)}
        onMove={move}
      >
        <image href={data} width={width} height={height} />
      </Marks>
      <p className="fields">
        {field("across", "It repeats across the fabric every")} {field("along", "along it every")}
      </p>
    </>
  );
}
