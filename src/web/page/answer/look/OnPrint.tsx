import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { BlockSight, WedgeRound } from "../../../../core/answer/index.ts";
import { fabricLooks, looksOfBlock, wedgeCutOf } from "../../../../core/answer/look/looks.ts";
import { spoken } from "../../../../core/answer/say/spoken.ts";
import type { AnswerBlock } from "../../../../core/answer/types/answer.ts";
import { sayPrint } from "../../../../core/answer/words/place-words.ts";
import { middleOf, placedAt } from "../../../../core/answer/words/print.ts";
import { changed, lengthTextProblem, stepOfBrief } from "../../../../core/answer/words/word.ts";
import type { Brief, Fabric } from "../../../../core/brief/index.ts";
import { seamOf } from "../../../../core/brief/lengths.ts";
import type { AlikePlace, PhotoLook } from "../../../../core/fabric/index.ts";
import { type PlacePicture as Placed, placePicture } from "../../../../core/picture/place.ts";
import type { Answered } from "../../answers.ts";
import { useKeepStore } from "../../KeepContext.ts";
import { Said } from "../../said.tsx";
import { useSwatches } from "../../useSwatches.ts";
import { useMedia } from "../../useTheme.ts";
import { sayAloud } from "../../view.ts";
import { Different } from "./Different.tsx";
import { PlaceFields } from "./PlaceFields.tsx";
import { PlacePicture } from "./PlacePicture.tsx";
import { onMarks, type PlaceText, placeOfText, placeWords } from "./place.ts";

type Print = Extract<Fabric, { kind: "print" }>;

interface OnPrintProps {
  readonly sight: BlockSight;
  /** The design as it is looked at. */
  readonly seen: Answered;
  readonly shown: Answered;
}

/** For each print with a picture that wedges are cut from: where on it they lie, moved and seen at once. */
export function OnPrints({ sight, seen, shown }: OnPrintProps) {
  const block = shown.answer.blocks.find((b) => b.id === sight.block);
  if (!block?.radial) return null;
  return sight.rounds.map((round) => {
    const fabric = shown.brief.fabrics.find((f) => f.id === round.fabricId);
    if (fabric?.kind !== "print" || !fabric.photo) return null;
    return (
      <OnPrint
        key={round.fabricId}
        {...{ block, round, seen, shown, fabric }}
        photo={fabric.photo.data}
        rounds={sight.count}
      />
    );
  });
}

interface OneProps {
  readonly block: AnswerBlock;
  readonly round: WedgeRound;
  readonly rounds: number;
  readonly fabric: Print;
  readonly photo: string;
  readonly seen: Answered;
  readonly shown: Answered;
}

/** How long a place rests before the rest of the page follows it. */
const FOLLOW_MS = 250;

function OnPrint({ block, round, rounds, fabric, photo, seen, shown }: OneProps) {
  const keep = useKeepStore();
  const { brief } = shown;
  const index = brief.blocks.findIndex((b) => b.id === block.id);
  const key = roleOf(brief, index, fabric.id);
  const said = useMemo(() => saidAt(brief, index, key, fabric), [brief, index, key, fabric]);
  const [draft, setDraft] = useState<PlaceText | null>(null);
  const at = draft ?? said;
  const wrong = [at.x, at.y].map((t) => lengthTextProblem(t, brief.unit, true)?.problem);
  const bad = wrong.find((x) => x !== undefined);
  // What is drawn is the last place that could be read.
  const [good, setGood] = useState(at);
  if (!bad && good !== at) setGood(at);
  const change = useCallback(
    (place: PlaceText) => placedAt(brief, index, key, place) ?? (() => {}),
    [brief, index, key],
  );
  useFollowing(draft, bad === undefined, change);
  const look = useMemo(() => fabricLooks(seen.brief)[fabric.id], [seen, fabric.id]);
  const textOf = useCallback(
    (p: AlikePlace): PlaceText => onMarks(brief, look as PhotoLook, p),
    [brief, look],
  );
  const placed = useCallback(
    (place: PlaceText): Brief => changed(seen.brief, change(place)),
    [seen, change],
  );
  if (look?.kind !== "photo") return null;
  const stepSize = stepOfBrief(brief).size.valueOf();
  const move = (x: number, y: number): void =>
    setDraft(onMarks(brief, look, { x, y, turn: at.turn }));
  const step = (right: number, up: number, far: boolean): void => {
    const by = far ? (brief.unit === "in" ? 1 : 25) : stepSize;
    const now = placeOfText(brief, good);
    move(now.x + right * by, now.y + up * by);
  };
  const take = (place: PlaceText): void => {
    keep.act.edit(`"${fabric.name}" cut from one place`, change(place));
    setDraft(null);
    sayAloud(`${fabric.name}, ${spoken(placeWords(brief, place))}, taken`);
  };
  const wedge = wedgeCutOf(brief, block);
  const line = sayPrint(brief, round, rounds);
  return (
    <section className="round">
      <h3>
        {fabric.name} in {block.name}: where each wedge lies
      </h3>
      <Picture
        {...{ block, fabric, seen, look }}
        round={round}
        brief={placed(good)}
        at={good}
        onMove={move}
        onStep={step}
      />
      <PlaceFields
        unit={brief.unit}
        at={at}
        wrong={bad}
        changed={draft !== null}
        onChange={setDraft}
        onTake={() => take(at)}
        onLeave={() => setDraft(null)}
      />
      {line && (
        <p>
          <Said text={`${line.charAt(0).toUpperCase()}${line.slice(1)}.`} />
        </p>
      )}
      {wedge && (
        <Different
          name={`${fabric.name} in ${block.name}`}
          {...{ block, round, wedge, look, seen }}
          data={photo}
          directional={fabric.directional}
          textOf={textOf}
          placed={placed}
          onTake={take}
        />
      )}
    </section>
  );
}

