import { type Answer, sewingSteps, stopTables } from "../core/answer/index.ts";
import type { Brief } from "../core/brief/index.ts";

/** Every step at the machine: what is joined, how it is fed, pressed and checked. */
export function sewingLines(
  brief: Brief,
  answer: Answer,
  wrap: (text: string, indent?: string) => string,
): string[] {
  return sewingSteps(brief, answer).flatMap(({ block, steps }) =>
    steps.length === 0
      ? []
      : [
          `Sewing ${block.name}, step by step`,
          ...steps.flatMap((s) => [
            wrap(
              `${[`${s.name}: ${s.joins}`, s.copies, s.chain, s.press, s.measure].filter(Boolean).join("; ")}.`,
              "  ",
            ),
            ...s.checks.map((c) => wrap(c, "    ")),
          ]),
          "",
        ],
  );
}

/** What every unit should measure, as rows. */
export const stopRows = (brief: Brief, answer: Answer): string[][] => [
  ["at this stop", "", "unfinished", "finished"],
  ...stopTables(brief, answer).flatMap(({ block, rows }) =>
    rows.map((r) => [r.name, block.name, r.should, r.finished]),
  ),
];
