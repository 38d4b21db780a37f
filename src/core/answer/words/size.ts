import { sideIsFixed, WEDGE_SETTINGS, type WedgeSetting } from "../../block/index.ts";
import type { Brief, WedgeBlock } from "../../brief/index.ts";
import { knownLength, type Length, printLength, roundUp, stepOf } from "../../measure/index.ts";
import { evaluateRule } from "../../recipe/index.ts";
import { acrossFlats } from "./across.ts";
import { ROLE_NAMES } from "./roles.ts";
import { onBlocks, type Placed } from "./wedges.ts";
import {
  type Change,
  lengthTextProblem,
  lengthWord,
  type Option,
  printAs,
  shownLength,
  stepOfBrief,
  steppedText,
  type WordSpec,
} from "./word.ts";

/** Settings whose finished side the maker chooses. */
export const FREE_SIDE: readonly WedgeSetting[] = (
  Object.keys(WEDGE_SETTINGS) as WedgeSetting[]
).filter((setting) => !sideIsFixed(setting) && setting !== "sectors");

export const leastSide = (b: Brief, block: WedgeBlock, setting: WedgeSetting): Length =>
  acrossFlats(b, block.strip, block.n) /
  (setting === "deep" || block.n !== 8 ? Math.cos(Math.PI / block.n) : 1);

/** A side with some room round the wedges, on a whole inch (10 mm). */
export function proposedSide(b: Brief, block: WedgeBlock, setting: WedgeSetting): string {
  const whole = stepOf(b.unit === "in" ? "1" : "10", b.unit);
  return printLength(roundUp(leastSide(b, block, setting) * 1.08, whole), whole);
}

/** "9 in blocks": the finished side, where the setting leaves it free. */
export function sideWord(b: Brief, { block, index }: Placed): WordSpec | undefined {
  const least = block.setting === "sectors" || block.setting === "deep";
  if (!FREE_SIDE.includes(block.setting) && !least) return undefined;
  const write = (text: string | undefined): Change =>
    onBlocks([block.id], (d) => {
      if (text === undefined) delete d.side;
      else d.side = text;
    });
  const value = block.side ?? proposedSide(b, block, block.setting);
  const length = lengthWord(b, {
    id: `side/${block.id}`,
    role: "Finished side of the block",
    path: `blocks/${index}/side`,
    value,
    write: (draft, text) => write(text)(draft),
    set: (x) => `${x} blocks`,
    picture: "block",
    decides: ["background", "bar", "trapezoid"].map((role) => ({ block: block.id, role })),
  });
  if (!least) return length;
  const smallest = "the smallest blocks";
  return {
    ...length,
    text: block.side === undefined ? smallest : length.text,
    options: () => [
      { label: smallest, change: write(undefined), picture: "block" },
      ...length.options().slice(-3),
    ],
    step: block.side === undefined ? (by) => (by === 1 ? write(value) : undefined) : length.step,
  };
}

/** Which outer piece of a setting may be cut oversize by a size of the maker's own. */
const CUT_ROLE: Partial<Readonly<Record<WedgeSetting, string>>> = {
  plain: "corner",
  kites: "kite",
  deep: "background",
};

/** "from 4 in squares" or "cut to cover": the maker's own size for the piece round the wedges. */
export function cutWord(b: Brief, { block, index }: Placed): WordSpec | undefined {
  const role = CUT_ROLE[block.setting];
  if (!role) return undefined;
  const own = block.cut?.[role];
  const write = (size: string | undefined): Change =>
    onBlocks([block.id], (d) => {
      const { size: _size, rule: _rule, ...rest } = d.cut?.[role] ?? {};
      const next = size === undefined ? rest : { ...rest, size };
      d.cut = { ...d.cut, [role]: next };
      if (Object.keys(next).length === 0) delete d.cut[role];
      if (Object.keys(d.cut).length === 0) delete d.cut;
    });
  const byRule = (typed: string) => {
    const rule = typed.trim().replace(/^by the rule\s+/i, "");
    const words = { strip: 4, across: 8, leg: 2, long: 3, finished: 4, seam: 0.25 };
    if (rule.length > 60 || evaluateRule(rule, words, b.unit) === undefined)
      return { problem: "Type a rule of thumb such as strip-1/2 or 2*strip-1." };
    return onBlocks([block.id], (d) => {
      const { size: _size, ...rest } = d.cut?.[role] ?? {};
      d.cut = { ...d.cut, [role]: { ...rest, rule } };
    });
  };
  const square = (text: string): string => `${shownLength(text, b.unit)} squares`;
  const thumb = thumbSizes(b, block, role);
  const sizes = own?.size && !thumb.includes(own.size) ? [own.size, thumb[0]] : thumb;
  const options: Option[] = [
    { label: "cut to cover", change: write(undefined), picture: "cover" },
    ...sizes.map((size) => ({
      label: square(size),
      change: write(size),
      picture: "cover" as const,
    })),
    { label: "a size you type", change: () => {}, picture: "cover", typed: own?.size ?? thumb[0] },
  ];
  const text = own?.size
    ? square(own.size)
    : own?.rule
      ? `squares by the rule ${own.rule}`
      : "cut to cover";
  return {
    id: `cut/${block.id}/${role}`,
    role: `Square the ${ROLE_NAMES[role]} are cut from`,
    kind: "length",
    path: `blocks/${index}/cut/${role}`,
    text,
    decides: [{ block: block.id, role }, ...(role === "background" ? hands(block.id) : [])],
    options: () => options,
    read: (typed) =>
      RULE.test(typed) ? byRule(typed) : (lengthTextProblem(typed, b.unit) ?? write(typed.trim())),
    step: (by) => {
      if (!own?.size) return write(thumb[0]);
      const next = steppedText(own.size, stepOfBrief(b), by);
      return next === undefined ? undefined : write(next);
    },
  };
}

/** A rule of thumb speaks of the strip, the octagon across, the leg ... */
const RULE = /^\s*(?:by the rule\s+)?[^a-z]*(?:strip|across|leg|long|finished|seam)\b/i;

const hands = (block: string) =>
  ["background-left", "background-right"].map((role) => ({ block, role }));

/** Rules of thumb to put to the test: the strip less 1/2 in (doubled for backgrounds), and 1/4 more. */
function thumbSizes(b: Brief, block: WedgeBlock, role: string): string[] {
  const half = b.unit === "in" ? 0.5 : 12;
  const strip = knownLength(block.strip, b.unit);
  const first = role === "background" ? 2 * (strip - half) : strip - half;
  const fine = { ...stepOfBrief(b), size: stepOf(b.unit === "in" ? "1/64" : "0.5", b.unit).size };
  return [first, first + half / 2].filter((x) => x > 0).map((x) => printAs(block.strip, x, fine));
}
