import { useMemo, useState } from "react";
import { buying } from "../../core/answer/say/buying.ts";
import { usesOf } from "../../core/answer/say/phrases.ts";
import { fabricSentenceOf } from "../../core/answer/words/sentence.ts";
import type { KeepStore } from "../keep/index.ts";
import type { Answered } from "./answers.ts";
import { useEditing, useLitWords } from "./editing.tsx";
import { later } from "./later.tsx";
import { Sentence } from "./Sentence.tsx";
import { Swatch } from "./Swatch.tsx";
import { Said } from "./said.tsx";
import { useSwatches } from "./useSwatches.ts";
import { view } from "./view.ts";

const FabricEditor = later(() => import("./fabric/FabricEditor.tsx").then((m) => m.FabricEditor));

const MoreFabric = later(() => import("./fabric/FabricEditor.tsx").then((m) => m.MoreFabric));

interface FabricsProps {
  readonly now: Answered;
  readonly shown: Answered;
  readonly keep: KeepStore;
}

/** The fabrics with their letters and what is bought of each; then the sentence of what is what. */
export function Fabrics({ now, shown, keep }: FabricsProps) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const parts = useMemo(() => fabricSentenceOf(now.brief), [now.brief]);
  const { opening, onStep } = useEditing(now, keep);
  const lit = useLitWords(shown);
  const [open, setOpen] = useState<string | null>(null);
  const chosen = now.brief.fabrics.find((f) => f.id === open);
  return (
    <>
      <ul className="fabrics" data-part="fabrics">
        {brief.fabrics.map((f) => {
          const buy = buying(answer, f.id).text;
          return (
            <li
              key={f.id}
              onPointerEnter={(e) => e.pointerType === "mouse" && view.setState({ lines: [f.id] })}
              onPointerLeave={() => view.setState({ lines: [] })}
            >
              <Swatch swatch={swatches[f.id]} swatches={swatches} />
              <p>
                <b>{swatches[f.id]?.letter}</b>{" "}
                <button
                  type="button"
                  className="touch tall"
                  aria-expanded={open === f.id}
                  onClick={() => setOpen(open === f.id ? null : f.id)}
                >
                  {f.name}
                </button>
                {buy !== "none" && (
                  <>
                    , <Said text={buy} />
                  </>
                )}
              </p>
              <p className="soft small uses">{usesOf(brief, answer, f.id)}</p>
            </li>
          );
        })}
        <li className="more">
          <p>
            <MoreFabric keep={keep} />
          </p>
        </li>
      </ul>
      {chosen && (
        <FabricEditor
          key={chosen.id}
          fabric={chosen}
          now={now}
          keep={keep}
          onClose={() => setOpen(null)}
        />
      )}
      <Sentence
        parts={parts}
        brief={now.brief}
        onStep={onStep}
        lit={lit}
        label="What everything is made of"
        className="second"
        opening={opening}
      />
    </>
  );
}