/** The role of the block whose wedges are of this fabric. */
function roleOf(b: Brief, index: number, fabric: string): string {
  const roles = Object.entries(b.blocks[index]?.fabric ?? {});
  return roles.find(([k, id]) => k.startsWith("wedge") && id === fabric)?.[0] ?? "wedge";
}

/** The place the brief says; the middle of the picture where it says none. */
function saidAt(b: Brief, index: number, key: string, fabric: Print): PlaceText {
  const place = b.blocks[index]?.place;
  const said = place?.[key]?.at ?? place?.wedge?.at;
  return said ?? { ...middleOf(b, { fabric }), turn: 0 };
}

/** The whole page follows a place that rests; letting it go shows the design again. */
function useFollowing(
  draft: PlaceText | null,
  good: boolean,
  change: (at: PlaceText) => (b: Brief) => void,
): void {
  const { act } = useKeepStore();
  // The change is made anew with every answer; only a new place is followed.
  const latest = useRef(change);
  useEffect(() => {
    latest.current = change;
  }, [change]);
  useEffect(() => {
    if (!draft || !good) return;
    const wait = setTimeout(() => act.preview(latest.current(draft)), FOLLOW_MS);
    return () => clearTimeout(wait);
  }, [draft, good, act]);
  const any = draft !== null;
  useEffect(() => (any ? () => act.preview(null) : undefined), [any, act]);
}

interface PictureProps {
  readonly block: AnswerBlock;
  readonly round: WedgeRound;
  readonly fabric: Print;
  readonly seen: Answered;
  readonly look: PhotoLook;
  /** The brief with the place in it. */
  readonly brief: Brief;
  readonly at: PlaceText;
  readonly onMove: (x: number, y: number) => void;
  readonly onStep: (right: number, up: number, far: boolean) => void;
}

function Picture({ block, fabric, seen, look, brief, at, onMove, onStep }: PictureProps) {
  const swatches = useSwatches(seen.brief);
  const stacked = useMedia("(max-width: 719px)");
  const { answer } = seen;
  const patch = block.patches.find(
    (p) => p.role.startsWith("wedge") && block.fabricOf[p.id] === fabric.id,
  );
  const pieceId = patch && block.pieceOf[patch.id];
  const piece = answer.pieces.find((p) => p.id === pieceId);
  const recipe = answer.recipes.find((r) => r.pieceId === pieceId);
  const looks = useMemo(() => looksOfBlock(brief, answer, block), [brief, answer, block]);
  const make = useCallback(
    (small: number): Placed =>
      placePicture({
        block,
        piece: piece!,
        recipe: recipe!,
        pieces: answer.pieces,
        looks,
        unit: brief.unit,
        seam: seamOf(brief),
        look,
        at: placeOfText(brief, at),
        small,
        stacked,
      }),
    [block, piece, recipe, answer, looks, brief, look, at, stacked],
  );
  if (!piece || !recipe) return null;
  const where = spoken(placeWords(brief, at));
  return (
    <PlacePicture
      make={make}
      swatches={swatches}
      most={brief.unit === "in" ? 48 : 48 / 25.4}
      label={`The wedge on ${fabric.name}, ${where}. Arrow keys move it, with shift farther`}
      onMove={onMove}
      onStep={onStep}
    />
  );
}
