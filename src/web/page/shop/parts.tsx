import { type ReactNode, useEffect, useId, useState } from "react";
import type { Answered } from "../answers.ts";
import { print } from "./give.ts";
import type { ShopPaper } from "./services.ts";

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onTake: (text: string) => void;
  /** What is wrong with a text, in words; nothing when it may be taken. */
  readonly problem?: (text: string) => string | undefined;
  readonly wide?: boolean;
  readonly hint?: string;
  /** Seen above it where its column has no heading; its spoken name is `label`. */
  readonly caption?: string;
}

/** A text typed in its place: taken when it is left or Enter is pressed, put back by Escape. */
export function Field({ label, value, onTake, problem, wide, hint, caption }: FieldProps) {
  const id = useId();
  const [text, setText] = useState(value);
  const wrong = text === value ? undefined : problem?.(text.trim());
  useEffect(() => setText(value), [value]);
  const take = (): void => {
    if (text.trim() === value || wrong) return;
    onTake(text.trim());
  };
  return (
    <span className={`shop-field ${wide ? "wide" : ""}`}>
      {caption && (
        <span className="soft small caption" aria-hidden="true">
          {caption}
        </span>
      )}
      <input
        type="text"
        aria-label={label}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong ? id : undefined}
        placeholder={hint}
        value={text}
        maxLength={120}
        size={wide ? 18 : 7}
        onChange={(e) => setText(e.target.value)}
        onBlur={take}
        onKeyDown={(e) => {
          if (e.key === "Enter") take();
          if (e.key === "Escape") setText(value);
        }}
      />
      {wrong && (
        <span id={id} role="alert" className="small problem">
          {wrong}
        </span>
      )}
    </span>
  );
}

interface PickProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly onPick: (value: string) => void;
}

export function Pick({ label, value, options, onPick }: PickProps) {
  return (
    <select
      className="shop-pick"
      aria-label={label}
      value={value}
      onChange={(e) => onPick(e.target.value)}
    >
      {options.map(([v, words]) => (
        <option key={v} value={v}>
          {words}
        </option>
      ))}
    </select>
  );
}

export function Part({
  heading,
  trade,
  children,
}: {
  heading: string;
  trade: string;
  children: ReactNode;
}) {
  const id = useId();
  return (
    <section className="shop-part" aria-labelledby={id}>
      <h2 id={id}>{heading}</h2>
      <p className="soft small trade">{trade}</p>
      {children}
    </section>
  );
}

export function Act({
  onClick,
  disabled,
  label,
  children,
}: {
  onClick: () => void;
  disabled?: boolean;
  /** Its spoken name, where the words alone would not tell it from others. */
  label?: string;
  children: ReactNode;
}) {
  return (
    <button
      type="button"
      className="touch tall"
      aria-label={label}
      disabled={disabled}
      onClick={onClick}
    >
      {children}
    </button>
  );
}

/** Papers to print, each handed to the downloads; what fails is said. */
export function Papers({
  shown,
  papers,
}: {
  shown: Answered;
  papers: readonly { readonly words: string; readonly name: string; readonly paper: ShopPaper }[];
}) {
  const [state, setState] = useState<{ busy?: string; failed?: string }>({});
  return (
    <div className="shop-papers">
      <p className="acts">
        {papers.map(({ words, name, paper }) => (
          <Act
            key={name}
            disabled={state.busy !== undefined}
            onClick={() => {
              setState({ busy: name });
              void print(shown, paper, name).then((failed) => setState(failed ? { failed } : {}));
            }}
          >
            {words}
          </Act>
        ))}
      </p>
      <p className="soft small" role="status">
        {state.busy && `Setting ${state.busy}. `}
        {state.failed && `It could not be written: ${state.failed}.`}
      </p>
    </div>
  );
}
