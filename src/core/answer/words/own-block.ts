import { OWN_ROLES } from "../../block/index.ts";
import type { Block, Brief, OwnBlock } from "../../brief/index.ts";
import { listed } from "./fabric.ts";
import { freshId, widthOf } from "./mix.ts";
import { kindsInPlan, MIXES, planOf, TURNINGS } from "./plan-of-kinds.ts";
import { outerFabric } from "./roles.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  lengthWord,
  type Option,
  type WordSpec,
} from "./word.ts";

/** Every block of the maker's own as she says it: outline, seams one by one, parts with a role. */
export function ownClause(b: Brief): Clause {
  const kinds = kindsInPlan(b);
  return b.blocks.flatMap((block, index): Clause => {
    if (block.kind !== "own" || !kinds.includes(block.id)) return [];
    const of = { block, index };
    return [
      `${capital(block.name ?? block.id)}, `,
      shapeWord(b, of),
      " ",
      ...sizeWords(b, of),
      ": ",
      ...block.seams.flatMap((_, i): Clause => [...(i === 0 ? [] : ["; then "]), seamWord(of, i)]),
      ...(block.seams.length === 0 ? [] : ["; "]),
      moreWord(of),
      "; ",
      rolesWord(b, of),
      ". ",
    ];
  });
}

interface Own {
  readonly block: OwnBlock;
  readonly index: number;
}

const onOwn =
  (id: string, change: (d: OwnBlock) => void): Change =>
  (d) => {
    for (const k of d.blocks) if (k.kind === "own" && k.id === id) change(k);
  };

function shapeWord(b: Brief, { block, index }: Own): WordSpec {
  const hexagon = "hexagon" in block.outline;
  const wide = "hexagon" in block.outline ? block.outline.hexagon : block.outline.width;
  const option = (label: string, outline: OwnBlock["outline"], now: boolean): Option => ({
    label,
    change: now
      ? () => {}
      : onOwn(block.id, (d) => {
          d.outline = outline;
        }),
    picture: "lettered",
  });
  return choiceWord({
    id: `own/${block.id}/outline`,
    role: `Outline of ${nameIn(b, block)}`,
    path: `blocks/${index}/outline`,
    text: hexagon ? "a hexagon" : "a rectangle",
    options: [
      option("a rectangle", { width: wide, height: wide }, !hexagon),
      option("a hexagon", { hexagon: wide }, hexagon),
    ],
  });
}

const nameIn = (b: Brief, block: Block): string =>
  b.blocks.length > 1 ? (block.name ?? block.id) : "the block";

function sizeWords(b: Brief, { block, index }: Own): Clause {
  const outline = block.outline;
  const word = (key: "width" | "height" | "hexagon", value: string): WordSpec =>
    lengthWord(b, {
      id: `own/${block.id}/${key}`,
      role: `Finished ${key === "hexagon" ? "width across flats" : key} of ${nameIn(b, block)}`,
      path: `blocks/${index}/outline/${key}`,
      value,
      write: (d, text) =>
        onOwn(block.id, (k) => {
          (k.outline as Record<string, string>)[key] = text;
        })(d),
      picture: "lettered",
    });
  return "hexagon" in outline
    ? [word("hexagon", outline.hexagon), " across flats"]
    : [word("width", outline.width), " by ", word("height", outline.height)];
}

/** Longest seam that is taken, as the document has it. */
const MOST_TEXT = 120;

/** One seam as it was said; typed anew, or left out. */
function seamWord({ block, index }: Own, i: number): WordSpec {
  const now = block.seams[i];
  const without = onOwn(block.id, (d) => {
    d.seams.splice(i, 1);
  });
  return {
    ...choiceWord({
      id: `own/${block.id}/seam/${i}`,
      role: `Seam ${i + 1} of ${block.name ?? block.id}, the first said is sewn last`,
      path: `blocks/${index}/seams/${i}`,
      text: now,
      options: [
        { label: now, change: () => {}, picture: "lettered" },
        { label: "without this seam", change: without, picture: "lettered" },
        { label: "a seam you say", change: () => {}, picture: "lettered", typed: now },
      ],
    }),
    kind: "length",
    read: (text) => {
      const said = text.trim();
      if (said === "") return without;
      return said.length > MOST_TEXT
        ? { problem: `A seam is said in at most ${MOST_TEXT} letters.` }
        : onOwn(block.id, (d) => {
            d.seams[i] = said;
          });
    },
    step: () => undefined,
  };
}

const MOST_SEAMS = 200;

