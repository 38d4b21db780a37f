import { lengthToInch, type Unit } from "../../core/measure/unit.ts";

/** CSS pixels to the inch: what the browser calls life size. */
const PER_INCH = 96;
const MOST = 184;

/**
 * A length drawn life size: the bar, and a tape of eighths (or millimeters) a little longer. Broken
 * with two strokes when it is longer than its column. Hidden from speech; its figure is not.
 */
export function Tape({ length, unit, doubt }: { length: number; unit: Unit; doubt: boolean }) {
  const inches = Math.abs(lengthToInch(length, unit));
  const mark = unit === "in" ? PER_INCH / 8 : PER_INCH / 25.4;
  const long = (i: number): number =>
    unit === "in"
      ? i % 8 === 0
        ? 10
        : i % 4 === 0
          ? 7
          : i % 2 === 0
            ? 5
            : 3.5
      : i % 10 === 0
        ? 10
        : i % 5 === 0
          ? 7
          : 3.5;
  const bar = Math.min(inches * PER_INCH, MOST);
  const broken = inches * PER_INCH > MOST;
  const least = unit === "in" ? 8 : 20;
  const marks = Math.min(Math.floor(MOST / mark), Math.max(least, Math.ceil(bar / mark)));
  const end = broken ? MOST : marks * mark;
  const ticks = Array.from({ length: marks + 1 }, (_, i) => i);
  const half = MOST / 2;
  const off = (x: number): boolean => broken && Math.abs(x - half) < 8;
  return (
    <svg className="tape" width={MOST + 8} height={20} aria-hidden="true">
      <g transform="translate(0.5 0)">
        {broken ? (
          <>
            <path className="bar" d={`M0 3H${half - 5}M${half + 5} 3H${end}`} />
            <path className="rule" d={`M0 7.5H${half - 5}M${half + 5} 7.5H${end}`} />
            <path className="rule" d={`M${half - 8} 12l6 -12M${half + 2} 12l6 -12`} />
          </>
        ) : (
          <>
            {doubt ? (
              <path className="dots" d={`M1.5 3H${Math.max(2, bar)}`} />
            ) : (
              <path className="bar" d={`M0 3H${Math.max(bar, 1)}`} />
            )}
            <path className="rule" d={`M0 7.5H${end}`} />
          </>
        )}
        <path
          className="rule"
          d={ticks
            .filter((i) => !off(i * mark))
            .map((i) => `M${i * mark} 7.5v${long(i)}`)
            .join("")}
        />
      </g>
    </svg>
  );
}
