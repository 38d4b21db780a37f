import { useMemo, useState } from "react";
import type { WedgeRound } from "../../../../core/answer/index.ts";
import type { AnswerBlock } from "../../../../core/answer/types/answer.ts";
import type { Brief } from "../../../../core/brief/index.ts";
import {
  type AlikePlace,
  type PhotoLook,
  sewnWedge,
  type WedgeCut,
} from "../../../../core/fabric/index.ts";
import type { Answered } from "../../answers.ts";
import { BlockLook } from "./BlockLook.tsx";
import { Lit } from "./Lit.tsx";
import { type PlaceText, placeWords } from "./place.ts";
import { useAlike } from "./useAlike.ts";

interface DifferentProps {
  readonly name: string;
  readonly block: AnswerBlock;
  readonly round: WedgeRound;
  readonly wedge: WedgeCut;
  readonly look: PhotoLook;
  readonly data: string;
  readonly directional: boolean;
  readonly seen: Answered;
  /** A place as it stands on the maker's marks. */
  readonly textOf: (at: AlikePlace) => PlaceText;
  readonly placed: (at: PlaceText) => Brief;
  readonly onTake: (at: PlaceText) => void;
}

/** Places tried across one repeat and along it. */
const GRID = 22;

/** Up to four of the most different octagons of a print, each a sentence with one lit part. */
export function Different(p: DifferentProps) {
  const { state, search, stop } = useAlike();
  const [asked, setAsked] = useState(false);
  const ask = (): void => {
    setAsked(true);
    search({
      data: p.data,
      look: p.look,
      wedge: sewnWedge(p.wedge.a, p.wedge.seam, 360 / (p.block.radial?.n ?? 8)),
      turns: p.directional ? [0] : [0, 180],
      grid: GRID,
    });
  };
  return (
    <details className="colorings" onToggle={(e) => e.currentTarget.open && !asked && ask()}>
      <summary className="touch tall">The most different rounds this print holds</summary>
      {state.busy !== null && (
        <p>
          <progress value={state.busy} aria-label="Trying places of the print" />{" "}
          <button type="button" className="touch tall" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {state.busy === null && !state.octagons && asked && (
        <p>
          {state.failed && `The print could not be searched: ${state.failed}. `}
          <button type="button" className="touch tall" onClick={ask}>
            Search again
          </button>
        </p>
      )}
      {state.octagons && (
        <ul className="blocks">
          {state.octagons.map(({ place }) => (
            <li key={`${place.x} ${place.y} ${place.turn}`}>
              <One {...p} place={place} />
            </li>
          ))}
        </ul>
      )}
    </details>
  );
}

function One({ place, ...p }: DifferentProps & { readonly place: AlikePlace }) {
  const { textOf, placed, seen } = p;
  const at = textOf(place);
  const shown = useMemo(
    (): Answered => ({ brief: placed(textOf(place)), answer: { ...seen.answer } }),
    [place, textOf, placed, seen],
  );
  const where = placeWords(seen.brief, at);
  const text = `${p.name}: all from ${where}`;
  return (
    <>
      <BlockLook block={p.block} shown={shown} most={18} label={text} />
      <button type="button" className="touch tall" onClick={() => p.onTake(at)}>
        <Lit text={text} word={where} />
      </button>
    </>
  );
}
