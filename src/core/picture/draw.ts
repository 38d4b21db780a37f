import {
  layMotion,
  movedShown,
  type Shown,
  shownIn,
  undone,
  wholeRepeats,
} from "../fabric/index.ts";
import {
  andThen,
  applyTo,
  applyToPolygon,
  IDENTITY,
  type Point,
  type Polygon,
  point,
  type Rigid,
} from "../geometry/index.ts";
import { grayValue, mixed } from "./color.ts";
import { readable } from "./compose.ts";
import { type Run, runsOf } from "./fraction.ts";
import { fabricHatch, hatchDots, lostHatch, type Segment } from "./hatch.ts";
import type { Fill, Line, Mark, Picture } from "./marks.ts";
import type { Swatch, Swatches } from "./swatch.ts";
import type { FabricLook, Stroke, Theme } from "./theme.ts";

/**
 * A picture as strokes, fills and words in output units, y down, with every color and width decided.
 * The SVG writer and the PDF writer are both a plain reading of this list, so the printed diagram
 * and the one on the page are the same drawing.
 */
type FabricFill = Extract<Fill, { kind: "fabric" }>;

export type Op =
  | {
      readonly op: "path";
      readonly points: readonly Point[];
      readonly closed: boolean;
      readonly fill?: string;
      readonly stroke?: Stroke;
      readonly id?: string;
    }
  /** Many separate strokes of one kind: a hatch. */
  | { readonly op: "strokes"; readonly segments: readonly Segment[]; readonly stroke: Stroke }
  | {
      readonly op: "circle";
      readonly at: Point;
      readonly radius: number;
      readonly fill?: string;
      readonly stroke?: Stroke;
      readonly id?: string;
    }
  | {
      readonly op: "text";
      readonly at: Point;
      readonly runs: readonly Run[];
      readonly size: number;
      readonly bold: boolean;
      readonly color: string;
      readonly anchor: "start" | "middle" | "end";
      /** Degrees, clockwise as seen. */
      readonly turn: number;
      readonly halo?: { readonly color: string; readonly width: number };
    }
  | {
      readonly op: "image";
      readonly data: string;
      readonly clip: readonly Point[];
      /** Tiles: a, b, c, d, e, f of the matrix that carries a width x height tile into place. */
      readonly tiles: readonly (readonly number[])[];
      readonly width: number;
      readonly height: number;
    }
  | {
      readonly op: "group";
      readonly ops: readonly Op[];
      readonly clip?: readonly Point[];
      readonly id?: string;
    }
  /** A stamp put down: the matrix a, b, c, d, e, f of SVG and PDF. */
  | {
      readonly op: "use";
      readonly of: string;
      readonly matrix: readonly number[];
      readonly id?: string;
    };

export interface Drawing {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly stamps: Readonly<Record<string, readonly Op[]>>;
  readonly ops: readonly Op[];
}

export interface DrawOptions {
  readonly theme: Theme;
  readonly swatches: Swatches;
  /** Output units to one unit of the picture. */
  readonly scale: number;
  /** Height of small print in output units; default the picture's own, then the theme's. */
  readonly small?: number;
  readonly fabrics?: FabricLook;
  /** Ids drawn with the accent. */
  readonly lit?: ReadonlySet<string>;
}

interface Context extends DrawOptions {
  readonly small: number;
  readonly fabrics: FabricLook;
  readonly shift: Point;
}

/** Into output units, y down: the one place where pictures are turned over for SVG and PDF. */
const flip = (c: Context, p: Point): Point =>
  point((p.x - c.shift.x) * c.scale, (c.shift.y - p.y) * c.scale);

const flipAll = (c: Context, ps: readonly Point[]): Point[] => ps.map((p) => flip(c, p));

/** The matrix that does in output space what `t` does in the picture's, for a stamp drawn at (0, 0). */
function matrixOf(c: Context, t: Rigid): number[] {
  const cos = Math.cos(t.turn);
  const sin = Math.sin(t.turn);
  const m = t.mirrored ? -1 : 1;
  const at = flip(c, point(t.x, t.y));
  return [cos * m, -sin * m, sin, cos, at.x, at.y];
}

export function draw(picture: Picture, options: DrawOptions): Drawing {
  const { scale, theme } = options;
  const own = picture.small === undefined ? theme.small : picture.small * scale;
  const base = {
    ...options,
    small: options.small ?? own,
    fabrics: options.fabrics ?? theme.fabrics,
  };
  const page: Context = { ...base, shift: point(picture.left, picture.bottom + picture.height) };
  const stamped: Context = { ...base, shift: point(0, 0) };
  const stamps: Record<string, Op[]> = {};
  for (const [name, marks] of Object.entries(picture.stamps))
    stamps[name] = drawMarks(stamped, picture, shapesOnly(marks), IDENTITY);
  return {
    title: picture.title,
    width: picture.width * scale,
    height: picture.height * scale,
    stamps,
    ops: drawMarks(page, picture, picture.marks, IDENTITY),
  };
}

