import { Fragment, type KeyboardEvent, type ReactNode, useRef } from "react";
import { spoken } from "../../core/answer/say/spoken.ts";
import type { SentencePart } from "../../core/answer/types/answer.ts";
import { wordsOf } from "../../core/answer/words/choices.ts";
import type { Word } from "../../core/answer/words/word.ts";
import type { Brief } from "../../core/brief/index.ts";
import { runsOf } from "../../core/picture/fraction.ts";
import { Typeset } from "./said.tsx";
import type { Freeing } from "./turn/turning.ts";
import { useSplit } from "./useSplit.ts";
import { useView, view } from "./view.ts";

export interface SentenceProps {
  readonly parts: readonly SentencePart[];
  readonly brief: Brief;
  readonly onStep: (word: Word, by: 1 | -1) => void;
  /** Words that decide what is lit. */
  readonly lit: readonly string[];
  readonly label: string;
  readonly className?: string;
  readonly opening: ReactNode;
  /** While an answer is pinned: a touch frees a word that may move. */
  readonly freeing?: Freeing | undefined;
  /** Its words, where they are not among those of the large sentences. */
  readonly words?: readonly Word[];
}

/** Sentences longer than this are set smaller, so that the quilt stays in sight. */
const LONG = 260;

/** A piece never breaks: a bit of text up to a space, or a number with its fraction and unit. */
interface Piece {
  readonly text: string;
  readonly space: boolean;
}

/** Text cut where lines may break. Numbers keep their fraction and their unit. */
export function piecesOf(text: string): Piece[] {
  const bound = runsOf(text)
    .map((run) =>
      run.kind === "text"
        ? run.text
        : `${run.whole ? `${run.whole}\u0001` : ""}${run.above}/${run.below}`,
    )
    .join("")
    .replace(/(\d) (in|mm|cm|yd|m|blocks?)\b/g, "$1\u0001$2")
    .replace(/(\d) by (\d)/g, "$1\u0001by\u0001$2");
  return bound
    .split(/(?<= )/)
    .filter((t) => t !== "")
    .map((t) => ({ text: t.trimEnd().replaceAll("\u0001", " "), space: t.endsWith(" ") }));
}

/** The whole job in one paragraph with its words as buttons in it. */
export function Sentence(props: SentenceProps) {
  const { parts, brief, lit, opening, label, className = "" } = props;
  const word = useView((v) => v.word);
  const box = useRef<HTMLDivElement>(null);
  const words = props.words ?? wordsOf(brief);
  const here = parts.some((p) => p.word === word) ? word : null;
  const text = parts.map((p) => p.text).join("");
  const split = useSplit(box, here, text);
  const current =
    parts.find((p) => p.word === (word ?? ""))?.word ?? parts.find((p) => p.word)?.word;
  let at = 0;

  const before: ReactNode[] = [];
  const after: ReactNode[] = [];
  parts.forEach((part, i) => {
    const first = at;
    const pieces = piecesOf(part.text);
    at += pieces.length;
    const cut = split === null ? Number.POSITIVE_INFINITY : split;
    const head = pieces.slice(0, Math.max(0, cut - first));
    const tail = pieces.slice(head.length);
    const key = part.word ?? `join${i}`;
    const make = (some: readonly Piece[], from: number, half: string): ReactNode =>
      part.word ? (
        <WordButton
          key={key + half}
          part={part as SentencePart & { word: string }}
          word={words.find((w) => w.id === part.word)}
          open={here === part.word}
          lit={lit.includes(part.word)}
          tab={current === part.word}
          onStep={props.onStep}
          freeing={props.freeing}
        >
          <Pieces pieces={some} from={from} />
        </WordButton>
      ) : (
        <span key={key + half} className="join">
          <Pieces pieces={some} from={from} />
        </span>
      );
    if (head.length > 0) before.push(make(head, first, ""));
    if (tail.length > 0) after.push(make(tail, first + head.length, head.length > 0 ? "rest" : ""));
  });

  return (
    <section aria-label={label}>
      {/* biome-ignore lint/a11y/useSemanticElements: a paragraph may not hold what opens in it */}
      <div
        ref={box}
        role="paragraph"
        data-part="sentence"
        className={`sentence ${className} ${text.length > LONG ? "long" : ""} ${here ? "parted" : ""}`}
        onKeyDown={walk}
      >
        {before}
        {here && split !== null && <div className="between">{opening}</div>}
        {after.length > 0 && <span className="below">{after}</span>}
      </div>
    </section>
  );
}

function Pieces({ pieces, from }: { pieces: readonly Piece[]; from: number }) {
  return pieces.map((p, i) => {
    const at = from + i;
    return (
      <Fragment key={at}>
        <span data-at={at} className="piece">
          <Typeset text={p.text} />
        </span>
        {p.space && " "}
      </Fragment>
    );
  });
}

interface WordProps {
  readonly part: SentencePart & { readonly word: string };
  readonly word: Word | undefined;
  readonly open: boolean;
  readonly lit: boolean;
  readonly tab: boolean;
  readonly onStep: SentenceProps["onStep"];
  readonly freeing: Freeing | undefined;
  readonly children: ReactNode;
}

/** Inline, so that a long word may run over the end of a line: a button element could not. */
function WordButton({ part, word, open, lit, tab, onStep, freeing, children }: WordProps) {
  const free = freeing?.free(part.word);
  const toggle = (): void => {
    if (free !== undefined) freeing?.turn(part.word, word?.role ?? part.text);
    else view.setState({ word: open ? null : part.word });
  };
  const keys = (e: KeyboardEvent): void => {
    if (e.key === "Enter" || e.key === " ") {
      e.preventDefault();
      toggle();
    } else if ((e.key === "ArrowUp" || e.key === "ArrowDown") && word) {
      e.preventDefault();
      onStep(word, e.key === "ArrowUp" ? 1 : -1);
    } else if (e.key === "Escape" && open) {
      e.preventDefault();
      toggle();
    }
  };
  const moving = free === undefined ? "" : ", free to move";
  const name = `${word?.role ?? ""}: ${spoken(part.text)}${part.doubt ? ", not proved" : ""}${moving}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button element cannot break over two lines
    <span
      role="button"
      tabIndex={tab ? 0 : -1}
      aria-expanded={free === undefined ? open : undefined}
      aria-pressed={free}
      aria-label={name}
      data-word={part.word}
      className={`word ${open ? "open" : ""} ${lit ? "lit" : ""} ${part.doubt ? "doubt" : ""} ${free === undefined ? "" : free ? "freed" : "may"}`}
      onClick={toggle}
      onKeyDown={keys}
      onFocus={(e) => e.currentTarget.closest(".sentence")?.setAttribute("data-at-word", part.word)}
    >
      {children}
    </span>
  );
}

/** Left and right walk from word to word; home and end go to the first and the last. */
function walk(e: KeyboardEvent<HTMLElement>): void {
  const at = (e.target as HTMLElement).closest<HTMLElement>("[data-word]");
  if (!at || e.ctrlKey || e.metaKey || e.altKey) return;
  const all = [...e.currentTarget.querySelectorAll<HTMLElement>("[data-word]")];
  const i = all.indexOf(at);
  const go = { ArrowRight: i + 1, ArrowLeft: i - 1, Home: 0, End: all.length - 1 }[e.key];
  if (go === undefined) return;
  e.preventDefault();
  const next = all[Math.max(0, Math.min(all.length - 1, go))];
  for (const w of all) w.tabIndex = w === next ? 0 : -1;
  next.focus();
}
