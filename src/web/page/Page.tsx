import { useMemo } from "react";
import { sizeText, stateText } from "../../core/answer/say/phrases.ts";
import { Boundary } from "../crash/index.ts";
import { type KeepStore, useKeep } from "../keep/index.ts";
import { type Answered, useAnswers } from "./answers.ts";
import { useEditing, useLitWords } from "./editing.tsx";
import { Fabrics } from "./Fabrics.tsx";
import { Blocks } from "./Findings.tsx";
import { Foot } from "./Foot.tsx";
import { useKeepStore } from "./KeepContext.ts";
import { later } from "./later.tsx";
import { Notices } from "./Notices.tsx";
import { Questions } from "./Questions.tsx";
import { QuiltView } from "./quilt/QuiltView.tsx";
import { Sentence } from "./Sentence.tsx";
import { Status } from "./Status.tsx";
import { useTurning } from "./turn/turning.ts";

const Otherwise = later(() => import("./otherwise/Otherwise.tsx").then((m) => m.Otherwise));
const Living = later(() => import("./living/Living.tsx").then((m) => m.Living));
const Details = later(() => import("./Details.tsx").then((m) => m.Details));
const Advice = later(() => import("./Advice.tsx").then((m) => m.Advice));
const Notes = later(() => import("./Notes.tsx").then((m) => m.Notes));

const TurnRound = later(() => import("./turn/TurnRound.tsx").then((m) => m.TurnRound));

const RippleNote = later(() => import("./shop/RippleNote.tsx").then((m) => m.RippleNote));
/** Something was printed, cut or handed out of it. */
const hasLeft = (b: Answered["brief"]): boolean =>
  (b.record ?? []).some((e) => typeof e === "object" && e !== null && "of" in e && "facts" in e);

/** The worked page: one sentence that is the job, and under it everything that follows. */
export function Page() {
  const keep = useKeepStore();
  const { now, shown, failed, busy } = useAnswers();
  const stale = useKeep(keep, (s) => s.stale);
  if (!now || !shown)
    return (
      <main className="page" aria-busy="true">
        <p className="soft">
          {failed ? `The answer could not be worked out: ${failed}.` : "Reading your design."}
        </p>
        <Foot />
      </main>
    );
  return (
    <main className="page">
      <Head now={now} />
      {(stale || failed) && <Notices keep={keep} failed={failed} />}
      <Boundary what="the sentence" retryWhen={now.brief}>
        <Sentences now={now} shown={shown} keep={keep} />
      </Boundary>
      <Status now={now} shown={shown} keep={keep} busy={busy} />
      {!stale && !failed && <Notices keep={keep} failed={null} />}
      {hasLeft(now.brief) && (
        <Boundary what="what is out" retryWhen={now.answer}>
          <RippleNote now={now} />
        </Boundary>
      )}
      <Boundary what="what stands in the way" retryWhen={shown.answer}>
        <Blocks shown={shown} keep={keep} />
      </Boundary>
      {shown.answer.quilt && shown.answer.blocks.length > 0 && (
        <Boundary what="the picture of the quilt" retryWhen={shown.answer}>
          <Quilt shown={shown} now={now} />
        </Boundary>
      )}
      <Boundary what="the fabrics" retryWhen={shown.answer}>
        <Fabrics now={now} shown={shown} keep={keep} />
      </Boundary>
      <Boundary what="the smaller sentences" retryWhen={now.brief}>
        <Details now={now} shown={shown} keep={keep} />
      </Boundary>
      <Turned now={now} />
      <Boundary what="the questions" retryWhen={shown.answer}>
        <Questions shown={shown} />
      </Boundary>
      <Boundary what="what goes otherwise" retryWhen={now.answer}>
        <Otherwise now={now} />
      </Boundary>
      <Boundary what="the living pattern" retryWhen={now.brief}>
        <Living now={now} />
      </Boundary>
      <Boundary what="the advice" retryWhen={shown.answer}>
        <Advice shown={shown} keep={keep} />
      </Boundary>
      <Boundary what="the notes" retryWhen={now.brief}>
        <Notes keep={keep} notes={now.brief.notes} />
      </Boundary>
      <Foot />
    </main>
  );
}

/** Once an answer is pinned: the sentences that would make it so. */
function Turned({ now }: { now: Answered }) {
  const pinned = useTurning((s) => s.pins.length > 0);
  if (!pinned) return null;
  return (
    <Boundary what="the sentences that would make it so" retryWhen={now.brief}>
      <TurnRound now={now} />
    </Boundary>
  );
}

function Head({ now }: { now: Answered }) {
  return (
    <header className="head">
      <h1>{now.brief.title}</h1>
      <p>
        <a className="touch tall" href="#designs">
          All designs
        </a>{" "}
        <a className="touch tall" href="#shop">
          Kits and class
        </a>
      </p>
      <p className="soft state">{stateText(now.answer)}</p>
    </header>
  );
}

function Quilt({ shown, now }: { shown: Answered; now: Answered }) {
  const { answer } = shown;
  const texts = useMemo(() => {
    const [w, h] = sizeText(shown.brief, shown.answer).split(" × ");
    return { widthText: `${w} ${answer.unit}`, heightText: h };
  }, [shown, answer.unit]);
  return <QuiltView shown={shown} now={now} size={texts} />;
}

interface SentencesProps {
  readonly now: Answered;
  readonly shown: Answered;
  readonly keep: KeepStore;
}

function Sentences({ now, shown, keep }: SentencesProps) {
  const { opening, onStep } = useEditing(now, keep);
  const lit = useLitWords(shown);
  const state = useTurning((s) => s);
  const freeing = state.freeing?.(
    state,
    now.answer.sentence.flatMap((p) => p.word ?? []),
  );
  return (
    <Sentence
      parts={now.answer.sentence}
      brief={now.brief}
      onStep={onStep}
      lit={lit}
      label="The whole job"
      opening={opening}
      freeing={freeing}
    />
  );
}
