import { type ReactNode, useEffect, useId, useState } from "react";
import { lengthTextProblem } from "../../../core/answer/words/word.ts";
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

interface RowsProps<T> {
  readonly caption: string;
  /** "band", "strip": what one row is called. */
  readonly what: string;
  readonly all: readonly T[];
  readonly onAll: (all: readonly T[]) => void;
  /** The row that "one more" begins with. */
  readonly more: (all: readonly T[]) => T;
  readonly fields: (one: T, i: number, onOne: (to: T) => void) => ReactNode;
}

/** A list in its order: each row with its fields, moved earlier or taken out; one more at the end. */
function Rows<T>({ caption, what, all, onAll, more, fields }: RowsProps<T>) {
  return (
    <>
      <p className="small soft">{caption}</p>
      <ol className="rows">
        {all.map((one, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
          <li key={i}>
            {fields(one, i, (to) => onAll(put(all, i, to)))}
            <Acts
              what={`${what} ${i + 1}`}
              first={i === 0}
              alone={all.length === 1}
              onEarlier={() => onAll(earlier(all, i))}
              onOut={() => onAll(without(all, i))}
            />
          </li>
        ))}
      </ol>
      <p>
        <button type="button" className="touch tall" onClick={() => onAll([...all, more(all)])}>
          One more {what}
        </button>
      </p>
    </>
  );
}

/** The bands of one repeat, from its start. */
export function BandRows(p: {
  readonly unit: Unit;
  readonly bands: readonly Band[];
  readonly onBands: (bands: readonly Band[]) => void;
}) {
  return (
    <Rows
      caption="One repeat, band by band from its start"
      what="band"
      all={p.bands}
      onAll={p.onBands}
      more={([first]) => ({ ...first, color: "#F4F1E8" })}
      fields={(b, i, onBand) => (
        <>
          <input
            type="color"
            value={b.color}
            aria-label={`Color of band ${i + 1}`}
            onChange={(e) => onBand({ ...b, color: e.target.value })}
          />
          <LengthField
            unit={p.unit}
            value={b.width}
            label={`Width of band ${i + 1}`}
            onLength={(width) => onBand({ ...b, width })}
          />
        </>
      )}
    />
  );
}

/** The strips of a set, from the outer edge of an up wedge inward. */
export function StripRows(p: {
  readonly unit: Unit;
  readonly strips: readonly Strip[];
  readonly fabrics: readonly Fabric[];
  readonly onStrips: (strips: readonly Strip[]) => void;
}) {
  return (
    <Rows
      caption="Strip by strip, from the outer edge inward, as cut"
      what="strip"
      all={p.strips}
      onAll={p.onStrips}
      more={(all) => ({ ...all[all.length - 1] })}
      fields={(s, i, onStrip) => (
        <>
          <select
            value={s.fabric}
            aria-label={`Fabric of strip ${i + 1}`}
            onChange={(e) => onStrip({ ...s, fabric: e.target.value })}
          >
            {p.fabrics.map((f) => (
              <option key={f.id} value={f.id}>
                {f.name}
              </option>
            ))}
          </select>
          <LengthField
            unit={p.unit}
            value={s.cut}
            label={`Cut width of strip ${i + 1}`}
            onLength={(cut) => onStrip({ ...s, cut })}
          />
        </>
      )}
    />
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
