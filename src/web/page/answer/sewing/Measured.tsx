import { type ReactNode, useEffect, useId, useState } from "react";

interface MeasuredProps {
  /** Names the field for those who do not see what stands beside it. */
  readonly label: string;
  readonly unit: string;
  /** As kept. */
  readonly typed: string;
  readonly problem?: string | undefined;
  readonly onKeep: (text: string) => void;
  /** What the field's reading gives, read out with it. */
  readonly children?: ReactNode;
}

/** A measured size, typed as fractions; kept as typed on leaving the field or with Enter. */
export function Measured({ label, unit, typed, problem, onKeep, children }: MeasuredProps) {
  const id = useId();
  const [text, setText] = useState(typed);
  useEffect(() => setText(typed), [typed]);
  const done = (): void => {
    if (text.trim() !== typed) onKeep(text.trim());
  };
  return (
    <div className="measured">
      <span className="measured-field">
        <input
          type="text"
          size={7}
          autoComplete="off"
          value={text}
          aria-label={label}
          aria-invalid={problem !== undefined}
          aria-describedby={problem || children ? id : undefined}
          onChange={(e) => setText(e.target.value)}
          onBlur={done}
          onKeyDown={(e) => {
            if (e.key === "Enter") done();
            else if (e.key === "Escape") setText(typed);
          }}
        />{" "}
        {unit}
      </span>
      <span id={id} className="measured-says" role="status">
        {problem ? <span className="problem">{problem}</span> : children}
      </span>
    </div>
  );
}
