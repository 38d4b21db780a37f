import type { BlockGeometry } from "../block/types.ts";
import type { Finding } from "../findings/index.ts";
import { cross, norm } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { TopItem, TopRows } from "../quilt/index.ts";
import { armsOf, crossingsIn, seamThroughCenter } from "./crossings.ts";
import { kindsOf } from "./kinds.ts";
import { bestSides, type Leaning, type Wish } from "./nest.ts";
import {
  crossingsInRows,
  EVEN_ROWS,
  ODD_ROWS,
  otherPressing,
  ROW_JOIN,
  SASHED_ROWS,
  STONE_ROWS,
} from "./rowCrossings.ts";
import type { PatchKey } from "./same.ts";
import { middleOf, type SeamNode, seamNodes } from "./tree.ts";
import type { Crossing, Press } from "./types.ts";

/** To one side wherever that makes seams nest, or every seam open. */
export type PressStyle = "side" | "open";

export interface PressWishes {
  readonly style: PressStyle;
  readonly key: PatchKey;
  readonly near: Length;
  /** What lies side by side, row by row; without it only the inside of the blocks is looked at. */
  readonly rows?: TopRows;
  /** Blocks that may be pressed the other way, like the dark squares of a checkerboard. */
  readonly second?: (item: TopItem) => boolean;
  /** May the long seam be opened at the center, so that both its arms lie the same way round? */
  readonly fan?: boolean;
  /** What the maker has decided, by seam id. */
  readonly fixed?: Readonly<Record<string, Press>>;
}

export interface JudgedCrossing extends Crossing {
  readonly nests: boolean;
}

export interface Pressing {
  readonly bySeam: Readonly<Record<string, Press>>;
  /** Every second block, like the dark squares of a checkerboard, when that makes more nest. */
  readonly otherBlocks?: Readonly<Record<string, Press>>;
  /** Which way the seams inside the rows lie, odd rows (the top one first) and even rows. */
  readonly rows: { readonly odd: "left" | "right"; readonly even: "left" | "right" };
  /** Seams between a sash and a block, and between a sash and a cornerstone: toward the sash, or away. */
  readonly sashes: { readonly blocks: "sash" | "away"; readonly cornerstones: "sash" | "away" };
  /** Units that are alike are pressed alike, so that one may stand for the other. */
  readonly unitsAlike: boolean;
  readonly crossings: readonly JudgedCrossing[];
  readonly nesting: number;
  readonly total: number;
}

interface Variables {
  readonly count: number;
  /** Seam name -> variable, and whether the seam's first part is the variable's. */
  readonly of: ReadonlyMap<string, { readonly index: number; readonly same: boolean }>;
}

const LEAN = 1e-4;
const DECIDED = 1e7;

/**
 * A side for every seam so that the greatest possible number of crossings nests: units that are
 * alike pressed alike and all blocks alike if that costs no crossing, else as few exceptions as
 * those allow. Method and proof that it is the greatest: docs/geometry/pressing.md.
 */
export function press(blocks: readonly BlockGeometry[], wishes: PressWishes): Pressing {
  const byId = new Map(blocks.map((b) => [b.id, b]));
  const { rows, near } = wishes;
  const fanned = fannedSeams(blocks, wishes);
  const times = timesOf(rows);
  const inner = (other: boolean): Crossing[] =>
    blocks.flatMap((b) =>
      crossingsIn(b.tree, near, fanned.get(b.id))
        .map((x) => ({ ...x, count: x.count * (times.get(b.id) ?? 1) }))
        .map((x) => (other ? otherBlock(x) : x)),
    );
  const second = wishes.second ?? (() => false);
  const between = (checkerboard: boolean): Crossing[] =>
    rows ? crossingsInRows(byId, rows, checkerboard ? second : () => false, fanned, near) : [];
  const plain = [...inner(false), ...between(false)];
  if (wishes.style === "open") return allOpen(blocks, plain);
  const tries: (() => Pressing)[] = [
    () => solve(blocks, wishes, fanned, plain, false, true),
    () => solve(blocks, wishes, fanned, plain, false, false),
  ];
  if (rows && wishes.second) {
    const checker = () => [...inner(false), ...inner(true), ...between(true)];
    tries.push(() => solve(blocks, wishes, fanned, checker(), true, true));
    tries.push(() => solve(blocks, wishes, fanned, checker(), true, false));
  }
  let best: Pressing | undefined;
  for (const attempt of tries) {
    const made = attempt();
    if (!best || made.nesting / made.total > best.nesting / best.total + 1e-12) best = made;
    if (best.nesting === best.total) break;
  }
  return best as Pressing;
}

