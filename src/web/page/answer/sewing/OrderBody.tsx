import { useMemo } from "react";
import {
  type BlockSteps,
  type StepRow,
  sewingSteps,
} from "../../../../core/answer/sewing/steps.ts";
import type { AnswerBlock } from "../../../../core/answer/types/answer.ts";
import type { SeamTree } from "../../../../core/block/types.ts";
import type { Answered } from "../../answers.ts";
import { Said } from "../../said.tsx";
import { view } from "../../view.ts";
import type { BodyProps } from "../body.ts";
import { RowsOfTop } from "./RowsOfTop.tsx";
import { StepPicture } from "./StepPicture.tsx";
import "./sewing.css";
import { TickBox } from "./TickBox.tsx";

/** Every kind of block, step by step: laid, sewn, pressed, and ticked off when done. */
export function OrderBody({ shown }: BodyProps) {
  const kinds = useMemo(() => sewingSteps(shown.brief, shown.answer), [shown]);
  return (
    <>
      <p className="to-table">
        <a className="touch tall" href="#sewing">
          In large type, for the sewing table
        </a>
      </p>
      {kinds.map((k) => (
        <Kind key={k.block.id} kind={k} shown={shown} />
      ))}
      <RowsOfTop shown={shown} />
    </>
  );
}

function Kind({ kind, shown }: { kind: BlockSteps; shown: Answered }) {
  const { block, steps } = kind;
  return (
    <div className="kind">
      <h3>{block.name}</h3>
      <ol className="sewing-steps">
        {steps.map((step, i) => (
          <li key={step.id}>
            <StepPicture step={step} block={block} shown={shown} blockWidth={176} />
            <div>
              <TickBox step={step} brief={shown.brief}>
                {i + 1}. {step.name}
              </TickBox>
              <StepWords step={step} />
            </div>
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

/** What a step says, a line each: how many, how laid, how fed, how pressed, what to check. */
export function StepWords({ step }: { step: StepRow }) {
  const lines = [
    `${step.joins}: ${step.copies}`,
    step.lay,
    step.chain,
    step.press,
    step.measure && `should measure ${step.measure}`,
    ...step.checks,
  ];
  return (
    <ul className="step-words">
      {lines
        .filter((line) => line !== "")
        .map((line) => (
          <li key={line}>
            <Said text={sentence(line)} />
          </li>
        ))}
    </ul>
  );
}

/** A letter that names a piece or a unit stays as it is. */
const sentence = (line: string): string =>
  `${line.charAt(0).toUpperCase()}${line.slice(1)}${line.endsWith(".") ? "" : "."}`;

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
