import type { SeamTree } from "../../block/types.ts";
import { type Brief, seamOf } from "../../brief/index.ts";
import { say } from "../../findings/index.ts";
import { type Length, printAtMark, type Step } from "../../measure/index.ts";
import { centerPlies } from "../../sewing/plies.ts";
import { type Chain, chainsOf, stepsOf as groupsOf } from "../../sewing/steps.ts";
import { seamNodes } from "../../sewing/tree.ts";
import type { SewnUnit } from "../../sewing/types.ts";
import type { Answer, AnswerBlock } from "../types/answer.ts";
import { inWords, stepOfBrief } from "../words/word.ts";

/** One step at the machine, worded: a kind of unit, or one patch put on again and again. */
export interface StepRow {
  readonly id: string;
  /** The unit after the step. */
  readonly unit: SewnUnit;
  /** All units sewn in it, in their order. */
  readonly units: readonly SewnUnit[];
  /** "pair", "half", "block": what it has become. */
  readonly name: string;
  /** "A1 to B1". */
  readonly joins: string;
  readonly copies: string;
  /** How to lay the two parts; empty when it cannot go wrong. */
  readonly lay: string;
  /** What can be fed through one after another; empty when there is but one. */
  readonly chain: string;
  readonly press: string;
  readonly measure: string;
  /** The straight-edge check, squaring up and seams that cannot nest: a sentence each. */
  readonly checks: readonly string[];
}

export interface BlockSteps {
  readonly block: AnswerBlock;
  readonly steps: readonly StepRow[];
}

interface Bench {
  readonly brief: Brief;
  readonly answer: Answer;
  readonly step: Step;
  readonly seam: Length;
  readonly letterOf: (id: string) => string;
}

/** The steps of each kind of block in the order they are sewn. */
export function sewingSteps(b: Brief, a: Answer): BlockSteps[] {
  const step = stepOfBrief(b);
  const seam = seamOf(b);
  return a.blocks.map((block) => {
    const units = a.units.filter((u) => u.blockId === block.id).sort((x, y) => x.stage - y.stage);
    const letterOf = (id: string): string =>
      units.find((u) => u.id === id || u.seamIds.includes(id))?.letter ??
      a.pieces.find((p) => p.id === block.pieceOf[id])?.letter ??
      "";
    const bench: Bench = { brief: b, answer: a, step, seam, letterOf };
    const groups = groupsOf(units);
    const chains = chainsOf(units);
    return {
      block,
      steps: groups.map((group, i) => rowOf(bench, block, group, chains, i === groups.length - 1)),
    };
  });
}

function rowOf(
  bench: Bench,
  block: AnswerBlock,
  group: readonly SewnUnit[],
  chains: readonly Chain[],
  last: boolean,
): StepRow {
  const unit = group[group.length - 1];
  return {
    id: unit.id,
    unit,
    units: group,
    name: last ? "block" : unitName(block, unit),
    joins: joinsText(group, bench.letterOf),
    copies: `${inWords(unit.inAll)} of them, ${inWords(unit.copies)} to a block`,
    lay: layText(group[0], bench.letterOf),
    chain: chainText(group, chains, bench.letterOf),
    press: pressText(unit, bench.letterOf),
    measure: measureText(bench.step, unit),
    checks: [
      ...(unit.straightEdge
        ? ["Lay a straight edge along the long raw edge: no light may show."]
        : []),
      ...squareText(unit, bench.step),
      ...pliesText(block, group, bench),
      ...nestText(group, bench),
    ],
  };
}

/**
 * What the trade calls a unit by the sectors it fills: two wedges are a pair, all of them alone an
 * octagon; a wedge of eight with its background is an eighth, and two of those are a quarter.
 */
function unitName(block: AnswerBlock, unit: SewnUnit): string {
  const n = block.radial?.n;
  if (!n) return `unit ${unit.letter}`;
  const own = new Set(patchesIn(block.tree, unit.id));
  const patches = block.patches.filter((p) => own.has(p.id));
  const sectors = new Set(patches.map((p) => p.sector)).size;
  const wedgesAlone = patches.length === sectors;
  if (sectors === 2 && wedgesAlone) return `pair ${unit.letter}`;
  if (sectors === 1 && n === 8) return `eighth ${unit.letter}`;
  if (sectors === n / 2) return `half ${unit.letter}`;
  if (sectors === n / 4) return `quarter ${unit.letter}`;
  if (n === 8 && sectors === n && wedgesAlone) return `octagon ${unit.letter}`;
  return `unit ${unit.letter}`;
}

/** Patches in the unit with this id; none where the tree has no such unit. */
function patchesIn(tree: SeamTree, id: string, within = false): string[] {
  if (tree.kind === "patch") return within ? [tree.patch.id] : [];
  return tree.parts.flatMap((part) => patchesIn(part, id, within || tree.id === id));
}

