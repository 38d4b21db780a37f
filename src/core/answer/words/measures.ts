import { type Brief, withOtherUnit } from "../../brief/index.ts";
import { orNone, small } from "./edges.ts";
import { type Change, type Clause, choiceWord, lengthWord, type WordSpec } from "./word.ts";

/** The unit, the ends of the ruler's lines, and what is bought over the strips. */
export function measuresClause(b: Brief): Clause {
  const point = b.ruler.point;
  return [
    "Worked ",
    unitWord(b),
    "; a ruler ",
    ...(typeof point === "object" && "blunt" in point ? [bluntSeamWord(b, point), ", "] : []),
    lineWord(b, "shortest"),
    " and ",
    lineWord(b, "longest"),
    "; ",
    straightenWord(b),
    " to straighten the end and ",
    extraWord(b),
    " of each fabric.",
  ];
}

const UNITS = { in: "in inches", mm: "in millimeters" } as const;

/** "in inches": every length that was typed without a unit keeps its meaning. */
const unitWord = (b: Brief): WordSpec =>
  choiceWord({
    id: "unit",
    role: "Unit of lengths without one",
    path: "unit",
    text: UNITS[b.unit],
    options: (["in", "mm"] as const).map((unit) => ({
      label: UNITS[unit],
      change: unit === b.unit ? () => {} : (d) => withOtherUnit(d, unit),
      picture: "none",
    })),
  });

/** "made for a 1/4 in seam": where a ruler cuts its points blunt, for the seam it was made for. */
const bluntSeamWord = (b: Brief, point: { blunt: string; seam?: string }): WordSpec =>
  lengthWord(b, {
    id: "ruler/seam",
    role: "Seam the ruler was made for",
    path: "ruler/point/seam",
    value: point.seam ?? "1/4 in",
    write: (d, text) => {
      if (typeof d.ruler.point === "object" && "blunt" in d.ruler.point) d.ruler.point.seam = text;
    },
    set: (x) => `made for a ${x} seam`,
    picture: "none",
  });

const lineWord = (b: Brief, which: "shortest" | "longest"): WordSpec =>
  orNone(b, {
    id: `ruler/${which}`,
    role: `The ruler's ${which} line`,
    path: `ruler/${which}`,
    none: `of no ${which} line`,
    set: (x) => `of ${which} line ${x}`,
    now: b.ruler[which],
    offers:
      which === "shortest"
        ? [small(b, "1", "25"), small(b, "2", "50")]
        : [small(b, "6", "150"), small(b, "8", "200")],
    picture: "none",
    decides: [],
    write: (text) => (d) => {
      if (text === undefined) delete d.ruler[which];
      else d.ruler[which] = text;
    },
  });

type Margin = NonNullable<Brief["margin"]>;

const onMargin =
  (b: Brief, change: (m: Margin) => void): Change =>
  (d) => {
    d.margin ??= { straighten: small(b, "1", "25"), wrongStrip: true };
    change(d.margin);
  };

const straightenWord = (b: Brief): WordSpec =>
  lengthWord(b, {
    id: "margin/straighten",
    role: "Fabric bought for straightening the end",
    path: "margin/straighten",
    value: b.margin?.straighten ?? small(b, "1", "25"),
    write: (d, text) =>
      onMargin(b, (m) => {
        m.straighten = text;
      })(d),
    picture: "none",
    zeroAllowed: true,
  });

const extraWord = (b: Brief): WordSpec =>
  orNone(b, {
    id: "margin/extra",
    role: "Fabric bought over all that",
    path: "margin/extra",
    none: "nothing more",
    set: (x) => `${x} more`,
    now: b.margin?.extra,
    offers: [small(b, "2", "50"), small(b, "4", "100")],
    picture: "none",
    decides: [],
    write: (text) =>
      onMargin(b, (m) => {
        if (text === undefined) delete m.extra;
        else m.extra = text;
      }),
  });
