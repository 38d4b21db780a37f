import type { Brief, Fabric } from "../../brief/index.ts";
import type { SentencePart } from "../types/answer.ts";
import { fabricOf, type OneFabric, onFabric, wordId, wordPath } from "./fabric-at.ts";
import { kindWord } from "./fabric-kinds.ts";
import { inHandWord, washWord } from "./pieces.ts";
import { partsOf } from "./sentence.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  lengthTextProblem,
  lengthWord,
  type Option,
  shownLength,
  type WordSpec,
} from "./word.ts";

/** Everything a brief can say of one fabric, save its colors, bands and strips, as one sentence. */
export function oneFabricClause(b: Brief, id: string): Clause {
  const o = fabricOf(b, id);
  if (!o) return [];
  const clause: Clause = [
    nameWord(o),
    " is ",
    kindWord(o),
    ...ownClause(o),
    "; ",
    usableWord(o),
    " usable, ",
    narrowerWord(o),
    ", ",
    ...twoWord(o, "folds", "How it lies when it is cut", [0, 1], ["cut single", "cut folded once"]),
    ", ",
    ...twoWord(o, "directional", "Whether it has a way up", YES, [
      "with no way up",
      "with a way up",
    ]),
    ", ",
    ...twoWord(o, "reversible", "Which side is shown", YES, [
      "its right side out",
      "either side out",
    ]),
    ", ",
    washWord(o),
    ", ",
    inHandWord(o),
    ".",
  ];
  return clause.filter((part) => part !== "");
}

/** The same as parts, words among them. */
export const oneFabricSentence = (b: Brief, id: string): SentencePart[] =>
  partsOf(oneFabricClause(b, id));

/** The words of every fabric's own sentence. */
export const oneFabricClauses = (b: Brief): Clause =>
  b.fabrics.flatMap((f) => oneFabricClause(b, f.id));

const YES = [false, true] as const;

function ownClause(o: OneFabric): Clause {
  switch (o.fabric.kind) {
    case "stripe":
      return [" whose bands run ", runsWord(o, o.fabric), ", ", tiltWord(o, o.fabric)];
    case "print":
      return [", ", repeatWord(o, "along"), ", ", repeatWord(o, "across"), ...pictureClause(o)];
    case "strip-set":
      return [" of strips cut ", ...stripsClause(o, o.fabric)];
    default:
      return [];
  }
}

/** "2 in of Brine, 1 1/4 in of Coral": from the outer edge of an up wedge inward. */
function stripsClause(o: OneFabric, { strips }: Extract<Fabric, { kind: "strip-set" }>): Clause {
  const nameOf = (id: string): string => o.brief.fabrics.find((f) => f.id === id)?.name ?? id;
  return strips.flatMap((s, i) => [
    i === 0 ? "" : i === strips.length - 1 ? " and " : ", ",
    lengthWord(o.brief, {
      id: wordId(o, `strip/${i}`),
      role: `Cut width of strip ${i + 1} of ${o.fabric.name}`,
      path: wordPath(o, `strips/${i}/cut`),
      value: s.cut,
      write: (d, text) =>
        onFabric(o, (f) => {
          if (f.kind === "strip-set") f.strips[i].cut = text;
        })(d),
      picture: "block",
    }),
    ` of ${nameOf(s.fabric)}`,
  ]);
}

/** A word of two readings. */
function twoWord<T>(
  o: OneFabric,
  key: "folds" | "directional" | "reversible",
  role: string,
  values: readonly [T, T],
  says: readonly [string, string],
): Clause {
  const now = values.indexOf(o.fabric[key] as T);
  return [
    choiceWord({
      id: wordId(o, key),
      role: `${role}, ${o.fabric.name}`,
      path: wordPath(o, key),
      text: says[Math.max(0, now)],
      options: values.map((value, i) => ({
        label: says[i],
        change: onFabric(o, (f) => Object.assign(f, { [key]: value })),
        picture: "none",
      })),
    }),
  ];
}

const MOST_NAME = 120;

function nameWord(o: OneFabric): WordSpec {
  const { name } = o.fabric;
  const typed: Option = {
    label: "a name you type",
    change: () => {},
    picture: "none",
    typed: name,
  };
  return {
    ...choiceWord({
      id: wordId(o, "name"),
      role: "Name of the fabric",
      path: wordPath(o, "name"),
      text: name,
      options: [{ label: name, change: () => {}, picture: "none" }, typed],
    }),
    read: (text) => {
      const said = text.trim();
      if (said === "") return { problem: "Type a name." };
      if (said.length > MOST_NAME) return { problem: `At most ${MOST_NAME} letters.` };
      return onFabric(o, (f) => {
        f.name = said;
      });
    },
  };
}

const usableWord = (o: OneFabric): WordSpec =>
  lengthWord(o.brief, {
    id: wordId(o, "usable"),
    role: `Usable width of ${o.fabric.name}`,
    path: wordPath(o, "usable"),
    value: o.fabric.usable,
    write: (d, text) =>
      onFabric(o, (f) => {
        f.usable = text;
      })(d),
    picture: "none",
  });