/** Words are put down apart from their stamp, so that they never turn or mirror with it. */
const shapesOnly = (marks: readonly Mark[]): Mark[] =>
  marks
    .filter((m) => m.kind !== "text")
    .map((m) => (m.kind === "group" ? { ...m, marks: shapesOnly(m.marks) } : m));
const wordsOnly = (marks: readonly Mark[]): Mark[] =>
  marks
    .filter((m) => m.kind === "text" || m.kind === "group")
    .map((m) => (m.kind === "group" ? { ...m, clip: undefined, marks: wordsOnly(m.marks) } : m));

function drawMarks(c: Context, picture: Picture, marks: readonly Mark[], at: Rigid): Op[] {
  return marks.flatMap((m) => drawMark(c, picture, m, at));
}

function drawMark(c: Context, picture: Picture, m: Mark, at: Rigid): Op[] {
  switch (m.kind) {
    case "shape":
      return drawShape(c, m, at);
    case "line":
      return strokeOf(c, m.line, m.id).map((stroke) => ({
        op: "path",
        points: flipAll(
          c,
          m.points.map((p) => applyTo(at, p)),
        ),
        closed: false,
        stroke,
        ...(m.id ? { id: m.id } : {}),
      }));
    case "dot":
      return drawDot(c, m, at);
    case "text":
      return [drawText(c, m, at)];
    case "arrow":
      return drawArrow(c, m, at);
    case "group": {
      const inner = andThen(m.at, at);
      const ops = drawMarks(c, picture, m.marks, inner);
      if (!m.clip && !m.id) return ops;
      const clip = m.clip && flipAll(c, applyToPolygon(inner, m.clip));
      return [{ op: "group", ops, ...(clip ? { clip } : {}), ...(m.id ? { id: m.id } : {}) }];
    }
    case "stamp": {
      const inner = andThen(m.at, at);
      const words = wordsOnly(picture.stamps[m.of] ?? []);
      return [
        { op: "use", of: m.of, matrix: matrixOf(c, inner), ...(m.id ? { id: m.id } : {}) },
        ...drawMarks(c, picture, words, inner),
      ];
    }
  }
}

/** The strokes that make a line: its casing of paper first, where it has one. */
function strokeOf(c: Context, line: Line, id?: string): Stroke[] {
  const lit = id !== undefined && c.lit?.has(id);
  const stroke = c.theme.lines[lit ? "lit" : line];
  return stroke.casing ? [{ color: c.theme.paper, width: stroke.casing }, stroke] : [stroke];
}

function drawShape(c: Context, m: Extract<Mark, { kind: "shape" }>, at: Rigid): Op[] {
  const polygon = applyToPolygon(at, m.polygon);
  const points = flipAll(c, polygon);
  const ops: Op[] = m.fill ? drawFill(c, m.fill, polygon, points, at) : [];
  if (m.line)
    for (const stroke of strokeOf(c, m.line, m.id))
      ops.push({ op: "path", points, closed: true, stroke });
  if (!m.id) return ops;
  // Something to touch, whatever it is filled with.
  if (ops.length === 0) ops.push({ op: "path", points, closed: true, fill: "none" });
  return [{ op: "group", ops, id: m.id }];
}

function drawFill(c: Context, fill: Fill, polygon: Polygon, points: Point[], at: Rigid): Op[] {
  switch (fill.kind) {
    case "paper":
      return [{ op: "path", points, closed: true, fill: c.theme.paper }];
    case "color":
      return [{ op: "path", points, closed: true, fill: fill.color }];
    case "lost":
      return lostOps(c, points);
    case "fabric": {
      const swatch = c.swatches[fill.fabricId];
      if (!swatch) return [{ op: "path", points, closed: true, fill: UNKNOWN }];
      return fabricOps(c, fill, swatch, polygon, at);
    }
  }
}

/** A fabric nobody described. */
const UNKNOWN = "#dddddd";

/** Output space has y down, so hatches are made there as if mirrored, and come out rising. */
const upsideDown = (points: readonly Point[]): Polygon => points.map((p) => point(p.x, -p.y));
const backUp = (s: Segment): Segment => [point(s[0].x, -s[0].y), point(s[1].x, -s[1].y)];

