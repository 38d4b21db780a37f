import { leftWhole } from "../../block/index.ts";
import type { Brief, RulerText, WedgeBlock } from "../../brief/index.ts";
import { knownLength, lengthIn, parseLength } from "../../measure/index.ts";
import { MADE_FOR } from "../../recipe/index.ts";
import { fillRoles } from "./roles.ts";
import {
  type Change,
  choiceWord,
  inWords,
  lengthWord,
  MOST_CHOICES,
  shownLength,
  stepOfBrief,
  steppedText,
  type WordSpec,
} from "./word.ts";

/** A wedge block with its place in the brief. */
export interface Placed {
  readonly block: WedgeBlock;
  readonly index: number;
}

export const wedgeBlocks = (b: Brief): Placed[] =>
  b.blocks.flatMap((block, index) => (block.kind === "wedges" ? [{ block, index }] : []));

/** Writes to the wedge blocks with these ids. */
export const onBlocks =
  (ids: readonly string[], write: (block: WedgeBlock) => void): Change =>
  (draft) => {
    for (const block of draft.blocks)
      if (block.kind === "wedges" && ids.includes(block.id)) write(block);
  };

/** Every role a wedge of these blocks may have. */
const wedgesOf = (group: readonly Placed[]) =>
  group.flatMap(({ block }) =>
    ["wedge-even", "wedge-odd"].map((role) => ({ block: block.id, role })),
  );

/** "eight to the round": how many wedges fill the circle. */
export function countWord(b: Brief, group: readonly Placed[]): WordSpec {
  const [{ block, index }] = group;
  const ids = group.map((g) => g.block.id);
  const change = (n: WedgeBlock["n"]): Change =>
    onBlocks(ids, (d) => {
      const before = group.find((g) => g.block.id === d.id)?.block;
      withCount(d, n);
      if (before && n !== before.n) fillRoles(b, before, d);
    });
  const all = [6, 8, 10, 12, 16] as const;
  const near = block.n === 16 ? all.slice(1) : all.slice(0, MOST_CHOICES);
  return {
    ...choiceWord({
      id: `n/${ids.join("+")}`,
      role: "How many wedges go round",
      path: `blocks/${index}/n`,
      text: `${inWords(block.n)} to the round`,
      options: near.map((n) => ({
        label: `${inWords(n)} to the round`,
        change: change(n),
        picture: "block",
      })),
    }),
    kind: "count",
    read: (text) => {
      const n = all.find((m) => String(m) === text.trim() || inWords(m) === text.trim());
      return n ? change(n) : { problem: "Wedges can go round 6, 8, 10, 12 or 16 to the circle." };
    },
    step: (by) => {
      const next = all[all.indexOf(block.n) + by];
      return next === undefined ? undefined : change(next);
    },
  };
}

/** Sectors every other one of which is left whole: the kites of a block of eight. */
export const everyOther = (n: number): number[] =>
  Array.from({ length: n / 2 }, (_, i) => 2 * i + 1);

export const sameSectors = (a: readonly number[], b: readonly number[]): boolean =>
  [...a].sort((x, y) => x - y).join() === [...b].sort((x, y) => x - y).join();

/**
 * The same block with another number of wedges. Named settings stand for eight in a square only: for
 * other circles they become the sectors they leave whole, and turn back into their names at eight.
 */
function withCount(d: WedgeBlock, n: WedgeBlock["n"]): void {
  const whole = leftWhole(d);
  const kites = sameSectors(whole, everyOther(d.n));
  const deep = d.setting === "deep" || d.turned === "corner";
  const kept = whole.filter((s) => s < n);
  d.n = n;
  delete d.tree;
  delete d.inner;
  delete d.whole;
  delete d.turned;
  if (n !== 6 && n !== 12) d.outline = "square";
  if (n === 8 && (kites || kept.length === 0)) {
    d.setting = kites ? "kites" : deep ? "deep" : "plain";
    if (d.setting !== "deep") delete d.side;
    return;
  }
  d.setting = "sectors";
  delete d.side;
  d.whole = kites ? everyOther(n) : kept;
  if (deep && n !== 6 && n !== 10) d.turned = "corner";
}

