import { sideIsFixed, WEDGE_SETTINGS, type WedgeSetting } from "../../src/core/block/index.ts";
import type { Luck } from "./luck.ts";

/** A brief as a plain document: nothing about it is trusted yet. */
export type Document = Record<string, unknown>;

const FABRICS = ["reef", "foam", "rust", "moss"];
const STRIPS_IN = ["2", "2 1/2", "3.25", "3 1/2", "4 1/2", "5", "6 1/8", "8.9033"];
const STRIPS_MM = ["50", "65 mm", "7.5 cm", "90", "11.5 cm", "140"];
const SEAMS = { in: ["1/4", "1/4", "0.25", "7 mm", "3/8"], mm: ["7", "6 mm", "7.5", "1/4 in"] };

/**
 * A small design that the reader should take, every setting, kind of block and arrangement among
 * them; what its parts give together may still be impossible, which is for the findings to say.
 */
export function design(luck: Luck): Document {
  const unit = luck.pick(["in", "in", "mm"] as const);
  const size = (inches: readonly string[], factor = 25): string =>
    unit === "in"
      ? luck.pick(inches)
      : String(Math.round(Number.parseFloat(luck.pick(inches)) * factor));
  const fabrics = FABRICS.map((id, i) => fabric(luck, id, i, size));
  const blocks = luck.some(2, () => 0, 1).map((_, i) => block(luck, `block-${i}`, unit, size));
  const ids = blocks.map((b) => b.id as string);
  const plan = luck.some(2, () => luck.some(2, () => placed(luck, ids), 1), 1);
  return {
    format: "eighthwise-brief",
    version: 1,
    title: luck.pick(["Low tide", "Seven lanterns", "Öland, in the rain"]),
    unit,
    seam: luck.pick(SEAMS[unit]),
    step: unit === "in" ? luck.pick(["1/8", "1/16", "1/4"]) : luck.pick(["1", "5", "0.5"]),
    ruler: { point: point(luck, unit), ...(luck.once(8) && { longest: size(["6", "12"]) }) },
    fabrics,
    blocks,
    quilt: {
      arrangement: luck.pick(["rows", "rows", "rows", "on-point", "hexagon-rows"]),
      rows: luck.int(1, 4),
      columns: luck.int(1, 4),
      plan,
      ...(luck.once(4) && {
        sashing: { width: size(["1", "2 1/2"]), fabric: luck.pick(FABRICS) },
      }),
      ...(luck.once(3) && { setting: luck.pick(FABRICS) }),
      ...(luck.once(6) && { edges: luck.pick(["triangles", "halves"]) }),
      ...(luck.once(8) && { offset: true }),
      borders: luck.once(3) ? luck.some(2, () => border(luck, size), 1) : [],
    },
    ...(luck.once(4) && {
      finishing: {
        binding: {
          width: size(["2 1/4", "2.5"]),
          fabric: luck.pick(FABRICS),
          cut: luck.pick(["straight", "bias"]),
        },
        ...(luck.once(2) && {
          backing: { fabric: luck.pick(FABRICS), overhang: size(["4", "3"]) },
        }),
        batting: { overhang: size(["3"]) },
      },
    }),
    ...(luck.once(12) && {
      sizes: [{ name: "Throw", width: size(["50", "54"]), length: size(["60", "70"]) }],
    }),
    ...(luck.once(6) && { margin: { wrongStrip: luck.once(2), extra: size(["4", "0"]) } }),
  };
}

type Size = (inches: readonly string[], factor?: number) => string;

function point(luck: Luck, unit: "in" | "mm"): unknown {
  return luck.pick([
    "sharp",
    "sharp",
    { blunt: unit === "in" ? "1/4" : "6" },
    { blunt: "0", seam: "1/4 in" },
    { flat: unit === "in" ? "0.334" : "8.5" },
  ]);
}

function fabric(luck: Luck, id: string, i: number, size: Size): Document {
  const common = {
    id,
    name: luck.pick(["Reef", "Foam & spray", "=SUM(A1)", "<i>rust</i>", "Moos"]),
    usable: size(["40", "42", "36 1/2", "20"]),
    ...(luck.once(3) && { narrower: size(["38", "35"]) }),
    folds: luck.int(0, 1),
    directional: luck.once(4),
    reversible: luck.once(6),
    color: luck.pick(["#223344", "#F0EAD6", "#A33B2E"]),
    ...(luck.once(8) && { shrinkage: { length: luck.int(0, 8), width: luck.int(0, 5) } }),
    ...(luck.once(6) && {
      inHand: luck.some(
        2,
        () => ({
          width: size(["18", "9", "40"]),
          length: size(["21", "30"]),
          count: luck.int(1, 3),
        }),
        1,
      ),
    }),
  };
  const kind =
    i === 0
      ? luck.pick(["stripe", "strip-set", "print", "plain"])
      : luck.pick(["plain", "plain", "stripe"]);
  if (kind === "stripe")
    return {
      ...common,
      kind,
      runs: luck.pick(["along", "across"]),
      bands: luck.some(
        4,
        () => ({ width: size(["1/2", "1", "2 1/4"]), color: luck.pick(["#112233", "#DDEEFF"]) }),
        1,
      ),
      ...(luck.once(5) && { tilt: luck.int(-45, 45) }),
    };
  if (kind === "strip-set")
    return {
      ...common,
      kind,
      strips: luck.some(
        4,
        () => ({ fabric: luck.pick(FABRICS.slice(1)), cut: size(["1 1/2", "2", "1"]) }),
        1,
      ),
    };
  if (kind === "print")
    return {
      ...common,
      kind,
      ...(luck.once(2) && { repeat: { along: size(["6", "12"]), across: size(["8"]) } }),
    };
  return { ...common, kind: "plain" };
}

