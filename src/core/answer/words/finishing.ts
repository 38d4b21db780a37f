import type { Border, Brief } from "../../brief/index.ts";
import { isNone, orNone, small } from "./edges.ts";
import { kindsWord, turningWord } from "./mix.ts";
import { nameWord } from "./own-block.ts";
import { kindsInPlan } from "./plan-of-kinds.ts";
import { outerFabric } from "./roles.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  lengthWord,
  type Option,
  type WordSpec,
} from "./word.ts";

/**
 * What the first sentence leaves unsaid of the quilt: kinds and turnings, cornerstones, how borders
 * and binding are cut, backing and batting.
 */
export function finishingClause(b: Brief): Clause {
  const binding = b.finishing?.binding;
  const stones = b.quilt.sashing ? ["; sashing ", stonesWord(b)] : [];
  const named = kindsInPlan(b).flatMap((id) => b.blocks.find((k) => k.id === id) ?? []);
  return [
    kindsWord(b),
    ", called ",
    ...named.flatMap(
      (block, i): Clause => [
        i === 0 ? "" : i === named.length - 1 ? " and " : ", ",
        nameWord(b, block),
      ],
    ),
    ", ",
    turningWord(b),
    ...stones,
    ...b.quilt.borders.flatMap((border, i) => borderDetails(b, border, i)),
    ...(binding
      ? ["; binding ", bindingCutWord(b), ", ", bindingJoinWord(b), ", ", bindingSpareWord(b)]
      : []),
    "; ",
    backingWord(b),
    ...(b.finishing?.backing ? [", ", whoseWord(b)] : []),
    ", ",
    battingWord(b),
    ".",
  ].filter((part) => part !== "");
}

const WITHOUT = "without cornerstones";
const WITH = "with cornerstones";

interface Stones {
  readonly id: string;
  readonly role: string;
  readonly path: string;
  readonly now: string | undefined;
  readonly write: (fabric: string | undefined) => Change;
  readonly fabric: (d: Brief) => string;
}

const stonesChoice = (w: Stones): WordSpec =>
  choiceWord({
    id: w.id,
    role: w.role,
    path: w.path,
    text: w.now === undefined ? WITHOUT : WITH,
    decides: [{ role: "cornerstone" }],
    options: [
      { label: WITHOUT, change: w.write(undefined), picture: "quilt" },
      { label: WITH, change: (d) => w.write(w.now ?? w.fabric(d))(d), picture: "quilt" },
    ],
  });

/** "sashing with cornerstones": their fabric is a word of the second sentence. */
const stonesWord = (b: Brief): WordSpec =>
  stonesChoice({
    id: "sashing/stones",
    role: "Cornerstones of the sashing",
    path: "quilt/sashing/cornerstone",
    now: b.quilt.sashing?.cornerstone,
    write: (fabric) => (d) => {
      if (!d.quilt.sashing) return;
      if (fabric === undefined) delete d.quilt.sashing.cornerstone;
      else d.quilt.sashing.cornerstone = fabric;
    },
    fabric: (d) => otherFabric(d, d.quilt.sashing?.fabric),
  });

const otherFabric = (d: Brief, than: string | undefined): string =>
  (d.fabrics.find((f) => f.id !== than) ?? d.fabrics[0]).id;

const ACROSS = "cut across the fabric";
const ALONG = "cut along the fabric";

function borderDetails(b: Brief, border: Border, i: number): Clause {
  const several = b.quilt.borders.length > 1;
  const nth = several ? `border ${i + 1}` : "the border";
  const write =
    (change: (x: Border) => void): Change =>
    (d) =>
      change(d.quilt.borders[i]);
  const options = ([ACROSS, ALONG] as const).map(
    (label): Option => ({
      label,
      change: write((x) => {
        x.cut = label === ACROSS ? "across" : "along";
      }),
      picture: "none",
    }),
  );
  const stones = stonesChoice({
    id: `border/${i}/stones`,
    role: `Cornerstones of ${nth}`,
    path: `quilt/borders/${i}/cornerstone`,
    now: border.cornerstone,
    write: (fabric) =>
      write((x) => {
        if (fabric === undefined) delete x.cornerstone;
        else x.cornerstone = fabric;
      }),
    fabric: (d) => otherFabric(d, border.fabric),
  });
  return [
    `; ${nth} `,
    choiceWord({
      id: `border/${i}/cut`,
      role: `How the strips of ${nth} are cut`,
      path: `quilt/borders/${i}/cut`,
      text: border.cut === "across" ? ACROSS : ALONG,
      options,
    }),
    ...(border.join === "butted" ? [", ", stones] : []),
  ];
}

type Binding = NonNullable<NonNullable<Brief["finishing"]>["binding"]>;

