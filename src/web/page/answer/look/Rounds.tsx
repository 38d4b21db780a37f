import { useCallback, useMemo } from "react";
import type { BlockSight, SeamsMeet, WedgeRound } from "../../../../core/answer/index.ts";
import { fabricLooks, wedgeCutOf } from "../../../../core/answer/look/looks.ts";
import { sayMisses } from "../../../../core/answer/look/table.ts";
import type { AnswerBlock } from "../../../../core/answer/types/answer.ts";
import { wayWords } from "../../../../core/answer/words/place-words.ts";
import type { Brief } from "../../../../core/brief/index.ts";
import type { Way } from "../../../../core/fabric/index.ts";
import type { Picture } from "../../../../core/picture/marks.ts";
import { stripPicture } from "../../../../core/picture/strip.ts";
import type { Answered } from "../../answers.ts";
import { PictureView } from "../../PictureView.tsx";
import { Said } from "../../said.tsx";
import { useSwatches } from "../../useSwatches.ts";
import { useView } from "../../view.ts";
import { BlockLook } from "./BlockLook.tsx";

interface RoundsProps {
  readonly sight: BlockSight;
  /** The design as it is looked at. */
  readonly seen: Answered;
}

/** For each fabric with bands: its strip with wedges both ways, and the round that each way makes. */
export function Rounds({ sight, seen }: RoundsProps) {
  const block = seen.answer.blocks.find((b) => b.id === sight.block);
  const banded = sight.rounds.filter((r) => r.rings.length > 0 || r.tilt);
  if (!block?.radial) return null;
  return banded.map((r) => (
    <section key={r.fabricId} className="round">
      <h3>
        {seen.brief.fabrics.find((f) => f.id === r.fabricId)?.name} in {block.name}
      </h3>
      <div className="round-pictures">
        <Strip block={block} round={r} seen={seen} />
        {(["up", "down"] as const).map((way) => (
          <OneWay key={way} way={way} block={block} round={r} seen={seen} />
        ))}
      </div>
      {r.seams.map((m) => (
        <p key={`${m.ways.join()} ${m.misses.map((x) => x.miss).join()}`} className="small">
          <Said
            text={`${m.count} seams, ${m.ways.map((w) => wayWords(seen.brief, r.fabricId, w)).join(" beside ")}: ${missing(seen.brief, m)}`}
          />
        </p>
      ))}
    </section>
  ));
}

/** "from the center out, rings miss by 1/8 in, 3/8 in along the seam". */
const missing = (b: Brief, m: SeamsMeet): string => {
  const said = sayMisses(b, m);
  return /^(every|one)/.test(said) ? said : `along the seam, from the center out, ${said}`;
};

interface RoundProps {
  readonly block: AnswerBlock;
  readonly round: WedgeRound;
  readonly seen: Answered;
}

function Strip({ block, round, seen }: RoundProps) {
  const { brief } = seen;
  const swatches = useSwatches(brief);
  const leftHanded = useView((v) => v.leftHanded);
  const make = useCallback(
    (small: number): Picture =>
      stripPicture({
        unit: brief.unit,
        fabricId: round.fabricId,
        look: fabricLooks(brief)[round.fabricId],
        wedge: wedgeCutOf(brief, block)!,
        angle: 360 / (block.radial?.n ?? 8),
        start: round.start,
        ...(round.tilt !== undefined && { tilt: round.tilt }),
        words: {
          up: wayWords(brief, round.fabricId, "up"),
          down: wayWords(brief, round.fabricId, "down"),
        },
        title: "The strip with wedges cut both ways",
        small,
        // Bands cut askew would lean the other way.
        leftHanded: leftHanded && !round.tilt,
      }),
    [brief, block, round, leftHanded],
  );
  const most = brief.unit === "in" ? 40 : 40 / 25.4;
  return (
    <figure className="strip">
      <PictureView make={make} swatches={swatches} most={most} />
      <figcaption className="small soft">
        The strip: solid where it is cut, dashed where it is sewn
      </figcaption>
    </figure>
  );
}

/** The block with every wedge of this fabric one way, and how many come of it. */
function OneWay({ way, block, round, seen }: RoundProps & { readonly way: Way }) {
  const turned = useMemo(
    (): Answered => ({
      brief: allOneWay(seen.brief, block.id, round, way),
      answer: { ...seen.answer },
    }),
    [seen, block, round, way],
  );
  const words = wayWords(seen.brief, round.fabricId, way);
  const made = way === "up" ? round.blocksUp : round.blocksDown;
  return (
    <figure>
      <BlockLook block={block} shown={turned} most={20} label={`${block.name}, all ${words}`} />
      <figcaption className="small">
        all {words}
        {made > 0 && `: ${made}`}
      </figcaption>
    </figure>
  );
}

function allOneWay(brief: Brief, id: string, round: WedgeRound, way: Way): Brief {
  const place = {
    round: "matched" as const,
    way,
    start: `${round.start} ${brief.unit}`,
    ...(round.tilt !== undefined && { tilt: round.tilt }),
  };
  return {
    ...brief,
    blocks: brief.blocks.map((b) =>
      b.id === id ? { ...b, place: { "wedge-even": place, "wedge-odd": place } } : b,
    ),
  };
}
