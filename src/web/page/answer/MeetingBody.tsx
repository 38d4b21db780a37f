import { useEffect, useMemo, useState } from "react";
import { type Laying, layingsOf } from "../../../core/answer/arrangements.ts";
import { shapeWords } from "../../../core/answer/look/meetings.ts";
import { allWords } from "../../../core/answer/words/all-choices.ts";
import type { Brief } from "../../../core/brief/index.ts";
import { type Answered, asking } from "../answers.ts";
import { useView, view } from "../view.ts";
import type { BodyProps } from "./body.ts";
import { Alternative } from "./quilt/Alternative.tsx";
import "../../style/quilt.css";

/** The figures that appear, each to be lit in the quilt; then other ways to lay the same blocks. */
export function MeetingBody({ shown }: BodyProps) {
  const { brief, answer } = shown;
  const lit = useView((v) => v.figure);
  useEffect(() => () => view.setState({ figure: null }), []);
  return (
    <>
      {answer.meetings.length > 0 && (
        <ul className="figures-seen">
          {answer.meetings.map((shape) => (
            <li key={shape.at[0].map((p) => p.placed + p.patch).join()}>
              <button
                type="button"
                className="touch tall"
                aria-pressed={lit === shape}
                onClick={() => view.setState({ figure: lit === shape ? null : shape })}
              >
                {shapeWords(shape, brief)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <Layings shown={shown} />
    </>
  );
}

/** At most four ways to lay the same blocks: sentences that differ by their lit word. */
function Layings({ shown }: { shown: Answered }) {
  const { brief, answer } = shown;
  const layings = useMemo(() => layingsOf(brief, answer), [brief, answer]);
  const answered = useLaid(layings, shown);
  if (layings.length < 2) return null;
  const text = (id: string): string => allWords.wordsOf(brief).find((w) => w.id === id)?.text ?? "";
  const lead = `The same blocks, ${text("grid")},`;
  return (
    <>
      <h3 className="of-alternatives">The same blocks, laid otherwise</h3>
      <ul className={`alternatives of-${layings.length}`}>
        {layings.map((l, i) => {
          const would = answered[i];
          return (
            <Alternative
              key={l.label}
              lead={lead}
              lit={l.now ? nowWords(text) : l.label}
              now={shown}
              would={would}
              {...(l.now ? {} : { change: l.change })}
            >
              {would && <p className="small">{figures(would)}</p>}
            </Alternative>
          );
        })}
      </ul>
    </>
  );
}

const nowWords = (text: (id: string) => string): string =>
  [text("arrangement"), text("turning")].filter((t) => t !== "none turned").join(", ");

function figures({ answer, brief }: Answered): string {
  const said = [...new Set(answer.meetings.map((s) => shapeWords(s, brief)))];
  return said.length === 0 ? "no figure across blocks" : said.join("; ");
}

/** Lanes of their own, beside those of an open word and of the ways out. */
const FIRST_LANE = 20;

function useLaid(layings: readonly Laying[], now: Answered): (Answered | null)[] {
  const [got, setGot] = useState<ReadonlyMap<Brief, Answered>>(() => new Map());
  useEffect(() => {
    let live = true;
    layings.forEach((l, i) => {
      if (l.now) return;
      asking.forChoice(FIRST_LANE + i, l.brief).then(
        (answer) => live && setGot((m) => new Map(m).set(l.brief, { brief: l.brief, answer })),
        () => {},
      );
    });
    return () => {
      live = false;
    };
  }, [layings]);
  return layings.map((l) => (l.now ? now : (got.get(l.brief) ?? null)));
}
