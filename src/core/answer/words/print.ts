import type { Brief, Placement } from "../../brief/index.ts";
import { knownLength, printLength, roundDown } from "../../measure/index.ts";
import {
  idOf,
  NARROWER,
  nameIn,
  type PlaceUse,
  pathOf,
  placeUseOf,
  placing,
  shown,
} from "./place-use.ts";
import { onPicture } from "./place-words.ts";
import {
  type Change,
  choiceWord,
  lengthTextProblem,
  type Option,
  stepOfBrief,
  steppedText,
  type WordSpec,
} from "./word.ts";

/** Where on its picture every piece of a print lies; or anywhere, each round alike in itself. */
export function atWord(b: Brief, u: PlaceUse): WordSpec {
  const { at } = u.placed;
  const anywhere = "each round from a place of its own";
  const say = (x: string, y: string, turn = 0): string =>
    `all from ${onPicture(shown(x, b), shown(y, b), turn)}`;
  const middle = middleOf(b, u);
  const here = at ?? { ...middle, turn: 0 };
  const half = here.turn > 0 ? here.turn - 180 : here.turn + 180;
  const offers: Option[] = [
    { label: anywhere, change: placing(u, { at: undefined }), picture: "block" },
    { label: say(here.x, here.y, here.turn), change: placing(u, { at: here }), picture: "block" },
    {
      label: say(here.x, here.y, half),
      change: placing(u, { at: { ...here, turn: half } }),
      picture: "block",
    },
    {
      label: "a place you type, across by up",
      change: () => {},
      picture: "block",
      typed: `${here.x} by ${here.y}`,
    },
  ];
  const move = (by: 1 | -1): Change | undefined => {
    const y = at && steppedText(at.y, stepOfBrief(b), by);
    return at && y ? placing(u, { at: { ...at, y } }) : undefined;
  };
  return {
    ...choiceWord({
      id: idOf(u, "at"),
      role: `Where on ${nameIn(b, u)} each piece lies`,
      path: pathOf(u, "at"),
      text: at ? say(at.x, at.y, at.turn) : anywhere,
      options: offers,
      decides: [u.key, ...(NARROWER[u.key] ?? [])].map((role) => ({ block: u.block.id, role })),
    }),
    read: (text) => {
      const [x, y, more] = text.split(/\s+by\s+|\s*,\s*/i);
      if (x === undefined || y === undefined || more !== undefined)
        return { problem: "Type how far across and how far up, such as 3 1/2 by 5." };
      const problem = lengthTextProblem(x, b.unit, true) ?? lengthTextProblem(y, b.unit, true);
      return problem ?? placing(u, { at: { x: x.trim(), y: y.trim(), turn: here.turn } });
    },
    step: move,
  };
}

/** Every piece of a role of a print cut from one place of it. */
export const placedAt = (
  b: Brief,
  index: number,
  key: string,
  at: Placement["at"],
): Change | undefined => {
  const use = placeUseOf(b, index, key);
  return use && placing(use, { at });
};

/** The middle of the picture, on the maker's marks; of the usable width where there is no picture. */
export function middleOf(
  b: Brief,
  { fabric }: Pick<PlaceUse, "fabric">,
): { readonly x: string; readonly y: string } {
  const size = fabric.kind === "print" && fabric.photo;
  const half = (text: string): string => {
    const step = stepOfBrief(b);
    return printLength(roundDown(knownLength(text, b.unit) / 2, step), step);
  };
  return {
    x: half(size ? size.width : fabric.usable),
    y: half(size ? size.height : fabric.usable),
  };
}
