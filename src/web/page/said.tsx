import { Fragment } from "react";
import { spoken } from "../../core/answer/say/spoken.ts";
import { FRACTION_SLASH, type Run, runsOf } from "../../core/picture/fraction.ts";

/** Minus sign, multiplication sign and arrow as type has them; the core prints plain ASCII. */
const typeset = (text: string): string =>
  text.replace(/(\d) x (?=\d)/g, "$1 × ").replace(/(^|\s)-(?=\d)/g, "$1−");

/** Keeps a number and its unit on one line. */
const unbroken = (text: string): string =>
  text
    .replace(/(\d) (in|mm|cm|yd|m)\b/g, "$1\u00a0$2")
    .replace(/(\d) × (?=\d)/g, "$1\u00a0×\u00a0");

function Fraction({ run }: { run: Extract<Run, { kind: "fraction" }> }) {
  return (
    <span className="num">
      {run.whole}
      {run.whole && <span className="gap"> </span>}
      <span className="frac">
        {run.above}
        {FRACTION_SLASH}
        {run.below}
      </span>
    </span>
  );
}

/** Two sides with one unit are one box too: `64 1/2 × 24 1/2 in`. */
const SIDES = /((?:\d+ )?[\d./]+ × (?:\d+ )?[\d./]+(?: (?:in|mm|cm))?)/;

/** Whole number, fraction and unit are one box; the fraction alone has the fraction feature. */
function Runs({ text }: { text: string }) {
  return typeset(text)
    .split(SIDES)
    .map((part, i) => {
      const key = `${i}${part}`;
      return i % 2 === 1 ? (
        <span key={key} className="num">
          <Line text={part} />
        </span>
      ) : (
        <Line key={key} text={part} />
      );
    });
}

function Line({ text }: { text: string }) {
  const runs = runsOf(text);
  return runs.map((run, i) => {
    const key = `${i}${run.kind}`;
    if (run.kind === "fraction") return <Fraction key={key} run={run} />;
    const unit = runs[i - 1]?.kind === "fraction" ? /^ (?=(?:in|mm|cm|yd|m)\b)/ : /^(?!)/;
    return <Fragment key={key}>{unbroken(run.text.replace(unit, "\u00a0"))}</Fragment>;
  });
}

const hasFraction = (text: string): boolean => /\d\/\d/.test(text);

/**
 * A text of the core as type: real fractions, numbers that keep their units. Heard, fractions are
 * words.
 */
export function Said({ text }: { text: string }) {
  if (!hasFraction(text)) return <Runs text={text} />;
  return (
    <>
      <span aria-hidden="true">
        <Runs text={text} />
      </span>
      <span className="said">{spoken(text)}</span>
    </>
  );
}

/** The same inside something that has its own spoken name. */
export const Typeset = ({ text }: { text: string }) => <Runs text={text} />;

/** A number that is not proved: dotted, and said so. */
export function Doubtful({ text, doubt }: { text: string; doubt: boolean }) {
  if (!doubt) return <Said text={text} />;
  return (
    <span className="doubt">
      <Said text={text} />
      <span className="said">, not proved</span>
    </span>
  );
}
