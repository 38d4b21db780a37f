import { type ReactNode, useEffect, useId, useState } from "react";
import { lengthTextProblem } from "../../../core/answer/words.ts";
import type { Fabric } from "../../../core/brief/index.ts";
import type { Unit } from "../../../core/measure/index.ts";

interface Band {
  readonly width: string;
  readonly color: string;
}
interface Strip {
  readonly fabric: string;
  readonly cut: string;
}

const put = <T,>(all: readonly T[], at: number, to: T): T[] =>
  all.map((x, i) => (i === at ? to : x));
const without = <T,>(all: readonly T[], at: number): T[] => all.filter((_, i) => i !== at);
/** Changes places with the one before. */
const earlier = <T,>(all: readonly T[], at: number): T[] => {
  const out = [...all];
  [out[at - 1], out[at]] = [out[at], out[at - 1]];
  return out;
};

/** The bands of one repeat, from its start. */
export function BandRows(p: {
  readonly unit: Unit;
  readonly bands: readonly Band[];
  readonly onBands: (bands: readonly Band[]) => void;
}) {
  const { unit, bands, onBands } = p;
  return (
    <>
      <p className="small soft">One repeat, band by band from its start</p>
      <ol className="rows">
        {bands.map((b, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: bands are known by their place
          <li key={i}>
            <input
              type="color"
              value={b.color}
              aria-label={`Color of band ${i + 1}`}
              onChange={(e) => onBands(put(bands, i, { ...b, color: e.target.value }))}
            />
            <LengthField
              unit={unit}
              value={b.width}
              label={`Width of band ${i + 1}`}
              onLength={(width) => onBands(put(bands, i, { ...b, width }))}
            />
            <Acts
              what={`band ${i + 1}`}
              first={i === 0}
              alone={bands.length === 1}
              onEarlier={() => onBands(earlier(bands, i))}
              onOut={() => onBands(without(bands, i))}
            />
          </li>
        ))}
      </ol>
      <p>
        <button
          type="button"
          className="touch tall"
          onClick={() => onBands([...bands, { ...bands[0], color: "#F4F1E8" }])}
        >
          One more band
        </button>
      </p>
    </>
  );
}

/** The strips of a set, from the outer edge of an up wedge inward. */
export function StripRows(p: {
  readonly unit: Unit;
  readonly strips: readonly Strip[];
  readonly fabrics: readonly Fabric[];
  readonly onStrips: (strips: readonly Strip[]) => void;
}) {
  const { unit, strips, fabrics, onStrips } = p;
  return (
    <>
      <p className="small soft">Strip by strip, from the outer edge inward, as cut</p>
      <ol className="rows">
        {strips.map((s, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: strips are known by their place
          <li key={i}>
            <select
              value={s.fabric}
              aria-label={`Fabric of strip ${i + 1}`}
              onChange={(e) => onStrips(put(strips, i, { ...s, fabric: e.target.value }))}
            >
              {fabrics.map((f) => (
                <option key={f.id} value={f.id}>
                  {f.name}
                </option>
              ))}
            </select>
            <LengthField
              unit={unit}
              value={s.cut}
              label={`Cut width of strip ${i + 1}`}
              onLength={(cut) => onStrips(put(strips, i, { ...s, cut }))}
            />
            <Acts
              what={`strip ${i + 1}`}
              first={i === 0}
              alone={strips.length === 1}
              onEarlier={() => onStrips(earlier(strips, i))}
              onOut={() => onStrips(without(strips, i))}
            />
          </li>
        ))}
      </ol>
      <p>
        <button
          type="button"
          className="touch tall"
          onClick={() => onStrips([...strips, { ...strips[strips.length - 1] }])}
        >
          One more strip
        </button>
      </p>
    </>
  );
}

interface LengthFieldProps {
  readonly unit: Unit;
  readonly value: string;
  readonly label: string;
  readonly onLength: (text: string) => void;
}

/** A length as text: taken when the field is left or with Enter, kept as typed, never half read. */
function LengthField({ unit, value, label, onLength }: LengthFieldProps) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const id = useId();
  const problem = lengthTextProblem(text, unit)?.problem;
  const take = (): void => {
    if (!problem && text.trim() !== value) onLength(text.trim());
  };
  return (
    <span className="length">
      <input
        type="text"
        size={8}
        value={text}
        aria-label={label}
        aria-invalid={problem !== undefined}
        aria-describedby={problem ? id : undefined}
        onChange={(e) => setText(e.target.value)}
        onBlur={take}
        onKeyDown={(e) => e.key === "Enter" && take()}
      />{" "}
      {unit}
      {problem && (
        <span id={id} role="alert" className="small problem">
          {" "}
          {problem}
        </span>
      )}
    </span>
  );
}

interface ActsProps {
  readonly what: string;
  readonly first: boolean;
  readonly alone: boolean;
  readonly onEarlier: () => void;
  readonly onOut: () => void;
}

function Acts({ what, first, alone, onEarlier, onOut }: ActsProps): ReactNode {
  return (
    <>
      {!first && (
        <button
          type="button"
          className="touch tall"
          aria-label={`Earlier: ${what}`}
          onClick={onEarlier}
        >
          Earlier
        </button>
      )}
      {!alone && (
        <button
          type="button"
          className="touch tall"
          aria-label={`Leave out ${what}`}
          onClick={onOut}
        >
          Leave out
        </button>
      )}
    </>
  );
}