/** A length that may be left unsaid. */
function maybeWord(
  o: OneFabric,
  w: {
    readonly key: string;
    readonly role: string;
    readonly value: string | undefined;
    readonly unsaid: string;
    readonly say: (shown: string) => string;
    readonly example: string;
    readonly write: (f: Fabric, text: string | undefined) => void;
  },
): WordSpec {
  const { unit } = o.brief;
  const say = (text: string): string => w.say(shownLength(text, unit));
  const set = (text: string | undefined): Change => onFabric(o, (f) => w.write(f, text));
  return {
    ...choiceWord({
      id: wordId(o, w.key),
      role: `${w.role}, ${o.fabric.name}`,
      path: wordPath(o, w.key),
      text: w.value === undefined ? w.unsaid : say(w.value),
      options: [
        { label: w.unsaid, change: set(undefined), picture: "none" },
        ...(w.value === undefined
          ? []
          : [{ label: say(w.value), change: () => {}, picture: "none" } as const]),
        {
          label: "a length you type",
          change: () => {},
          picture: "none",
          typed: w.value ?? w.example,
        },
      ],
    }),
    read: (text) => lengthTextProblem(text, unit) ?? set(text.trim()),
  };
}

const narrowerWord = (o: OneFabric): WordSpec =>
  maybeWord(o, {
    key: "narrower",
    role: "The narrower width its yardage is also given at",
    value: o.fabric.narrower,
    unsaid: "no narrower width",
    say: (x) => `${x} where it is narrower`,
    example: o.brief.unit === "in" ? "38" : "1000",
    write: (f, text) => {
      if (text === undefined) delete f.narrower;
      else f.narrower = text;
    },
  });

type Stripe = Extract<Fabric, { kind: "stripe" }>;

const runsWord = (o: OneFabric, { runs }: Stripe): WordSpec => {
  const say = { along: "along the selvage", across: "across the fabric" } as const;
  return choiceWord({
    id: wordId(o, "runs"),
    role: `Which way the bands of ${o.fabric.name} run`,
    path: wordPath(o, "runs"),
    text: say[runs],
    options: (["along", "across"] as const).map((way) => ({
      label: say[way],
      change: onFabric(o, (f) => {
        if (f.kind === "stripe") f.runs = way;
      }),
      picture: "block",
    })),
  });
};

const MOST_TILT = 45;

const tiltWord = (o: OneFabric, { tilt }: Stripe): WordSpec => {
  const say = (t: number): string => (t === 0 ? "straight" : `tilted ${t} degrees`);
  const set = (t: number): Change =>
    onFabric(o, (f) => {
      if (f.kind === "stripe") f.tilt = t;
    });
  return {
    ...choiceWord({
      id: wordId(o, "tilt"),
      role: `How its bands lie against its threads, ${o.fabric.name}`,
      path: wordPath(o, "tilt"),
      text: say(tilt),
      options: [
        ...[...new Set([tilt, 0])].map((t) => ({
          label: say(t),
          change: set(t),
          picture: "block" as const,
        })),
        { label: "an angle you type", change: () => {}, picture: "block", typed: String(tilt) },
      ],
    }),
    read: (text) => {
      const t = Number(text.trim().replace(/\s*(degrees?|°)$/i, ""));
      return text.trim() !== "" && Math.abs(t) <= MOST_TILT
        ? set(t)
        : { problem: `Type an angle from -${MOST_TILT} to ${MOST_TILT} degrees.` };
    },
  };
};

function repeatWord(o: OneFabric, way: "along" | "across"): WordSpec {
  const { fabric } = o;
  const repeat = fabric.kind === "print" ? fabric.repeat : undefined;
  return maybeWord(o, {
    key: `repeat/${way}`,
    role: `How far on it repeats ${way} the fabric`,
    value: repeat?.[way],
    unsaid: `no repeat ${way} it`,
    say: (x) => `repeating every ${x} ${way} it`,
    example: o.brief.unit === "in" ? "24" : "640",
    write: (f, text) => {
      if (f.kind !== "print") return;
      // A print repeats along the fabric, if at all: across alone is taken for both.
      if (way === "along" && text === undefined) delete f.repeat;
      else if (way === "along") f.repeat = { ...f.repeat, along: text as string };
      else if (text === undefined) delete f.repeat?.across;
      else f.repeat = { along: f.repeat?.along ?? text, across: text };
    },
  });
}

/** The size its picture stands for, and the picture itself, which may be left out. */
function pictureClause(o: OneFabric): Clause {
  if (o.fabric.kind !== "print" || !o.fabric.photo) return [];
  const { photo } = o.fabric;
  const side = (key: "width" | "height"): WordSpec =>
    lengthWord(o.brief, {
      id: wordId(o, `photo/${key}`),
      role: `${key === "width" ? "Width" : "Height"} of what its picture shows, ${o.fabric.name}`,
      path: wordPath(o, `photo/${key}`),
      value: photo[key],
      write: (d, text) =>
        onFabric(o, (f) => {
          if (f.kind === "print" && f.photo) f.photo[key] = text;
        })(d),
      picture: "block",
    });
  const kept = choiceWord({
    id: wordId(o, "photo"),
    role: `The picture of ${o.fabric.name}`,
    path: wordPath(o, "photo"),
    text: "with a picture",
    options: [
      { label: "with a picture", change: () => {}, picture: "block" },
      {
        label: "without its picture",
        change: onFabric(o, (f) => {
          if (f.kind === "print") delete f.photo;
        }),
        picture: "block",
      },
    ],
  });
  return [", ", kept, " of ", side("width"), " by ", side("height")];
}
