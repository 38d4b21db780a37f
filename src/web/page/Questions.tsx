import { type ComponentType, useEffect, useId } from "react";
import type { Question } from "../../core/answer/types/answer.ts";
import { Boundary } from "../crash/index.ts";
import type { BodyProps } from "./answer/body.ts";
import type { Answered } from "./answers.ts";
import { bringTheRest, later } from "./later.tsx";
import { Doubtful, Said } from "./said.tsx";
import { Sheets } from "./sheets/Sheets.tsx";
import { Tape } from "./Tape.tsx";
import { useView, view } from "./view.ts";

/** What stands under an opened question. A question without one has only its line. */
const bodies = () => import("./answer/bodies.ts");
const BODIES: Partial<Record<Question["id"], ComponentType<BodyProps>>> = {
  size: later(() => bodies().then((b) => b.SizeBody)),
  cover: later(() => bodies().then((b) => b.CoverBody)),
  look: later(() => bodies().then((b) => b.LookBody)),
  enough: later(() => bodies().then((b) => b.EnoughBody)),
  order: later(() => bodies().then((b) => b.OrderBody)),
  measure: later(() => bodies().then((b) => b.MeasureBody)),
  meeting: later(() => import("./answer/MeetingBody.tsx").then((b) => b.MeetingBody)),
  finish: later(() => import("./answer/FinishBody.tsx").then((b) => b.FinishBody)),
  "make-size": later(() => bodies().then((b) => b.MakeSizeBody)),
  why: later(() => bodies().then((b) => b.WhyBody)),
};

const Pins = later(() => import("./turn/Pins.tsx").then((m) => m.Pins));

/** The questions the core can answer, each a heading with its line, its margin and its proof. */
export function Questions({ shown }: { shown: Answered }) {
  useEffect(bringTheRest, []);
  return (
    <div className="questions">
      {shown.answer.questions.map((q) => (
        <Boundary key={q.id} what={q.heading} retryWhen={shown.answer}>
          <One question={q} shown={shown} />
        </Boundary>
      ))}
      <Sheets shown={shown} />
    </div>
  );
}

function One({ question: q, shown }: BodyProps) {
  const id = useId();
  const byHand = useView((v) => v.questions[q.id]);
  const spot = useView((v) => v.under ?? v.spot);
  const printing = useView((v) => v.printing);
  const open = printing || (byHand ?? q.doubt);
  const Body = BODIES[q.id];
  const piece = spot
    ? shown.answer.blocks.find((b) => b.id === spot.block)?.pieceOf[spot.patch]
    : undefined;
  const spoken = piece !== undefined && q.id === "cover" && q.from.includes(piece);
  const light = (on: boolean): void => view.setState({ lines: on ? q.from : [] });
  return (
    <section
      className={`question ${open ? "open" : ""} ${spoken ? "spoken-of" : ""}`}
      data-question={q.id}
      aria-labelledby={`${id}-h`}
    >
      <h2 id={`${id}-h`}>
        {Body ? (
          <button
            type="button"
            className="heading"
            aria-expanded={open}
            aria-controls={`${id}-b`}
            onClick={() => view.setState((v) => ({ questions: { ...v.questions, [q.id]: !open } }))}
            onFocus={() => light(true)}
            onBlur={() => light(false)}
          >
            {q.heading}
          </button>
        ) : (
          q.heading
        )}
      </h2>
      <p
        className="line"
        onPointerEnter={(e) => e.pointerType === "mouse" && light(true)}
        onPointerLeave={() => light(false)}
      >
        <First text={q.line} doubt={q.doubt} />
        {q.because && (
          <span className="because">
            {" "}
            <Said text={q.because} />
          </span>
        )}
      </p>
      <Margin question={q} shown={shown} />
      <div className="body" id={`${id}-b`} hidden={!open || !Body}>
        {open && Body && <Body shown={shown} question={q} />}
      </div>
    </section>
  );
}

/** The first sentence of an answer carries it: it stands bold. */
function First({ text, doubt }: { text: string; doubt: boolean }) {
  const at = text.search(/[.:;](?=\s)/);
  if (at < 0) return <Said text={text} />;
  return (
    <>
      <b className={doubt ? "in-doubt" : ""}>
        <Said text={text.slice(0, at + 1)} />
      </b>
      <Said text={text.slice(at + 1)} />
    </>
  );
}

function Margin({ question: q, shown }: BodyProps) {
  const m = q.margin;
  const pin = <Pins question={q} shown={shown} />;
  if (!m) return <div className="margin">{pin}</div>;
  const n = m.number;
  const unit = shown.answer.unit;
  const length = n && (n.unit === "in" || n.unit === "mm") ? n.value : undefined;
  return (
    <div className="margin">
      {n && (
        <p className="figure">
          <b>
            <Doubtful text={n.text.replace(/^-/, "")} doubt={q.doubt} />
          </b>
          {n.value < 0 && " short"}
        </p>
      )}
      {length !== undefined && Math.abs(length) > 0 && (
        <Tape length={length} unit={unit} doubt={q.doubt} />
      )}
      <p className={n ? "soft small" : ""}>
        {n ? (
          <Said text={m.caption} />
        ) : (
          <b>
            <Said text={m.caption} />
          </b>
        )}
      </p>
      {pin}
    </div>
  );
}
