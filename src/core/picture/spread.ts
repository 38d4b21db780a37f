import { point } from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Width } from "../sewing/makeSize.ts";
import { picture, rectangle, roughWidth } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";

export interface SpreadOptions {
  readonly unit: Unit;
  readonly title: string;
  /** Words at the trim line: "trim to 8 1/2 in". */
  readonly trimText: string;
  /** How much short still passes. */
  readonly within: Length;
  /** Height of small print in the width's own unit. */
  readonly small: Length;
}

/**
 * How wide many blocks come out, against the trim line: a column for each stretch of width, as high
 * as there are blocks; those too narrow to be trimmed are hatched as lost.
 */
export function spreadPicture(w: Width, o: SpreadOptions): Picture {
  const { small } = o;
  const low = Math.min(w.bins[0].from, w.trim - o.within);
  const high = Math.max(w.bins[w.bins.length - 1].to, w.trim);
  const tall = (high - low) * 0.32;
  const most = Math.max(...w.bins.map((b) => b.count));
  const columns = w.bins
    .filter((b) => b.count > 0 && b.to > b.from)
    .map(
      (b): Mark => ({
        kind: "shape",
        polygon: rectangle(b.from, 0, b.to - b.from, (tall * b.count) / most),
        line: "hair",
        fill: (b.from + b.to) / 2 < w.trim - o.within ? { kind: "lost" } : { kind: "paper" },
      }),
    );
  const room = roughWidth(o.trimText, small) / 2;
  return picture({
    title: o.title,
    unit: o.unit,
    box: {
      left: Math.min(low, w.trim - room),
      right: Math.max(high, w.trim + room),
      bottom: -1.4 * small,
      top: tall + 0.8 * small,
    },
    marks: [
      ...columns,
      { kind: "line", line: "rule", points: [point(low, 0), point(high, 0)] },
      {
        kind: "line",
        line: "lit",
        points: [point(w.trim, -0.2 * small), point(w.trim, tall + 0.6 * small)],
      },
      {
        kind: "text",
        at: point(w.trim, -1.2 * small),
        text: o.trimText,
        size: 1,
        anchor: "middle",
        tone: "lit",
      },
    ],
    small,
    edges: { left: 0.3 * small, right: 0.3 * small },
  });
}
