import {
  andThen,
  applyTo,
  applyToPolygon,
  IDENTITY,
  type Point,
  point,
  type Rigid,
} from "../geometry/index.ts";
import { readable, shapesOnly, wordsOnly } from "./compose.ts";
import { drawFill } from "./fills.ts";
import { runsOf } from "./fraction.ts";
import type { Line, Mark, Picture } from "./marks.ts";
import {
  type Context,
  type Drawing,
  type DrawOptions,
  flip,
  flipAll,
  matrixOf,
  type Op,
} from "./ops.ts";
import type { Stroke } from "./theme.ts";

export type { Drawing, DrawOptions, Op } from "./ops.ts";

/** Every mark of a picture as strokes, fills and words in output units, in the order they lie. */
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
