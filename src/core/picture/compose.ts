import {
  add,
  angleOf,
  type Box,
  between,
  boundingBox,
  distance,
  leftOf,
  MIRROR,
  normalized,
  type Point,
  type Polygon,
  point,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length, Radian, Unit } from "../measure/index.ts";
import type { Line, Mark, Picture } from "./marks.ts";

export interface Edges {
  readonly left?: Length;
  readonly right?: Length;
  readonly top?: Length;
  readonly bottom?: Length;
}

interface Composed {
  readonly title: string;
  readonly unit: Unit;
  readonly box: Box;
  readonly marks: readonly Mark[];
  readonly stamps?: Readonly<Record<string, readonly Mark[]>>;
  readonly small?: Length;
  readonly edges?: Edges;
}

/** A picture whose rectangle is `box` grown by `edges`. */
export function picture(c: Composed): Picture {
  const { left = 0, right = 0, top = 0, bottom = 0 } = c.edges ?? {};
  return {
    title: c.title,
    unit: c.unit,
    left: c.box.left - left,
    bottom: c.box.bottom - bottom,
    width: c.box.right - c.box.left + left + right,
    height: c.box.top - c.box.bottom + top + bottom,
    ...(c.small === undefined ? {} : { small: c.small }),
    stamps: c.stamps ?? {},
    marks: c.marks,
  };
}

export const all = (by: Length): Edges => ({ left: by, right: by, top: by, bottom: by });

/** The box that holds all the polygons. */
export function boxOf(polygons: readonly Polygon[]): Box {
  return boundingBox(polygons.flat());
}

export const boxPolygon = (b: Box): Polygon => [
  point(b.left, b.bottom),
  point(b.right, b.bottom),
  point(b.right, b.top),
  point(b.left, b.top),
];

export const rectangle = (x: Length, y: Length, width: Length, height: Length): Polygon =>
  boxPolygon({ left: x, bottom: y, right: x + width, top: y + height });

/** Turned over for a left-handed maker: everything is mirrored, words stay readable. */
export function leftHanded(p: Picture): Picture {
  return {
    ...p,
    left: -(p.left + p.width),
    marks: [{ kind: "group", at: MIRROR, marks: p.marks }],
  };
}

/** Rough width of a text in small print, good enough to leave a gap for it. */
export const roughWidth = (text: string, small: Length): Length => {
  let em = 0;
  for (const c of text) em += c === " " || c === "." || c === "/" ? 0.25 : 0.5;
  return em * small;
};

/** Text whose middle line, not base line, goes through `at` (the figures are 0.64 em high). */
export const centered = (
  at: Point,
  text: string,
  small: Length,
  more: Partial<Extract<Mark, { kind: "text" }>> = {},
): Mark => {
  const size = more.size ?? 1;
  const drop = 0.32 * size * small;
  const down =
    more.turn === undefined
      ? point(0, -drop)
      : point(drop * Math.sin(more.turn), -drop * Math.cos(more.turn));
  return { kind: "text", text, size, anchor: "middle", ...more, at: add(at, down) };
};

/**
 * A measured length: a line from a to b with a tick at each end and its text in a gap of the line;
 * beside the line when the gap would eat it.
 */
export function dimension(
  a: Point,
  b: Point,
  text: string,
  small: Length,
  line: Line = "rule",
  tone: "ink" | "soft" | "lit" = "ink",
): Mark[] {
  const length = distance(a, b);
  const u = normalized(subtract(b, a));
  const tick = scale(leftOf(u), small * 0.28);
  const ends: Mark[] = [a, b].map((p) => ({
    kind: "line",
    line,
    points: [add(p, tick), subtract(p, tick)],
  }));
  const steep = Math.abs(u.y) > Math.abs(u.x);
  const wide = roughWidth(text, small) + small * 0.7;
  const turn = steep ? Math.PI / 2 : 0;
  if (wide + small > length) {
    const beside = steep ? point(small * 0.5, 0) : point(0, small * 0.7);
    const at = add(between(a, b, 0.5), beside);
    const word: Mark = steep
      ? { kind: "text", at: add(at, point(0, -0.32 * small)), text, size: 1, anchor: "start", tone }
      : centered(at, text, small, { tone });
    return [...ends, { kind: "line", line, points: [a, b] }, word];
  }
  const half = wide / 2 / length;
  return [
    ...ends,
    { kind: "line", line, points: [a, between(a, b, 0.5 - half)] },
    { kind: "line", line, points: [between(a, b, 0.5 + half), b] },
    centered(between(a, b, 0.5), text, small, { tone, ...(steep ? { turn } : {}) }),
  ];
}

/**
 * A tape: a rule of `length` from `from` toward `direction`, with ticks at every step and longer ones
 * at halves and wholes, on its left. Inches are parted in eighths, millimetres in centimetres.
 */
export function tape(
  from: Point,
  direction: Point,
  length: Length,
  unit: Unit,
  small: Length,
): Mark[] {
  const u = normalized(direction);
  const side = leftOf(u);
  const step = unit === "in" ? 1 / 8 : 1;
  const rank = unit === "in" ? [8, 4, 2, 1] : [10, 5, 1, 1];
  const long = [0.72, 0.5, 0.36, 0.25];
  const marks: Mark[] = [
    { kind: "line", line: "rule", points: [from, add(from, scale(u, length))] },
  ];
  for (let i = 0; i * step <= length + 1e-9; i++) {
    const which = rank.findIndex((every) => i % every === 0);
    const at = add(from, scale(u, i * step));
    marks.push({
      kind: "line",
      line: "rule",
      points: [at, add(at, scale(side, long[which] * small))],
    });
  }
  return marks;
}

/** The same line of writing, never upside down: an angle from just above -90 to 90 degrees. */
export function readable(angle: Radian): Radian {
  const a = angle - Math.PI * Math.round(angle / Math.PI);
  return a <= -Math.PI / 2 + 1e-9 ? a + Math.PI : a;
}

/** Text along the edge a -> b, outside of a shape that lies to its left. */
export function alongEdge(
  a: Point,
  b: Point,
  text: string,
  small: Length,
  away: Length,
  more: Partial<Extract<Mark, { kind: "text" }>> = {},
): Mark {
  const u = normalized(subtract(b, a));
  const out = scale(leftOf(u), -away);
  const turn = readable(angleOf(u));
  return centered(add(between(a, b, 0.5), out), text, small, { ...more, turn });
}

/** Marks without their words, which are put down apart: above all lines, never turned nor mirrored. */
export const shapesOnly = (marks: readonly Mark[]): Mark[] =>
  marks
    .filter((m) => m.kind !== "text")
    .map((m) => (m.kind === "group" ? { ...m, marks: shapesOnly(m.marks) } : m));
export const wordsOnly = (marks: readonly Mark[]): Mark[] =>
  marks
    .filter((m) => m.kind === "text" || m.kind === "group")
    .map((m) => (m.kind === "group" ? { ...m, clip: undefined, marks: wordsOnly(m.marks) } : m));
