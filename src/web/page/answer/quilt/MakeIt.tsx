import { type FormEvent, useId, useRef, useState } from "react";
import type { Made } from "../../../../core/answer/make-it.ts";
import { planChange } from "../../../../core/answer/size/plans.ts";
import { overWords, planWords } from "../../../../core/answer/size/sizes.ts";
import { readTop } from "../../../../core/answer/size/table.ts";
import type { Brief } from "../../../../core/brief/index.ts";
import { stepOf } from "../../../../core/measure/index.ts";
import { type Answered, asking } from "../../answers.ts";
import { Said } from "../../said.tsx";
import { sayAloud } from "../../view.ts";
import { Alternative } from "./Alternative.tsx";
import "../../../style/quilt.css";

type Ways =
  | { readonly state: "none" }
  | { readonly state: "looking"; readonly brief: Brief }
  | { readonly state: "failed"; readonly brief: Brief; readonly why: string }
  | { readonly state: "found"; readonly brief: Brief; readonly made: readonly Made[] };

/** "Make it 60 x 72": a size typed, and the nearest ways to come to it, each to be taken. */
export function MakeIt({ shown }: { shown: Answered }) {
  const { brief } = shown;
  const id = useId();
  const [text, setText] = useState("");
  const [ways, setWays] = useState<Ways>({ state: "none" });
  const turn = useRef(0);
  const top = text.trim() === "" ? null : readTop(brief, text);
  const problem = top && "problem" in top ? top.problem : null;
  const step = stepOf(brief.step, brief.unit);

  const look = async (e: FormEvent): Promise<void> => {
    e.preventDefault();
    if (!top || "problem" in top) {
      sayAloud(problem ?? "Type the width and the length, such as 60 x 72.");
      return;
    }
    turn.current += 1;
    const mine = turn.current;
    setWays({ state: "looking", brief });
    try {
      const made = await asking.waysToMake(brief, top.width, top.length);
      if (turn.current !== mine) return;
      setWays({ state: "found", brief, made });
      sayAloud(made.length === 0 ? "No way was found." : `${made.length} ways, the nearest first.`);
    } catch (error) {
      if (turn.current === mine) setWays({ state: "failed", brief, why: (error as Error).message });
    }
  };
  const stop = (): void => {
    turn.current += 1;
    setWays({ state: "none" });
  };
  const current = ways.state !== "none" && ways.brief === brief ? ways : { state: "none" as const };

  return (
    <div className="make-it">
      <form onSubmit={(e) => void look(e)}>
        <label htmlFor={id}>Make it</label>
        <input
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          placeholder={brief.unit === "in" ? "60 x 72" : "150 x 180 cm"}
          value={text}
          aria-invalid={problem !== null}
          aria-describedby={problem ? `${id}-why` : undefined}
          onChange={(e) => setText(e.target.value)}
        />
        <span className="soft">finished</span>
        {current.state === "looking" ? (
          <button type="button" className="touch tall" onClick={stop}>
            Stop
          </button>
        ) : (
          <button type="submit" className="touch tall">
            Show the ways
          </button>
        )}
      </form>
      {problem && (
        <p id={`${id}-why`} className="problem">
          {problem}
        </p>
      )}
      {current.state === "looking" && <p className="soft">Working out the ways.</p>}
      {current.state === "failed" && <p>The ways could not be worked out: {current.why}.</p>}
      {current.state === "found" && current.made.length === 0 && (
        <p>No way comes near it that can be cut.</p>
      )}
      {current.state === "found" && current.made.length > 0 && (
        <ul className={`alternatives of-${current.made.length}`}>
          {current.made.map((m) => {
            const [grid, ...how] = planWords(m.plan, step).split(", ");
            return (
              <Alternative
                key={m.plan.way}
                lead={how.length > 0 ? `${grid},` : ""}
                lit={how.length > 0 ? how.join(", ") : grid}
                now={shown}
                would={{ brief: m.brief, answer: m.answer }}
                change={planChange(brief, m.plan, step)}
              >
                <p className="over">
                  <Said text={overWords(m.over, step)} />
                </p>
              </Alternative>
            );
          })}
        </ul>
      )}
    </div>
  );
}
