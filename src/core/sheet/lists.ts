import type { Answer } from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import { csvText } from "./csv.ts";

type Row = readonly (string | number)[];

/** Lists for other programs: pieces, cuts, supplies. Lengths as plain numbers in the brief's unit. */
export function listFiles(brief: Brief, answer: Answer): [string, string][] {
  const fabric = new Map(brief.fabrics.map((f) => [f.id, f.name]));
  const recipe = new Map(answer.recipes.map((r) => [r.pieceId, r]));
  const name = (id: string): string => fabric.get(id) ?? id;
  const pieces: Row[] = answer.pieces.map((p) => [
    p.letter,
    p.name,
    p.hand,
    name(p.fabricId),
    p.count,
    recipe.get(p.id)?.kind ?? "",
    recipe.get(p.id)?.verdict ?? "",
    recipe.get(p.id)?.w ?? "",
    recipe.get(p.id)?.spare ?? "",
  ]);
  const cuts: Row[] = answer.pieces.flatMap((p) =>
    (recipe.get(p.id)?.cuts ?? []).map(
      (c, i): Row => [p.letter, i + 1, c.op, c.lengths.join(" x ")],
    ),
  );
  const supplies: Row[] = answer.yardages.map((y) => [
    name(y.fabricId),
    y.width,
    y.inPieces,
    y.straighten,
    y.wrongStrip,
    y.extra,
    y.total,
    y.buy,
    y.buyText,
  ]);
  const order: Row[] = answer.cutting.flatMap((c) =>
    c.orders.flatMap((o) =>
      o.steps.map((s): Row => {
        const { pieceIds = [] } = answer.demands.find((d) => d.id === s.demandId) ?? {};
        const letters = pieceIds.map((id) => answer.pieces.find((p) => p.id === id)?.letter ?? id);
        const what = [letters.join(" "), s.copies ?? ""];
        return [name(c.fabricId), o.from, s.number, s.op, s.size, s.cuts, ...what];
      }),
    ),
  );
  const unit = brief.unit;
  return [
    [
      "pieces.csv",
      csvText([
        [
          "piece",
          "name",
          "hand",
          "fabric",
          "count",
          "cut as",
          "cover",
          `least allowance ${unit}`,
          `spare ${unit}`,
        ],
        ...pieces,
      ]),
    ],
    ["cuts.csv", csvText([["piece", "cut", "how", `lengths ${unit}`], ...cuts])],
    [
      "cutting-order.csv",
      csvText([
        ["fabric", "from", "step", "do", `size ${unit}`, "cuts", "pieces", "copies"],
        ...order,
      ]),
    ],
    [
      "supplies.csv",
      csvText([
        [
          "fabric",
          `usable ${unit}`,
          `in pieces ${unit}`,
          `straighten ${unit}`,
          `wrong strip ${unit}`,
          `extra ${unit}`,
          `total ${unit}`,
          `buy ${unit}`,
          "buy",
        ],
        ...supplies,
      ]),
    ],
  ];
}
