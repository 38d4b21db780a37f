import { type Point, type Polygon, point, unitVector } from "../geometry/index.ts";
import type { ReadingName } from "../sewing/readings.ts";
import { READING_WORDS } from "../sewing/readings.ts";
import { boxOf, picture } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";

/** A circle of n wedges with a flat side at the right, one unit from center to flat. */
function circle(n: number): Polygon {
  const r = 1 / Math.cos(Math.PI / n);
  return Array.from({ length: n }, (_, i) => {
    const d = unitVector(((2 * i - 1) * Math.PI) / n);
    return point(d.x * r, d.y * r);
  });
}

const line = (kind: "seam" | "lit" | "ghost", ...points: Point[]): Mark => ({
  kind: "line",
  line: kind,
  points,
});

const spokes = (p: Polygon): Mark[] => p.map((v) => line("seam", point(0, 0), v));

const shape = (polygon: Polygon): Mark => ({
  kind: "shape",
  polygon,
  line: "cut",
  fill: { kind: "paper" },
});

const measured = (a: Point, b: Point): Mark => ({
  kind: "arrow",
  from: a,
  to: b,
  both: true,
  line: "lit",
});

/** What one measurement of a circle of wedges is taken on: drawn plainly, not to any block's size. */
export function readingPicture(name: ReadingName, n: number, small: number): Picture {
  const round = circle(n);
  const half = round.filter((v) => v.y > 1e-9);
  const wedge = [point(0, -1), round[0], round[1]].map((v, i) =>
    i === 0 ? v : point((i === 1 ? 1 : -1) * Math.abs(round[0].y), 0.6),
  );
  const whole: Mark[] = [shape(round), ...spokes(round)];
  const marks: Readonly<Record<ReadingName, readonly Mark[]>> = {
    acrossOne: [...whole, measured(point(-1, 0), point(1, 0))],
    acrossTwo: [...whole, measured(point(0, -1), point(0, 1))],
    halfGap: [
      shape([point(1, 0.06), ...half, point(-1, 0.06), point(0, 0.2)]),
      ...half.map((v) => line("seam", point(0, 0.2), v)),
      line("lit", point(-1.2, 0.06), point(1.2, 0.06)),
    ],
    outerEdge: [...whole, ...rippled(round)],
    centerOffset: [
      shape(round),
      ...round.map((v) => line("seam", v.y > 0 ? point(0.12, 0) : point(-0.12, 0), v)),
      measured(point(-0.12, 0), point(0.12, 0)),
    ],
    wedgeHeight: [shape(wedge), measured(point(0, -1), point(0, 0.6))],
    wedgeBase: [shape(wedge), measured(wedge[2], wedge[1])],
  };
  return picture({
    title: READING_WORDS[name],
    unit: "in",
    box: name.startsWith("wedge") ? boxOf([wedge]) : boxOf([name === "halfGap" ? half : round]),
    marks: marks[name],
    small,
    edges: { left: 0.25, right: 0.25, top: 0.2, bottom: name === "halfGap" ? 0.5 : 0.2 },
  });
}

/** Waves along the outer edge. */
function rippled(round: Polygon): Mark[] {
  const points = round.flatMap((a, i) => {
    const b = round[(i + 1) % round.length];
    return Array.from({ length: 8 }, (_, k) => {
      const t = k / 8;
      const out = 1 + 0.05 * Math.sin(t * 4 * Math.PI);
      return point((a.x + (b.x - a.x) * t) * out, (a.y + (b.y - a.y) * t) * out);
    });
  });
  return [line("lit", ...points, points[0])];
}
