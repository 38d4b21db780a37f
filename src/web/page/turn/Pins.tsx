import type { Question } from "../../../core/answer/types/answer.ts";
import type { Answered } from "../answers.ts";
import { Typeset } from "../said.tsx";
import { isPinned, pinIt } from "./freeing.ts";
import { pinsFor } from "./pinnable.ts";
import { useTurning } from "./turning.ts";
import "./pins.css";

/** The numbers of an answer that can be pinned: one that is, is kept, and the sentence moves instead. */
export function Pins({ question, shown }: { question: Question; shown: Answered }) {
  const pinned = useTurning((s) => s.pins);
  const pins = pinsFor(shown).filter((p) => p.question === question.id);
  if (pins.length === 0) return null;
  return (
    <ul className="can-pin small">
      {pins.map((p) => {
        const held = isPinned(pinned, p.text);
        return (
          <li key={p.text}>
            <button
              type="button"
              className="touch"
              aria-pressed={held}
              aria-label={`Pin ${p.label}`}
              onClick={() => pinIt(p.text)}
            >
              <span className="what">
                <Typeset text={p.shows} />
              </span>{" "}
              <span className="act">{held ? "pinned" : "pin"}</span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}
