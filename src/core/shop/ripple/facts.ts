import {
  type Answer,
  cutRows,
  overWords,
  planWords,
  sizeRows,
  stopTables,
  supplies,
} from "../../answer/index.ts";
import type { Brief } from "../../brief/index.ts";
import { printLength, stepOf } from "../../measure/index.ts";
import { studentPlan } from "../class/student.ts";
import { needsOf } from "../needs.ts";
import { rulesOf } from "../rules.ts";
import { sayCut } from "../words.ts";

/** One number that was printed or cut by: where it stands, in words, and what it says. */
export interface Fact {
  readonly key: string;
  readonly where: string;
  readonly text: string;
}

/** What leaves the design: a sheet of it, kits, or the lists of a class. */
export const LEAVES = [
  "pattern",
  "templates",
  "chart",
  "card",
  "layouts",
  "sewing",
  "kits",
  "class",
  "living",
] as const;
export type Leaf = (typeof LEAVES)[number];

export const LEAF_WORDS: Readonly<Record<Leaf, string>> = {
  pattern: "pattern",
  templates: "templates",
  chart: "wedge chart",
  card: "cutting-table card",
  layouts: "cutting layouts",
  sewing: "sewing card",
  kits: "kits",
  class: "class lists",
  living: "living pattern",
};

type Part = (brief: Brief, answer: Answer) => Fact[];

const PARTS: Readonly<Record<Leaf, readonly Part[]>> = {
  pattern: [seam, sizes, pieces, buying, toMeasure, otherSizes],
  templates: [seam, shapes],
  chart: [seam, point],
  card: [pieces, strips],
  layouts: [pieces, strips, buying],
  sewing: [seam, toMeasure],
  kits: [inKits],
  class: [seam, point, buying, home],
  living: [seam, point, sizes, pieces, buying, toMeasure],
};

/** Every number that one leaf of this design carries, each under a key that does not change. */
export const factsOf = (leaf: Leaf, brief: Brief, answer: Answer): Fact[] =>
  PARTS[leaf].flatMap((part) => part(brief, answer));

function seam(b: Brief): Fact[] {
  return [{ key: "seam", where: "seam allowance", text: `${b.seam} ${b.unit}` }];
}

function point({ ruler, unit, blocks }: Brief): Fact[] {
  const p = ruler.point;
  const said =
    typeof p === "string" ? p : "blunt" in p ? `blunt ${p.blunt}` : `flat ${p.flat} wide`;
  const strip = blocks.flatMap((b): Fact[] =>
    b.kind === "wedges"
      ? [
          {
            key: `strip/${b.id}`,
            where: `strip of block ${b.name ?? b.id}`,
            text: `${b.strip} ${unit}`,
          },
        ]
      : [],
  );
  return [{ key: "point", where: "point of the ruler", text: said }, ...strip];
}

function sizes(b: Brief, a: Answer): Fact[] {
  return sizeRows(b, a).map((r) => ({
    key: `size/${r.id}`,
    where: r.id === "quilt" ? "the top, finished" : `block ${r.id}, finished and how many`,
    text: r.id === "quilt" ? r.finished : `${r.what}, ${r.finished}`,
  }));
}

function pieces(b: Brief, a: Answer): Fact[] {
  return cutRows(b, a).flatMap((r) => [
    { key: `piece/${r.letter}/what`, where: `piece ${r.letter}`, text: `${r.name} of ${r.fabric}` },
    { key: `piece/${r.letter}/count`, where: `piece ${r.letter}, how many`, text: String(r.count) },
    { key: `piece/${r.letter}/cut`, where: `piece ${r.letter}, cut`, text: r.cut },
  ]);
}

/** The outlines of the cut pieces, by their edges in order. */
function shapes(b: Brief, a: Answer): Fact[] {
  const step = stepOf(b.step, b.unit);
  return a.pieces.flatMap((p): Fact[] => {
    const recipe = a.recipes.find((r) => r.pieceId === p.id);
    if (!recipe) return [];
    const edges = recipe.polygon.map((v, i, all) => {
      const w = all[(i + 1) % all.length];
      return printLength(Math.hypot(w.x - v.x, w.y - v.y), step);
    });
    return [
      { key: `shape/${p.letter}`, where: `template ${p.letter}, edges`, text: edges.join(", ") },
    ];
  });
}

function buying(b: Brief, a: Answer): Fact[] {
  return supplies(b, a).rows.flatMap((r) => [
    { key: `buy/${r.id}`, where: `${r.name}, to buy`, text: r.buy },
    ...(r.narrower
      ? [
          {
            key: `narrower/${r.id}`,
            where: `${r.name}, to buy where it is narrower`,
            text: r.narrower,
          },
        ]
      : []),
  ]);
}

function strips(b: Brief, a: Answer): Fact[] {
  return studentPlan(b, a, { name: "everyone" }).homework.map((h) => ({
    key: `strips/${h.fabricId}`,
    where: `${h.name}, strips`,
    text: h.cuts.join("; "),
  }));
}

function home(b: Brief, a: Answer): Fact[] {
  return [
    ...strips(b, a).map((f) => ({ ...f, where: `${f.where} cut at home` })),
    ...studentPlan(b, a, { name: "everyone" }).tools.map((text, i) => ({
      key: `tool/${i}`,
      where: "tools",
      text,
    })),
  ];
}

function toMeasure(b: Brief, a: Answer): Fact[] {
  return stopTables(b, a).flatMap(({ block, rows }) =>
    rows
      .filter((r) => r.measure !== undefined)
      .map((r) => ({
        key: `stop/${r.id}`,
        where: `${block.name}, ${r.name}: should measure`,
        text: r.should,
      })),
  );
}

function otherSizes(b: Brief, a: Answer): Fact[] {
  const step = stepOf(b.step, b.unit);
  return (a.sizes ?? []).flatMap((s) => {
    const buy = s.yardages
      .filter((y, i, all) => all.findIndex((x) => x.fabricId === y.fabricId) === i)
      .map((y) => `${b.fabrics.find((f) => f.id === y.fabricId)?.name ?? y.fabricId} ${y.buyText}`);
    return [
      {
        key: `sizes/${s.name}`,
        where: `size ${s.name}`,
        text: `${planWords(s.plan, step)}, ${overWords(s.plan.over, step)}`,
      },
      { key: `sizes/${s.name}/buy`, where: `size ${s.name}, to buy`, text: buy.join(", ") },
    ];
  });
}

function inKits(b: Brief, a: Answer): Fact[] {
  const needs = needsOf(b, a, rulesOf(b));
  return needs.flatMap((n): Fact[] => {
    const cut = n.at(n.width);
    return cut
      ? [{ key: `kit/${n.fabricId}`, where: `${n.name} in each kit`, text: sayCut(cut, b) }]
      : [];
  });
}
