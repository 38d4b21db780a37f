import type { Brief } from "../../brief/index.ts";
import {
  inchToLength,
  type Length,
  lengthToInch,
  printLength,
  printWithUnit,
} from "../../measure/index.ts";
import { type FinishingFacts, packagedBatting } from "../../quilt/index.ts";
import type { Answer } from "../types/answer.ts";
import { inWords, stepOfBrief } from "../words/word.ts";
import { nameOfFabric } from "./phrases.ts";

/** One part of what follows the blocks: what it is, how large, and how it is done. */
export interface FinishRow {
  readonly id: string;
  readonly what: string;
  readonly size: string;
  readonly how: string;
}

/** Binding, backing and batting with how each is cut and joined. */
export function finishRows(b: Brief, a: Answer): FinishRow[] {
  const { binding, backing, batting } = a.finishing ?? {};
  return [
    ...(binding ? [bindingRow(b, binding)] : []),
    ...(backing ? [backingRow(b, backing)] : []),
    ...(batting ? [battingRow(b, batting)] : []),
  ];
}

const sides = (b: Brief, w: Length, h: Length): string =>
  `${printLength(w, stepOfBrief(b))} x ${printWithUnit(h, stepOfBrief(b))}`;

function bindingRow(b: Brief, f: NonNullable<FinishingFacts["binding"]>): FinishRow {
  const step = stepOfBrief(b);
  const print = (x: Length): string => printWithUnit(x, step);
  const how =
    f.square === undefined
      ? `strips cut straight; each join uses up ${print(f.joinLoss)}`
      : `on the bias, from one square of ${print(f.square)}`;
  return {
    id: f.fabricId,
    what: `binding in ${nameOfFabric(b, f.fabricId)}`,
    size: `${print(f.strip)} wide, ${print(f.length)} long`,
    how: `${print(f.perimeter)} round the edge and ${print(f.spare)} over; ${how}`,
  };
}

function backingRow(b: Brief, f: NonNullable<FinishingFacts["backing"]>): FinishRow {
  const step = stepOfBrief(b);
  const whose = b.finishing?.backing?.whose;
  const panels =
    f.panels === 1
      ? "one width, no seam"
      : `${inWords(f.panels)} panels ${sides(b, f.panelWidth, f.panelLength)}, seams ${f.seams} (${printWithUnit(f.seam, step)}, selvages cut off)`;
  return {
    id: f.fabricId,
    what: `backing in ${nameOfFabric(b, f.fabricId)}`,
    size: sides(b, f.width, f.height),
    how: `${printWithUnit(f.overhang, step)} over all round${whose ? `, as ${whose} asks` : ""}; ${panels}`,
  };
}

function battingRow(b: Brief, f: NonNullable<FinishingFacts["batting"]>): FinishRow {
  const inches = (x: Length): number => lengthToInch(x, b.unit);
  const pack = packagedBatting(inches(f.width), inches(f.height));
  const size = (x: number): Length => inchToLength(x, b.unit);
  return {
    id: "batting",
    what: "batting",
    size: sides(b, f.width, f.height),
    how: `${printWithUnit(f.overhang, stepOfBrief(b))} over all round; ${
      pack
        ? `packaged as ${pack.name}, ${sides(b, size(pack.width), size(pack.length))}`
        : "larger than any packaged size: from the roll"
    }`,
  };
}
