import type { Question } from "../../../core/answer/types.ts";
import type { Answered } from "../answers.ts";
import { pinsFor } from "./pinnable.ts";
import { pinIt, useTurning } from "./turning.ts";

/** Pins what a question answers: its number is then kept, and the sentence moves instead. */
export function PinButton({ question, shown }: { question: Question; shown: Answered }) {
  const pinned = useTurning((s) => s.pins);
  const [pin] = pinsFor(shown).filter((p) => p.question === question.id);
  if (!pin) return null;
  const held = pinned.includes(pin.text);
  return (
    <p className="pin">
      <button
        type="button"
        className="touch"
        aria-pressed={held}
        aria-label={`Pin ${pin.label}`}
        onClick={() => pinIt(pin.text)}
      >
        {held ? "pinned" : "Pin it"}
      </button>
    </p>
  );
}
