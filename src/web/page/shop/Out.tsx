import { useCallback, useState } from "react";
import {
  LEAF_WORDS,
  LEAVES,
  type Leaf,
  type Left,
  leftOf,
  remembering,
  sayChanged,
  sayLeftThing,
  sayRipple,
  versionToGive,
} from "../../../core/shop/index.ts";
import type { KeepStore } from "../../keep/index.ts";
import type { Answered } from "../answers.ts";
import { Said } from "../said.tsx";
import { choose, editionOf, useChoices, versionOf } from "../sheets/choices.ts";
import { shopWorker, useAsked } from "./asking.ts";
import { today } from "./give.ts";
import { Act, Field, Papers, Part, Pick } from "./parts.tsx";

/** What left the design, what of it is now wrong, and the slip that goes after it. */
export function OutPart({ now, keep }: { now: Answered; keep: KeepStore }) {
  const { brief, answer } = now;
  const left = leftOf(brief);
  const asked = useAsked(
    useCallback(() => shopWorker.ask("ripple", "ripple", brief, answer), [brief, answer]),
  );
  const wrong = asked.value ?? [];
  const { edition } = useChoices();
  const next = versionToGive(brief, wrong);
  const same = next !== undefined && versionOf(brief, edition) !== next;
  const remember = (words: string, entries: readonly Left[]): void =>
    keep.act.edit(words, remembering(entries));
  return (
    <Part heading="What is out, and is it still right?" trade="printed, cut and handed out">
      <p className="line" aria-live="polite">
        {left.length === 0 ? (
          "Nothing is noted yet. Note what you print, cut or hand out, and a later change says what it makes wrong."
        ) : (
          <b>{sayRipple(wrong)}</b>
        )}
      </p>
      {wrong.map(({ left: thing, changes }) => (
        <details key={JSON.stringify([thing.of, thing.version, thing.date, thing.to, thing.what])}>
          <summary className="touch">
            {sayLeftThing(thing)}: {changes.length} {changes.length === 1 ? "number" : "numbers"}
          </summary>
          <ul className="told">
            {changes.map((c) => (
              <li key={c.where}>
                <Said text={sayChanged(c)} />
              </li>
            ))}
          </ul>
        </details>
      ))}
      {same && (
        <p>
          What you print now would carry version {versionOf(brief, edition)}, which is out with
          other numbers.{" "}
          <Act onClick={() => choose({ edition: next })}>Print as version {next}</Act>
        </p>
      )}
      {wrong.length > 0 && (
        <>
          <Papers
            shown={now}
            papers={[
              { words: "Print the correction", name: "correction", paper: { what: "correction" } },
            ]}
          />
          <p className="acts">
            <Act
              onClick={() =>
                void shopWorker
                  .ask("correcting", "correcting", brief, answer, today())
                  .then((o) => o.kind === "done" && remember("a correction given out", o.value))
              }
            >
              The correction is given out
            </Act>
          </p>
        </>
      )}
      <Note now={now} onNote={remember} />
      {left.length > 0 && (
        <details>
          <summary className="touch">All that is noted ({left.length})</summary>
          <ul className="told">
            {[...left].reverse().map((e) => (
              <li key={JSON.stringify([e.of, e.version, e.date, e.to, e.what])}>
                {sayLeftThing(e)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </Part>
  );
}

type What = "printed" | "cut" | "handed-out";

/** "Note that the pattern was handed out, version 1, to the spring class". */
function Note({
  now,
  onNote,
}: {
  now: Answered;
  onNote: (words: string, entries: readonly Left[]) => void;
}) {
  const [of, setOf] = useState<Leaf>("pattern");
  const [what, setWhat] = useState<What>("handed-out");
  const [version, setVersion] = useState(editionOf(now.brief).version);
  const [to, setTo] = useState("");
  const [many, setMany] = useState("");
  const note = (): void => {
    const count = Number(many);
    const told = {
      what,
      of,
      version: version || editionOf(now.brief).version,
      date: today(),
      ...(to && { to }),
      ...(count > 0 && { count }),
    };
    void shopWorker.ask("leaving", "leaving", now.brief, now.answer, told).then((o) => {
      if (o.kind === "done") onNote(`${LEAF_WORDS[of]} noted`, [o.value]);
    });
  };
  return (
    <p className="shop-sentence">
      Note that the{" "}
      <Pick
        label="What left the design"
        value={of}
        options={LEAVES.map((l): [string, string] => [l, LEAF_WORDS[l]])}
        onPick={(v) => setOf(v as Leaf)}
      />{" "}
      <Pick
        label="How it left"
        value={what}
        options={[
          ["handed-out", "went out"],
          ["printed", "got printed"],
          ["cut", "got cut"],
        ]}
        onPick={(v) => setWhat(v as What)}
      />
      ,{" "}
      <Field
        label="How many of them"
        value={many}
        hint="so many"
        problem={(t) => (/^\d{0,4}$/.test(t) ? undefined : "a whole number")}
        onTake={setMany}
      />{" "}
      of them, version <Field label="Version printed on it" value={version} onTake={setVersion} />,
      to{" "}
      <Field wide label="To whom, or where it lies" value={to} hint="spring class" onTake={setTo} />{" "}
      <Act onClick={note}>Note it</Act>
    </p>
  );
}
