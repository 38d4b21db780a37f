import { type Polygon, point } from "../geometry/index.ts";
import type { Degree, Length, Unit } from "../measure/index.ts";
import { toRadians } from "../measure/index.ts";
import { all, centered, dimension, leftHanded, picture } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";
import { fineStep, type Say, sayLength } from "./words.ts";

export interface WedgePointOptions {
  readonly unit: Unit;
  /** Angle of the wedge at its point. */
  readonly angle: Degree;
  readonly strip: Length;
  readonly seam: Length;
  /** Height missing from the ruler's tip: 0 for a sharp point. */
  readonly missing: Length;
  readonly caption?: string;
  readonly say?: Say;
  readonly small?: Length;
  readonly leftHanded?: boolean;
}

/**
 * One wedge in its strip: cut edge, seam, the finished center as a dot, and how far the cut runs past
 * it. What tells a sharp point from a blunt one, before any number does.
 */
export function wedgePointPicture(o: WedgePointOptions): Picture {
  const say = o.say ?? sayLength(fineStep(o.unit));
  const half = toRadians(o.angle) / 2;
  const t = Math.tan(half);
  const small = o.small ?? o.strip / 14;
  const past = o.seam / Math.sin(half) - o.missing;
  const a = o.strip - o.seam - past;
  const foot = (o.strip + o.missing) * t;
  const tip = o.missing * t;
  const cut: Polygon = [
    point(-foot, 0),
    point(foot, 0),
    ...(tip > 0 ? [point(tip, o.strip), point(-tip, o.strip)] : [point(0, o.strip)]),
  ];
  const seam: Polygon = [point(-a * t, o.seam), point(a * t, o.seam), point(0, o.seam + a)];
  const left = -foot - 0.8 * small;
  const right = foot + 5.5 * small;
  const marks: Mark[] = [
    { kind: "line", line: "hair", points: [point(left, 0), point(right, 0)] },
    { kind: "line", line: "hair", points: [point(left, o.strip), point(right, o.strip)] },
    { kind: "shape", polygon: cut, line: "cut" },
    { kind: "shape", polygon: seam, line: "seam" },
    ...dimension(point(left, 0), point(left, o.strip), say(o.strip), small),
    ...pastMarks(point(0, o.seam + a), o.strip, foot, say(past), small),
    { kind: "dot", at: point(0, o.seam + a), line: "lit" },
  ];
  if (o.caption) marks.push(centered(point(0, -1.1 * small), o.caption, small, { weight: "bold" }));
  const made = picture({
    title: `Wedge from a strip of ${say(o.strip)}, cut ${say(past)} past the finished center`,
    unit: o.unit,
    box: { left: left - small, right, bottom: 0, top: o.strip },
    marks,
    small,
    edges: { ...all(0.6 * small), bottom: (o.caption ? 1.9 : 0.6) * small },
  });
  return o.leftHanded ? leftHanded(made) : made;
}

function pastMarks(
  center: { x: Length; y: Length },
  top: Length,
  foot: Length,
  text: string,
  small: Length,
): Mark[] {
  const x = foot + 0.8 * small;
  return [
    {
      kind: "line",
      line: "press",
      points: [point(center.x, center.y), point(x + 0.4 * small, center.y)],
    },
    { kind: "line", line: "press", points: [point(x, center.y), point(x, top)] },
    {
      kind: "line",
      line: "press",
      points: [point(x - 0.4 * small, top), point(x + 0.4 * small, top)],
    },
    {
      kind: "text",
      at: point(x + 0.6 * small, (center.y + top) / 2 - 0.32 * small),
      text,
      size: 1,
      anchor: "start",
      weight: "bold",
      tone: "lit",
    },
  ];
}
