import {
  add,
  type Box,
  boundingBox,
  centroid,
  contains,
  depth,
  edges,
  halfPlanes,
  norm,
  normalized,
  type Point,
  type Polygon,
  point,
  scale,
  subtract,
  unitVector,
} from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Piece } from "../piece/types.ts";
import {
  all,
  alongEdge,
  centered,
  type Edges,
  leftHanded,
  picture,
  roughWidth,
} from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";
import { bothUnits } from "./words.ts";

export interface PiecePictureOptions {
  readonly unit: Unit;
  readonly small?: Length;
  /** Fill it with its fabric, veiled; else plain paper, as a template. */
  readonly fabric?: boolean;
  /** Edge lengths, cut outside and sewn inside; default yes. */
  readonly lengths?: boolean;
  /** How a length is written along an edge; default in both units. */
  readonly say?: (x: Length) => string;
  /** Lines of words under the letter: name, count. */
  readonly words?: readonly string[];
  readonly letter?: string;
  /** The finished corner that lies at the block's center gets the filled dot. */
  readonly center?: number;
  readonly leftHanded?: boolean;
  /** The piece is drawn turned by a quarter, so its thread stands upright. */
  readonly upright?: boolean;
  /** Cut off where the recipe trims its points. */
  readonly trimmed?: Polygon;
  /** The part of the sewn shape that holds the letter, the words and the arrow; default all of it. */
  readonly within?: Polygon;
  /** Lengths of edges too short to carry them, which stand beside the piece; default yes. */
  readonly shortEdges?: boolean;
}

/**
 * One cut piece as a template: solid cut edge, dashed seam, rings at the seam's corners, the thread,
 * and the length of every edge. In the piece's own frame, so the thread runs left to right.
 */
export function piecePicture(piece: Piece, options: PiecePictureOptions): Picture {
  const cut = options.trimmed ?? piece.cut;
  const box = boundingBox(cut);
  const size = Math.max(box.right - box.left, box.top - box.bottom);
  const small = options.small ?? size / 26;
  const within = options.within ?? piece.finished;
  const inside = wordsFit(within, wordsOf(piece, options), small);
  const marks: Mark[] = [
    {
      kind: "shape",
      id: piece.id,
      polygon: cut,
      line: "cut",
      ...(options.fabric
        ? { fill: { kind: "fabric", fabricId: piece.fabricId, faint: true } as const }
        : {}),
    },
    { kind: "shape", polygon: piece.finished, line: "seam" },
    ...piece.finished.map(
      (at, i): Mark =>
        i === options.center
          ? { kind: "dot", at, line: "lit" }
          : { kind: "dot", at, line: "rule", ring: true },
    ),
    ...grainMarks(within, small, options.upright === true, inside),
    ...(inside
      ? letterMarks(piece, options, within, small)
      : wordsBelow(piece, options, within, box, small)),
  ];
  if (options.lengths !== false) marks.push(...lengthMarks(cut, piece, options, small));
  const made = picture({
    title: `Piece ${options.letter ?? piece.letter}, ${piece.name}`,
    unit: options.unit,
    box,
    marks,
    small,
    edges: options.lengths === false && inside ? all(small * 0.3) : room(box, marks, small),
  });
  return options.leftHanded ? leftHanded(made) : made;
}

/** Edges shorter than this many letters' heights carry no length along them, but outside, upright. */
const SHORT = 5;
/** Nearer than this many letters' heights to the middle, a seam's length would run into the words. */
const CLOSE = 6;

function lengthMarks(
  cut: Polygon,
  piece: Piece,
  options: PiecePictureOptions,
  small: Length,
): Mark[] {
  const say = options.say ?? ((x: Length) => bothUnits(x, options.unit));
  const middle = centroid(piece.finished);
  const close = halfPlanes(piece.finished).map((h) => depth(h, middle) < CLOSE * small);
  const outer = edges(cut).flatMap(({ from, to }): Mark[] => {
    const length = norm(subtract(to, from));
    if (length < SHORT * small)
      return options.shortEdges === false ? [] : [besideEdge(from, to, middle, say(length), small)];
    const seam = closeSeam(from, to, piece, close);
    const text = seam === undefined ? say(length) : `${say(length)}; seam ${say(seam)}`;
    return [alongEdge(from, to, text, small, small * 0.75)];
  });
  const inner = edges(piece.finished).flatMap(({ from, to }, i): Mark[] => {
    const length = norm(subtract(to, from));
    if (length < 2 * SHORT * small || close[i]) return [];
    return [alongEdge(from, to, `seam ${say(length)}`, small, -small * 0.75, { tone: "soft" })];
  });
  return [...outer, ...inner];
}

function besideEdge(from: Point, to: Point, middle: Point, text: string, small: Length): Mark {
  const half = point((from.x + to.x) / 2, (from.y + to.y) / 2);
  const away = subtract(half, middle);
  const k = small / norm(away);
  const anchor = Math.abs(away.x) < norm(away) * 0.15 ? "middle" : away.x > 0 ? "start" : "end";
  return centered(point(half.x + away.x * k, half.y + away.y * k), text, small, { anchor });
}

