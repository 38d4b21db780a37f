import { sideIsFixed } from "../../block/index.ts";
import type { Block, Brief, UnitBlock, WedgeBlock } from "../../brief/index.ts";
import { blocksOf, measuresOf } from "../cut/stages.ts";
import {
  kindsInPlan,
  kindsOfPlan,
  MIXES,
  mixNow,
  planOf,
  planText,
  readPlan,
  TURNINGS,
  turningNow,
} from "./plan-of-kinds.ts";
import { fillRoles, outerFabric } from "./roles.ts";
import {
  type Change,
  choiceWord,
  inWords,
  MOST_CHOICES,
  type Option,
  type WordSpec,
} from "./word.ts";

/** Leaves only these kinds of block in the brief. */
export const kept = (d: Brief, ids: readonly string[]): void => {
  d.blocks = d.blocks.filter((k) => ids.includes(k.id)) as Brief["blocks"];
};

/** How the plan is turned: by its name, else as it lies where only the kinds change places. */
const lyingNow = (b: Brief) => {
  const name = turningNow(b);
  return name === undefined ? TURNINGS["none turned"] : TURNINGS[name];
};

/** "by turns": how the kinds of block follow each other, or one kind alone. */
export function mixWord(b: Brief): WordSpec {
  const kinds = kindsInPlan(b);
  const text = mixNow(b) ?? "as planned";
  const alike: Option = {
    label: "all alike",
    change: (d) => {
      d.quilt.plan = planOf([[kinds[0]]], lyingNow(b));
      kept(d, [kinds[0]]);
    },
    picture: "quilt",
  };
  const mixed = Object.entries(MIXES).map(
    ([label, make]): Option => ({
      label,
      change: (d) => {
        const ids = kinds.length > 1 ? kinds : [kinds[0], addPartner(d, kinds)];
        d.quilt.plan = planOf(make(ids), lyingNow(b));
      },
      picture: "quilt",
    }),
  );
  const all = [alike, ...mixed];
  const shown = all.some((o) => o.label === text)
    ? all
    : [{ label: text, change: () => {}, picture: "quilt" as const }, ...all];
  return choiceWord({
    id: "mix",
    role: "How the kinds of block follow each other",
    path: "quilt/plan",
    text,
    options: shown
      .slice(0, MOST_CHOICES)
      .map((o) => (o.label === text ? { ...o, change: () => {} } : o)),
  });
}

/** "none turned": how blocks lie in the plan; the last choice is the plan itself, typed. */
export function turningWord(b: Brief): WordSpec {
  const now = turningNow(b);
  const text = now ?? "turned as planned";
  const to =
    (name: string): Change =>
    (d) => {
      d.quilt.plan = planOf(kindsOfPlan(b), TURNINGS[name]);
    };
  const names = Object.keys(TURNINGS);
  const near = names.slice(0, MOST_CHOICES - 1);
  const list = near.includes(text) ? near : [text, ...near.slice(0, MOST_CHOICES - 2)];
  return {
    ...choiceWord({
      id: "turning",
      role: "How the blocks are turned",
      path: "quilt/plan",
      text,
      options: [
        ...list.map((label) => ({
          label,
          change: label === text ? () => {} : to(label),
          picture: "quilt" as const,
        })),
        {
          label: "a plan you type",
          change: () => {},
          picture: "quilt",
          typed: planText(b),
        },
      ],
    }),
    read: (typed) => {
      const name = names.find((n) => n === typed.trim().toLowerCase());
      if (name) return to(name);
      const plan = readPlan(b, typed);
      if ("problem" in plan) return plan;
      return (d) => {
        d.quilt.plan = plan;
      };
    },
    step: (by) => {
      const next = names[names.indexOf(text) + by];
      return now !== undefined && next !== undefined ? to(next) : undefined;
    },
  };
}

/** Kinds a sentence still reads well with. */
const MOST_KINDS = 12;

