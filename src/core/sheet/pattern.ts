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
  readonly before: Before;
  readonly sewing: Density;
  /** Sewing begins on a side of its own. */
  readonly parted: boolean;
}

/** How what is read before sewing is set. */
interface Before extends Density {
  /** The cutting list lies across the sheet even where it has room beside the picture. */
  readonly wideList: boolean;
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
  const befores = DENSITIES.flatMap((density) => {
    const proofs = once(() => proofBlocks(job, density.proofs));
    const ways = liesAcross(job) ? [false] : [false, true];
    return ways.map((wideList) => {
      const d: Before = { ...density, wideList };
      return { d, blocks: once(() => beforeBlocks(job, 2, d, proofs())) };
    });
  });
  const sewings = DENSITIES.map((d) => ({ d, blocks: once(() => sewingBlocks(job, d)) }));
  const a = roomiest(job, befores);
  const b = roomiest(job, sewings);
  const parted = { before: a.d, sewing: b.d, parted: true };
  if (a.pages.length + b.pages.length <= 2) return parted;
  let best: { readonly setting: Setting; readonly sides: number; readonly blank: number } = {
    setting: parted,
    sides: a.pages.length + b.pages.length,
    blank: blankOf(job, [...a.pages, []]),
  };
  for (const before of befores) {
    const sewing = sewings.find((s) => s.d.gap === before.d.gap) ?? sewings[0];
    const set = paginate([...before.blocks(), ...sewing.blocks()], job.paper, before.d.gap);
    const setting = { before: before.d, sewing: sewing.d, parted: false };
    const blank = blankOf(job, set);
    if (set.length < best.sides || (set.length === best.sides && blank < best.blank - 40))
      best = { setting, sides: set.length, blank };
  }
  return best.setting;
}

/** The roomiest way of those that take the fewest sides. */
function roomiest<D extends Density>(
  job: SheetJob,
  ways: readonly { readonly d: D; readonly blocks: () => Block[] }[],
): { readonly d: D; readonly pages: readonly (readonly Item[])[] } {
  let best: { readonly d: D; readonly pages: readonly (readonly Item[])[] } | undefined;
  for (const { d, blocks } of ways) {
    const pages = paginate(blocks(), job.paper, d.gap);
    if (best === undefined || pages.length < best.pages.length) best = { d, pages };
    if (pages.length === 1) break;
  }
  if (best === undefined) throw new RangeError("a pattern has at least one way to be set");
  return best;
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

function beforeBlocks(
  job: SheetJob,
  sides: number,
  density: Before,
  proofs: readonly Block[] = proofBlocks(job, density.proofs),
): Block[] {
  const head = new Column();
  head.put(titleBlock(job, `A pattern in ${numberWord(sides)} sides`));
  const draft = draftReasons(job);
  if (draft.length > 0) {
    head.gap(5);
    head.paragraph(`**Draft.** ${draft.join(" ")}`, STYLES.text);
  }
  head.gap(density.gap);
  return [...opening(job, head.block(), density), ...proofs];
}

function sewingBlocks(job: SheetJob, density: Density): Block[] {
  const steps = allSteps(job);
  return [
    ...orderBlocks(job, steps, density.steps),
    finishBlock(job, nextStep(job, steps), density.map),
  ];
}

/** A wide quilt lies across the sheet. */
const liesAcross = ({ answer: { quilt } }: SheetJob): boolean =>
  quilt !== undefined && quilt.width > 1.35 * quilt.height;

/**
 * Title, picture, sizes, supplies and cutting list. A tall quilt holds the left four columns and all
 * that is to be read stands at its right; a wide one lies across the sheet, its sizes beside it.
 */
function opening(job: SheetJob, head: Block, density: Before): Block[] {
  const room = job.paper.bottom - job.paper.top - head.height;
  if (liesAcross(job)) {
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
  if (all.height <= room && !density.wideList)
    return [stacked([head, sideBySide(picture, all, 4)], 0)];
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
  const [last, note] = rest.splice(-2);
  const close = (block: Block): Block => ({ ...block, before: 0 });
  const end = { ...stacked([last, note], 0), atTop: stacked([last.atTop ?? last, note], 0) };
  return [stacked([head, first], 0), ...rest.map(close), close(end)];
}
