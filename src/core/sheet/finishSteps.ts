import { borderSteps, plainSeam, topSteps } from "../answer/index.ts";
import { blockCounts, blockName, isWhole } from "./block-words.ts";
import { sayUp } from "./cutting.ts";
import { counted, fabricName, listed, type SheetJob, sayMeasured, sayUnit } from "./job.ts";
import { allSteps } from "./order.ts";

/** A step after the blocks are sewn: its words, and what the top should measure then. */
export interface FinishStep {
  readonly words: string;
  readonly stop?: string;
  readonly how?: string;
  /** A pieced backing is drawn with it. */
  readonly backing?: boolean;
}

/** Rows, each border from the inside out, quilting and binding; `first` numbers the first of them. */
export function finishSteps(job: SheetJob, first: number): FinishStep[] {
  const { quilt } = job.answer;
  if (!quilt) return [];
  const { seam } = job;
  const raw = (w: number, h: number): string => measuredBoth(job, w + 2 * seam, h + 2 * seam);
  const borders = borderSteps(job.brief, job.answer);
  return [
    {
      words: `**${first} Rows.** ${[...wholeBlocks(job), rowWords(job)].join(" ")}`,
      stop: raw(quilt.centerWidth, quilt.centerHeight),
      how: "unfinished",
    },
    ...quilt.borders.map((facts, i): FinishStep => {
      const lines = borders[i]?.lines ?? [];
      return {
        words: `**${first + 1 + i} ${borderName(job, facts.index)}.** ${borderPieces(job, facts.index)} ${lines.join(" ")} Press outward.`,
        stop: raw(facts.outerWidth, facts.outerHeight),
        how: "unfinished",
      };
    }),
    {
      words: `**${first + 1 + quilt.borders.length} Finish.** ${finishWords(job)}`,
      backing: true,
      stop: measuredBoth(job, quilt.width, quilt.height),
      how: "when bound",
    },
  ];
}

/** A size to be measured, as a ruler shows it: `57 1/16 × 68 3/8 in`. */
const measuredBoth = (job: SheetJob, w: number, h: number): string =>
  `${sayMeasured(job, w).replace(/ (in|mm|cm)$/, "")} × ${sayMeasured(job, h)}`;

/** Letter of the piece that patch of the quilt is cut as. */
const letterAt = (job: SheetJob, patch: string): string | undefined =>
  job.answer.pieces.find((p) => p.patchIds.includes(patch))?.letter;

function borderName(job: SheetJob, index: number): string {
  const { borders } = job.brief.quilt;
  const name = borders.length > 1 ? `Border ${index + 1}` : "Border";
  return borders[index]?.join === "mitred" ? `${name}, mitered` : name;
}

/** Which pieces make this border, how wide, and which lie where. */
function borderPieces(job: SheetJob, index: number): string {
  const facts = job.answer.quilt?.borders[index];
  const border = job.brief.quilt.borders[index];
  if (!facts || !border) return "";
  const [upright, level, stone] = ["upright", "level", "cornerstone"].map((side) =>
    letterAt(job, `border/${index}/${side}`),
  );
  const wide = sayUnit(job, facts.width + 2 * job.seam);
  const where =
    upright === level ? `${upright} all round` : `${upright} at the sides, ${level} top and bottom`;
  const stones = stone ? `, ${stone} at the corners` : "";
  return `${fabricName(job, border.fabric)}, ${wide} wide: ${where}${stones}.`;
}

/** Blocks that are one piece and have no step of their own: "Every field block is one B1." */
const wholeBlocks = (job: SheetJob): string[] =>
  job.answer.blocks.flatMap((b) => {
    const [patch, ...others] = b.patches;
    const piece = patch && others.length === 0 ? b.pieceOf[patch.id] : undefined;
    const letter = job.answer.pieces.find((p) => p.id === piece)?.letter;
    return b.count > 0 && letter ? [`Every ${blockName(b, 1)} is one ${letter}.`] : [];
  });

