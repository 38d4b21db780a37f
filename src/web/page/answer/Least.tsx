import { sayGap, sayNarrower, saySaving } from "../../../core/answer/say/plan-words.ts";
import { stepOf } from "../../../core/measure/index.ts";
import { allProved, lookFurther, stopLooking, usePlanning } from "../planning.ts";
import { Said } from "../said.tsx";
import type { BodyProps } from "./body.ts";

/** How near the least a fabric's plan is, what it saves, and the search for a better one. */
export function Least({ shown, fabricId }: { shown: BodyProps["shown"]; fabricId: string }) {
  const { brief, answer } = shown;
  const state = usePlanning(brief);
  const layout = answer.layouts.find((l) => l.fabricId === fabricId);
  if (!layout) return null;
  const step = stepOf(brief.step, brief.unit);
  const words = [sayGap(layout, step), saySaving(layout, step)].filter((x) => x !== "").join("; ");
  const cutting = answer.cutting.find((c) => c.fabricId === fabricId);
  const narrower = cutting ? sayNarrower(cutting, answer, step) : "";
  const looking = state === "looking";
  return (
    <p className="least">
      <Said text={`${words.charAt(0).toUpperCase()}${words.slice(1)}.`} />{" "}
      {looking && "Looking for a shorter plan. "}
      {state === "failed" && "The search for a shorter plan stopped by itself; this plan holds. "}
      {looking && (
        <button type="button" className="touch" onClick={stopLooking}>
          Stop, and keep this plan
        </button>
      )}
      {(state === "stopped" || state === "failed") && !allProved(answer) && (
        <button type="button" className="touch" onClick={() => lookFurther(brief)}>
          Look for a shorter plan
        </button>
      )}
      {narrower && (
        <>
          <br />
          <Said text={`${narrower}.`} />
        </>
      )}
    </p>
  );
}
