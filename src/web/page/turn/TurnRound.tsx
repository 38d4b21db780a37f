import { useEffect, useId, useRef } from "react";
import type { Change } from "../../../core/answer/words/word.ts";
import type { Brief } from "../../../core/brief/index.ts";
import { litSentence, sayLoosened, sayOver, sayPin, sayWords } from "../../../core/turn/say.ts";
import { type Found, FREE_WORDS, type FreeWord, type Turned } from "../../../core/turn/types.ts";
import type { Answered } from "../answers.ts";
import { ChoicePicture } from "../ChoicePicture.tsx";
import { useKeepStore } from "../KeepContext.ts";
import { Said } from "../said.tsx";
import { useView } from "../view.ts";
import { isPinned, letGo } from "./freeing.ts";
import { pinsFor } from "./pinnable.ts";
import { turning, useTurning } from "./turning.ts";
import { useTurn } from "./useTurn.ts";
import "./turn.css";

const WORDS: Readonly<Record<FreeWord, string>> = {
  strip: "strip",
  setting: "setting",
  rows: "rows",
  columns: "columns",
  float: "side of the blocks",
  sashing: "sashing",
  borders: "outer border",
  step: "finer marks",
};

/** A question turned round: what is pinned, what may move, and the nearest sentences that make it true. */
export function TurnRound({ now }: { now: Answered }) {
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  const pins = useTurning((s) => s.pins);
  const free = useTurning((s) => s.free);
  const may = useTurning((s) => s.may);
  const { read, search, stop } = useTurn(now.brief, pins, free);
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: "center" });
  }, []);
  const others = pinsFor(now).filter((p) => !isPinned(pins, p.text));
  return (
    <section className="turn" aria-labelledby={`${id}-h`}>
      <h2 id={`${id}-h`} ref={heading} tabIndex={-1}>
        What would make it so?
      </h2>
      <div className="asked">
        <ul className="pins">
          {pins.map((text, i) => {
            const r = read[i];
            const bad = r !== undefined && "problem" in r ? r.problem : null;
            const set = (next: string[]): void => turning.setState({ pins: next });
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a pin is its place while it is typed
              <li key={i}>
                <span className="tag small">pinned</span>
                <input
                  type="text"
                  value={text}
                  aria-label={`Pin ${i + 1}`}
                  aria-invalid={bad !== null}
                  aria-describedby={`${id}-p${i}`}
                  spellCheck={false}
                  autoComplete="off"
                  onChange={(e) => set(pins.map((p, k) => (k === i ? e.target.value : p)))}
                />
                <button
                  type="button"
                  className="touch"
                  aria-label={`Let pin ${i + 1} go`}
                  onClick={() => set(pins.filter((_, k) => k !== i))}
                >
                  Let it go
                </button>
                <p id={`${id}-p${i}`} className={bad ? "small problem" : "small soft"}>
                  <Said text={bad ?? (r && !("problem" in r) ? sayPin(r, now.brief) : "")} />
                </p>
              </li>
            );
          })}
        </ul>
        {others.length > 0 && (
          <label className="more small">
            Pin something else{" "}
            <select
              value=""
              onChange={(e) =>
                e.target.value && turning.setState({ pins: [...pins, e.target.value] })
              }
            >
              <option value="">choose</option>
              {others.map((p) => (
                <option key={p.text} value={p.text}>
                  {p.label}
                </option>
              ))}
            </select>
          </label>
        )}
        <fieldset className="free">
          <legend>Words that may move: touch them in the sentence, or here</legend>
          {FREE_WORDS.filter((w) => may === null || may.includes(w) || free.includes(w)).map(
            (word) => (
              <label key={word}>
                <input
                  type="checkbox"
                  checked={free.includes(word)}
                  onChange={(e) =>
                    turning.setState({
                      free: FREE_WORDS.filter((w) =>
                        w === word ? e.target.checked : free.includes(w),
                      ),
                    })
                  }
                />{" "}
                {WORDS[word]}
              </label>
            ),
          )}
        </fieldset>
      </div>
      <Progress state={search.state} turned={search.turned} message={search.message} stop={stop} />
      {search.turned && <Results turned={search.turned} now={now} done={search.state === "done"} />}
      <p>
        <button type="button" className="touch tall" onClick={letGo}>
          Let all pins go
        </button>
      </p>
    </section>
  );
}