/** How often each kind of block lies in the rows: as often as its inner crossings count. */
function timesOf(rows: TopRows | undefined): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const item of rows?.rows.flatMap((r) => r.items) ?? [])
    times.set(item.of, (times.get(item.of) ?? 0) + 1);
  return times;
}

/** Block id -> the seam that is pressed in two arms; none where the maker has decided or forbids it. */
function fannedSeams(blocks: readonly BlockGeometry[], wishes: PressWishes): Map<string, string> {
  if (wishes.style === "open" || wishes.fan === false) return new Map();
  return new Map(
    blocks.flatMap((b) => {
      const seam = seamThroughCenter(b.tree, wishes.near);
      return seam && !wishes.fixed?.[seam.id] ? [[b.id, seam.id]] : [];
    }),
  );
}

const otherBlock = (x: Crossing): Crossing => ({
  ...x,
  joinedBy: otherPressing(x.joinedBy),
  seams: [otherPressing(x.seams[0]), otherPressing(x.seams[1])],
});

function allOpen(blocks: readonly BlockGeometry[], crossings: readonly Crossing[]): Pressing {
  return {
    bySeam: Object.fromEntries(
      blocks.flatMap((b) => seamNodes(b.tree).map((s) => [s.id, "open" as const])),
    ),
    rows: { odd: "left", even: "left" },
    sashes: { blocks: "sash", cornerstones: "sash" },
    unitsAlike: true,
    crossings: crossings.map((x) => ({ ...x, nests: false })),
    nesting: 0,
    total: crossings.reduce((sum, x) => sum + x.count, 0),
  };
}

function solve(
  blocks: readonly BlockGeometry[],
  wishes: PressWishes,
  fanned: ReadonlyMap<string, string>,
  crossings: readonly Crossing[],
  checkerboard: boolean,
  unitsAlike: boolean,
): Pressing {
  const arms = new Set(fanned.values());
  const vars = variablesOf(blocks, wishes, arms, checkerboard, unitsAlike);
  const fixed = wishes.fixed ?? {};
  const at = (id: string) => vars.of.get(id) as { index: number; same: boolean };
  const isOpen = (id: string): boolean => fixed[id] === "open";
  const pairs = crossings
    .filter((x) => !x.seams.some(isOpen))
    .map((x): Wish => {
      const [u, v] = x.seams.map(at);
      return {
        u: u.index,
        v: v.index,
        differ: (x.differ !== u.same) !== v.same,
        weight: x.count,
      };
    });
  const leanings = leaningsOf(blocks, fixed, vars, arms, checkerboard);
  const { sides } = bestSides(vars.count, pairs, leanings);
  const sideOf = (id: string): "first" | "second" | "open" => {
    if (isOpen(id)) return "open";
    const { index, same } = at(id);
    return sides[index] === same ? "second" : "first";
  };
  const pressOf = (node: SeamNode, rename: (id: string) => string): Press => {
    if (!arms.has(node.id)) return sideOf(rename(node.id));
    const [a, b] = armsOf(node.id).map((arm) => sideOf(rename(arm)));
    if (a === b) return a;
    // Seen from the center along the arm that ends at `to`: is its first part on the left?
    const left = cross(node.seam.to, middleOf(node.parts[0])) > 0;
    return left === (b === "first") ? "anticlockwise" : "clockwise";
  };
  const judged = crossings.map((x): JudgedCrossing => {
    const [u, v] = x.seams.map(sideOf);
    return { ...x, nests: u !== "open" && v !== "open" && (u !== v) === x.differ };
  });
  const side = (id: string): "left" | "right" => (sideOf(id) === "first" ? "left" : "right");
  const toward = (id: string): "sash" | "away" => (sideOf(id) === "first" ? "sash" : "away");
  const seams = blocks.flatMap((b) => seamNodes(b.tree));
  const all = (rename: (id: string) => string) =>
    Object.fromEntries(seams.map((s) => [s.id, pressOf(s, rename)]));
  return {
    bySeam: all((id) => id),
    ...(checkerboard && { otherBlocks: all(otherPressing) }),
    rows: { odd: side(ODD_ROWS), even: side(EVEN_ROWS) },
    sashes: { blocks: toward(SASHED_ROWS), cornerstones: toward(STONE_ROWS) },
    unitsAlike,
    crossings: judged,
    nesting: judged.reduce((sum, x) => sum + (x.nests ? x.count : 0), 0),
    total: judged.reduce((sum, x) => sum + x.count, 0),
  };
}

