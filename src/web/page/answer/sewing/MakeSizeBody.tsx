import { useCallback, useMemo } from "react";
import {
  makerWords,
  sayTest,
  seamTests,
  sizeStudy,
  sizeWords,
  tightest,
} from "../../../../core/answer/sewing/make-size.ts";
import type { AnswerBlock } from "../../../../core/answer/types/answer.ts";
import { stepOfBrief } from "../../../../core/answer/words/word.ts";
import { keepSeamTest } from "../../../../core/brief/record.ts";
import { printWithUnit } from "../../../../core/measure/index.ts";
import { spreadPicture } from "../../../../core/picture/spread.ts";
import type { Answered } from "../../answers.ts";
import { useKeepStore } from "../../KeepContext.ts";
import { PictureView } from "../../PictureView.tsx";
import { Said } from "../../said.tsx";
import { useSwatches } from "../../useSwatches.ts";
import type { BodyProps } from "../body.ts";
import { Measured } from "./Measured.tsx";
import "./sewing.css";
import { type StudyState, useStudy } from "./useStudy.ts";

/** Her own seam by a test, and what blocks sewn like that come out as. */
export function MakeSizeBody({ shown }: BodyProps) {
  const { brief, answer } = shown;
  const blocks = answer.blocks.filter((b) => !b.id.includes("~") && b.tree.kind === "seam");
  return (
    <>
      <p>
        <Said text={makerWords(brief)} />
      </p>
      <SeamTests shown={shown} />
      {blocks.map((block) => (
        <Study key={block.id} block={block} shown={shown} />
      ))}
    </>
  );
}

function SeamTests({ shown }: { shown: Answered }) {
  const keep = useKeepStore();
  const { brief } = shown;
  return (
    <div className="kind">
      <h3>Your own seam</h3>
      <p className="soft">
        Sew one or more of these side by side, press, and measure across. One is enough.
      </p>
      <ul className="seam-tests">
        {seamTests(brief).map((t) => {
          const name = sayTest(t, brief.unit);
          return (
            <li key={t.strips}>
              <span>
                <Said text={`${name} should give ${t.should}`} />
              </span>
              <Measured
                label={`Measured across ${name}`}
                unit={brief.unit}
                typed={t.typed}
                problem={t.problem}
                onKeep={(text) =>
                  keep.act.edit("the seam test", keepSeamTest(t.strips, t.cut, text))
                }
              />
            </li>
          );
        })}
      </ul>
    </div>
  );
}

function Study({ block, shown }: { block: AnswerBlock; shown: Answered }) {
  const { brief, answer } = shown;
  const study = useMemo(() => sizeStudy(brief, answer, block), [brief, answer, block]);
  const { state, begin, stop } = useStudy(study);
  return (
    <div className="kind">
      <h3>{block.name}</h3>
      {state.busy !== null && (
        <p className="sampling">
          <progress value={state.busy} aria-label={`Sewing ${block.name} blocks in numbers`} />{" "}
          <button type="button" className="touch tall" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {state.busy === null && !state.result && (
        <p>
          {state.failed ? `It could not be worked out (${state.failed}). ` : "Stopped. "}
          <button type="button" className="touch tall" onClick={begin}>
            Sew them again
          </button>
        </p>
      )}
      {state.result && <Result result={state.result} shown={shown} />}
    </div>
  );
}

/** As wide as its column: a spread of a few 64ths says nothing at life size. */
const WIDE = 1e6;

function Result({
  result: { study, answer: sewn },
  shown,
}: {
  result: NonNullable<StudyState["result"]>;
  shown: Answered;
}) {
  const { brief, answer } = shown;
  const words = sizeWords(brief, answer, study, sewn);
  const swatches = useSwatches(brief);
  const width = tightest(sewn);
  const make = useCallback(
    (small: number) =>
      spreadPicture(width, {
        unit: brief.unit,
        title: words.spread,
        trimText: `trim to ${printWithUnit(width.trim, stepOfBrief(brief))}`,
        within: study.within,
        small,
      }),
    [width, brief, study, words.spread],
  );
  return (
    <div className="spread">
      <PictureView make={make} swatches={swatches} small={15} most={WIDE} />
      <div role="status">
        <p>
          <b>
            <Said text={`${words.share}.`} />
          </b>
        </p>
        <p>
          <Said text={`${words.spread}. ${words.helps}`} />
        </p>
        <p className="soft small">{words.check}</p>
      </div>
    </div>
  );
}
