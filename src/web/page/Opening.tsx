import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from "react";
import { allWords } from "../../core/answer/words/all-choices.ts";
import type { Choice } from "../../core/answer/words/word.ts";
import type { Brief } from "../../core/brief/index.ts";
import type { Recipe as KeepChange } from "../keep/index.ts";
import { type Answered, asking } from "./answers.ts";
import { ChoiceColumn } from "./ChoiceColumn.tsx";
import { sayAloud, view } from "./view.ts";

const { choicesFor, stepped, typed, wordsOf } = allWords;

export interface OpeningProps {
  readonly word: string;
  readonly now: Answered;
  readonly onPreview: (change: KeepChange | null) => void;
  readonly onTake: (words: string, change: KeepChange) => void;
}

/** What a touched word could be: at most four choices, each with its picture and what follows. */
export function Opening({ word, now, onPreview, onTake }: OpeningProps) {
  const { brief } = now;
  const about = useMemo(() => wordsOf(brief).find((w) => w.id === word), [brief, word]);
  const choices = useMemo(() => choicesFor(brief, word), [brief, word]);
  const typingAt = choices.findIndex((c) => c.typed !== undefined);
  const [text, setText] = useState(choices[typingAt]?.typed ?? "");
  const edited = useMemo(() => typed(brief, word, text), [brief, word, text]);
  const [at, setAt] = useState(() =>
    Math.max(
      0,
      choices.findIndex((c) => c.now),
    ),
  );
  const group = useRef<HTMLDivElement>(null);
  const id = useId();

  const all = useMemo(
    () =>
      choices.map((c) => {
        if (c.typed === undefined) return c;
        if (!edited.ok) return { ...c, brief, change: () => {} };
        return { ...c, brief: edited.brief, change: edited.change };
      }),
    [choices, edited, brief],
  );
  const answered = useAnswered(all, now);
  const chosen = all[at];
  const asIs = chosen.now || (at === typingAt && text.trim() === choices[typingAt].typed);
  const bad = at === typingAt && !edited.ok ? edited.error.problem : null;

  useEffect(() => {
    onPreview(bad || asIs ? null : chosen.change);
  }, [onPreview, chosen, asIs, bad]);
  useEffect(() => () => onPreview(null), [onPreview]);
  useEffect(() => {
    const start = group.current?.querySelector<HTMLElement>('[role="radio"][aria-checked="true"]');
    start?.focus({ preventScroll: true });
  }, []);

  const leave = (): void => {
    view.setState({ word: null });
    backToWord(word);
  };
  const take = (): void => {
    if (bad) {
      sayAloud(bad);
      return;
    }
    const label = at === typingAt ? text : chosen.label;
    if (!asIs) onTake(`"${label}"`, chosen.change);
    leave();
  };
  const keys = (e: KeyboardEvent): void => {
    const field = (e.target as HTMLElement).tagName === "INPUT";
    const by = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: 1, ArrowUp: -1 }[e.key];
    if (e.key === "Escape") leave();
    else if (e.key === "Enter" && !(e.target as HTMLElement).closest("[data-act]")) take();
    else if (field && (e.key === "ArrowUp" || e.key === "ArrowDown"))
      setText(stepText(brief, word, text, e.key === "ArrowUp" ? 1 : -1));
    else if (by && !field) go((at + by + all.length) % all.length);
    else if (e.key === " " && !field) take();
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const go = (next: number): void => {
    setAt(next);
    const el = group.current?.querySelectorAll<HTMLElement>('[role="radio"]')[next];
    const field = el?.parentElement?.querySelector("input");
    (next === typingAt && field ? field : el)?.focus({ preventScroll: true });
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame and a legend
    <div className="opening" role="group" aria-label={about?.role} onKeyDown={keys}>
      <div
        ref={group}
        role="radiogroup"
        aria-label={about?.role}
        className={`choices of-${all.length}`}
      >
        {all.map((choice, i) => (
          <ChoiceColumn
            key={choice.typed === undefined ? choice.label : "typed"}
            choice={choice}
            word={word}
            typing={i === typingAt}
            chosen={i === at}
            answered={answered[i]}
            now={now}
            others={answered}
            onChoose={() => go(i)}
            onTake={take}
            text={text}
            onText={(t) => {
              setText(t);
              setAt(i);
            }}
            problem={i === typingAt && !edited.ok && text !== "" ? edited.error.problem : null}
            fieldLabel={`${about?.role ?? ""}, typed`}
            problemId={`${id}-problem`}
          />
        ))}
      </div>
      <p className="acts">
        <button type="button" className="touch tall" data-act="take" onClick={take}>
          Take it
        </button>
        <button type="button" className="touch tall" data-act="leave" onClick={leave}>
          Leave it
        </button>
      </p>
    </div>
  );
}

/** Focus goes back to where it came from, once the sentence has closed. */
function backToWord(word: string): void {
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>(`[data-word="${CSS.escape(word)}"]`)?.focus(),
  );
}

/** The typed number one step of the ruler further. */
function stepText(brief: Brief, word: string, text: string, by: 1 | -1): string {
  const r = typed(brief, word, text);
  if (!r.ok) return text;
  const next = stepped(r.brief, word, by);
  const c = choicesFor(next, word).find((x) => x.typed !== undefined);
  return c?.typed ?? text;
}

/** Answers each choice in the worker, nearest first; none is waited for. */
function useAnswered(choices: readonly Choice[], now: Answered): (Answered | null)[] {
  const [got, setGot] = useState<ReadonlyMap<Brief, Answered>>(() => new Map());
  useEffect(() => {
    let live = true;
    choices.forEach(({ brief }, place) => {
      if (brief === now.brief) return;
      asking.forChoice(place, brief).then(
        (answer) =>
          live && setGot((m) => (m.has(brief) ? m : new Map(m).set(brief, { brief, answer }))),
        () => {},
      );
    });
    return () => {
      live = false;
    };
  }, [choices, now]);
  return choices.map(({ brief }) => (brief === now.brief ? now : (got.get(brief) ?? null)));
}