interface ProgressProps {
  readonly state: string;
  readonly turned: Turned | null;
  readonly message: string | undefined;
  readonly stop: () => void;
}

function Progress({ state, turned, message, stop }: ProgressProps) {
  const part = turned && turned.all > 0 ? `${turned.weighed} of ${turned.all}` : "none yet";
  if (state === "idle") return null;
  return (
    <div className="progress small" aria-busy={state === "looking"}>
      {state === "looking" && (
        <>
          <span className="soft">Weighing sentences: {part}.</span>{" "}
          <button type="button" className="touch" onClick={stop}>
            Stop looking
          </button>
        </>
      )}
      {state === "stopped" && <span className="soft">Stopped: {part} weighed.</span>}
      {state === "failed" && <span className="problem">The search failed: {message}.</span>}
      {state === "done" && turned && (
        <span className="soft">
          {turned.complete
            ? `All ${turned.all} sentences within the limits weighed. Nearest to the pins first.`
            : `${turned.weighed} of ${turned.all} sentences weighed; there may be better ones.`}
        </span>
      )}
      {turned?.stuck.map((s) => (
        <p key={s.word} className="soft">
          “{WORDS[s.word]}” cannot move here: {s.why}.
        </p>
      ))}
    </div>
  );
}

function Results({ turned, now, done }: { turned: Turned; now: Answered; done: boolean }) {
  const { found, loosened } = turned;
  if (found.length > 0)
    return (
      <ol className="sentences">
        {found.map((f, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: its place is what it is
          <One key={i} found={f} now={now} />
        ))}
      </ol>
    );
  if (!done) return null;
  return (
    <>
      <p>
        <b className="in-doubt">Nothing fits.</b>{" "}
        {loosened.length > 0
          ? "It would, with one pin loosened:"
          : "No pin alone helps; free another word."}
      </p>
      <ol className="sentences">
        {loosened.map((l) => (
          <One
            key={sayPin(l.from, now.brief)}
            found={l.found}
            now={now}
            lead={sayLoosened(l, now.brief)}
          />
        ))}
      </ol>
    </>
  );
}

/** The whole brief becomes the found one; the sizes it is offered in stay. */
const becoming =
  (brief: Brief): Change =>
  (draft) => {
    const { sizes } = draft;
    for (const key of Object.keys(draft) as (keyof Brief)[]) if (!(key in brief)) delete draft[key];
    Object.assign(draft, brief, sizes && { sizes });
  };

function One({ found, now, lead }: { found: Found; now: Answered; lead?: string }) {
  const keep = useKeepStore();
  const leftHanded = useView((v) => v.leftHanded);
  const same = found.words.length === 0 && found.brief === now.brief;
  const parts = litSentence(found.brief, now.brief);
  const bought = found.answer.yardages.filter(
    (y, i, all) => all.findIndex((z) => z.fabricId === y.fabricId) === i,
  );
  return (
    <li>
      <ChoicePicture kind="quilt" word="" answered={found} leftHanded={leftHanded} />
      <p className="reads">
        {lead && (
          <span className="small lead">
            <Said text={lead} />
          </span>
        )}
        {parts.map((p, i) =>
          p.lit ? (
            // biome-ignore lint/suspicious/noArrayIndexKey: parts keep their order
            <mark key={i}>
              <Said text={p.text} />
            </mark>
          ) : (
            // biome-ignore lint/suspicious/noArrayIndexKey: parts keep their order
            <Said key={i} text={p.text} />
          ),
        )}
      </p>
      <div className="beside small">
        {found.over.map((o) => (
          <p key={o.what + (o.pin.kind === "yardage" ? o.pin.fabricId : "")}>
            <b>
              <Said text={sayOver(o, now.brief)} />
            </b>
          </p>
        ))}
        <p className="soft">
          <Said
            text={bought
              .map(
                (y) => `${now.brief.fabrics.find((f) => f.id === y.fabricId)?.name} ${y.buyText}`,
              )
              .join(", ")}
          />
        </p>
        <p>
          <button
            type="button"
            className="touch tall"
            disabled={same}
            onClick={() => {
              keep.act.edit(`"${sayWords(found.words)}"`, becoming(found.brief));
              letGo();
            }}
          >
            Take it
          </button>
        </p>
      </div>
    </li>
  );
}
