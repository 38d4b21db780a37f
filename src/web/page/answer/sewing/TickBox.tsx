import { type ReactNode, useMemo } from "react";
import type { StepRow } from "../../../../core/answer/sewing/steps.ts";
import { type Brief, recorded, tick } from "../../../../core/brief/record.ts";
import { useKeepStore } from "../../KeepContext.ts";

/** Is the step ticked off? Kept with the design, by the unit it ends with. */
export function useTicked(brief: Brief): ReadonlySet<string> {
  return useMemo(() => new Set(recorded(brief, "sewn").map((e) => e.unit)), [brief]);
}

interface TickBoxProps {
  readonly step: StepRow;
  readonly brief: Brief;
  readonly children: ReactNode;
}

/** Ticks a step off; one gesture, that can be taken back like any other. */
export function TickBox({ step, brief, children }: TickBoxProps) {
  const keep = useKeepStore();
  const ticked = useTicked(brief).has(step.id);
  const words = `${step.name} ${ticked ? "not sewn" : "sewn"}`;
  return (
    <label className="tick-box">
      <input
        type="checkbox"
        checked={ticked}
        onChange={() => keep.act.edit(words, tick(step.id, !ticked))}
      />
      <span>{children}</span>
    </label>
  );
}
