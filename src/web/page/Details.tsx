import { useMemo, useState } from "react";
import { allWords } from "../../core/answer/words/all-choices.ts";
import { bringBlocks } from "../../core/answer/words/bring-blocks.ts";
import { detailSentencesOf } from "../../core/answer/words/details.ts";
import { addOwnBlock } from "../../core/answer/words/own-block.ts";
import { readBrief } from "../../core/brief/index.ts";
import { chooseFile, type KeepStore, readText } from "../keep/index.ts";
import type { Answered } from "./answers.ts";
import { useEditing, useLitWords } from "./editing.tsx";
import { Sentence } from "./Sentence.tsx";
import { sayAloud } from "./view.ts";

interface DetailsProps {
  readonly now: Answered;
  readonly shown: Answered;
  readonly keep: KeepStore;
}

/** The small sentences: everything the two large ones leave unsaid, in words that can be touched. */
export function Details({ now, shown, keep }: DetailsProps) {
  const sentences = useMemo(() => detailSentencesOf(now.brief), [now.brief]);
  const words = useMemo(() => allWords.wordsOf(now.brief), [now.brief]);
  const { opening, onStep } = useEditing(now, keep, allWords);
  const lit = useLitWords(shown);
  return (
    <div className="details">
      {sentences.map(({ id, label, parts }) => (
        <Sentence
          key={id}
          parts={parts}
          brief={now.brief}
          onStep={onStep}
          lit={lit}
          label={label}
          className="detail"
          opening={opening}
          words={words}
        />
      ))}
      <MoreBlocks keep={keep} />
    </div>
  );
}

/** Blocks that no word brings: one begun here, or those of another design's file. */
function MoreBlocks({ keep }: { keep: KeepStore }) {
  const [problem, setProblem] = useState<string | null>(null);
  const tell = (text: string): void => {
    setProblem(text);
    sayAloud(text);
  };
  const bring = async (): Promise<void> => {
    setProblem(null);
    const chosen = await chooseFile();
    if (!chosen) return;
    const { name } = chosen.file;
    const read = await readText(chosen.file);
    if ("why" in read) return tell(`${name} cannot be read: ${read.why}.`);
    const result = readBrief(read.text);
    if (!result.ok) {
      const [{ path, message }] = result.refusals;
      return tell(`${name} is no design: ${path === "" ? "" : `${path}: `}${message}.`);
    }
    keep.act.edit(`the blocks of ${name}`, bringBlocks(result.brief));
  };
  return (
    <>
      <p className="acts">
        <button
          type="button"
          className="touch tall"
          onClick={() => keep.act.edit("a block of your own", addOwnBlock)}
        >
          Say a block of your own
        </button>
        <button type="button" className="touch tall" onClick={() => void bring()}>
          Bring blocks from a file
        </button>
      </p>
      {problem && <p role="status">{problem}</p>}
    </>
  );
}
