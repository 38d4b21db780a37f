import { point } from "../geometry/index.ts";
import type { PdfPoint } from "../measure/index.ts";
import { type Drawing, dimension, type Mark, picture, rectangle } from "../picture/index.ts";
import { drawn, type SheetJob, sayUnit, smallAt } from "./job.ts";

/**
 * A pieced backing seen from its right side: the seams between its panels, and the top where it will
 * lie, with what is over beside it. One panel needs no drawing.
 */
export function backingDrawing(job: SheetJob, room: PdfPoint, most: PdfPoint): Drawing | undefined {
  const backing = job.answer.finishing?.backing;
  if (!backing || backing.panels < 2) return undefined;
  const { width, height, overhang, panels, panelWidth, seam } = backing;
  const scale = Math.min(room / width, most / height);
  const small = smallAt(scale);
  const upright = backing.seams === "upright";
  // Every panel but the outer two gives an allowance at both of its sides.
  const at = Array.from({ length: panels - 1 }, (_, i) => (i + 1) * (panelWidth - 2 * seam) + seam);
  const edges = [0, ...at, upright ? width : height];
  const marks: Mark[] = [
    { kind: "shape", polygon: rectangle(0, 0, width, height), line: "cut" },
    {
      kind: "shape",
      polygon: rectangle(overhang, overhang, width - 2 * overhang, height - 2 * overhang),
      line: "rule",
    },
    ...at.map(
      (x): Mark => ({
        kind: "line",
        line: "step",
        points: upright ? [point(x, 0), point(x, height)] : [point(0, x), point(width, x)],
      }),
    ),
    ...edges.slice(1).map((to, i): Mark => {
      const middle = (edges[i] + to) / 2;
      const place = upright ? point(middle, height / 2) : point(width / 2, middle);
      return {
        kind: "text",
        at: point(place.x, place.y - 0.32 * small),
        text: "panel",
        size: 1,
        anchor: "middle",
        tone: "on-fabric",
      };
    }),
    ...dimension(
      point(width + 0.6 * small, height - overhang),
      point(width + 0.6 * small, height),
      sayUnit(job, overhang),
      small,
    ),
  ];
  const made = picture({
    title: `The backing: ${panels} panels, seams ${backing.seams}, ${sayUnit(job, overhang)} over on every side of the top`,
    unit: job.brief.unit,
    box: { left: 0, bottom: 0, right: width, top: height },
    marks,
    small,
    edges: { left: 0.1 * small, bottom: 0.1 * small, top: 0.1 * small, right: 4 * small },
  });
  return drawn(job, made, scale);
}
