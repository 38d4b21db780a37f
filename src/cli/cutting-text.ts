import {
  type Answer,
  nameOfFabric,
  sayFrom,
  sayGap,
  sayHands,
  sayNarrower,
  saySaving,
  sayStep,
  sayWaste,
} from "../core/answer/index.ts";
import type { Brief } from "../core/brief/index.ts";
import type { Step } from "../core/measure/index.ts";

/** The cutting table, fabric by fabric: how near the least, then every cut in its order. */
export function cuttingLines(
  brief: Brief,
  answer: Answer,
  step: Step,
  wrap: (text: string, indent: string) => string,
): string[] {
  return answer.cutting.flatMap((c) => {
    const layout = answer.layouts.find((l) => l.fabricId === c.fabricId);
    const sets = c.sets ? `${c.sets} ${c.sets === 1 ? "set" : "sets"} to sew` : "";
    const near = layout ? [sets, sayGap(layout, step), saySaving(layout, step)] : [sets];
    return [
      `Cutting ${nameOfFabric(brief, c.fabricId)}`,
      wrap(near.filter((x) => x !== "").join("; "), "  "),
      ...[sayNarrower(c, answer, step)].filter((x) => x !== "").map((x) => wrap(x, "  ")),
      ...c.orders.flatMap((order) => [
        `  ${sayFrom(order, c, step)}, ${order.cuts} cuts`,
        ...order.steps.map(
          (s) => `    ${String(s.number).padStart(2)}  ${sayStep(s, answer, step)}`,
        ),
      ]),
      ...[...sayHands(c, answer), ...sayWaste(c, answer, step)].map((line) => wrap(line, "  ")),
      "",
    ];
  });
}
