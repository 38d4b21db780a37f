import { useCallback, useMemo } from "react";
import { ownLetters } from "../../core/answer/words/own-letters.ts";
import type { PictureKind } from "../../core/answer/words/word.ts";
import { seamOf } from "../../core/brief/lengths.ts";
import { knownLength, toDegrees } from "../../core/measure/index.ts";
import { blockPicture } from "../../core/picture/block.ts";
import { coverPicture } from "../../core/picture/cover.ts";
import { letteredPicture } from "../../core/picture/lettered.ts";
import type { Picture } from "../../core/picture/marks.ts";
import { wedgePointPicture } from "../../core/picture/point.ts";
import { quiltPicture } from "../../core/picture/quilt.ts";
import { rulerOf } from "../../core/recipe/ruler.ts";
import type { Answered } from "./answers.ts";
import { CanvasPicture } from "./CanvasPicture.tsx";
import { PictureView } from "./PictureView.tsx";
import { patchesIn, placedIn, reachOf } from "./quilt/spots.ts";
import { looksFor, useSwatches } from "./useSwatches.ts";

interface ChoicePictureProps {
  readonly kind: PictureKind;
  readonly word: string;
  readonly answered: Answered | null;
  readonly leftHanded: boolean;
}

/** The small true picture of a choice; blank while its answer is worked out. */
export function ChoicePicture({ kind, word, answered, leftHanded }: ChoicePictureProps) {
  if (kind === "none") return null;
  return (
    <span className={`choice-picture of-${kind}`} aria-hidden="true">
      {answered && <Shown kind={kind} word={word} answered={answered} leftHanded={leftHanded} />}
    </span>
  );
}

function Shown(p: ChoicePictureProps & { readonly answered: Answered }) {
  const { kind, answered } = p;
  if (kind === "quilt") return <SmallQuilt answered={answered} />;
  if (kind === "point") return <Point answered={answered} leftHanded={p.leftHanded} />;
  if (kind === "cover") return <Cover {...p} />;
  if (kind === "lettered") return <Lettered answered={answered} word={p.word} />;
  return <Block answered={answered} word={p.word} />;
}

function SmallQuilt({ answered }: { answered: Answered }) {
  const swatches = useSwatches(answered.brief);
  const picture = useMemo(
    () =>
      answered.answer.quilt
        ? quiltPicture(answered.answer, placedIn(answered), {
            looks: looksFor(answered),
            patches: patchesIn(answered),
          })
        : null,
    [answered],
  );
  if (!picture) return null;
  return (
    <CanvasPicture
      picture={picture}
      swatches={swatches}
      reach={reachOf(answered.answer)}
      high={150}
    />
  );
}

/** The block a word speaks of, by the ids in its own; else the first. */
const blockFor = ({ answer }: Answered, word: string) => {
  const ids = (word.split("/")[1] ?? "").split("+");
  return answer.blocks.find((b) => ids.includes(b.id)) ?? answer.blocks[0];
};

function Block({ answered, word }: { answered: Answered; word: string }) {
  const swatches = useSwatches(answered.brief);
  const block = blockFor(answered, word);
  const { unit } = answered.answer;
  const make = useCallback(
    (): Picture =>
      blockPicture(block, { unit, looks: looksFor(answered)[block.id] ?? [], title: block.name }),
    [block, unit, answered],
  );
  if (!block) return null;
  // Blocks of the choices share one scale, so that their sizes are seen to differ.
  return <PictureView make={make} swatches={swatches} most={unit === "in" ? 18 : 18 / 25.4} />;
}

/** A block of one's own with the letters its seams are said in. */
function Lettered({ answered, word }: { answered: Answered; word: string }) {
  const { brief, answer } = answered;
  const swatches = useSwatches(brief);
  const block = blockFor(answered, word);
  const make = useCallback(
    (small: number): Picture =>
      letteredPicture(block, ownLetters(brief, block.id), {
        unit: answer.unit,
        looks: looksFor(answered)[block.id] ?? [],
        small,
      }),
    [block, brief, answer, answered],
  );
  if (!block) return null;
  return (
    <PictureView
      make={make}
      swatches={swatches}
      small={15}
      most={answer.unit === "in" ? 30 : 30 / 25.4}
    />
  );
}

function Point({ answered, leftHanded }: { answered: Answered; leftHanded: boolean }) {
  const { brief, answer } = answered;
  const swatches = useSwatches(brief);
  const wedges = brief.blocks.find((b) => b.kind === "wedges");
  const make = useCallback(
    (small: number): Picture => {
      const n = wedges?.n ?? 8;
      const ruler = rulerOf(brief.ruler, n, brief.unit);
      return wedgePointPicture({
        unit: brief.unit,
        angle: toDegrees(ruler.angle),
        strip: knownLength(wedges?.strip ?? "4", brief.unit),
        seam: seamOf(brief),
        missing: ruler.missing,
        small,
        leftHanded,
      });
    },
    [brief, wedges, leftHanded],
  );
  if (!wedges) return null;
  return (
    <PictureView make={make} swatches={swatches} most={answer.unit === "in" ? 34 : 34 / 25.4} />
  );
}

/** The piece a word cuts, else the one with least to spare. */
function Cover({ answered, word, leftHanded }: ChoicePictureProps & { answered: Answered }) {
  const { brief, answer } = answered;
  const swatches = useSwatches(brief);
  const [, block, role] = word.split("/");
  const found = useMemo(() => {
    const pieces = answer.pieces.filter(
      (p) =>
        p.roles.some((r) => r === role || r.startsWith(`${role}-`)) &&
        p.patchIds.some((id) => id.startsWith(`${block}/`)),
    );
    const recipes = answer.recipes.filter((r) => pieces.some((p) => p.id === r.pieceId));
    const all =
      recipes.length > 0 ? recipes : answer.recipes.filter((r) => r.spareBySide.length > 0);
    return [...all].sort((a, b) => a.w - b.w)[0] ?? answer.recipes[0];
  }, [answer, block, role]);
  const piece = answer.pieces.find((p) => p.id === found?.pieceId);
  const make = useCallback(
    (small: number): Picture =>
      coverPicture(found, {
        unit: brief.unit,
        seam: seamOf(brief),
        fabricId: piece?.fabricId ?? "",
        ...(piece ? { name: `${piece.name} ${piece.letter}` } : {}),
        small,
        tapes: false,
        leftHanded: leftHanded && piece?.hand === "none",
      }),
    [found, piece, brief, leftHanded],
  );
  if (!found) return null;
  return (
    <PictureView make={make} swatches={swatches} most={answer.unit === "in" ? 30 : 30 / 25.4} />
  );
}