/** What is laid out: on point, the parts that fill the edges are named with the edges. */
function layNames(job: SheetJob): string {
  const onPoint = job.answer.quilt?.arrangement === "on-point";
  const laid = job.answer.blocks.filter((b) => b.count > 0 && (!onPoint || isWhole(b)));
  return listed(laid.map((b) => blockName(b, Math.max(2, b.count))));
}

/** How the blocks come together, by the way the quilt is arranged. */
function rowWords(job: SheetJob): string {
  const { quilt } = job.answer;
  if (!quilt) return "";
  const names = layNames(job);
  const press = `${pressWords(job)} Join the rows.`;
  switch (quilt.arrangement) {
    case "on-point": {
      const [side, corner] = ["setting/side", "setting/corner"].map((id) => letterAt(job, id));
      const parts = job.answer.blocks.filter((b) => b.count > 0 && !isWhole(b));
      const sorts = listed(blockCounts(parts).map(([, sort]) => sort));
      const ends = side ? `, ${side} at the ends of the rows` : `, the ${sorts} at the edges`;
      const last = corner
        ? `Rows that reach a corner end in ${corner}; sew the other two ${corner} on last.`
        : "Sew the two corners that are left on last.";
      if (job.brief.quilt.sashing)
        return `Lay out the ${names} on point, as drawn${ends}. ${onPointSashingWords(job)} ${last}`;
      return `Lay out the ${names} on point, as drawn${ends}. Sew ${counted(quilt.assembly.rows, "diagonal row")}. ${press} ${last}`;
    }
    case "hexagon-rows": {
      const ends = ["above", "below"].map((id) => letterAt(job, `setting/end-${id}`));
      const sides = listed([...new Set(ends)].map(String));
      return `Lay out the ${names} in offset rows, as drawn, ${sides} at the ends of the rows. Sew ${counted(quilt.assembly.rows, "row")}. ${press}`;
    }
    default: {
      if (quilt.rows * quilt.columns === 1) return "The block is the whole top.";
      const laid = `Lay out ${counted(quilt.rows, "row")} of ${quilt.columns}: ${names}, as drawn.`;
      if (job.brief.quilt.sashing !== undefined) return `${laid} ${sashingWords(job)}`;
      return quilt.rows === 1
        ? `${laid} Sew the row. ${pressWords(job)}`
        : `${laid} Sew each row. ${press}`;
    }
  }
}

/** Sashes between the blocks of a row, and between the rows, with cornerstones or without. */
function sashingWords(job: SheetJob): string {
  const [upright, level, stone] = ["sash/upright", "sash/level", "sash/cornerstone"].map((id) =>
    letterAt(job, id),
  );
  const within = upright
    ? `Sew each row with ${upright} between its blocks; press to ${upright}.`
    : "Sew each row.";
  if (!level) return `${within} Join the rows.`;
  const strips = stone
    ? `Sew ${level} and ${stone} in turn into strips as long as a row, pressed to ${level}. Join rows and strips in turn, the seams meeting.`
    : `Join the rows with ${level} between them; press to ${level}.`;
  return `${within} ${strips}`;
}

/** Which way the seams inside the rows lie, and what every second block has otherwise. */
function pressWords(job: SheetJob): string {
  const { rows, quilt } = job.answer;
  if (!rows) return "";
  const way =
    quilt?.rows === 1 && quilt.arrangement !== "on-point"
      ? `Press its seams to the ${rows.odd}.`
      : rows.odd === rows.even
        ? `Press the seams of every row to the ${rows.odd}.`
        : `Press odd rows to the ${rows.odd} and even rows to the ${rows.even}, so that they nest.`;
  const others =
    topSteps(job.brief, job.answer, (id) => stepAt(job, id))?.lines.filter((l) =>
      /cannot/.test(l),
    ) ?? [];
  return [way, ...secondWords(job, rows.second), ...others].join(" ");
}