/** The seam that runs along a raw edge, when its length has no room inside. */
function closeSeam(
  from: Point,
  to: Point,
  piece: Piece,
  close: readonly boolean[],
): Length | undefined {
  const u = normalized(subtract(to, from));
  const i = edges(piece.finished).findIndex((e, k) => {
    const v = normalized(subtract(e.to, e.from));
    return close[k] && u.x * v.x + u.y * v.y > 1 - 1e-9;
  });
  const edge = edges(piece.finished)[i];
  return edge && norm(subtract(edge.to, edge.from));
}

/** Room for words that stand beside the shape, or below it. */
function room(box: Box, marks: readonly Mark[], small: Length): Edges {
  let [left, right, bottom] = [1.8 * small, 1.8 * small, 1.8 * small];
  for (const m of marks) {
    if (m.kind !== "text" || m.turn !== undefined) continue;
    const width = roughWidth(m.text, small);
    const from = m.at.x - (m.anchor === "start" ? 0 : m.anchor === "end" ? width : width / 2);
    right = Math.max(right, from + width - box.right);
    left = Math.max(left, box.left - from);
    bottom = Math.max(bottom, box.bottom - m.at.y + 0.4 * small);
  }
  return { left, right, top: 1.8 * small, bottom };
}

/** The arrow along the thread, below the letter, with its words where the piece has room for them. */
function grainMarks(finished: Polygon, small: Length, upright: boolean, worded: boolean): Mark[] {
  const c = centroid(finished);
  const turn = upright ? Math.PI / 2 : 0;
  const d = unitVector(turn);
  const fits = (p: Point): boolean => contains(finished, p, -small);
  for (const down of worded ? (upright ? [0] : [2.2, 1.6, 1.2]) : []) {
    const middle = upright ? point(c.x + 4.6 * small, c.y) : point(c.x, c.y - down * small);
    const from = add(middle, scale(d, -4.4 * small));
    const to = add(middle, scale(d, 4.4 * small));
    if (!fits(from) || !fits(to)) continue;
    return [
      { kind: "arrow", from: add(middle, scale(d, -2.8 * small)), to: from, line: "grain" },
      { kind: "arrow", from: add(middle, scale(d, 2.8 * small)), to, line: "grain" },
      centered(middle, "straight grain", small, { tone: "soft", ...(upright ? { turn } : {}) }),
    ];
  }
  const middle = point(c.x, c.y - (upright ? 2.2 : 1) * small);
  const half = scale(d, 1.2 * small);
  return [
    {
      kind: "arrow",
      from: subtract(middle, half),
      to: add(middle, half),
      line: "grain",
      both: true,
    },
  ];
}

const wordsOf = (piece: Piece, options: PiecePictureOptions): readonly string[] =>
  options.words ?? [piece.name];

/** Do the lines, and the letter above them, lie clear of the seam? */
function wordsFit(within: Polygon, words: readonly string[], small: Length): boolean {
  const c = centroid(within);
  const half = Math.max(0, ...words.map((w) => roughWidth(w, small))) / 2;
  const top = (words.length * 1.25 + 1.9) * small;
  return [
    point(-half, -0.3 * small),
    point(half, -0.3 * small),
    point(-half * 0.6, top),
    point(half * 0.6, top),
  ].every((p) => contains(within, add(c, p), -0.2 * small));
}

function letterMarks(
  piece: Piece,
  options: PiecePictureOptions,
  within: Polygon,
  small: Length,
): Mark[] {
  const c = centroid(within);
  const words = wordsOf(piece, options);
  const lines = words.map(
    (text, i): Mark => ({
      kind: "text",
      at: point(c.x, c.y + (words.length - 1 - i) * 1.25 * small - 0.2 * small),
      text,
      size: 1,
      anchor: "middle",
      ...(i === 0 ? { weight: "bold" as const } : {}),
    }),
  );
  return [
    letterMark(piece, options, point(c.x, c.y + (words.length * 1.25 + 0.1) * small), 2.4),
    ...lines,
  ];
}

const letterMark = (piece: Piece, options: PiecePictureOptions, at: Point, size: number): Mark => ({
  kind: "text",
  at,
  text: options.letter ?? piece.letter,
  size,
  anchor: "middle",
  weight: "bold",
});

/** A piece too narrow for its words carries its letter alone; they stand in one line below it. */
function wordsBelow(
  piece: Piece,
  options: PiecePictureOptions,
  within: Polygon,
  box: Box,
  small: Length,
): Mark[] {
  const c = centroid(within);
  const letter = options.letter ?? piece.letter;
  return [
    letterMark(piece, options, point(c.x, c.y + 0.1 * small), 1.4),
    {
      kind: "text",
      at: point(box.left, box.bottom - 2.8 * small),
      text: `${letter}: ${wordsOf(piece, options).join("; ")}`,
      size: 1,
      anchor: "start",
      weight: "bold",
    },
  ];
}