/** "4 1/2 in": the strip that decides the block. */
export function stripWord(b: Brief, group: readonly Placed[]): WordSpec {
  const [{ block, index }] = group;
  const ids = group.map((g) => g.block.id);
  return lengthWord(b, {
    id: `strip/${ids.join("+")}`,
    role: "Strip the wedges are cut from",
    path: `blocks/${index}/strip`,
    value: block.strip,
    write: (draft, text) =>
      onBlocks(ids, (d) => {
        d.strip = text;
      })(draft),
    picture: "block",
    decides: wedgesOf(group),
  });
}

/** "cut blunt 1/4 in past the center": where the ruler puts the wedge's point. */
export function pointWord(b: Brief): WordSpec {
  const point = b.ruler.point;
  const to =
    (p: RulerText["point"]): Change =>
    (d) => {
      d.ruler.point = p;
    };
  const small = b.unit === "in" ? "1/4" : "6";
  const blunt = typeof point === "object" && "blunt" in point ? point : { blunt: small };
  const flat = typeof point === "object" && "flat" in point ? point : { flat: small };
  const own = b.unit === "in" ? "5/16" : "8";
  return {
    ...choiceWord({
      id: "point",
      role: "How the point of a wedge is cut",
      path: "ruler/point",
      text: pointText(b, point),
      options: [
        { label: pointText(b, "sharp"), change: to("sharp"), picture: "point" },
        { label: pointText(b, blunt), change: to(blunt), picture: "point" },
        { label: pointText(b, flat), change: to(flat), picture: "point" },
        {
          label: "by the flat of your own ruler",
          change: () => {},
          picture: "point",
          typed: typeof point === "object" && "flat" in point ? point.flat : own,
        },
      ],
      decides: [],
    }),
    kind: "length",
    read: (text) => readFlat(b, text, to),
    step: (by) => stepPoint(b, by, to),
  };
}

function pointText(b: Brief, point: RulerText["point"]): string {
  if (point === "sharp") return "cut to a sharp point";
  if ("flat" in point) return `cut with a ${shownLength(point.flat, b.unit)} flat tip`;
  const { seam = MADE_FOR } = point;
  const another = Math.abs(knownLength(seam, b.unit) - knownLength(b.seam, b.unit)) > 1e-9;
  const at = another || point.seam ? ` at a ${shownLength(seam, b.unit)} seam` : "";
  return `cut blunt ${shownLength(point.blunt, b.unit)} past the center${at}`;
}

function readFlat(b: Brief, text: string, to: (p: RulerText["point"]) => Change) {
  if (/^sharp$/i.test(text.trim())) return to("sharp");
  const r = parseLength(text, b.unit);
  if (!r.ok || r.length.value.valueOf() <= 0)
    return {
      problem: `Type the width of your ruler's flat tip, such as ${b.unit === "in" ? "5/16" : "8"}, or the word sharp.`,
    };
  if (
    lengthIn(r.length, b.unit) >
    knownLength(b.blocks.flatMap((k) => (k.kind === "wedges" ? [k.strip] : []))[0] ?? "400", b.unit)
  )
    return { problem: "A flat tip is narrower than the strip." };
  return to({ flat: text.trim() });
}

function stepPoint(b: Brief, by: 1 | -1, to: (p: RulerText["point"]) => Change) {
  const point = b.ruler.point;
  if (point === "sharp") return undefined;
  const key = "flat" in point ? "flat" : "blunt";
  const text = steppedText("flat" in point ? point.flat : point.blunt, stepOfBrief(b), by);
  return text === undefined ? undefined : to({ ...point, [key]: text } as RulerText["point"]);
}
