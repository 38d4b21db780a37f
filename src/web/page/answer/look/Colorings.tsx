import { useEffect, useMemo, useState } from "react";
import {
  type ColoringChoice,
  coloringChoices,
} from "../../../../core/answer/words/coloring-choices.ts";
import type { Sight } from "../../../../core/fabric/index.ts";
import { type Answered, asking } from "../../answers.ts";
import { useKeepStore } from "../../KeepContext.ts";
import { sayAloud } from "../../view.ts";
import { BlockLook } from "./BlockLook.tsx";
import { Lit } from "./Lit.tsx";
import { useSeen } from "./useSeen.ts";

interface ColoringsProps {
  readonly block: string;
  readonly shown: Answered;
  readonly sight: Sight;
}

/** Lanes of the worker that no open word uses. */
const LANE = 20;

/** At most four other colorings, each its word lit and its true picture; taking one changes the design. */
export function Colorings({ block, shown, sight }: ColoringsProps) {
  const [open, setOpen] = useState(false);
  const name = shown.answer.blocks.find((b) => b.id === block)?.name ?? block;
  return (
    <details className="colorings" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary className="touch tall">{name} colored another way</summary>
      {open && <Choices block={block} shown={shown} sight={sight} />}
    </details>
  );
}

function Choices({ block, shown, sight }: ColoringsProps) {
  const keep = useKeepStore();
  const choices = useMemo(() => coloringChoices(shown.brief, block), [shown.brief, block]);
  const answered = useAnswered(choices);
  if (choices.length === 0)
    return <p className="small">There is no other fabric to color it with.</p>;
  return (
    <ul className="blocks">
      {choices.map((c, i) => (
        <li key={c.label}>
          {answered[i] && <Small block={block} answered={answered[i]} sight={sight} />}
          <button
            type="button"
            className="touch tall"
            onClick={() => {
              keep.act.edit(`"${c.label}"`, c.change);
              sayAloud(`${c.label}, taken`);
            }}
          >
            <Lit text={c.label} word={c.word} />
          </button>
        </li>
      ))}
    </ul>
  );
}

function Small({ block, answered, sight }: { block: string; answered: Answered; sight: Sight }) {
  const brief = useSeen(answered.brief, sight);
  const seen = useMemo(
    (): Answered => ({ brief, answer: { ...answered.answer } }),
    [answered, brief],
  );
  const geometry = seen.answer.blocks.find((b) => b.id === block);
  return geometry ? <BlockLook block={geometry} shown={seen} most={18} /> : null;
}

/** Each coloring answered in the worker; none is waited for. */
function useAnswered(choices: readonly ColoringChoice[]): readonly (Answered | undefined)[] {
  const [got, setGot] = useState<readonly (Answered | undefined)[]>([]);
  useEffect(() => {
    let live = true;
    setGot([]);
    choices.forEach(({ brief }, i) => {
      asking.forChoice(LANE + i, brief).then(
        (answer) =>
          live &&
          setGot((old) => {
            const next = [...old];
            next[i] = { brief, answer };
            return next;
          }),
        () => {},
      );
    });
    return () => {
      live = false;
    };
  }, [choices]);
  return got;
}