/** "two kinds of block": one more brings a partner that finishes alike; one less leaves out the last. */
export function kindsWord(b: Brief): WordSpec {
  const kinds = kindsInPlan(b);
  const say = (n: number): string => `${n === 1 ? "one kind" : `${inWords(n)} kinds`} of block`;
  const to =
    (n: number): Change =>
    (d) => {
      const ids = kinds.slice(0, n);
      while (ids.length < n) ids.push(addPartner(d, ids));
      const mix = MIXES[mixNow(b) ?? ""] ?? MIXES["by turns"];
      if (n !== kinds.length) d.quilt.plan = planOf(mix(ids), lyingNow(b));
      if (n < kinds.length) kept(d, ids);
    };
  const from = Math.max(1, Math.min(kinds.length - 1, MOST_KINDS - 3));
  return {
    ...choiceWord({
      id: "kinds",
      role: "How many kinds of block",
      path: "quilt/plan",
      text: say(kinds.length),
      options: [0, 1, 2, 3].map((k) => ({
        label: say(from + k),
        change: to(from + k),
        picture: "quilt" as const,
      })),
    }),
    kind: "count",
    read: (typed) => {
      const t = typed
        .trim()
        .toLowerCase()
        .replace(/\s*kinds?.*$/, "");
      const n = Array.from({ length: MOST_KINDS }, (_, i) => i + 1).find(
        (i) => String(i) === t || inWords(i) === t,
      );
      return n === undefined ? { problem: `Type how many kinds, from 1 to ${MOST_KINDS}.` } : to(n);
    },
    step: (by) => {
      const n = kinds.length + by;
      return n >= 1 && n <= MOST_KINDS ? to(n) : undefined;
    },
  };
}

/** A short name that no block has yet. */
export function freshId(d: Brief, stem: string): string {
  let id = stem;
  for (let i = 2; d.blocks.some((k) => k.id === id); i++) id = `${stem}-${i}`;
  return id;
}

/** Adds a block that finishes like the others: another setting of the same circle, else a unit. */
function addPartner(d: Brief, kinds: readonly string[]): string {
  const there = d.blocks.filter((k) => kinds.includes(k.id));
  const [first] = there;
  if (!first) return kinds[0];
  const partner = partnerOf(d, first, there);
  d.blocks.push(partner as WedgeBlock & UnitBlock);
  return partner.id;
}

/** Settings of a circle of eight that all finish as wide as the circle: partners of each other. */
const SETTINGS = [
  { stem: "plain", setting: "plain" },
  { stem: "kites", setting: "kites" },
  { stem: "pairs", setting: "sectors", whole: [1, 5] },
  { stem: "trio", setting: "sectors", whole: [1, 3, 5] },
] as const;

const UNITS: readonly UnitBlock["unit"][] = ["square", "half-square", "four-patch", "nine-patch"];

function partnerOf(d: Brief, block: Block, there: readonly Block[]): Block {
  if (block.kind === "wedges" && block.n === 8 && sideIsFixed(block.setting)) {
    const free = SETTINGS.find(
      (s) =>
        !there.some(
          (k) =>
            k.kind === "wedges" &&
            k.setting === s.setting &&
            (!("whole" in s) || s.whole.join() === (k.whole ?? []).join()),
        ),
    );
    if (free) {
      const {
        cut: _cut,
        name: _name,
        place: _place,
        tree: _tree,
        ...rest
      } = JSON.parse(JSON.stringify(block)) as WedgeBlock;
      const made: WedgeBlock = {
        ...rest,
        id: freshId(d, free.stem),
        setting: free.setting,
        ...("whole" in free && { whole: [...free.whole] }),
      };
      fillRoles(d, block, made);
      return made;
    }
  }
  const unit = UNITS.find((u) => !there.some((k) => k.kind === "unit" && k.unit === u)) ?? "square";
  return {
    kind: "unit",
    id: freshId(d, unit),
    unit,
    width: widthOf(d, block),
    fabric: { patch: outerFabric(d, block) },
  };
}

/** Far finer than anything that is cut: blocks that lie together must finish alike. */
const EXACT_DIGITS = 9;

/** The finished width of a block as a text, so that another can be made as wide. */
export function widthOf(b: Brief, block: Block): string {
  if (block.kind === "unit") return block.width;
  if (block.kind === "own")
    return "width" in block.outline ? block.outline.width : block.outline.hexagon;
  if (block.side !== undefined) return block.side;
  const made = blocksOf({ ...b, blocks: [block] }, measuresOf(b)).blocks[0]?.geometry.width;
  return made === undefined ? block.strip : String(Number(made.toFixed(EXACT_DIGITS)));
}
