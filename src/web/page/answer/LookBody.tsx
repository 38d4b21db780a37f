import { useCallback } from "react";
import type { AnswerBlock } from "../../../core/answer/types.ts";
import { blockPicture } from "../../../core/picture/block.ts";
import type { Picture } from "../../../core/picture/marks.ts";
import type { Answered } from "../answers.ts";
import { PictureView } from "../PictureView.tsx";
import type { BodyProps } from "../Questions.tsx";
import { looksFor, useSwatches } from "../useSwatches.ts";

/** Every kind of block with the real fabric in each patch, side by side at one scale. */
export function LookBody({ shown }: BodyProps) {
  return (
    <ul className="blocks">
      {shown.answer.blocks.map((b) => (
        <li key={b.id}>
          <Block block={b} shown={shown} />
          <p>
            <b>{b.name}</b>
          </p>
        </li>
      ))}
    </ul>
  );
}

function Block({ block, shown }: { block: AnswerBlock; shown: Answered }) {
  const swatches = useSwatches(shown.brief);
  const { unit } = shown.answer;
  const make = useCallback(
    (): Picture =>
      blockPicture(block, { unit, looks: looksFor(shown)[block.id] ?? [], title: block.name }),
    [block, unit, shown],
  );
  return <PictureView make={make} swatches={swatches} most={unit === "in" ? 26 : 26 / 25.4} />;
}