/** "A1 to B1"; "four C1 onto U3, one by one"; two hands of one step after each other. */
function joinsText(group: readonly SewnUnit[], letterOf: (id: string) => string): string {
  const [first] = group;
  const own = new Set(group.flatMap((u) => u.seamIds));
  const grows = group.length > 1 && group.slice(1).every((u) => u.of.some((id) => own.has(id)));
  const pair = (u: SewnUnit): string => `${letterOf(u.of[0])} to ${letterOf(u.of[1])}`;
  if (!grows) return group.map(pair).join("; ");
  const [onto, added] = own.has(group[1].of[0])
    ? [first.of[0], group[1].of[1]]
    : [first.of[1], group[1].of[0]];
  return `${inWords(group.length)} ${letterOf(added)} onto ${letterOf(onto)}, one by one`;
}

/** Which part lies left, where the letters tell it; else only that all are laid alike. */
function layText(unit: SewnUnit, letterOf: (id: string) => string): string {
  const [left, right] = [letterOf(unit.of[unit.lay.left]), letterOf(unit.of[1 - unit.lay.left])];
  if (!unit.lay.alike) return "";
  const way = "right sides up, the end nearest the center toward you";
  return left === right || left === "" || right === ""
    ? `lay all of them alike: ${way}`
    : `lay all of them alike: ${way}, ${left} left of ${right}`;
}

function chainText(
  group: readonly SewnUnit[],
  chains: readonly Chain[],
  letterOf: (id: string) => string,
): string {
  const own = new Set(group.map((u) => u.id));
  const mine = chains.filter((c) => own.has(c.unitId));
  if (mine.length === 0) return "";
  const apart = mine.flatMap((c) =>
    c.keepFrom && own.has(c.keepFrom) ? [letterOf(c.unitId)] : [],
  );
  if (apart.length > 1)
    return `chain-piece ${mine.map((c) => `${c.copies} ${letterOf(c.unitId)}`).join(", then ")}: two stacks, because they are lefts and rights`;
  const [{ copies, keepFrom }] = mine;
  const other = keepFrom ? `; keep them from ${letterOf(keepFrom)}, the other hand` : "";
  const many = group.length > 1 ? `${copies} for each seam` : `all ${copies}`;
  return `chain-piece ${many}${other}`;
}

const PRESS: Readonly<Record<string, string>> = {
  open: "press open",
  anticlockwise: "press anticlockwise round the center",
  clockwise: "press clockwise round the center",
};

function pressText(unit: SewnUnit, letterOf: (id: string) => string): string {
  const toward = unit.press === "first" ? unit.of[0] : unit.press === "second" ? unit.of[1] : "";
  const [a, b] = unit.of.map(letterOf);
  if (PRESS[unit.press]) return PRESS[unit.press];
  if (a !== b) return `press toward ${letterOf(toward)}`;
  if (!unit.lay.alike) return "press as the arrow shows";
  const left = unit.of[unit.lay.left] === toward;
  return `press toward the ${left ? "left" : "right"} one, as they lay before the seam`;
}

/** The widths worth stopping for: those between parallel edges, else the one easiest to take. */
export function worthMeasuring(unit: SewnUnit): SewnUnit["measures"] {
  const sorted = [...unit.measures].sort((x, y) => MEASURE_RANK[x.kind] - MEASURE_RANK[y.kind]);
  const across = sorted.filter((m) => m.kind === "across");
  return across.length > 0 ? across : sorted.slice(0, 1);
}

/** "8 1/2 in across, four ways". */
function measureText(step: Step, unit: SewnUnit): string {
  const [first] = worthMeasuring(unit);
  if (!first) return "";
  const ways = first.ways > 1 ? `, ${inWords(first.ways)} ways` : "";
  return `${printAtMark(first.unfinished, step)} ${HOW_MEASURED[first.kind]}${ways}`;
}

const MEASURE_RANK = { across: 0, corner: 1, along: 2 } as const;

export const HOW_MEASURED = {
  across: "across",
  corner: "edge to corner",
  along: "along its edge",
} as const;

function squareText({ squareUp }: SewnUnit, step: Step): string[] {
  if (!squareUp) return [];
  const sides = [...new Set(squareUp.toEachSide.map((x) => printAtMark(x, step)))];
  const line = squareUp.line ? `, with the ruler's ${squareUp.line.degrees} line on a seam` : "";
  return [`Square up from the center: ${sides.join(" and ")} to each side${line}.`];
}

/** How thick the center is, before and after its allowances are fanned open. */
function pliesText(block: AnswerBlock, group: readonly SewnUnit[], bench: Bench): string[] {
  const fanned = group.find((u) => u.press === "anticlockwise" || u.press === "clockwise");
  if (!fanned) return [];
  const pressed = Object.fromEntries(
    bench.answer.units.flatMap((u) => u.seamIds.map((id) => [id, u.press] as const)),
  );
  const near = 1e-7 * Math.max(1, block.width);
  const known = seamNodes(block.tree).every((s) => pressed[s.id] !== undefined);
  const plies = known ? centerPlies(block.tree, pressed, bench.seam, near) : undefined;
  if (!plies || plies.after.most >= plies.before.most) return [];
  return [
    `At the center ${plies.before.most} layers lie over one another; with the allowances fanned open, ${plies.after.most}.`,
  ];
}

function nestText(group: readonly SewnUnit[], { answer, step }: Bench): string[] {
  const own = new Set(group.flatMap((u) => u.seamIds));
  const found = answer.findings.filter(
    (f) => f.code === "crossing-does-not-nest" && own.has(f.place),
  );
  return [...new Set(found.map((f) => say(f, { step })))];
}
