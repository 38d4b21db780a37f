import type { Block, Brief, Placed as PlacedCell, UnitBlock, WedgeBlock } from "../brief/index.ts";
import { outerFabric } from "./roles.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  lengthWord,
  MOST_CHOICES,
  type Option,
  type WordSpec,
} from "./words.ts";
import { settingWord } from "./words-of-setting.ts";
import { cutWord, proposedSide, sideWord } from "./words-of-size.ts";
import { outlineWord, turnedWord } from "./words-of-turn.ts";
import type { Placed } from "./words-of-wedges.ts";

const idOf = (cell: PlacedCell): string => (typeof cell === "string" ? cell : cell.block);

/** The kinds of block in the plan, in the order they first appear. */
export const kindsInPlan = (b: Brief): string[] => [...new Set(b.quilt.plan.flat().map(idOf))];

export const kept = (d: Brief, ids: readonly string[]): void => {
  d.blocks = d.blocks.filter((k) => ids.includes(k.id)) as Brief["blocks"];
};

type Plan = Brief["quilt"]["plan"];

const MIXES: Readonly<Record<string, (ids: readonly string[]) => Plan>> = {
  "by turns": (ids) => ids.map((_, r) => ids.map((_, c) => ids[(r + c) % ids.length])),
  "row by row": (ids) => ids.map((id) => [id]),
  "column by column": (ids) => [[...ids]],
};

/** "by turns": how the kinds of block follow each other, or one kind alone. */
export function mixWord(b: Brief): WordSpec {
  const kinds = kindsInPlan(b);
  const plan = b.quilt.plan.map((row) => row.map(idOf));
  const plain = b.quilt.plan.flat().every((cell) => typeof cell === "string");
  const same = (p: Plan): boolean => JSON.stringify(p) === JSON.stringify(plan);
  const named =
    kinds.length > 1 && plain ? Object.keys(MIXES).find((m) => same(MIXES[m](kinds))) : undefined;
  const alike: Option = {
    label: "all alike",
    change: (d) => {
      d.quilt.plan = [[kinds[0]]];
      kept(d, [kinds[0]]);
    },
    picture: "quilt",
  };
  const mixed = Object.entries(MIXES).map(
    ([label, make]): Option => ({
      label,
      change: (d) => {
        const ids = kinds.length > 1 ? kinds : [kinds[0], addPartner(d, kinds[0])];
        d.quilt.plan = make(ids);
      },
      picture: "quilt",
    }),
  );
  const text =
    kinds.length === 1 ? (plain ? "all alike" : "turned as planned") : (named ?? "as planned");
  return choiceWord({
    id: "mix",
    role: "How the kinds of block follow each other",
    path: "quilt/plan",
    text,
    options: [alike, ...mixed]
      .slice(0, MOST_CHOICES)
      .map((o) => (o.label === text ? { ...o, change: () => {} } : o)),
  });
}

/** Adds the block that goes well beside one: kites beside plain corners, else a plain square. */
function addPartner(d: Brief, id: string): string {
  const block = d.blocks.find((k) => k.id === id);
  if (!block) return id;
  const partner = partnerOf(d, block);
  d.blocks.push(partner as WedgeBlock & UnitBlock);
  return partner.id;
}

function partnerOf(d: Brief, block: Block): Block {
  const fresh = (stem: string): string => {
    let name = stem;
    for (let i = 2; d.blocks.some((k) => k.id === name); i++) name = `${stem}-${i}`;
    return name;
  };
  const outer = outerFabric(d, block);
  if (block.kind === "wedges" && (block.setting === "plain" || block.setting === "kites")) {
    const setting = block.setting === "plain" ? "kites" : "plain";
    const role = setting === "kites" ? "kite" : "corner";
    const { cut: _cut, name: _name, ...rest } = JSON.parse(JSON.stringify(block)) as WedgeBlock;
    return { ...rest, id: fresh(setting), setting, fabric: { ...rest.fabric, [role]: outer } };
  }
  const width =
    block.kind === "wedges"
      ? (block.side ?? proposedSide(d, block, "floating"))
      : block.kind === "unit"
        ? block.width
        : "width" in block.outline
          ? block.outline.width
          : block.outline.hexagon;
  return { kind: "unit", id: fresh("square"), unit: "square", width, fabric: { patch: outer } };
}

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
  const write =
    (change: (d: UnitBlock) => void): Change =>
    (d) => {
      for (const k of d.blocks) if (k.kind === "unit" && k.id === id) change(k);
    };
  return [
    "with ",
    choiceWord({
      id: `unit/${id}`,
      role: "Unit between the wedge blocks",
      path: `blocks/${index}/unit`,
      text: say(block.unit),
      options: shown.map((unit) => ({
        label: say(unit),
        change: write((d) => {
          d.unit = unit;
        }),
        picture: "block",
      })),
      decides: [{ block: id, role: "patch" }],
    }),
    " ",
    lengthWord(b, {
      id: `width/${id}`,
      role: "Finished width of the unit",
      path: `blocks/${index}/width`,
      value: block.width,
      write: (d, text) =>
        write((k) => {
          k.width = text;
        })(d),
      picture: "block",
    }),
  ];
}

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