function lostOps(c: Context, points: readonly Point[]): Op[] {
  const segments = lostHatch(upsideDown(points), c.theme.hatch.gap * 1.1).map(backUp);
  const stroke = { color: c.theme.lost, width: c.theme.hatch.width * 1.1, dash: [3, 1.6] };
  return segments.length > 0 ? [{ op: "strokes", segments, stroke }] : [];
}

/** What shows of a fabric in a polygon: as told, or worked out from how the fabric lies. */
function shownParts(fill: FabricFill, swatch: Swatch, polygon: Polygon, at: Rigid): Shown[] {
  if (fill.shown) return movedShown(fill.shown, at);
  const { look } = swatch;
  const frame = andThen(fill.at ?? IDENTITY, at);
  const tilt = look.kind === "bands" ? look.tilt : 0;
  const flat = layMotion({ way: "up", start: 0, strip: 0 }, tilt);
  return shownIn(polygon, look, andThen(undone(frame), flat));
}

function fabricOps(
  c: Context,
  fill: FabricFill,
  swatch: Swatch,
  polygon: Polygon,
  at: Rigid,
): Op[] {
  const parts = shownParts(fill, swatch, polygon, at);
  const faint = fill.faint === true;
  if (c.fabrics !== "color") return grayOps(c, swatch, parts, polygon, faint);
  return parts.flatMap((part): Op[] => {
    const points = flipAll(c, part.polygon);
    const photo = part.photo && c.swatches[part.fabricId];
    if (part.photo && photo?.photo) return photoOps(c, photo, points, undone(part.photo), faint);
    const color = faint ? mixed(part.color, c.theme.paper, 0.6) : part.color;
    return [{ op: "path", points, closed: true, fill: color }];
  });
}

/** Without color: bands keep their own grays; everything else is told by its hatch. */
function grayOps(
  c: Context,
  swatch: Swatch,
  parts: readonly Shown[],
  polygon: Polygon,
  faint: boolean,
): Op[] {
  const { theme } = c;
  const full = c.fabrics === "gray" && !faint;
  if (swatch.look.kind === "bands") {
    const stroke = { color: theme.fabricInk, width: theme.hatch.width * 0.8 };
    const tone = (color: string): string =>
      grayOf(full ? grayValue(color) : Math.min(1, 0.6 + 0.56 * grayValue(color)));
    return parts.map((part) => ({
      op: "path",
      points: flipAll(c, part.polygon),
      closed: true,
      fill: tone(part.color),
      stroke,
    }));
  }
  const points = flipAll(c, polygon);
  const value = grayValue(swatch.color);
  const color = faint ? theme.lost : full && value < 0.35 ? "#ffffff" : theme.fabricInk;
  const under = full ? grayOf(0.25 + 0.75 * value) : theme.paper;
  const ops: Op[] = [{ op: "path", points, closed: true, fill: under }];
  const up = upsideDown(points);
  const segments = fabricHatch(up, swatch.hatch, theme.hatch.gap).map(backUp);
  if (segments.length > 0)
    ops.push({ op: "strokes", segments, stroke: { color, width: theme.hatch.width } });
  if (swatch.hatch === "dots")
    for (const p of hatchDots(up, theme.hatch.gap))
      ops.push({ op: "circle", at: point(p.x, -p.y), radius: theme.hatch.width, fill: color });
  return ops;
}

const grayOf = (value: number): string => {
  const hex = Math.round(255 * value)
    .toString(16)
    .padStart(2, "0");
  return `#${hex}${hex}${hex}`;
};

/** The photo laid side by side over the patch, in the fabric's frame, print on print. */
function photoOps(c: Context, swatch: Swatch, points: Point[], frame: Rigid, faint: boolean): Op[] {
  const { look, photo } = swatch;
  if (!photo || look.kind !== "photo") return [];
  const [a, b, cc, d, e, f] = matrixOf(c, frame);
  const w = look.width * c.scale;
  const h = look.height * c.scale;
  const right = wholeRepeats(look.width, look.repeat?.across) * c.scale;
  const up = wholeRepeats(look.height, look.repeat?.along) * c.scale;
  const det = a * d - b * cc;
  const local = points.map((p) => {
    const x = p.x - e;
    const y = p.y - f;
    return point((d * x - cc * y) / det, (a * y - b * x) / det);
  });
  // Tile i covers from i * right to i * right + w; beyond the next tile's begin that one lies over it.
  const across = tilesOver(
    local.map((p) => p.x),
    right,
    w,
  );
  // A photo stands on its lower edge, and y is down here: tile j covers from j * up - h to j * up.
  const along = tilesOver(
    local.map((p) => -p.y),
    up,
    h,
  );
  const tiles = along.flatMap((j) =>
    across.map((i) => {
      const [x, y] = [i * right, -j * up];
      return [a, b, cc, d, e + a * x + cc * y, f + b * x + d * y];
    }),
  );
  // A hair over its size, under the tile that comes after it: no gap is seen between two tiles.
  const over = tiles.length > 1 ? OVERLAP : 0;
  const image: Op = {
    op: "image",
    data: photo,
    clip: points,
    tiles,
    width: w + over,
    height: h + over,
  };
  if (!faint) return [image];
  return [image, { op: "path", points, closed: true, fill: `${c.theme.paper}99` }];
}

