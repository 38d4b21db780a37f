import type { Fabric } from "../../brief/index.ts";
import { listed } from "./fabric.ts";
import { type OneFabric, onFabric, wordId, wordPath } from "./fabric-at.ts";
import {
  type Change,
  choiceWord,
  lengthTextProblem,
  type Option,
  shownLength,
  type WordProblem,
  type WordSpec,
} from "./word.ts";

type Shrinkage = NonNullable<Fabric["shrinkage"]>;
type InHand = NonNullable<Fabric["inHand"]>;

const MOST_SHRINKAGE = 30;

/** Washed before it is cut, and what it loses; typed as two per cents, length by width. */
export function washWord(o: OneFabric): WordSpec {
  const { shrinkage } = o.fabric;
  const unwashed = "cut unwashed";
  const say = (s: Shrinkage): string =>
    `washed before it is cut, losing ${s.length} per cent of its length and ${s.width} of its width`;
  const set = (s: Shrinkage | undefined): Change =>
    onFabric(o, (f) => {
      if (s) f.shrinkage = s;
      else delete f.shrinkage;
    });
  const offers = [shrinkage, { length: 3, width: 2 }].filter((s) => s !== undefined).slice(0, 1);
  return {
    ...choiceWord({
      id: wordId(o, "shrinkage"),
      role: `Whether ${o.fabric.name} is washed before it is cut`,
      path: wordPath(o, "shrinkage"),
      text: shrinkage ? say(shrinkage) : unwashed,
      options: [
        { label: unwashed, change: set(undefined), picture: "none" },
        ...offers.map((s): Option => ({ label: say(s), change: set(s), picture: "none" })),
        {
          label: "per cents you type, length by width",
          change: () => {},
          picture: "none",
          typed: shrinkage ? `${shrinkage.length} by ${shrinkage.width}` : "3 by 2",
        },
      ],
    }),
    read: (text) => {
      const parts = text
        .split(/\s*(?:by|,|x)\s*/i)
        .map((t) => Number(t.replace(/%|per cent/i, "")));
      const [length, width = length] = parts;
      const fine = parts.length <= 2 && [length, width].every((n) => n >= 0 && n <= MOST_SHRINKAGE);
      return fine && text.trim() !== ""
        ? set({ length, width })
        : { problem: `Type two per cents from 0 to ${MOST_SHRINKAGE}, such as 3 by 2.` };
    },
  };
}

const MOST_PIECES = 1000;

/** Pieces of it there are already; typed as "2 of 18 by 21, 1 of 9 by 40". */
export function inHandWord(o: OneFabric): WordSpec {
  const { unit } = o.brief;
  const { inHand = [] } = o.fabric;
  const none = "none in hand";
  const set = (pieces: InHand | undefined): Change =>
    onFabric(o, (f) => {
      if (pieces) f.inHand = pieces;
      else delete f.inHand;
    });
  const say = (pieces: InHand): string =>
    `in hand ${listed(
      pieces.map(
        (p) =>
          `${p.count} ${p.count === 1 ? "piece" : "pieces"} ${p.width} by ${shownLength(p.length, unit)}`,
      ),
    )}`;
  const typed = inHand.map((p) => `${p.count} of ${p.width} by ${p.length}`).join(", ");
  return {
    ...choiceWord({
      id: wordId(o, "inHand"),
      role: `Pieces of ${o.fabric.name} there are already`,
      path: wordPath(o, "inHand"),
      text: inHand.length === 0 ? none : say(inHand),
      options: [
        { label: none, change: set(undefined), picture: "none" },
        ...(inHand.length === 0
          ? []
          : [{ label: say(inHand), change: () => {}, picture: "none" } as const]),
        {
          label: "pieces you type, width by length",
          change: () => {},
          picture: "none",
          typed: typed || (unit === "in" ? "2 of 18 by 21" : "2 of 460 by 530"),
        },
      ],
    }),
    read: (text) => {
      const pieces = text
        .split(",")
        .filter((t) => t.trim() !== "")
        .map((t) => readPiece(t.trim(), o));
      const wrong = pieces.find((p): p is WordProblem => "problem" in p);
      if (pieces.length === 0) return set(undefined);
      return wrong ?? set(pieces as InHand);
    },
  };
}

function readPiece(text: string, o: OneFabric): InHand[number] | WordProblem {
  const said = /^(?:(\d+)\s+(?:of|pieces?)\s+)?(.+?)\s+(?:by|x)\s+(.+)$/i.exec(text);
  if (!said) return { problem: 'Type each as "2 of 18 by 21": how many, width by length.' };
  const [, many = "1", width, length] = said;
  const problem = lengthTextProblem(width, o.brief.unit) ?? lengthTextProblem(length, o.brief.unit);
  if (problem) return problem;
  const count = Number(many);
  if (count < 1 || count > MOST_PIECES)
    return { problem: `How many must be from 1 to ${MOST_PIECES}.` };
  return { width, length, count };
}