const onBinding =
  (change: (x: Binding) => void): Change =>
  (d) => {
    if (d.finishing?.binding) change(d.finishing.binding);
  };

const bindingCutWord = (b: Brief): WordSpec =>
  choiceWord({
    id: "binding/cut",
    role: "Grain of the binding",
    path: "finishing/binding/cut",
    text: b.finishing?.binding?.cut === "bias" ? "cut on the bias" : "cut straight",
    options: (["straight", "bias"] as const).map((cut) => ({
      label: cut === "bias" ? "cut on the bias" : "cut straight",
      change: onBinding((x) => {
        x.cut = cut;
      }),
      picture: "none",
    })),
  });

const JOINS: Readonly<Record<Binding["join"], string>> = {
  slant: "joined on the slant from square ends",
  "slant-cut": "joined on the slant from slanted ends",
  straight: "joined straight across",
};

const bindingJoinWord = (b: Brief): WordSpec =>
  choiceWord({
    id: "binding/join",
    role: "How strips of binding are joined",
    path: "finishing/binding/join",
    text: JOINS[b.finishing?.binding?.join ?? "slant"],
    options: (Object.keys(JOINS) as Binding["join"][]).map((join) => ({
      label: JOINS[join],
      change: onBinding((x) => {
        x.join = join;
      }),
      picture: "none",
    })),
  });

const bindingSpareWord = (b: Brief): WordSpec =>
  lengthWord(b, {
    id: "binding/spare",
    role: "Binding longer than the edge, for corners and ends",
    path: "finishing/binding/spare",
    value: b.finishing?.binding?.spare ?? small(b, "10", "254"),
    write: (d, text) =>
      onBinding((x) => {
        x.spare = text;
      })(d),
    set: (x) => `${x} over for corners and ends`,
    picture: "none",
    zeroAllowed: true,
  });

/** Finishing without this part; nothing left of it, no finishing. */
function withoutPart(d: Brief, part: "backing" | "batting"): void {
  const { [part]: _gone, ...rest } = d.finishing ?? {};
  if (Object.keys(rest).length > 0) d.finishing = rest;
  else delete d.finishing;
}

/** "backing 4 in over all round": longarm quilters ask for 3 to 5 in (their own pages differ). */
const backingWord = (b: Brief): WordSpec =>
  orNone(b, {
    id: "backing",
    role: "Backing, how far it reaches over the top",
    path: "finishing/backing",
    none: "no backing",
    set: (x) => `backing ${x} over all round`,
    now: b.finishing?.backing?.overhang,
    offers: [small(b, "4", "100"), small(b, "6", "150")],
    picture: "none",
    decides: [],
    write: (overhang) => (d) => {
      if (overhang === undefined) return withoutPart(d, "backing");
      const was = d.finishing?.backing;
      d.finishing = {
        ...d.finishing,
        backing: was ? { ...was, overhang } : { fabric: outerFabric(d, d.blocks[0]), overhang },
      };
    },
  });

const battingWord = (b: Brief): WordSpec =>
  orNone(b, {
    id: "batting",
    role: "Batting, how far it reaches over the top",
    path: "finishing/batting",
    none: "no batting",
    set: (x) => `batting ${x} over all round`,
    now: b.finishing?.batting?.overhang,
    offers: [small(b, "4", "100"), small(b, "2", "50")],
    picture: "none",
    decides: [],
    write: (overhang) => (d) => {
      if (overhang === undefined) return withoutPart(d, "batting");
      d.finishing = { ...d.finishing, batting: { overhang } };
    },
  });

const OWN_RULE = "by your own rule";

/** "as Marsh Longarm asks": whose rule the overhang is. */
function whoseWord(b: Brief): WordSpec {
  const now = b.finishing?.backing?.whose;
  const say = (name: string): string => `as ${name} asks`;
  const write =
    (name: string | undefined): Change =>
    (d) => {
      const backing = d.finishing?.backing;
      if (!backing) return;
      if (name === undefined) delete backing.whose;
      else backing.whose = name;
    };
  return {
    ...choiceWord({
      id: "backing/whose",
      role: "Whose rule the backing follows",
      path: "finishing/backing/whose",
      text: now === undefined ? OWN_RULE : say(now),
      options: [
        { label: OWN_RULE, change: write(undefined), picture: "none" },
        ...(now === undefined
          ? []
          : [{ label: say(now), change: write(now), picture: "none" as const }]),
        {
          label: "as someone you name asks",
          change: () => {},
          picture: "none",
          typed: now ?? "your quilter",
        },
      ],
    }),
    read: (text) => {
      const name = text.trim().replace(/^as (.*) asks$/i, "$1");
      if (name === "" || isNone(text)) return write(undefined);
      return name.length > 100 ? { problem: "That name is too long." } : write(name);
    },
  };
}
