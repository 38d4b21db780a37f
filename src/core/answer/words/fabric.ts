import type { Brief, Fabric } from "../../brief/index.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  lengthWord,
  shownLength,
  type WordSpec,
} from "./word.ts";

/** "from fabric 40 in usable, cut single": one phrase for all fabrics that agree, else by name. */
export function fabricClause(b: Brief): Clause {
  const groups = new Map<string, Fabric[]>();
  for (const f of b.fabrics) {
    const key = `${f.usable} ${f.folds}`;
    groups.set(key, [...(groups.get(key) ?? []), f]);
  }
  const out: (string | WordSpec)[] = [];
  [...groups.values()].forEach((group, i) => {
    const who = groups.size === 1 ? "fabric" : listed(group.map((f) => f.name));
    out.push(i === 0 ? `from ${who} ` : `, ${who} `);
    out.push(usableWord(b, group), " usable, ", foldsWord(b, group));
  });
  return out;
}

/** "Reed, Foam and Tide". */
export const listed = (names: readonly string[]): string =>
  names.length < 2
    ? names.join("")
    : `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;

const onFabrics =
  (group: readonly Fabric[], write: (f: Fabric) => void): Change =>
  (d) => {
    for (const f of d.fabrics) if (group.some((g) => g.id === f.id)) write(f);
  };

const pathOf = (b: Brief, f: Fabric, key: string): string =>
  `fabrics/${b.fabrics.findIndex((x) => x.id === f.id)}/${key}`;

function usableWord(b: Brief, group: readonly Fabric[]): WordSpec {
  const inches = ["38", "40", "42"];
  const mm = ["1000", "1050", "1100"];
  const common = b.unit === "in" ? inches : mm;
  const value = group[0].usable;
  const write = (text: string): Change =>
    onFabrics(group, (f) => {
      f.usable = text;
    });
  const list = common.includes(value) ? common : [value, ...common.slice(0, 2)];
  const offers = list.map((w) => ({
    label: shownLength(w, b.unit),
    change: write(w),
    picture: "strip" as const,
  }));
  return lengthWord(b, {
    id: `usable/${group.map((f) => f.id).join("+")}`,
    role: "Usable width of the fabric",
    path: pathOf(b, group[0], "usable"),
    value,
    write: (d, text) => write(text)(d),
    picture: "strip",
    offers,
  });
}

function foldsWord(b: Brief, group: readonly Fabric[]): WordSpec {
  const say = (folds: number): string => (folds === 1 ? "cut folded once" : "cut single");
  return choiceWord({
    id: `folds/${group.map((f) => f.id).join("+")}`,
    role: "How the fabric lies when it is cut",
    path: pathOf(b, group[0], "folds"),
    text: say(group[0].folds),
    options: ([0, 1] as const).map((folds) => ({
      label: say(folds),
      change: onFabrics(group, (f) => {
        f.folds = folds;
      }),
      picture: "strip",
    })),
  });
}

/** "with room for one wrong strip": the margin that has a name. */
export function marginWord(b: Brief): WordSpec {
  const now = b.margin?.wrongStrip ?? true;
  const say = (room: boolean): string =>
    room ? "with room for one wrong strip" : "with no room for a wrong strip";
  return choiceWord({
    id: "margin",
    role: "Margin when buying",
    path: "margin/wrongStrip",
    text: say(now),
    options: [true, false].map((room) => ({
      label: say(room),
      change: (d) => {
        d.margin = { straighten: "1", ...d.margin, wrongStrip: room };
        if (d.unit === "mm" && b.margin === undefined) d.margin.straighten = "25";
      },
      picture: "none",
    })),
  });
}
