import { after, before, near, numbersIn } from "./numbers.ts";
import type { Fabric, Reading } from "./reading.ts";
import { bare, plainRows, plainTop, type Stuck, stuck } from "./stuck.ts";

/** Is anything missing that every pattern must say? */
export function reads(r: Reading): Stuck[] {
  const versions = new Set(r.feet.map((f) => f.match(/Version .*?\./)?.[0]));
  return [
    ...stuck("sentence", r.seam === undefined && "the seam is not stated"),
    ...stuck("How big is it?", r.top === undefined && "the finished size is not stated"),
    ...stuck("How big is it?", r.block === undefined && "the block's size is not stated"),
    ...stuck(
      "Is there enough?",
      r.usable.length === 0 &&
        r.fabrics.some((f) => f.usable === undefined) &&
        "no usable width is stated",
    ),
    ...stuck("Is there enough?", r.fabrics.length === 0 && "no fabrics are listed"),
    ...stuck("What do I cut?", r.cuts.length === 0 && "nothing is cut"),
    ...stuck("In what order?", r.steps.length === 0 && "no step is given"),
    ...stuck("foot", versions.size !== 1 && `sides carry ${versions.size} versions`),
    ...stuck(
      "foot",
      r.seam !== undefined &&
        r.feet.some((f) => !near(after(f, "Sewn with an?") ?? -1, r.seam ?? 0)) &&
        "the foot and the sentence name different seams",
    ),
  ];
}

/** The numbers of the head must agree with each other. */
export function sizes(r: Reading): Stuck[] {
  const { seam = 0, block, blocks, halves = 0, grid } = r;
  const inSentence = before(r.sentence, "blocks?");
  // Two halves fill the place of a block, but for those that fill the edges instead of triangles.
  const inBlocks = /with half blocks at the edges/.test(r.sentence) ? 0 : halves / 2;
  const tall = /(\d+) by (\d+) in/.exec(r.sentence);
  const kinds = r.kinds.reduce((sum, k) => sum + k.count, 0);
  const slack = r.unit === "in" ? 0.02 : 0.6;
  return [
    ...stuck(
      "How big is it?",
      block &&
        !near(block.raw, block.finished + 2 * seam, slack) &&
        `a ${block.finished} block is not ${block.raw} unfinished with a ${seam} seam`,
    ),
    ...stuck(
      "How big is it?",
      blocks !== undefined &&
        inSentence !== undefined &&
        blocks + inBlocks !== inSentence &&
        `${inSentence} blocks in the sentence, ${blocks} and ${halves} halves in the sizes`,
    ),
    ...stuck(
      "How big is it?",
      grid &&
        blocks !== undefined &&
        plainRows(r) &&
        grid[0] * grid[1] !== blocks &&
        `${grid[0]} rows of ${grid[1]} are not ${blocks} blocks`,
    ),
    ...stuck(
      "sentence",
      tall !== null &&
        grid !== undefined &&
        (Number(tall[1]) !== grid[0] || Number(tall[2]) !== grid[1]) &&
        "the sentence has another number of rows",
    ),
    ...staleSizes(r),
    ...stuck("How big is it?", fullTop(r)),
    ...stuck(
      "In what order?",
      blocks !== undefined &&
        r.kinds.length > 0 &&
        plainRows(r) &&
        kinds !== blocks &&
        `steps make ${kinds} blocks, ${blocks} are wanted`,
    ),
  ];
}

/** Strips and squares named in the sentence are cut in the list. Centimeters are left to the reader. */
function staleSizes(r: Reading): Stuck[] {
  if (r.unit === "mm") return [];
  const strips = r.cuts.flatMap((c) => [
    c.wide,
    after(bare(c), "trimmed to"),
    after(bare(c), "strips?"),
  ]);
  const squares = r.cuts.map((c) => after(bare(c), "squares?"));
  const cut = (list: readonly (number | undefined)[], x: number): boolean =>
    list.some((y) => y !== undefined && near(x, y));
  const named = (words: string): number[] =>
    [...r.sentence.matchAll(new RegExp(`from (\\d[^a-z]*) in ${words}`, "g"))].flatMap((m) =>
      numbersIn(m[1]),
    );
  return [
    ...named("strips").flatMap((x) =>
      stuck("sentence", !cut(strips, x) && `strips of ${x} are named and never cut`),
    ),
    ...named("squares").flatMap((x) =>
      stuck("sentence", !cut(squares, x) && `squares of ${x} are named and never cut`),
    ),
  ];
}

