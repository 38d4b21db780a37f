import { lazy, Suspense, useId, useMemo, useState } from "react";
import type { AnswerBlock, BlockSight } from "../../../../core/answer/index.ts";
import { SIGHTS } from "../../../../core/answer/look/seen.ts";
import { EYE_WORDS } from "../../../../core/answer/look/table.ts";
import type { Sight } from "../../../../core/fabric/index.ts";
import type { Answered } from "../../answers.ts";
import type { BodyProps } from "../body.ts";
import { BlockLook } from "./BlockLook.tsx";
import { Colorings } from "./Colorings.tsx";
import { OnPrints } from "./OnPrint.tsx";
import { Rounds } from "./Rounds.tsx";
import { useSeen } from "./useSeen.ts";
import "./look.css";

const Photo = lazy(() => import("../../photo/Photo.tsx"));

/**
 * Every kind of block as it will be seen, by this eye or another; under each, which neighbors will
 * not part, how its wedges lie on their strip, and how else it might be colored.
 */
export default function Look({ shown }: BodyProps) {
  const [sight, setSight] = useState<Sight>("full");
  const brief = useSeen(shown.brief, sight);
  const seen = useMemo((): Answered => ({ brief, answer: { ...shown.answer } }), [shown, brief]);
  const { blocks, sights } = shown.answer;
  return (
    <>
      <Eyes sight={sight} onSight={setSight} />
      <ul className="blocks">
        {blocks.map((b) => (
          <li key={b.id}>
            <BlockLook block={b} shown={seen} label={`${b.name}, ${SIGHTS[sight]}`} />
            <p>
              <b>{b.name}</b>
            </p>
            <Gaps block={b} sight={sights.find((s) => s.block === b.id)} shown={shown} />
          </li>
        ))}
      </ul>
      {sights.map((s) => (
        <Rounds key={s.block} sight={s} seen={seen} />
      ))}
      {sights.map((s) => (
        <OnPrints key={s.block} sight={s} seen={seen} shown={shown} />
      ))}
      {sights.map((s) => (
        <Colorings key={s.block} block={s.block} shown={shown} sight={sight} />
      ))}
      <FromPhoto shown={shown} />
    </>
  );
}

function FromPhoto({ shown }: { shown: Answered }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="colorings" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary className="touch tall">A fabric from its picture</summary>
      {open && (
        <Suspense fallback={null}>
          <Photo shown={shown} />
        </Suspense>
      )}
    </details>
  );
}

/** Which eye looks: one of five, by arrows or touch. */
function Eyes({ sight, onSight }: { sight: Sight; onSight: (s: Sight) => void }) {
  const name = useId();
  return (
    <fieldset className="eyes">
      <legend className="soft small">Seen</legend>
      {(Object.keys(SIGHTS) as Sight[]).map((s) => (
        <label key={s} className="touch tall">
          <input type="radio" name={name} checked={s === sight} onChange={() => onSight(s)} />
          {SIGHTS[s]}
        </label>
      ))}
    </fieldset>
  );
}

interface GapsProps {
  readonly block: AnswerBlock;
  readonly sight: BlockSight | undefined;
  readonly shown: Answered;
}

/** Two fabrics side by side that will run together, said; nothing where all part. */
function Gaps({ sight, shown }: GapsProps) {
  const name = (id: string): string => shown.brief.fabrics.find((f) => f.id === id)?.name ?? id;
  const weak = sight?.gaps.filter((g) => g.eye !== "parts") ?? [];
  return weak.map((g) => (
    <p key={`${g.a} ${g.b}`} className="small">
      {name(g.a)} and {name(g.b)} side by side: parted{" "}
      {g.eye === "will-not" ? "neither by value nor by color" : EYE_WORDS[g.eye]}
    </p>
  ));
}