function block(luck: Luck, id: string, unit: "in" | "mm", size: Size): Document {
  const roles = [
    "wedge",
    "wedge-even",
    "wedge-odd",
    "kite",
    "corner",
    "background",
    "background-left",
    "trapezoid",
    "bar",
    "patch",
  ];
  const common = {
    id,
    fabric: {
      wedge: luck.pick(FABRICS),
      patch: luck.pick(FABRICS),
      ...Object.fromEntries(roles.slice(1).map((r) => [r, luck.pick(FABRICS)])),
    },
    ...(luck.once(5) && {
      cut: {
        [luck.pick(roles)]: luck.pick([
          { size: size(["3", "4", "5 1/2"]) },
          { rule: luck.pick(["strip-1/2", "leg+7/8", "2*strip-1", "nonsense"]) },
          { kind: luck.pick(["template", "square-once", "kite", "two-marks", "none"]) },
        ]),
      },
    }),
    ...(luck.once(4) && {
      place: {
        [luck.pick(roles)]: {
          round: luck.pick(["matched", "mixed", "free"]),
          way: luck.pick(["up", "down"]),
          ...(luck.once(2) && { start: size(["0", "1"]) }),
        },
      },
    }),
  };
  const kind = luck.pick(["wedges", "wedges", "wedges", "wedges", "own", "unit"]);
  if (kind === "own")
    return {
      ...common,
      kind,
      outline: luck.once(5)
        ? { hexagon: size(["8", "10"]) }
        : { width: size(["6", "8"]), height: size(["6", "8"]) },
      seams: luck.some(3, () => luck.pick(SAID)),
    };
  if (kind === "unit")
    return {
      ...common,
      kind,
      unit: luck.pick([
        "square",
        "half-square",
        "quarter-square",
        "four-patch",
        "nine-patch",
        "half-rectangle",
      ]),
      width: size(["6", "8", "4"]),
      ...(luck.once(3) && { height: size(["3", "6"]) }),
      ...(luck.once(4) && { hand: luck.pick(["left", "right"]) }),
    };
  const setting = luck.pick(Object.keys(WEDGE_SETTINGS) as WedgeSetting[]);
  const free = setting !== "sectors" && !sideIsFixed(setting);
  return {
    ...common,
    kind,
    n: luck.pick([8, 8, 8, 8, 6, 10, 12, 16]),
    ...(luck.once(8) && { outline: "hexagon" }),
    strip: luck.pick(unit === "in" ? STRIPS_IN : STRIPS_MM),
    setting,
    ...((free || luck.once(12)) && { side: size(["8", "10", "12 1/2", "18"]) }),
    ...(setting === "framed" && { inner: luck.pick(["plain", "kites"]) }),
    ...(luck.once(4) && { turned: luck.pick(["flat", "corner"]) }),
    ...(luck.once(5) && { whole: luck.some(4, () => luck.int(0, 15)) }),
    ...(luck.once(6) && { tree: luck.pick(["corners-last", "corners-first", "no-such-order"]) }),
  };
}

const SAID = [
  "from the middle of AB to the middle of CD",
  "from A to C",
  "8 wedges round the center",
  "6 wedges round the center",
  "from a third of AB to a third of DC",
  "from 2 in from A along AB to C",
  "from B square to AC",
  "round and round",
];

const placed = (luck: Luck, ids: readonly string[]): unknown =>
  luck.once(5)
    ? { block: luck.pick(ids), quarters: luck.int(0, 3), mirrored: luck.once(2) }
    : luck.pick(ids);

const border = (luck: Luck, size: Size): Document => ({
  width: size(["1 1/2", "3", "6"]),
  fabric: luck.pick(FABRICS),
  join: luck.pick(["butted", "mitred"]),
  ...(luck.once(3) && { cornerstone: luck.pick(FABRICS) }),
  cut: luck.pick(["across", "along"]),
});
