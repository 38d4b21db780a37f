import type { Brief, UnitBlock } from "../../brief/index.ts";
import { listed } from "./fabric.ts";
import { settingWord } from "./setting.ts";
import { cutWord, sideWord } from "./size.ts";
import { outlineWord, turnedWord } from "./turn.ts";
import type { Placed } from "./wedges.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  lengthTextProblem,
  lengthWord,
  shownLength,
  type WordProblem,
  type WordSpec,
} from "./word.ts";

/** Kinds in the plan that are not wedge blocks, each with its words. */
export function otherKind(b: Brief, id: string): Clause {
  const index = b.blocks.findIndex((k) => k.id === id);
  const block = b.blocks[index];
  if (!block || block.kind === "wedges") return [];
  if (block.kind === "own") return [`with ${block.name ?? block.id}, a block of its own`];
  const units: readonly UnitBlock["unit"][] = ["square", "half-square", "four-patch", "nine-patch"];
  const shown = units.includes(block.unit) ? units : [...units.slice(0, 3), block.unit];
  const say = (u: UnitBlock["unit"]): string =>
    ({
      square: "plain squares",
      "half-square": "half-squares",
      "quarter-square": "quarter-squares",
      "four-patch": "four-patches",
      "nine-patch": "nine-patches",
      "half-rectangle": "half-rectangles",
    })[u];
  const write = onUnit(id);
  const to = (unit: UnitBlock["unit"]): Change =>
    write((d) => {
      d.unit = unit;
      if (unit !== "half-rectangle") delete d.hand;
    });
  return [
    "with ",
    {
      ...choiceWord({
        id: `unit/${id}`,
        role: "Unit between the wedge blocks",
        path: `blocks/${index}/unit`,
        text: say(block.unit),
        options: shown.map((unit) => ({ label: say(unit), change: to(unit), picture: "block" })),
        decides: [{ block: id, role: "patch" }],
      }),
      read: (text) => {
        const named = ALL_UNITS.find((u) => u === singular(text) || say(u) === text.trim());
        return named
          ? to(named)
          : { problem: `Units by name are ${listed(ALL_UNITS.map((u) => say(u)))}.` };
      },
      step: (by) => {
        const next = ALL_UNITS[ALL_UNITS.indexOf(block.unit) + by];
        return next && to(next);
      },
    },
    ...(block.unit === "half-rectangle" ? [", ", handWord(block, index), ","] : []),
    " ",
    sidesWord(b, block, index),
  ];
}

const onUnit =
  (id: string) =>
  (change: (d: UnitBlock) => void): Change =>
  (d) => {
    for (const k of d.blocks) if (k.kind === "unit" && k.id === id) change(k);
  };

const ALL_UNITS: readonly UnitBlock["unit"][] = [
  "square",
  "half-square",
  "quarter-square",
  "four-patch",
  "nine-patch",
  "half-rectangle",
];

/** "half squares" -> "half-square". */
const singular = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/^plain\s+/, "")
    .replace(/\s+/g, "-")
    .replace(/patches$/, "patch")
    .replace(/s$/, "");

/** "8 in", or "8 in by 6 in": units that may be oblong take both sides. */
function sidesWord(b: Brief, block: UnitBlock, index: number): WordSpec {
  const write = onUnit(block.id);
  const oblong = block.unit !== "half-square" && block.unit !== "quarter-square";
  const by = block.height === undefined ? "" : ` by ${shownLength(block.height, b.unit)}`;
  const length = lengthWord(b, {
    id: `width/${block.id}`,
    role: oblong ? "Finished width of the unit, or width by height" : "Finished width of the unit",
    path: `blocks/${index}/width`,
    value: block.width,
    write: (d, text) =>
      write((k) => {
        k.width = text;
      })(d),
    set: (x) => `${x}${by}`,
    picture: "block",
  });
  const read = (text: string): Change | WordProblem => {
    const [width, height, ...rest] = text.split(/\s*(?:\bby\b|x|×)\s*/i);
    if (height === undefined || rest.length > 0 || !oblong) return length.read!(text);
    const wrong = lengthTextProblem(width, b.unit) ?? lengthTextProblem(height, b.unit);
    return (
      wrong ??
      write((k) => {
        k.width = width.trim();
        if (height.trim() === width.trim()) delete k.height;
        else k.height = height.trim();
      })
    );
  };
  return {
    ...length,
    options: () =>
      length
        .options()
        .map((o) =>
          o.typed === undefined || block.height === undefined
            ? o
            : { ...o, typed: `${block.width} by ${block.height}` },
        ),
    read,
  };
}

/** "right hands": both triangles of a half-rectangle have the same hand. */
const handWord = (block: UnitBlock, index: number): WordSpec =>
  choiceWord({
    id: `hand/${block.id}`,
    role: "Hand of the half-rectangles",
    path: `blocks/${index}/hand`,
    text: `${block.hand ?? "right"} hands`,
    options: (["right", "left"] as const).map((hand) => ({
      label: `${hand} hands`,
      change: onUnit(block.id)((d) => {
        d.hand = hand;
      }),
      picture: "block",
    })),
  });

/** What one kind of wedge block is set with, all its words. */
export function kindClause(b: Brief, p: Placed): Clause {
  const out: (string | WordSpec)[] = [settingWord(b, p)];
  const side = sideWord(b, p);
  if (side) out.push(" in ", side);
  const turned = turnedWord(p);
  if (turned) out.push(", ", turned);
  const cut = cutWord(b, p);
  if (cut) out.push(cut.text === "cut to cover" ? " " : " from ", cut);
  const outline = outlineWord(b, p);
  if (outline) out.push(" ", outline);
  return out;
}
