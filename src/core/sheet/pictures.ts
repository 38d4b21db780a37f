import type { Answer } from "../answer/index.ts";
import { fabricLetters } from "../answer/index.ts";
import { type Brief, seamOf } from "../brief/index.ts";
import type { PatchLook } from "../fabric/index.ts";
import {
  blockPicture,
  coverPicture,
  layoutPicture,
  type Picture,
  quiltPicture,
  type SvgOptions,
  swatches,
  toSvg,
} from "../picture/index.ts";
import { placedPatches, placements } from "../quilt/index.ts";

type Looks = Readonly<Record<string, readonly PatchLook[]>>;

/** Pictures of one answer as SVG files: the quilt, each block, each piece's proof, each layout. */
export function pictureFiles(
  brief: Brief,
  answer: Answer,
  looks: Looks,
  options: Pick<SvgOptions, "realUnits"> = {},
): [string, string][] {
  const fabrics = swatches(brief, fabricLetters(brief));
  return picturesOf(brief, answer, looks).map(([name, picture]) => [
    `${name}.svg`,
    toSvg(picture, { swatches: fabrics, ...options }),
  ]);
}

function picturesOf(brief: Brief, answer: Answer, looks: Looks): [string, Picture][] {
  const { unit } = brief;
  const seam = seamOf(brief);
  const { pieces, recipes, demands } = answer;
  const letter = new Map(pieces.map((p) => [p.id, p]));
  const quilt: [string, Picture][] = answer.quilt
    ? [
        [
          "quilt",
          quiltPicture(answer, placements(brief, answer.quilt), {
            looks,
            patches: [...placedPatches(brief, answer.quilt)],
          }),
        ],
      ]
    : [];
  return [
    ...quilt,
    ...answer.blocks.map((b): [string, Picture] => [
      `block-${b.id}`,
      blockPicture(b, {
        unit,
        pieces,
        looks: looks[b.id],
        letters: (patch) => letter.get(b.pieceOf[patch.id])?.letter,
      }),
    ]),
    ...recipes.map((r): [string, Picture] => {
      const piece = letter.get(r.pieceId)!;
      return [
        `cover-${piece.letter}`,
        coverPicture(r, {
          unit,
          seam,
          fabricId: piece.fabricId,
          name: `${piece.name} ${piece.letter}`,
        }),
      ];
    }),
    ...answer.layouts.map((l): [string, Picture] => [
      `layout-${l.fabricId}`,
      layoutPicture(l, {
        unit,
        demands,
        pieces,
        recipes,
        yardage: answer.yardages.find((y) => y.fabricId === l.fabricId && y.width === l.width),
        folds: brief.fabrics.find((f) => f.id === l.fabricId)?.folds,
      }),
    ]),
  ];
}