function fullTop(r: Reading): string | undefined {
  const { top, block, grid } = r;
  if (!top || !block || !grid || !plainTop(r)) return undefined;
  const wide = grid[1] * block.finished;
  const high = grid[0] * block.finished;
  const slack = 0.002 * Math.max(wide, high);
  return near(top[0], wide, slack) && near(top[1], high, slack)
    ? undefined
    : `${grid[0]} rows of ${grid[1]} blocks of ${block.finished} are ${wide} × ${high}, not ${top[0]} × ${top[1]}`;
}

/** Length of fabric in the document's unit that an amount on the list holds. */
const lengthOf = (amount: number, unit: "in" | "mm"): number =>
  amount * (unit === "in" ? 36 : 1000);

export function buys(r: Reading): Stuck[] {
  return r.fabrics.flatMap((f) => {
    const own = r.cuts.filter((c) => c.fabric === f.letter);
    const strips = own.filter(
      (c) => c.strips !== undefined && c.wide !== undefined && !/^from the /.test(c.into),
    );
    const cut = strips.reduce((sum, c) => sum + (c.strips ?? 0) * (c.wide ?? 0), 0);
    const wrong = r.wrongStrip.get(f.letter) ?? 0;
    const room = (r.straighten ?? 0) + (r.toRepeat.get(f.letter) ?? 0);
    const left = cut + room + wrong + (r.extra.get(f.letter) ?? 0);
    const needed = left / (1 - (r.washed.get(f.letter) ?? 0));
    const sewn = /strip set/.test(f.text);
    const where = `fabric ${f.letter}`;
    const short =
      f.yards.length > 0 && f.yards[0] > 0 && lengthOf(f.yards[0], r.unit) < needed - 0.01;
    const much =
      f.yards.length > 0 &&
      f.yards[0] > 0 &&
      !turnedRepeats(f) &&
      lengthOf(f.yards[0], r.unit) > needed + lengthOf(r.unit === "in" ? 0.26 : 0.15, r.unit);
    return [
      ...stuck(
        where,
        own.length === 0 && !/binding|backing/.test(f.text) && "is bought and never cut",
      ),
      ...stuck(where, !sewn && f.yards.length < 1 && "has no amount"),
      ...stuck(
        where,
        short && `${f.yards[0]} bought hold ${lengthOf(f.yards[0], r.unit)}, ${needed} are needed`,
      ),
      ...stuck(
        where,
        much &&
          `${f.yards[0]} bought hold ${lengthOf(f.yards[0], r.unit)}, only ${needed} are needed`,
      ),
      ...stuck(
        where,
        f.yards.length > 1 &&
          f.yards[1] < f.yards[0] - 1e-9 &&
          "less is bought of the narrower fabric",
      ),
      ...usesAgree(r, f, where),
    ];
  });
}

/** A repeat to be matched costs fabric that no cutting list shows. */
const turnedRepeats = (f: Fabric): boolean => /repeat/.test(f.text);

function usesAgree(r: Reading, f: Fabric, where: string): Stuck[] {
  const cut = new Map<string, number>();
  for (const c of r.cuts)
    if (c.fabric === f.letter && c.pieces !== undefined)
      cut.set(c.name, (cut.get(c.name) ?? 0) + c.pieces);
  return [...f.uses].flatMap(([name, n]) =>
    stuck(
      where,
      (cut.get(name) ?? 0) !== n && `${n} ${name} are named, the list cuts ${cut.get(name) ?? 0}`,
    ),
  );
}