/** The step that sews a seam, as a sheet calls it: "step 4". */
function stepAt(job: SheetJob, seamId: string): string | undefined {
  const step = allSteps(job).find((s) => s.seamIds.includes(plainSeam(seamId)));
  return step && `step ${step.number}`;
}

/** A sheet has no letters of units: its steps are numbered. */
function secondWords(job: SheetJob, seamIds: readonly string[]): string[] {
  if (seamIds.length === 0) return [];
  const plain = new Set(seamIds.map(plainSeam));
  const numbers = allSteps(job).flatMap((s) =>
    s.seamIds.some((id) => plain.has(id)) ? [String(s.number)] : [],
  );
  const at =
    numbers.length === 0
      ? ""
      : `, ${counted(numbers.length, "step").replace(/^\d+ /, "")} ${listed(numbers)}`;
  return [`Press every second block the other way${at}, like the dark squares of a checkerboard.`];
}

/** A sash on every side of every block; rows of sashes before, between and after the diagonal rows. */
function onPointSashingWords(job: SheetJob): string {
  const at = (id: string) => letterAt(job, `sash/${id}`);
  const [between, stone, half] = ["between", "cornerstone", "cornerstone-half"].map(at);
  const rows = counted(job.answer.quilt?.assembly.rows ?? 0, "diagonal row");
  const within = `Sew ${rows} with ${between} before, between and after the blocks; press to ${between}.`;
  if (half) {
    const stones = stone ? `${between} and ${stone} in turn` : `one ${between}`;
    return `${within} Sew ${stones} into strips with a half ${half} at each end, pressed to ${between}, for before, between and after the rows. Join rows and strips in turn, the seams meeting; press to the strips.`;
  }
  const long = [
    ...new Set(
      (job.answer.quilt?.extras ?? [])
        .filter((e) => e.id.startsWith("sash/row-"))
        .map((e) => letterAt(job, e.id)),
    ),
  ];
  return `${within} Join the rows with ${listed(long.map(String))} before, between and after them, middles matched; press to the sashes. Trim the ends of the sashes level with the edge.`;
}

/** How two strips of the binding are joined. */
const JOINS = {
  slant: "on the slant (ends laid at right angles, sewn corner to corner, trimmed, pressed open)",
  "slant-cut": "on the slant (ends cut at 45 degrees, pressed open)",
  straight: "end to end (pressed open)",
} as const;

/** Backing, batting and binding as planned; what the maker has not decided is left to her. */
function finishWords(job: SheetJob): string {
  const { binding, backing, batting } = job.answer.finishing ?? {};
  const { unit } = job.brief;
  const size = (w: number, h: number): string => `${sayUp(job, w)} × ${sayUp(job, h)} ${unit}`;
  const words: string[] = [];
  if (backing && backing.panels > 1)
    words.push(
      `Backing: sew the ${backing.panels} panels of ${fabricName(job, backing.fabricId)} together, selvages cut off, seams ${backing.seams}, ${sayUnit(job, backing.seam)} wide, pressed open: ${size(backing.width, backing.height)}, ${sayUnit(job, backing.overhang)} over on every side.`,
    );
  else if (backing)
    words.push(
      `Backing: ${fabricName(job, backing.fabricId)}, ${size(backing.width, backing.height)}.`,
    );
  words.push(
    batting
      ? `Layer with batting of ${size(batting.width, batting.height)} and the backing. Quilt, trim square to the top.`
      : "Layer with batting and backing. Quilt, trim square.",
  );
  const join = JOINS[job.brief.finishing?.binding?.join ?? "slant"];
  words.push(
    binding
      ? `Join the ${sayUnit(job, binding.strip)} strips of ${fabricName(job, binding.fabricId)} ${join} to ${sayUp(job, binding.length)} ${unit}, fold in half along the length, bind.`
      : "Bind.",
  );
  return words.join(" ");
}
