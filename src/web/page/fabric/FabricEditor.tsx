import { useMemo } from "react";
import { allWords } from "../../../core/answer/words/all-choices.ts";
import {
  addFabric,
  colorFabric,
  isNamed,
  removeFabric,
  setBands,
  setStrips,
} from "../../../core/answer/words/fabric-kinds.ts";
import { oneFabricSentence } from "../../../core/answer/words/one-fabric.ts";
import type { Fabric } from "../../../core/brief/index.ts";
import type { KeepStore } from "../../keep/index.ts";
import type { Answered } from "../answers.ts";
import { useEditing } from "../editing.tsx";
import { Sentence } from "../Sentence.tsx";
import { BandRows, StripRows } from "./Rows.tsx";
import "./fabric.css";

interface FabricEditorProps {
  readonly fabric: Fabric;
  readonly now: Answered;
  readonly keep: KeepStore;
  readonly onClose: () => void;
}

/** One fabric, all of it: its sentence, its color, its bands or strips. */
export function FabricEditor({ fabric: f, now, keep, onClose }: FabricEditorProps) {
  const { brief } = now;
  const parts = useMemo(() => oneFabricSentence(brief, f.id), [brief, f.id]);
  const { opening, onStep } = useEditing(now, keep, allWords);
  const { edit } = keep.act;
  return (
    <section className="fabric-editor" aria-label={f.name}>
      <Sentence
        parts={parts}
        brief={brief}
        onStep={onStep}
        lit={[]}
        label={`What ${f.name} is`}
        className="detail"
        opening={opening}
        words={allWords.wordsOf(brief)}
      />
      {f.kind !== "strip-set" && (
        <p>
          <label className="touch tall">
            <input
              type="color"
              value={f.color}
              onChange={(e) => edit(`the color of "${f.name}"`, colorFabric(f.id, e.target.value))}
            />{" "}
            {f.kind === "plain" ? "Its color" : "The color that stands for it"}
          </label>
        </p>
      )}
      {f.kind === "stripe" && (
        <BandRows
          unit={brief.unit}
          bands={f.bands}
          onBands={(bands) => edit(`the bands of "${f.name}"`, setBands(f.id, bands))}
        />
      )}
      {f.kind === "strip-set" && (
        <StripRows
          unit={brief.unit}
          strips={f.strips}
          fabrics={brief.fabrics.filter((x) => x.id !== f.id && x.kind !== "strip-set")}
          onStrips={(strips) => edit(`the strips of "${f.name}"`, setStrips(f.id, strips))}
        />
      )}
      <p className="acts">
        <button type="button" className="touch tall" onClick={onClose}>
          Shut {f.name}
        </button>{" "}
        {!isNamed(brief, f.id) && brief.fabrics.length > 1 && (
          <button
            type="button"
            className="touch tall"
            onClick={() => {
              edit(`"${f.name}" taken out`, removeFabric(f.id));
              onClose();
            }}
          >
            Take {f.name} out: nothing is made of it
          </button>
        )}
      </p>
    </section>
  );
}

/** A fabric more, plain, to be named and colored. */
export function MoreFabric({ keep }: { readonly keep: KeepStore }) {
  return (
    <button
      type="button"
      className="touch tall"
      onClick={() => keep.act.edit("a fabric more", addFabric)}
    >
      A fabric more
    </button>
  );
}
