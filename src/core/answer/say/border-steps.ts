import { type Brief, seamOf, usableWidth } from "../../brief/index.ts";
import { type Length, lengthToInch, printWithUnit, stepOf } from "../../measure/index.ts";
import type { BorderFacts } from "../../quilt/index.ts";
import { type Minutes, minutesFor } from "../../sewing/index.ts";
import type { Answer } from "../types/answer.ts";

/** How one border goes on, from the inside out. */
export interface BorderStep {
  /** From 1, counted from inside. */
  readonly border: number;
  readonly lines: readonly string[];
  /** Points to mark before sewing: both ends of every set-in seam, on strip and top. */
  readonly marks: number;
  readonly seams: number;
  readonly minutes: Minutes;
}

/**
 * What the maker does for each border, with the lengths planned: measure the real top in three places,
 * cut to the mean, and for mitered corners sew only between marks. Empty without borders or quilt.
 */
export const borderSteps = (brief: Brief, answer: Answer): BorderStep[] =>
  (answer.quilt?.borders ?? []).map((facts) => stepFor(facts, brief, answer));

interface Planned {
  readonly facts: BorderFacts;
  readonly seam: Length;
  readonly print: (x: Length) => string;
  /** Cut lengths of the upright and the level strips. */
  readonly cut: { readonly upright: Length; readonly level: Length };
  /** The top inside this border, with its seam allowances. */
  readonly raw: { readonly width: Length; readonly height: Length };
}

function stepFor(facts: BorderFacts, brief: Brief, answer: Answer): BorderStep {
  const { unit } = brief;
  const seam = seamOf(brief);
  const step = stepOf(brief.step, unit);
  const border = brief.quilt.borders[facts.index];
  const inside = {
    width: facts.outerWidth - 2 * facts.width,
    height: facts.outerHeight - 2 * facts.width,
  };
  const p: Planned = {
    facts,
    seam,
    print: (x) => printWithUnit(x, step),
    cut: {
      upright: cutLength(answer, facts.index, "upright") ?? facts.upright + 2 * seam,
      level: cutLength(answer, facts.index, "level") ?? facts.level + 2 * seam,
    },
    raw: { width: inside.width + 2 * seam, height: inside.height + 2 * seam },
  };
  const mitered = facts.join === "mitred";
  const stones = !mitered && border.cornerstone !== undefined;
  const joins = joinsOf(brief, p);
  const seams = (mitered || stones ? 8 : 4) + joins;
  const inches = lengthToInch(
    seamLength(p, mitered, stones) + joins * (facts.width + 2 * seam),
    unit,
  );
  return {
    border: facts.index + 1,
    lines: [
      ...(joins > 0
        ? [
            `The strips are longer than the fabric is wide: join widths first, ${joins} ${joins === 1 ? "join" : "joins"} in all, pressed open.`,
          ]
        : []),
      ...(mitered ? miteredLines(p) : stones ? stoneLines(p) : buttedLines(p)),
    ],
    marks: mitered ? 12 : 0,
    seams,
    minutes: minutesFor({ seams, inches, presses: seams }, 2),
  };
}

/** The longest length the recipe of these strips cuts. */
function cutLength(answer: Answer, index: number, side: "upright" | "level"): Length | undefined {
  const piece = answer.pieces.find((x) => x.patchIds.includes(`border/${index}/${side}`));
  const recipe = answer.recipes.find((r) => r.pieceId === piece?.id);
  return recipe?.cuts.find((c) => c.op === "crosscut")?.lengths[0];
}

/** Joins of strips cut across the fabric: two alike are cut from one long strip where they must be joined. */
function joinsOf(brief: Brief, p: Planned): number {
  const border = brief.quilt.borders[p.facts.index];
  const fabric = brief.fabrics.find((f) => f.id === border.fabric);
  if (border.cut === "along" || !fabric) return 0;
  const room = usableWidth(brief, fabric);
  const joins = (length: Length): number =>
    length <= room + 1e-9 ? 0 : Math.ceil((2 * length - room) / (room - 2 * p.seam) - 1e-9);
  return joins(p.cut.upright) + joins(p.cut.level);
}

/** Four sides, and what the corners add: four slanting seams, or four across the ends. */
function seamLength(p: Planned, mitered: boolean, stones: boolean): Length {
  const { width, upright, level, outerWidth, outerHeight } = p.facts;
  if (mitered) return 2 * (outerWidth + outerHeight - 4 * width) + 4 * width * Math.SQRT2;
  return 2 * (upright + level) + (stones ? 4 * width + 4 * width : 0);
}

const PLACES = "in three places, through the middle and near both edges";

const buttedLines = ({ cut, print }: Planned): string[] => [
  `Measure the top from top to bottom ${PLACES}, and take the mean: ${print(cut.upright)} is planned. Cut both side strips to it, pin the ends and the middles, and ease the top to the strips.`,
  `Measure across with the sides on, ${PLACES}: ${print(cut.level)} is planned. Cut the top and bottom strips to the mean and sew them over the ends.`,
];

const stoneLines = ({ cut, print }: Planned): string[] => [
  `Before any strip goes on, measure the top both ways, each ${PLACES}: ${print(cut.upright)} down and ${print(cut.level)} across are planned. Cut the strips to the two means.`,
  "Sew the sides on. Sew a cornerstone to each end of the top and bottom strips, then sew these on, the seams meeting.",
];

function miteredLines({ cut, raw, seam, print, facts }: Planned): string[] {
  const half = (x: Length): string => print(x / 2 - seam);
  return [
    `Measure the top both ways, each ${PLACES}, and take the means: ${print(raw.height)} down and ${print(raw.width)} across are planned. Cut the strips ${print(cut.upright)} and ${print(cut.level)} long: the corners take what is over.`,
    `Mark the middle of each strip, and to both sides of it half the mean less one seam allowance: ${half(raw.height)} and ${half(raw.width)} as planned. Mark the corners of the top ${print(seam)} from both raw edges.`,
    `Sew each strip on from mark to mark only, and fasten the ends. Then fold the top corner to corner and sew each corner from its mark to the outer edge, ${print(facts.width * Math.SQRT2)} finished; see that it lies flat, and trim to ${print(seam)}.`,
  ];
}