function variablesOf(
  blocks: readonly BlockGeometry[],
  wishes: PressWishes,
  arms: ReadonlySet<string>,
  checkerboard: boolean,
  unitsAlike: boolean,
): Variables {
  const of = new Map<string, { index: number; same: boolean }>();
  let count = 0;
  const add = (id: string, index: number, same: boolean) => of.set(id, { index, same });
  for (const rename of checkerboard ? [(id: string) => id, otherPressing] : [(id: string) => id])
    for (const b of blocks) {
      const kinds = unitsAlike
        ? kindsOf(b.tree, wishes.key, wishes.near).map((k) => k.members)
        : seamNodes(b.tree).map((node) => [{ node, sameSide: true }]);
      for (const members of kinds) {
        const fanned = members.find((m) => arms.has(m.node.id));
        if (fanned) for (const arm of armsOf(fanned.node.id)) add(rename(arm), count++, true);
        const others = members.filter((m) => m !== fanned);
        for (const m of others) add(rename(m.node.id), count, m.sameSide);
        if (others.length > 0) count++;
      }
    }
  for (const id of [ODD_ROWS, EVEN_ROWS, SASHED_ROWS, STONE_ROWS])
    of.set(id, { index: count++, same: true });
  return { count, of };
}

/** What is taken where nesting leaves the choice: the same way round, or away from the center. */
function leaningsOf(
  blocks: readonly BlockGeometry[],
  fixed: Readonly<Record<string, Press>>,
  vars: Variables,
  arms: ReadonlySet<string>,
  checkerboard: boolean,
): Leaning[] {
  const lean = (id: string, toFirst: boolean, weight: number): Leaning[] =>
    (checkerboard ? [id, otherPressing(id)] : [id]).map((name) => {
      const { index, same } = vars.of.get(name) as { index: number; same: boolean };
      return { u: index, to: toFirst !== same, weight };
    });
  const toSashes = [SASHED_ROWS, STONE_ROWS].map((id): Leaning => {
    const { index, same } = vars.of.get(id) as { index: number; same: boolean };
    return { u: index, to: !same, weight: LEAN };
  });
  const inBlocks = blocks.flatMap((b) =>
    seamNodes(b.tree).flatMap((s) => {
      const [first, second] = s.parts.map(middleOf);
      const { from, to } = s.seam;
      if (arms.has(s.id)) {
        const [a, c] = armsOf(s.id);
        return [...lean(a, cross(from, first) > 0, LEAN), ...lean(c, cross(to, first) > 0, LEAN)];
      }
      const decided = fixed[s.id];
      if (decided) return decided === "open" ? [] : lean(s.id, decided === "first", DECIDED);
      const [inner, outer] = norm(from) <= norm(to) ? [from, to] : [to, from];
      const toFirst =
        norm(inner) <= 1e-6 * b.width ? cross(outer, first) > 0 : norm(first) > norm(second);
      return lean(s.id, toFirst, LEAN);
    }),
  );
  return [...toSashes, ...inBlocks];
}

/** A seam between blocks in words, any other by its id; blocks of the other pressing have it too. */
const placeOf = (seamId: string): string =>
  BETWEEN_WORDS[seamId] ?? seamId.replace(otherPressing(""), "");

const BETWEEN_WORDS: Readonly<Record<string, string>> = {
  [ODD_ROWS]: "the seams between blocks",
  [EVEN_ROWS]: "the seams between blocks",
  [SASHED_ROWS]: "the seams between blocks and sashes",
  [STONE_ROWS]: "the seams between sashes and cornerstones",
  [ROW_JOIN]: "the joins of the rows",
};

/** Where seams that are pressed to a side cannot nest, as advice. */
export function pressingFindings(p: Pressing): Finding[] {
  const open = (id: string): boolean => p.bySeam[id] === "open";
  return p.crossings
    .filter((x) => !x.nests && !x.seams.some(open))
    .map((x) => ({
      code: "crossing-does-not-nest",
      severity: "advice",
      place: placeOf(x.joinedBy),
      words: { why: "Press one of the two open there." },
    }));
}
