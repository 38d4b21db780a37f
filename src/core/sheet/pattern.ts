import type { PdfPoint } from "../measure/index.ts";
import {
  type Block,
  beside,
  Column,
  footOf,
  numberWord,
  paginate,
  stacked,
  withFeet,
} from "./column.ts";
import { cutBlocks } from "./cutList.ts";
import { finishBlock } from "./finish.ts";
import { footWords } from "./foot.ts";
import { columnAt, columns, MEASURE, STYLES } from "./grid.ts";
import { pictureBlock, sizeBlock, titleBlock } from "./head.ts";
import type { SheetJob } from "./job.ts";
import type { Item, Page, Sheet } from "./model.ts";
import { openedPages } from "./opened.ts";
import { OPENED } from "./options.ts";
import { allSteps, nextStep, orderBlocks } from "./order.ts";
import { proofBlocks } from "./proofs.ts";
import { draftReasons } from "./release.ts";
import { sizesBlock, suppliesBlock } from "./supplies.ts";

/**
 * The two-page pattern; what does not fit goes on to a further page, and each foot says of how many.
 * Questions that stand open follow at length.
 */
export function patternSheet(job: SheetJob): Sheet {
  const more = openedPages(job);
  return {
    title: job.brief.title,
    name: "pattern",
    language: "en-US",
    pages: sides(job, [...patternItems(job, more.length), ...more]),
  };
}

/** The long form: the pattern with every question open. */
export function longSheet(job: SheetJob): Sheet {
  const more = openedPages(job, OPENED);
  return {
    title: `${job.brief.title}: the long form`,
    name: "long",
    language: "en-US",
    pages: sides(job, [...patternItems(job, more.length), ...more]),
  };
}

const sides = (job: SheetJob, pages: readonly (readonly Item[])[]): Page[] =>
  withFeet(
    pages,
    job.paper,
    footWords(job),
    (i, of) => `Side ${numberWord(i + 1)} of ${numberWord(of)}`,
  );

/** How closely a part of the pattern is set. */
interface Density {
  readonly gap: PdfPoint;
  readonly picture: PdfPoint;
  readonly proofs: PdfPoint;
  /** Side of a whole block in the diagrams of the steps. */
  readonly steps: PdfPoint;
  readonly map: PdfPoint;
}

/** From the roomiest down. */
const DENSITIES: readonly Density[] = [
  { gap: 11, picture: 470, proofs: 116, steps: 104, map: 130 },
  { gap: 10, picture: 440, proofs: 104, steps: 98, map: 118 },
  { gap: 8, picture: 400, proofs: 96, steps: 90, map: 104 },
  { gap: 7, picture: 360, proofs: 88, steps: 82, map: 92 },
  { gap: 6, picture: 330, proofs: 82, steps: 76, map: 84 },
  { gap: 5, picture: 300, proofs: 78, steps: 70, map: 72 },
];

/** What is read before sewing, and what is read at the machine: each may have its own density. */
interface Setting {
  readonly before: Density;
  readonly sewing: Density;
  /** Sewing begins on a side of its own. */
  readonly parted: boolean;
}

/** Found once for each job: the pattern and the long form are set alike. */
const settings = new WeakMap<SheetJob, Setting>();

/** The pattern's sides without their feet; `more` sides follow them. */
export function patternItems(job: SheetJob, more = 0): Item[][] {
  const setting = settings.get(job) ?? settingOf(job);
  settings.set(job, setting);
  const pages = pagesOf(job, 2 + more, setting);
  return pages.length === 2 ? pages : pagesOf(job, pages.length + more, setting);
}

/**
 * The fewest sides. Where sewing can begin on a side of its own without taking one more, it does, and
 * each part is set as roomily as its sides allow; else all is set alike and runs on, with the least
 * blank at the foot of a side.
 */
function settingOf(job: SheetJob): Setting {
  const pages = (blocks: readonly Block[], d: Density) => paginate(blocks, job.paper, d.gap);
  const before = DENSITIES.map((d) => once(() => beforeBlocks(job, 2, d)));
  const sewing = DENSITIES.map((d) => once(() => sewingBlocks(job, d)));
  const roomiest = (parts: readonly (() => Block[])[]): readonly [number, number] => {
    let best: readonly [number, number] = [0, Number.POSITIVE_INFINITY];
    for (const [i, d] of DENSITIES.entries()) {
      const sides = pages(parts[i](), d).length;
      if (sides < best[1]) best = [i, sides];
      if (sides === 1) break;
    }
    return best;
  };
  const [a, b] = [roomiest(before), roomiest(sewing)];
  const parted = { before: DENSITIES[a[0]], sewing: DENSITIES[b[0]], parted: true };
  if (a[1] + b[1] <= 2) return parted;
  let best: { readonly setting: Setting; readonly sides: number; readonly blank: number } = {
    setting: parted,
    sides: a[1] + b[1],
    blank: 0,
  };
  for (const [i, d] of DENSITIES.entries()) {
    const set = pages([...before[i](), ...sewing[i]()], d);
    const setting = { before: d, sewing: d, parted: false };
    const blank = blankOf(job, set);
    const fewer = set.length < best.sides;
    if (fewer || (set.length === best.sides && !best.setting.parted && blank < best.blank - 40))
      best = { setting, sides: set.length, blank };
  }
  return best.setting;
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** The largest blank at the foot of a side that is not the last. */
function blankOf(job: SheetJob, pages: readonly (readonly Item[])[]): PdfPoint {
  return Math.max(
    0,
    ...pages.slice(0, -1).map((items) => job.paper.bottom - Math.max(...items.map(footOf))),
  );
}

function pagesOf(job: SheetJob, sides: number, { before, sewing, parted }: Setting): Item[][] {
  const first = beforeBlocks(job, sides, before);
  const second = sewingBlocks(job, sewing);
  return parted
    ? [...paginate(first, job.paper, before.gap), ...paginate(second, job.paper, sewing.gap)]
    : paginate([...first, ...second], job.paper, before.gap);
}

function beforeBlocks(job: SheetJob, sides: number, density: Density): Block[] {
  const head = new Column();
  head.put(titleBlock(job, `A pattern in ${numberWord(sides)} sides`));
  const draft = draftReasons(job);
  if (draft.length > 0) {
    head.gap(5);
    head.paragraph(`**Draft.** ${draft.join(" ")}`, STYLES.text);
  }
  head.gap(density.gap);
  return [...opening(job, head.block(), density), ...proofBlocks(job, density.proofs)];
}

function sewingBlocks(job: SheetJob, density: Density): Block[] {
  const steps = allSteps(job);
  return [
    ...orderBlocks(job, steps, density.steps),
    finishBlock(job, nextStep(job, steps), density.map),
  ];
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
