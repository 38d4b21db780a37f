import type { WedgeSetting } from "../../block/index.ts";
import type { Brief, WedgeBlock } from "../../brief/index.ts";
import { knownLength } from "../../measure/index.ts";
import { fillRoles } from "./roles.ts";
import { FREE_SIDE, leastSide, proposedSide } from "./size.ts";
import { everyOther, onBlocks, type Placed, sameSectors } from "./wedges.ts";
import { type Change, choiceWord, MOST_CHOICES, type Option, type WordSpec } from "./word.ts";

/** What the wedges are set with, in words. Sectors say which are left whole. */
function settingText(block: WedgeBlock): string {
  if (block.setting === "sectors") return `with ${wholeText(block)} left whole`;
  if (block.setting === "framed")
    return block.inner === "kites" ? "with kites and a frame" : "framed";
  return {
    plain: "with plain corners",
    kites: "with kites",
    floating: "floating",
    deep: "in a deep background",
  }[block.setting];
}

/** Two opposite sectors. Those of the flat sides, 0 among them, are wedges when left whole, as they lie. */
const twoOpposite = (n: number): number[] => [1, 1 + n / 2];

/** Patterns of sectors with a name. */
const patterns = (n: number): readonly { readonly name: string; readonly whole: number[] }[] => [
  { name: "none", whole: [] },
  { name: "every other one", whole: everyOther(n) },
  { name: "two opposite", whole: twoOpposite(n) },
];

function wholeText(block: WedgeBlock): string {
  const now = block.whole ?? [];
  const named = patterns(block.n).find((p) => sameSectors(p.whole, now));
  return named?.name ?? `${now.length === 1 ? "number" : "numbers"} ${now.join(", ")}`;
}

const isSquareOfEight = (k: WedgeBlock): boolean => k.n === 8 && k.outline === "square";

const SHOWN: Readonly<Record<WedgeSetting, readonly WedgeSetting[]>> = {
  plain: ["plain", "kites", "floating", "deep"],
  kites: ["plain", "kites", "sectors", "deep"],
  floating: ["plain", "floating", "framed", "deep"],
  framed: ["plain", "floating", "framed", "deep"],
  deep: ["plain", "kites", "floating", "deep"],
  sectors: ["plain", "kites", "sectors"],
};

/** "with kites": what the circle of wedges is set with. */
export function settingWord(b: Brief, { block, index }: Placed): WordSpec {
  const named = isSquareOfEight(block) ? SHOWN[block.setting] : [];
  const toWhole = (whole: number[]): Change =>
    onBlocks([block.id], (d) => {
      toSectors(d);
      d.whole = whole;
      fillRoles(b, block, d);
    });
  const options: Option[] = named.map((setting) => ({
    label: settingText(
      setting === block.setting
        ? block
        : { ...block, setting, inner: undefined, whole: block.whole ?? twoOpposite(block.n) },
    ),
    change: setting === block.setting ? () => {} : withSetting(b, block, setting),
    picture: "block",
  }));
  if (block.setting === "framed" && isSquareOfEight(block))
    options.splice(1, 3, ...framedOptions(b, block), options[3]);
  if (!isSquareOfEight(block))
    options.push(
      ...patterns(block.n).map(({ name, whole }) => ({
        label: `with ${name} left whole`,
        change: toWhole(whole),
        picture: "block" as const,
      })),
    );
  const own = settingText(block);
  if (options.every((o) => o.label !== own))
    options.splice(2, options.length - 2, { label: own, change: () => {}, picture: "block" });
  if (options.length < MOST_CHOICES)
    options.push({
      label: "with those you number left whole",
      change: () => {},
      picture: "block",
      typed: (block.whole ?? []).join(", "),
    });
  return {
    ...choiceWord({
      id: `setting/${block.id}`,
      role: "What the wedges are set with",
      path: `blocks/${index}/setting`,
      text: own,
      decides: outerRoles.map((role) => ({ block: block.id, role })),
      options,
    }),
    read: (text) => {
      const list = text
        .replace(/[^\d,\s]/g, "")
        .split(/[\s,]+/)
        .filter(Boolean)
        .map(Number);
      const bad =
        list.length === 0 || list.some((s) => s >= block.n) || new Set(list).size !== list.length;
      return bad
        ? {
            problem: `Type which to leave whole, from 0 to ${block.n - 1}, such as 0, ${block.n / 2}.`,
          }
        : toWhole(list);
    },
  };
}

/** A frame round plain corners, and one round kites. */
const framedOptions = (b: Brief, block: WedgeBlock): Option[] =>
  (["plain", "kites"] as const).map((inner) => ({
    label: settingText({ ...block, inner }),
    change:
      inner === (block.inner ?? "plain")
        ? () => {}
        : onBlocks([block.id], (d) => {
            d.inner = inner;
            fillRoles(b, block, d);
          }),
    picture: "block",
  }));

const outerRoles = [
  "corner",
  "kite",
  "trapezoid",
  "bar",
  "background",
  "background-left",
  "background-right",
];

function toSectors(d: WedgeBlock): void {
  if (d.setting === "deep") d.turned = "corner";
  if (d.setting !== "sectors") delete d.side;
  d.setting = "sectors";
  delete d.inner;
  delete d.tree;
}

/** A block put into another setting, with a side where the setting leaves it free and its fabrics. */
export function withSetting(b: Brief, block: WedgeBlock, setting: WedgeSetting): Change {
  return onBlocks([block.id], (d) => {
    d.setting = setting;
    delete d.tree;
    delete d.inner;
    if (!FREE_SIDE.includes(setting)) delete d.side;
    else if (!d.side || knownLength(d.side, b.unit) < leastSide(b, block, setting))
      d.side = proposedSide(b, block, setting);
    if (setting === "framed") d.inner = block.setting === "kites" ? "kites" : "plain";
    if (setting === "sectors") d.whole ??= twoOpposite(block.n);
    else {
      delete d.whole;
      delete d.turned;
    }
    fillRoles(b, block, d);
  });
}
