import { useMemo } from "react";
import { type Consequence, consequences } from "../../core/answer/say/consequences.ts";
import { spoken } from "../../core/answer/say/spoken.ts";
import type { Choice } from "../../core/answer/words/word.ts";
import type { Answered } from "./answers.ts";
import { ChoicePicture } from "./ChoicePicture.tsx";
import { Said } from "./said.tsx";
import { useView } from "./view.ts";

export interface ColumnProps {
  readonly choice: Choice;
  readonly word: string;
  readonly typing: boolean;
  readonly chosen: boolean;
  readonly answered: Answered | null;
  readonly now: Answered;
  readonly others: readonly (Answered | null)[];
  readonly onChoose: () => void;
  readonly onTake: () => void;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly problem: string | null;
  readonly fieldLabel: string;
  readonly problemId: string;
}

/** One choice: its picture, how it reads, a field where a number may be typed, and what follows. */
export function ChoiceColumn(p: ColumnProps) {
  const { choice, chosen, answered, now } = p;
  const rows = useMemo(() => rowsToShow(now, p.others), [now, p.others]);
  const mine = useMemo(
    () => (answered ? consequences(now.answer, answered.answer) : null),
    [now, answered],
  );
  const leftHanded = useView((v) => v.leftHanded);
  return (
    <div className={`choice ${chosen ? "chosen" : ""}`}>
      {/* biome-ignore lint/a11y/useSemanticElements: a radio with a picture in it */}
      <div
        role="radio"
        aria-checked={chosen}
        aria-label={
          p.typing ? p.fieldLabel : spoken(`${choice.label}${choice.now ? ", as now" : ""}`)
        }
        tabIndex={chosen ? 0 : -1}
        className="choose"
        onClick={() => (chosen && !p.typing ? p.onTake() : p.onChoose())}
        onKeyDown={() => {}}
      >
        <ChoicePicture
          kind={choice.pictureKind}
          word={p.word}
          answered={answered}
          leftHanded={leftHanded}
        />
        <span className="label">
          {choice.now && <span className="now small">now</span>}
          <span className="reads">
            <Said text={choice.label} />
          </span>
        </span>
      </div>
      {p.typing && (
        <p className="type">
          <input
            type="text"
            className={p.text.length > 12 ? "long" : ""}
            inputMode="text"
            autoComplete="off"
            spellCheck={false}
            value={p.text}
            aria-label={p.fieldLabel}
            aria-invalid={p.problem !== null}
            aria-describedby={p.problem ? p.problemId : undefined}
            onChange={(e) => p.onText(e.target.value)}
            onFocus={(e) => {
              e.target.select();
              if (!chosen) p.onText(p.text);
            }}
          />
        </p>
      )}
      {p.problem ? (
        <p id={p.problemId} role="alert" className="small problem">
          {p.problem}
        </p>
      ) : (
        <Rows rows={rows} mine={mine} answered={answered} />
      )}
    </div>
  );
}

/** Rows stand side by side over all choices: those that any of them changes, and doubts. */
function rowsToShow(now: Answered, others: readonly (Answered | null)[]): readonly string[] {
  const ids = new Map<string, boolean>();
  for (const o of others) {
    if (!o) continue;
    for (const row of consequences(now.answer, o.answer))
      ids.set(row.id, (ids.get(row.id) ?? false) || row.changed || row.doubt);
  }
  return [...ids]
    .filter(([id, show]) => show || id === "block")
    .map(([id]) => id)
    .slice(0, 7);
}

function Rows({
  rows,
  mine,
  answered,
}: {
  rows: readonly string[];
  mine: readonly Consequence[] | null;
  answered: Answered | null;
}) {
  if (!mine || !answered) return <p className="small soft working">working it out</p>;
  const name = (row: Consequence): string =>
    row.id.startsWith("buy/")
      ? (answered.brief.fabrics.find((f) => f.id === row.label)?.name ?? row.label)
      : row.label;
  return (
    <ul className="follows">
      {rows.map((id) => {
        const row = mine.find((r) => r.id === id);
        if (!row) return null;
        return (
          <li key={id} className={row.changed ? "changed" : ""}>
            <span className="soft">
              <Said text={name(row)} />
            </span>{" "}
            <span className={row.doubt ? "doubt" : ""}>
              <Said text={row.text} />
              {row.doubt && <span className="said">, not proved</span>}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
