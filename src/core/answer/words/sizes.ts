import type { Brief } from "../../brief/index.ts";
import { parseLength } from "../../measure/index.ts";
import { QUILTS } from "../../quilt/index.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  lengthTextProblem,
  type Option,
  shownLength,
  type WordProblem,
  type WordSpec,
} from "./word.ts";

type Size = NonNullable<Brief["sizes"]>[number];

const MOST_SIZES = 20;

/** "Also offered as runner 20 by 60 in and no further size": the typed list of sizes. */
export function sizesClause(b: Brief): Clause {
  const sizes = b.sizes ?? [];
  return [
    sizes.length === 0 ? "Offered in " : "Also offered as ",
    ...sizes.flatMap((_, i): Clause => [...(i === 0 ? [] : [", "]), sizeWord(b, i)]),
    ...(sizes.length === 0 ? [] : [" and "]),
    moreWord(b),
    ".",
  ];
}

/** "runner 20 x 60 in": as it stands in the sentence and as it is typed. */
const sizeText = (b: Brief, s: Size): string => {
  const [w, h] = [shownLength(s.width, b.unit), shownLength(s.length, b.unit)];
  const unit = / (\S+)$/.exec(h)?.[1] ?? "";
  return `${s.name} ${w.endsWith(` ${unit}`) ? w.slice(0, -unit.length - 1) : w} by ${h}`;
};

const setSizes = (d: Brief, sizes: readonly Size[]): void => {
  if (sizes.length === 0) delete d.sizes;
  else d.sizes = [...sizes];
};

/** Sizes of quilts as they are published (see quilt/bedSizes.ts), in the brief's unit. */
function published(b: Brief): Size[] {
  const text = (inches: number): string => (b.unit === "in" ? String(inches) : `${inches} in`);
  return QUILTS[1].sizes.map((s) => ({
    name: s.name,
    width: text(s.width),
    length: text(s.length),
  }));
}

/** "throw 50 x 60", "my own throw 1 1/4 m": a name, then two lengths. */
export function readSize(b: Brief, text: string): Size | WordProblem {
  const example = "such as throw 50 by 60";
  const m = /^\s*(\D*?)[\s,:]*(\d.*?)\s*(?:\bby\b|x|×|\*|,)\s*(\d.*?)\s*$/i.exec(text);
  if (!m) return { problem: `Type a name, its width and its length, ${example}.` };
  const [, said, first, second] = m;
  const unit = parseLength(second, b.unit).ok
    ? /[a-z"″]+\s*$/i.exec(second)?.[0].trim()
    : undefined;
  const width = unit && !/[a-z"″]\s*$/i.test(first) ? `${first} ${unit}` : first;
  const wrong = lengthTextProblem(width, b.unit) ?? lengthTextProblem(second, b.unit);
  if (wrong) return wrong;
  const name = said.trim() || `size ${(b.sizes?.length ?? 0) + 1}`;
  return name.length > 60
    ? { problem: "That name is too long." }
    : { name, width: width.trim(), length: second.trim() };
}

const LEFT_OUT = "without this size";

function sizeWord(b: Brief, i: number): WordSpec {
  const sizes = b.sizes ?? [];
  const now = sizeText(b, sizes[i]);
  const without: Change = (d) =>
    setSizes(
      d,
      sizes.filter((_, j) => j !== i),
    );
  const named = published(b).find((s) => s.name === sizes[i].name);
  const write =
    (size: Size): Change =>
    (d) =>
      setSizes(
        d,
        sizes.map((s, j) => (j === i ? size : s)),
      );
  const options: Option[] = [
    { label: now, change: () => {}, picture: "none" },
    ...(named && sizeText(b, named) !== now
      ? [{ label: sizeText(b, named), change: write(named), picture: "none" as const }]
      : []),
    { label: LEFT_OUT, change: without, picture: "none" },
    { label: "a size you type", change: () => {}, picture: "none", typed: now },
  ];
  return {
    ...choiceWord({
      id: `size/${i}`,
      role: "A size the design is offered in",
      path: `sizes/${i}`,
      text: now,
      options,
    }),
    kind: "length",
    read: (text) => {
      if (text.trim() === "") return without;
      const size = readSize(b, text);
      return "problem" in size ? size : write(size);
    },
    step: () => undefined,
  };
}

function moreWord(b: Brief): WordSpec {
  const sizes = b.sizes ?? [];
  const none = sizes.length === 0 ? "this size alone" : "no further size";
  const add =
    (size: Size): Change =>
    (d) =>
      setSizes(d, [...sizes, size]);
  const free = published(b).filter((p) => !sizes.some((s) => s.name === p.name));
  return {
    ...choiceWord({
      id: "size/more",
      role: "One more size to offer",
      path: "sizes",
      text: none,
      options: [
        { label: none, change: () => {}, picture: "none" },
        ...free
          .slice(0, 2)
          .map((s) => ({ label: sizeText(b, s), change: add(s), picture: "none" as const })),
        {
          label: "a size you type",
          change: () => {},
          picture: "none",
          typed: b.unit === "in" ? "throw 50 by 60" : "throw 130 by 150 cm",
        },
      ],
    }),
    read: (text) => {
      if (sizes.length >= MOST_SIZES) return { problem: `At most ${MOST_SIZES} sizes.` };
      const size = readSize(b, text);
      return "problem" in size ? size : add(size);
    },
    step: () => undefined,
  };
}
