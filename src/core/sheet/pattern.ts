import type { PdfPoint } from "../measure/index.ts";
import { type Block, beside, Column, numberWord, paginate, stacked, withFeet } from "./column.ts";
import { cutBlocks } from "./cutList.ts";
import { finishBlock } from "./finish.ts";
import { columnAt, columns, MEASURE, STYLES } from "./grid.ts";
import { pictureBlock, sizeBlock, titleBlock } from "./head.ts";
import type { SheetJob } from "./job.ts";
import type { Item, Sheet } from "./model.ts";
import { allSteps, nextStep, orderBlocks } from "./order.ts";
import { proofBlocks } from "./proofs.ts";
import { draftReasons } from "./release.ts";
import { sizesBlock, suppliesBlock } from "./supplies.ts";

/** The two-page pattern; what does not fit goes on to a further page, and each foot says of how many. */
export function patternSheet(job: SheetJob): Sheet {
  const pages = patternItems(job);
  return {
    title: job.brief.title,
    name: "pattern",
    language: "en-US",
    pages: withFeet(
      pages,
      job.paper,
      footWords(job),
      (i, of) => `Side ${numberWord(i + 1)} of ${numberWord(of)}`,
    ),
  };
}

export function footWords(job: SheetJob): string {
  const draft = draftReasons(job).length > 0 ? "DRAFT. " : "";
  const { title, seam, unit } = job.brief;
  const seamText = /[a-z]/i.test(seam) ? seam : `${seam} ${unit}`;
  return `${draft}${title}. Version ${job.version}, ${job.date}. Sewn with a ${seamText} seam throughout.`;
}

/** How closely the sheet is set; the roomiest that makes the fewest sides is taken. */
interface Density {
  readonly gap: PdfPoint;
  readonly picture: PdfPoint;
  readonly proofs: PdfPoint;
  /** Points to the inch in the diagrams of the steps. */
  readonly steps: number;
  readonly map: PdfPoint;
}

const DENSITIES: readonly Density[] = [
  { gap: 11, picture: 470, proofs: 116, steps: 11, map: 130 },
  { gap: 9, picture: 420, proofs: 104, steps: 11, map: 110 },
  { gap: 7, picture: 380, proofs: 96, steps: 10, map: 96 },
  { gap: 6, picture: 340, proofs: 88, steps: 8.5, map: 84 },
  { gap: 5, picture: 300, proofs: 78, steps: 8, map: 72 },
];

/** The pattern's sides without their feet. */
export function patternItems(job: SheetJob): Item[][] {
  let best: Item[][] | undefined;
  for (const density of DENSITIES) {
    const pages = pagesOf(job, 2, density);
    if (pages.length <= 2) return pages;
    if (!best || pages.length < best.length) best = pagesOf(job, pages.length, density);
  }
  return best ?? [];
}

function pagesOf(job: SheetJob, sides: number, density: Density): Item[][] {
  const head = new Column();
  head.put(titleBlock(job, `A pattern in ${numberWord(sides)} sides`));
  const draft = draftReasons(job);
  if (draft.length > 0) {
    head.gap(5);
    head.paragraph(`**Draft.** ${draft.join(" ")}`, STYLES.text);
  }
  head.gap(density.gap);
  const steps = allSteps(job);
  const blocks = [
    ...opening(job, head.block(), density),
    ...proofBlocks(job, density.proofs),
    ...orderBlocks(job, steps, density.steps),
    finishBlock(job, nextStep(job, steps), density.map),
  ];
  return paginate(blocks, job.paper, density.gap);
}

/**
 * Title, picture, sizes, supplies and cutting list. A tall quilt holds the left four columns and all
 * that is to be read stands at its right; a wide one lies across the sheet, its sizes beside it.
 */
function opening(job: SheetJob, head: Block, density: Density): Block[] {
  const { quilt } = job.answer;
  const room = job.paper.bottom - job.paper.top - head.height;
  const wide = quilt ? quilt.width > 1.35 * quilt.height : false;
  if (wide) {
    const picture = pictureBlock(job, columns(9), density.picture * 0.42);
    const beside9 = sideBySide(picture, sizeBlock(job, columns(3)), 9);
    return [
      stacked([head, beside9], 0),
      suppliesBlock(job, MEASURE),
      ...maybe(sizesBlock(job, MEASURE)),
      ...joinedCut(cutBlocks(job, MEASURE)),
    ];
  }
  const right = columns(8);
  const cut = stacked(cutBlocks(job, right), 0);
  const sizes = sizeBlock(job, right);
  const supplies = stacked([suppliesBlock(job, right), ...maybe(sizesBlock(job, right))], 6);
  const all = stacked([sizes, supplies, cut], density.gap);
  const picture = pictureBlock(job, columns(4), Math.min(room - 40, density.picture));
  if (all.height <= room) return [stacked([head, sideBySide(picture, all, 4)], 0)];
  const most = stacked([sizes, supplies], density.gap);
  return [stacked([head, sideBySide(picture, most, 4)], 0), ...joinedCut(cutBlocks(job, MEASURE))];
}

const maybe = (block: Block | undefined): Block[] => (block ? [block] : []);

const sideBySide = (left: Block, right: Block, column: number): Block =>
  beside([
    { block: left, x: 0 },
    { block: right, x: columnAt(column) },
  ]);

/** The heading never stands alone at the foot of a page, nor the last note at the head of one. */
function joinedCut(blocks: readonly Block[]): Block[] {
  if (blocks.length < 4) return [stacked(blocks, 0)];
  const [head, first, ...rest] = blocks;
  const last = rest.splice(-2);
  const close = (block: Block): Block => ({ ...block, before: 0 });
  return [stacked([head, first], 0), ...rest.map(close), close(stacked(last, 0))];
}
