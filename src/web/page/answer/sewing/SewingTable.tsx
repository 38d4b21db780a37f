import { useEffect, useMemo, useRef } from "react";
import {
  type BlockSteps,
  type StepRow,
  sewingSteps,
} from "../../../../core/answer/sewing/steps.ts";
import { type StopRow, stopTables } from "../../../../core/answer/sewing/stops.ts";
import { type Answered, useAnswers } from "../../answers.ts";
import { Said } from "../../said.tsx";
import { Take } from "./MeasureBody.tsx";
import { StepWords } from "./OrderBody.tsx";
import { StepPicture } from "./StepPicture.tsx";
import "./sewing.css";
import { TickBox, useTicked } from "./TickBox.tsx";

/** The steps alone, in large type, to stand beside the machine: the next one open, those done ticked off. */
export function SewingTable() {
  const { shown } = useAnswers();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    const next = document.querySelector(".table-steps > .now");
    // The first step stands in sight anyway, under the heading.
    if (next?.previousElementSibling) next.scrollIntoView();
  }, []);
  return (
    <main className="page table-page">
      <header className="head">
        <h1 ref={heading} tabIndex={-1}>
          {shown?.brief.title ?? "Reading your design"}
        </h1>
        <p>
          <a className="touch tall" href="#page">
            Back to the page
          </a>
        </p>
      </header>
      {shown && <Kinds shown={shown} />}
    </main>
  );
}

function Kinds({ shown }: { shown: Answered }) {
  const kinds = useMemo(() => sewingSteps(shown.brief, shown.answer), [shown]);
  const stops = useMemo(
    () => stopTables(shown.brief, shown.answer).flatMap((t) => t.rows),
    [shown],
  );
  const ticked = useTicked(shown.brief);
  const steps = kinds.flatMap((k) => k.steps);
  const next = steps.find((s) => !ticked.has(s.id));
  if (steps.length === 0) return <p>There is nothing to sew yet: see the page.</p>;
  return (
    <>
      <p className="soft" role="status">
        {next
          ? `${steps.filter((s) => ticked.has(s.id)).length} of ${steps.length} steps done.`
          : "All steps done."}
      </p>
      {kinds.map((kind) => (
        <section key={kind.block.id} className="kind" aria-label={kind.block.name}>
          <h2>{kind.block.name}</h2>
          <ol className="table-steps">
            {kind.steps.map((step, i) => (
              <TableStep
                key={step.id}
                step={step}
                number={i + 1}
                kind={kind}
                shown={shown}
                now={step === next}
                done={ticked.has(step.id)}
                stops={stops.filter((r) => r.unitId === step.unit.id)}
              />
            ))}
          </ol>
        </section>
      ))}
    </>
  );
}

interface TableStepProps {
  readonly step: StepRow;
  readonly number: number;
  readonly kind: BlockSteps;
  readonly shown: Answered;
  readonly now: boolean;
  readonly done: boolean;
  readonly stops: readonly StopRow[];
}

/** A step that is done is its name alone. */
function TableStep({ step, number, kind, shown, now, done, stops }: TableStepProps) {
  return (
    <li className={now ? "now" : ""} aria-current={now ? "step" : undefined}>
      <TickBox step={step} brief={shown.brief}>
        {number}. {step.name}
      </TickBox>
      {!done && (
        <>
          <StepPicture step={step} block={kind.block} shown={shown} blockWidth={300} small={18} />
          <StepWords step={step} />
          {stops.map((row) => (
            <div key={row.id}>
              <dl className="stop-figures">
                <div>
                  <dt>{row.name}</dt>
                  <dd className="first">
                    <Said text={row.now || row.should} />
                  </dd>
                </div>
              </dl>
              <Take row={row} unit={shown.answer.unit} />
            </div>
          ))}
        </>
      )}
    </li>
  );
}
