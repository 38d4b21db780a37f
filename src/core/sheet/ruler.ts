import { MM_PER_INCH, type PdfPoint, POINTS_PER_INCH } from "../measure/index.ts";
import { type Drawing, type Op, PAPER, type Stroke } from "../picture/index.ts";

const INK: Stroke = { color: PAPER.ink, width: 0.7 };
const FINE: Stroke = { color: PAPER.ink, width: 0.45 };

/** An inch and a millimetre in points, exactly as the standard has them. */
export const INCH: PdfPoint = POINTS_PER_INCH;
export const MILLIMETRE: PdfPoint = POINTS_PER_INCH / MM_PER_INCH;

const line = (x1: number, y1: number, x2: number, y2: number, stroke: Stroke): Op => ({
  op: "path",
  points: [
    { x: x1, y: y1 },
    { x: x2, y: y2 },
  ],
  closed: false,
  stroke,
});

const word = (
  text: string,
  x: number,
  y: number,
  anchor: "start" | "middle" | "end",
  bold = false,
): Op => ({
  op: "text",
  at: { x, y },
  runs: [{ kind: "text", text }],
  size: 9,
  bold,
  color: bold ? PAPER.ink : PAPER.soft,
  anchor,
  turn: 0,
});

interface Scale {
  readonly step: PdfPoint;
  readonly count: number;
  /** Every how many steps a figure, a long, a middle tick. */
  readonly ranks: readonly [number, number, number];
  readonly name: string;
}

const inchScale = (length: number): Scale => ({
  step: INCH / 8,
  count: length * 8,
  ranks: [8, 4, 2],
  name: "in",
});
const centimetreScale = (length: number): Scale => ({
  step: MILLIMETRE,
  count: length * 10,
  ranks: [10, 5, 5],
  name: "cm",
});

const LONG = [11, 7.5, 5.5, 3.5] as const;

/** Ticks of one scale along an axis; `place` puts a distance along and one across on the drawing. */
function ticks(
  s: Scale,
  place: (along: number, across: number) => readonly [number, number],
  figures: (n: number, x: number, y: number) => Op,
  reach: number,
): Op[] {
  const ops: Op[] = [];
  for (let i = 0; i <= s.count; i++) {
    const rank = s.ranks.findIndex((every) => i % every === 0);
    const long = LONG[rank < 0 ? 3 : rank];
    const [x1, y1] = place(i * s.step, 0);
    const [x2, y2] = place(i * s.step, long);
    ops.push(line(x1, y1, x2, y2, rank === 0 ? INK : FINE));
    if (rank === 0) {
      const [x, y] = place(i * s.step, reach);
      ops.push(figures(i / s.ranks[0], x, y));
    }
  }
  return ops;
}

/** Down the edge of a sheet: centimetres on the left, inches on the right of one line. */
export function uprightRuler(inches: number, centimetres: number): Drawing {
  const x = 26;
  const top = 5;
  const inch = inchScale(inches);
  const cm = centimetreScale(centimetres);
  const figure = (s: Scale, anchor: "start" | "end") => (n: number, fx: number, fy: number) =>
    word(n === 0 ? s.name : String(n), fx, fy + 3, anchor, n === 0);
  return {
    title: `Ruler, ${inches} in and ${centimetres} cm: measure it before cutting`,
    width: 52,
    height: top + inches * INCH + 5,
    stamps: {},
    ops: [
      line(x, top, x, top + Math.max(inches * INCH, centimetres * 10 * MILLIMETRE), INK),
      ...ticks(cm, (a, b) => [x - b, top + a], figure(cm, "end"), 13),
      ...ticks(inch, (a, b) => [x + b, top + a], figure(inch, "start"), 13),
    ],
  };
}

/** Along the foot: inches above, centimetres below one line. A printer can err in one direction only. */
export function levelRuler(inches: number, centimetres: number): Drawing {
  const left = 5;
  const y = 24;
  const inch = inchScale(inches);
  const cm = centimetreScale(centimetres);
  const figure = (s: Scale, down: number) => (n: number, fx: number, fy: number) =>
    word(n === 0 ? s.name : String(n), fx, fy + down, "middle", n === 0);
  const end = Math.max(inches * INCH, centimetres * 10 * MILLIMETRE);
  return {
    title: `Ruler, ${inches} in and ${centimetres} cm: measure it before cutting`,
    width: left + end + 5,
    height: 48,
    stamps: {},
    ops: [
      line(left, y, left + end, y, INK),
      ...ticks(inch, (a, b) => [left + a, y - b], figure(inch, 0), 14),
      ...ticks(cm, (a, b) => [left + a, y + b], figure(cm, 7), 14),
    ],
  };
}

/** The two squares every template page carries: 2 cm and 1 in. */
export function testSquares(): Drawing {
  const two = 20 * MILLIMETRE;
  const gap = 20;
  const square = (x: number, side: number, name: string): Op[] => [
    {
      op: "path",
      points: [
        { x, y: 0.5 },
        { x: x + side, y: 0.5 },
        { x: x + side, y: 0.5 + side },
        { x, y: 0.5 + side },
      ],
      closed: true,
      stroke: { color: PAPER.ink, width: 0.9 },
    },
    word(name, x + side / 2, side / 2 + 3.5, "middle", true),
  ];
  return {
    title: "Test squares: 2 cm and 1 in on each side",
    width: two + gap + INCH + 1,
    height: INCH + 1,
    stamps: {},
    ops: [...square(0.5, two, "2 cm"), ...square(0.5 + two + gap, INCH, "1 in")],
  };
}
