import type { Brief } from "../../brief/index.ts";
import { printLength, printWithUnit, type Step } from "../../measure/index.ts";
import type { FinishingFacts } from "../../quilt/finishing.ts";
import type { QuiltGeometry } from "../../quilt/types.ts";
import type { Question } from "../types/answer.ts";
import { inWords } from "../words/word.ts";

export interface FinishFacts {
  readonly brief: Brief;
  readonly step: Step;
  readonly quilt?: QuiltGeometry;
  readonly finishing: FinishingFacts;
}

/** "And then?": rows, borders, binding, backing, batting, from the sewn blocks to the last stitch. */
export function finishQuestion(f: FinishFacts): Question | undefined {
  const { quilt } = f;
  if (!quilt) return undefined;
  const { rows, rowSeams, joinSeams } = quilt.assembly;
  const seams = rowSeams + joinSeams;
  return {
    id: "finish",
    heading: "And then?",
    trade: "layout, borders, finishing",
    line: [
      quilt.rows * quilt.columns === 1 && seams === 0
        ? "One block is the whole top."
        : `${capital(counted(rows, quilt.arrangement === "on-point" ? "diagonal row" : "row"))}, then the rows to each other.`,
      ...bordersLine(quilt),
      ...finishLine(f),
    ].join(" "),
    doubt: false,
    margin: { caption: `${seams} ${seams === 1 ? "seam joins" : "seams join"} the top` },
    from: ["quilt"],
  };
}

function bordersLine({ borders }: QuiltGeometry): string[] {
  if (borders.length === 0) return [];
  const mitered = borders.filter((x) => x.join === "mitred").length;
  const how = mitered === borders.length ? "mitered" : mitered === 0 ? "butted" : "some mitered";
  return [`${capital(counted(borders.length, "border"))}, ${how}, cut to the measured center.`];
}

function finishLine({ finishing, step }: FinishFacts): string[] {
  const { binding, backing, batting } = finishing;
  return [
    ...(binding
      ? [
          `Binding ${printWithUnit(binding.strip, step)} wide, ${printWithUnit(binding.length, step)} of it.`,
        ]
      : []),
    ...(backing
      ? [
          `Backing ${printLength(backing.width, step)} x ${printWithUnit(backing.height, step)}${backing.panels > 1 ? ` in ${inWords(backing.panels)} panels` : ""}.`,
        ]
      : []),
    ...(batting
      ? [`Batting ${printLength(batting.width, step)} x ${printWithUnit(batting.height, step)}.`]
      : []),
  ];
}

const counted = (n: number, thing: string): string => `${inWords(n)} ${thing}${n === 1 ? "" : "s"}`;
const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