/** "no further seam": where the next one is said. */
function moreWord({ block, index }: Own): WordSpec {
  const none = "no further seam";
  const add = (said: string): Change =>
    onOwn(block.id, (d) => {
      d.seams.push(said);
    });
  const first = ["from the middle of AB to the middle of CD", "8 wedges round the center"];
  return {
    ...choiceWord({
      id: `own/${block.id}/more`,
      role: `One more seam of ${block.name ?? block.id}`,
      path: `blocks/${index}/seams`,
      text: none,
      options: [
        { label: none, change: () => {}, picture: "lettered" },
        ...(block.seams.length === 0
          ? first.map((label) => ({ label, change: add(label), picture: "lettered" as const }))
          : []),
        {
          label: "a seam you say",
          change: () => {},
          picture: "lettered",
          typed: "from A to the middle of BC",
        },
      ],
    }),
    read: (text) => {
      const said = text.trim();
      if (said === "") return { problem: "Say a seam, such as from A to the middle of BC." };
      if (said.length > MOST_TEXT)
        return { problem: `A seam is said in at most ${MOST_TEXT} letters.` };
      return block.seams.length >= MOST_SEAMS
        ? { problem: `A block has at most ${MOST_SEAMS} seams.` }
        : add(said);
    },
    step: () => undefined,
  };
}

const ALL_PATCHES = "every part a patch";

/** "ABE corner, BCE kite": parts by the letters of their corners, each with its role. */
function rolesWord(b: Brief, { block, index }: Own): WordSpec {
  const now = Object.entries(block.roles ?? {});
  const text = now.map(([part, role]) => `${part} ${role}`).join(", ");
  const write = (roles: Record<string, string>): Change =>
    onOwn(block.id, (d) => {
      if (Object.keys(roles).length === 0) delete d.roles;
      else d.roles = roles;
      const outer = d.fabric.patch ?? outerFabric(b, block);
      for (const role of Object.values(roles)) d.fabric[role] ??= outer;
    });
  return {
    ...choiceWord({
      id: `own/${block.id}/roles`,
      role: `What the parts of ${nameIn(b, block)} are`,
      path: `blocks/${index}/roles`,
      text: text === "" ? ALL_PATCHES : text,
      options: [
        { label: ALL_PATCHES, change: write({}), picture: "lettered" },
        ...(text === "" ? [] : [{ label: text, change: () => {}, picture: "lettered" as const }]),
        {
          label: "parts you name",
          change: () => {},
          picture: "lettered",
          typed: text === "" ? "ABC corner" : text,
        },
      ],
    }),
    read: (typed) => {
      const roles: Record<string, string> = {};
      for (const entry of typed.split(",").map((t) => t.trim())) {
        if (entry === "") continue;
        const [part, role, ...rest] = entry.split(/\s+/);
        const known = OWN_ROLES.find((r) => r === role?.toLowerCase());
        if (!known || rest.length > 0)
          return {
            problem: `Type a part by the letters of its corners and its role, such as ABE corner. Roles are ${listed(OWN_ROLES)}.`,
          };
        roles[part] = known;
      }
      return write(roles);
    },
    step: () => undefined,
  };
}

/** A change that brings a block of one's own, as large as the others, by turns with what is there. */
export const addOwnBlock: Change = (d) => {
  const [first] = kindsInPlan(d);
  const like = d.blocks.find((k) => k.id === first) ?? d.blocks[0];
  const width = widthOf(d, like);
  const id = freshId(d, "own");
  const fabric = { patch: outerFabric(d, like) };
  d.blocks.push({
    kind: "own",
    id,
    name: "Own block",
    outline: { width, height: width },
    seams: [],
    fabric,
  });
  d.quilt.plan = planOf(MIXES["by turns"]([...kindsInPlan(d), id]), TURNINGS["none turned"]);
};

/** What a block is, as a name for it. */
function plainName(block: Block): string {
  if (block.kind === "own") return "own block";
  if (block.kind === "unit") return block.unit;
  return {
    plain: "octagon",
    kites: "four-pointed star",
    floating: "floating octagon",
    framed: "framed octagon",
    deep: "deep octagon",
    sectors: `round of ${block.n}`,
  }[block.setting];
}

/** "Called Star": the name a kind of block goes by. */
export function nameWord(b: Brief, block: Block): WordSpec {
  const index = b.blocks.indexOf(block);
  const now = block.name ?? block.id;
  const proposed = plainName(block);
  const write =
    (name: string | undefined): Change =>
    (d) => {
      const k = d.blocks.find((x) => x.id === block.id);
      if (!k) return;
      if (name === undefined || name === k.id) delete k.name;
      else k.name = name;
    };
  return {
    ...choiceWord({
      id: `name/${block.id}`,
      role: "What the block is called",
      path: `blocks/${index}/name`,
      text: now,
      options: [
        { label: now, change: () => {}, picture: "block" },
        ...(now === proposed
          ? []
          : [{ label: proposed, change: write(proposed), picture: "block" as const }]),
        { label: "a name you type", change: () => {}, picture: "block", typed: now },
      ],
    }),
    read: (text) => {
      const name = text.trim();
      if (name === "") return { problem: "Type a name." };
      return name.length > 80 ? { problem: "That name is too long." } : write(name);
    },
    step: () => undefined,
  };
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
