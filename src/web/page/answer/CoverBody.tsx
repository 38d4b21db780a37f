import { useCallback, useMemo, useState } from "react";
import { cutRows } from "../../../core/answer/say/tables.ts";
import { seamOf } from "../../../core/brief/lengths.ts";
import { lengthToInch, type Unit } from "../../../core/measure/index.ts";
import { coverPicture } from "../../../core/picture/cover.ts";
import { fourLives } from "../../../core/picture/lives.ts";
import type { Picture } from "../../../core/picture/marks.ts";
import { PictureView } from "../PictureView.tsx";
import { Doubtful, Said } from "../said.tsx";
import { looksFor, useSwatches } from "../useSwatches.ts";
import { useMedia } from "../useTheme.ts";
import { sayAloud, useView, view } from "../view.ts";
import type { BodyProps } from "./body.ts";
import { Lights } from "./Lights.tsx";
import { RulerGuide } from "./RulerGuide.tsx";
import { Scroll } from "./Scroll.tsx";
import { WaysOut } from "./WaysOut.tsx";

/** One piece in four lives, and what the proof says of every piece. */
export function CoverBody({ shown, question }: BodyProps) {
  const { brief, answer } = shown;
  const spot = useView((v) => v.spot);
  const [picked, pick] = useState<string | null>(null);
  const rows = useMemo(() => cutRows(brief, answer), [brief, answer]);
  const touched = spot && answer.blocks.find((b) => b.id === spot.block)?.pieceOf[spot.patch];
  const wanted = picked ?? touched;
  const row = rows.find((r) => r.id === wanted) ?? rows[0];
  if (!row) return null;
  const recipe = answer.recipes.find((r) => r.pieceId === row.id);
  const alone = !recipe || recipe.spareBySide.length === 0;
  return (
    <>
      <Lives shown={shown} pieceId={row.id} />
      <div className="proved">
        {!alone && <Proof shown={shown} pieceId={row.id} />}
        {question.doubt && <WaysOut shown={shown} />}
      </div>
      <Scroll what="Pieces and their spare, as a table">
        <table className="figures stacked">
          <caption className="said">Pieces, how they are cut, and what covers</caption>
          <thead>
            <tr>
              <th scope="col">piece</th>
              <th scope="col">fabric</th>
              <th scope="col" className="number">
                count
              </th>
              <th scope="col">cut</th>
              <th scope="col">cover</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((r) => (
              <Lights key={r.id} ids={[r.id]} className={r.id === row.id ? "picked" : ""}>
                <th scope="row">
                  <button
                    type="button"
                    className="touch tall"
                    aria-pressed={r.id === row.id}
                    onClick={() => {
                      pick(r.id);
                      view.setState({ spot: null });
                      sayAloud(`${r.name} ${r.letter} in four lives`);
                    }}
                  >
                    <b>{r.letter}</b> {r.name}
                  </button>
                </th>
                <td>{r.fabric}</td>
                <td className="number count">{r.count}</td>
                <td>
                  <Said text={r.cut} />
                </td>
                <td>
                  <Doubtful text={r.cover.text} doubt={r.cover.doubt} />
                </td>
              </Lights>
            ))}
          </tbody>
        </table>
      </Scroll>
      <RulerGuide shown={shown} />
    </>
  );
}

interface PieceProps {
  readonly shown: BodyProps["shown"];
  readonly pieceId: string;
}

/** CSS pixels to the inch that the browser calls life size. */
const LIFE = 96;
const perUnit = (pixels: number, unit: Unit): number => lengthToInch(pixels, unit);

/** The four frames, one scale, the same point lit in all. */
function Lives({ shown, pieceId }: PieceProps) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const narrow = useMedia("(max-width: 719px)");
  const piece = answer.pieces.find((p) => p.id === pieceId);
  const recipe = answer.recipes.find((r) => r.pieceId === pieceId);
  const block = answer.blocks.find((b) => Object.values(b.pieceOf).includes(pieceId));
  const lives = useCallback(
    (small: number): Picture =>
      fourLives({
        block: block!,
        piece: piece!,
        recipe: recipe!,
        pieces: answer.pieces,
        looks: looksFor(shown)[block!.id] ?? [],
        unit: answer.unit,
        seam: seamOf(brief),
        small,
      }),
    [shown, answer, brief, block, piece, recipe],
  );
  if (!piece || !recipe || !block) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: scrolls sideways where it is narrow, by keys too
    <div
      className="scroll sideways"
      role="group"
      aria-label={`${piece.name} ${piece.letter} in four lives`}
      tabIndex={narrow ? 0 : undefined}
    >
      <PictureView
        make={lives}
        swatches={swatches}
        small={narrow ? 11 : 17}
        most={perUnit(LIFE / 2, answer.unit)}
      />
    </div>
  );
}

/** The exact piece in what is really cut, with what is to spare or missing. */
function Proof({ shown, pieceId }: PieceProps) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const leftHanded = useView((v) => v.leftHanded);
  const piece = answer.pieces.find((p) => p.id === pieceId);
  const recipe = answer.recipes.find((r) => r.pieceId === pieceId);
  const cover = useCallback(
    (small: number): Picture =>
      coverPicture(recipe!, {
        unit: answer.unit,
        seam: seamOf(brief),
        fabricId: piece!.fabricId,
        name: `${piece!.name} ${piece!.letter}`,
        small,
        // Turned over, a left would be a right.
        leftHanded: leftHanded && piece!.hand === "none",
      }),
    [piece, recipe, answer, brief, leftHanded],
  );
  if (!piece || !recipe) return null;
  return (
    <figure className="proof">
      <PictureView make={cover} swatches={swatches} most={perUnit(LIFE, answer.unit)} />
      <figcaption className="soft small">
        {piece.name} {piece.letter}: hatched is cut away or spare, dotted is not covered
      </figcaption>
    </figure>
  );
}
