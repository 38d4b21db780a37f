import type { Border, Brief } from "../../brief/index.ts";
import { outerFabric } from "./roles.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  inWords,
  lengthWord,
  type Option,
  shownLength,
  type WordSpec,
} from "./word.ts";

export const isNone = (text: string): boolean => /^\s*(?:no|none|without)\b|^\s*0\s*$/i.test(text);

export const small = (b: Brief, inches: string, mm: string): string =>
  b.unit === "in" ? inches : mm;

/** "no sashing" or "1 1/2 in sashing". */
export function sashingWord(b: Brief): WordSpec {
  const s = b.quilt.sashing;
  const write =
    (width: string | undefined): Change =>
    (d) => {
      if (width === undefined) delete d.quilt.sashing;
      else if (d.quilt.sashing) d.quilt.sashing.width = width;
      else d.quilt.sashing = { width, fabric: outerFabric(d, d.blocks[0]) };
    };
  return orNone(b, {
    id: "sashing",
    role: "Sashing between the blocks",
    path: "quilt/sashing",
    none: "no sashing",
    set: (x) => `${x} sashing`,
    now: s?.width,
    offers: [small(b, "1", "25"), small(b, "1 1/2", "40")],
    write,
    decides: ["sash", "cornerstone"].map((role) => ({ role })),
  });
}

/** "2 1/4 in binding": the strip the binding is cut from. */
export function bindingWord(b: Brief): WordSpec {
  const write =
    (width: string | undefined): Change =>
    (d) => {
      const { binding, ...rest } = d.finishing ?? {};
      if (width !== undefined)
        d.finishing = {
          ...rest,
          binding: binding
            ? { ...binding, width }
            : { width, fabric: d.fabrics[d.fabrics.length - 1].id, cut: "straight", join: "slant" },
        };
      else if (Object.keys(rest).length > 0) d.finishing = rest;
      else delete d.finishing;
    };
  return orNone(b, {
    id: "binding",
    role: "Strip for the binding",
    path: "finishing/binding",
    none: "no binding",
    set: (x) => `${x} binding`,
    now: b.finishing?.binding?.width,
    offers: [small(b, "2 1/4", "57"), small(b, "2 1/2", "64")],
    write,
    decides: [],
  });
}

export interface OrNone {
  readonly id: string;
  readonly role: string;
  readonly path: string;
  readonly none: string;
  readonly set: (shown: string) => string;
  readonly now?: string;
  readonly offers: readonly string[];
  readonly write: (width: string | undefined) => Change;
  readonly decides: WordSpec["decides"];
  readonly picture?: Option["picture"];
}

/** A length that may also be left out: none, two common widths, one to type. */
export function orNone(b: Brief, w: OrNone): WordSpec {
  const show = (text: string): string => w.set(shownLength(text, b.unit));
  const picture = w.picture ?? "quilt";
  const option = (width: string): Option => ({
    label: show(width),
    change: w.write(width),
    picture,
  });
  const length = lengthWord(b, {
    ...w,
    value: w.now ?? w.offers[0],
    write: (draft, text) => w.write(text)(draft),
    picture,
    offers: [
      { label: w.none, change: w.write(undefined), picture },
      ...(w.now && !w.offers.includes(w.now) ? [w.now, w.offers[0]] : w.offers).map(option),
    ],
  });
  return {
    ...length,
    text: w.now === undefined ? w.none : show(w.now),
    read: (text) => (isNone(text) ? w.write(undefined) : length.read!(text)),
    step: w.now === undefined ? (by) => (by === 1 ? w.write(w.offers[0]) : undefined) : length.step,
  };
}

const BORDERS = ["no border", "one border", "two borders", "three borders"];

/** "two borders": how many; further ones are kept, and counted. */
export function bordersWord(b: Brief): WordSpec {
  const now = b.quilt.borders.length;
  const say = (n: number): string => BORDERS[n] ?? `${inWords(n)} borders`;
  const to =
    (n: number): Change =>
    (d) => {
      while (d.quilt.borders.length > n) d.quilt.borders.pop();
      while (d.quilt.borders.length < n) d.quilt.borders.push(nextBorder(d));
    };
  const from = Math.max(0, Math.min(now - 2, now > 3 ? now - 2 : 0));
  return {
    ...choiceWord({
      id: "borders",
      role: "How many borders",
      path: "quilt/borders",
      text: say(now),
      options: [0, 1, 2, 3].map((k) => ({
        label: say(from + k),
        change: to(from + k),
        picture: "quilt",
      })),
      decides: [{ role: "border" }],
    }),
    kind: "count",
    read: (text) => {
      const t = text
        .trim()
        .toLowerCase()
        .replace(/\s*borders?$/, "");
      const n = isNone(t)
        ? 0
        : Array.from({ length: 13 }, (_, i) => i).find((i) => String(i) === t || inWords(i) === t);
      return n === undefined || n > 12
        ? { problem: "Type how many borders, from 0 to 12." }
        : to(n);
    },
    step: (by) => (now + by >= 0 && now + by <= 12 ? to(now + by) : undefined),
  };
}

/** A border twice as wide as the one inside it, or the first. */
export function nextBorder(d: Brief): Border {
  const last = d.quilt.borders[d.quilt.borders.length - 1];
  const fabrics = d.fabrics.map((f) => f.id);
  const fabric = last ? fabrics[(fabrics.indexOf(last.fabric) + 1) % fabrics.length] : fabrics[0];
  const width = last ? small(d, "4", "100") : small(d, "2", "50");
  return { width, fabric, join: last?.join ?? "butted", cut: "across" };
}

/** Width and join of each border: "1 1/2 in butted and 4 in mitred". */
export function borderClause(b: Brief): Clause {
  return b.quilt.borders.flatMap((border, i): Clause => {
    const last = i === b.quilt.borders.length - 1;
    const lead = i === 0 ? " " : last ? " and " : ", ";
    const nth =
      b.quilt.borders.length === 1 ? "the border" : `border ${i + 1}, counted from inside`;
    const write =
      (change: (x: Border) => void): Change =>
      (d) =>
        change(d.quilt.borders[i]);
    return [
      lead,
      lengthWord(b, {
        id: `border/${i}`,
        role: `Width of ${nth}`,
        path: `quilt/borders/${i}/width`,
        value: border.width,
        write: (d, text) => {
          d.quilt.borders[i].width = text;
        },
        set: (x) => `${x} wide`,
        picture: "quilt",
        decides: [{ role: "border" }],
      }),
      " ",
      choiceWord({
        id: `border/${i}/join`,
        role: `Corners of ${nth}`,
        path: `quilt/borders/${i}/join`,
        text: border.join === "butted" ? "with butted corners" : "with mitered corners",
        options: (["butted", "mitred"] as const).map((join) => ({
          label: join === "butted" ? "with butted corners" : "with mitered corners",
          change: write((x) => {
            x.join = join;
          }),
          picture: "quilt",
        })),
      }),
    ];
  });
}