/** Of a tile over its neighbor, in output units. */
const OVERLAP = 0.6;

/** Tiles, each `step` on from the one before and `size` long, that cover all these places. */
function tilesOver(at: readonly number[], step: number, size: number): number[] {
  const [least, most] = [Math.min(...at), Math.max(...at)];
  const first = Math.floor(least / step);
  // The last tile's own end may reach: one that begins nearer is not needed.
  let last = first;
  while (last * step + size < most - 1e-9 * size) last++;
  return Array.from({ length: last - first + 1 }, (_, k) => first + k);
}

function drawDot(c: Context, m: Extract<Mark, { kind: "dot" }>, at: Rigid): Op[] {
  const stroke = c.theme.lines[m.line];
  const center = flip(c, applyTo(at, m.at));
  const id = m.id ? { id: m.id } : {};
  const { dot, paper } = c.theme;
  if (m.ring)
    return [
      {
        op: "circle",
        at: center,
        radius: dot,
        fill: paper,
        stroke: { color: stroke.color, width: c.theme.lines.rule.width * 1.4 },
        ...id,
      },
    ];
  return [
    { op: "circle", at: center, radius: dot * 1.45, fill: paper },
    { op: "circle", at: center, radius: dot, fill: stroke.color, ...id },
  ];
}

function drawText(c: Context, m: Extract<Mark, { kind: "text" }>, at: Rigid): Op {
  const { theme } = c;
  const size = m.size * c.small;
  const onFabric = m.tone === "on-fabric";
  const color =
    m.tone === "soft"
      ? theme.soft
      : m.tone === "lit"
        ? theme.accent
        : onFabric && theme.name !== "dark"
          ? theme.fabricInk
          : theme.ink;
  // A mirrored picture keeps its words readable: only where they begin is turned over.
  const turned = at.mirrored ? -(m.turn ?? 0) : (m.turn ?? 0);
  const angle = m.turn === undefined ? 0 : readable(turned + at.turn);
  const anchor =
    at.mirrored && m.anchor !== "middle" ? (m.anchor === "start" ? "end" : "start") : m.anchor;
  return {
    op: "text",
    at: flip(c, applyTo(at, m.at)),
    runs: runsOf(m.text),
    size,
    bold: m.weight === "bold",
    color,
    anchor,
    turn: (-angle * 180) / Math.PI,
    ...(onFabric ? { halo: { color: theme.paper, width: theme.halo } } : {}),
  };
}

function drawArrow(c: Context, m: Extract<Mark, { kind: "arrow" }>, at: Rigid): Op[] {
  const from = flip(c, applyTo(at, m.from));
  const to = flip(c, applyTo(at, m.to));
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1e-9) return [];
  const stroke = c.theme.lines[m.line];
  const head = Math.min(c.theme.arrow, length * 0.6);
  const u = point((to.x - from.x) / length, (to.y - from.y) / length);
  const shaft: Op[] = strokeOf(c, m.line).map((s) => ({
    op: "path",
    points: [
      m.both ? point(from.x + u.x * head * 0.8, from.y + u.y * head * 0.8) : from,
      point(to.x - u.x * head * 0.8, to.y - u.y * head * 0.8),
    ],
    closed: false,
    stroke: s,
  }));
  const heads = [arrowHead(to, u, head, stroke.color)];
  if (m.both) heads.push(arrowHead(from, point(-u.x, -u.y), head, stroke.color));
  return [...shaft, ...heads];
}

function arrowHead(tip: Point, u: Point, size: number, fill: string): Op {
  const side = size * 0.36;
  const back = point(tip.x - u.x * size, tip.y - u.y * size);
  return {
    op: "path",
    closed: true,
    fill,
    points: [
      tip,
      point(back.x - u.y * side, back.y + u.x * side),
      point(back.x + u.y * side, back.y - u.x * side),
    ],
  };
}
