import { useCallback, useMemo } from "react";
import { type BlockSteps, type StepRow, sewingSteps } from "../../../core/answer/sewing-steps.ts";
import type { AnswerBlock } from "../../../core/answer/types.ts";
import type { Patch, SeamTree } from "../../../core/block/types.ts";
import { knownLength } from "../../../core/measure/index.ts";
import type { Picture } from "../../../core/picture/marks.ts";
import { unitPicture } from "../../../core/picture/unit.ts";
import type { Answered } from "../answers.ts";
import { PictureView } from "../PictureView.tsx";
import type { BodyProps } from "../Questions.tsx";
import { Said } from "../said.tsx";
import { looksFor, useSwatches } from "../useSwatches.ts";
import { useView, view } from "../view.ts";

/** Every kind of block, unit by unit: as it lies on the table, and which way its seam is pressed. */
export function OrderBody({ shown }: BodyProps) {
  const kinds = useMemo(() => sewingSteps(shown.brief, shown.answer), [shown]);
  return kinds.map((k) => <Kind key={k.block.id} kind={k} shown={shown} />);
}

function Kind({ kind, shown }: { kind: BlockSteps; shown: Answered }) {
  const { block, steps } = kind;
  const most = Math.max(block.width, block.height);
  return (
    <div className="kind">
      <h3>{block.name}</h3>
      <ol className="steps">
        {steps.map((step, i) => (
          <li key={step.id}>
            <UnitPicture step={step} block={block} shown={shown} most={most} />
            <p>
              <b>
                {i + 1}. {step.name}
              </b>
            </p>
            <p className="small soft">
              {step.joins}, {step.copies}
            </p>
            <p className="small soft">
              {step.press}
              {step.measure && (
                <>
                  {"; "}
                  <Said text={step.measure} />
                </>
              )}
            </p>
          </li>
        ))}
      </ol>
      <details className="tree-list">
        <summary className="touch tall">The seams as a list</summary>
        <ul>
          <SeamNode node={block.tree} block={block} shown={shown} />
        </ul>
      </details>
    </div>
  );
}

interface UnitProps {
  readonly step: StepRow;
  readonly block: AnswerBlock;
  readonly shown: Answered;
  readonly most: number;
}

function UnitPicture({ step, block, shown, most }: UnitProps) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const leftHanded = useView((v) => v.leftHanded);
  const make = useCallback(
    (small: number): Picture =>
      unitPicture(block, step.unit, {
        unit: answer.unit,
        seam: knownLength(brief.seam, brief.unit),
        pieces: answer.pieces,
        looks: looksFor(shown)[block.id] ?? [],
        faint: true,
        letters: (p: Patch) => answer.pieces.find((x) => x.id === block.pieceOf[p.id])?.letter,
        small,
        title: `${step.name}: ${step.joins}, ${step.press}`,
        leftHanded,
      }),
    [block, step, answer, brief, shown, leftHanded],
  );
  return <PictureView make={make} swatches={swatches} small={14} exactly={122 / most} />;
}

/** The seam tree as a nested list: what joins what, down to the patches. */
function SeamNode({ node, block, shown }: { node: SeamTree; block: AnswerBlock; shown: Answered }) {
  const { answer, brief } = shown;
  if (node.kind === "patch") {
    const piece = answer.pieces.find((p) => p.id === block.pieceOf[node.patch.id]);
    const light = (on: boolean): void => view.setState({ lines: on ? [node.patch.id] : [] });
    return (
      <li onPointerEnter={() => light(true)} onPointerLeave={() => light(false)}>
        {piece?.name} {piece?.letter},{" "}
        {brief.fabrics.find((f) => f.id === block.fabricOf[node.patch.id])?.name}
      </li>
    );
  }
  const unit = answer.units.find((u) => u.seamIds.includes(node.id) || u.id === node.id);
  return (
    <li>
      {unit ? `Seam of ${unit.letter}` : "Seam"} joins
      <ul>
        <SeamNode node={node.parts[0]} block={block} shown={shown} />
        <SeamNode node={node.parts[1]} block={block} shown={shown} />
      </ul>
    </li>
  );
}
