import type { Brief } from "../../brief/index.ts";
import { applyToPolygon, type Polygon } from "../../geometry/index.ts";
import { tolerances } from "../../measure/index.ts";
import { figureOutline, type PlacedBlock, type Stretch } from "../../quilt/index.ts";
import type { Answer } from "../types/answer.ts";
import type { MeetingShape, PatchPlace } from "../types/meeting.ts";

const PLACE = /^r(\d+)c(\d+)$/;

/** The outline of a figure at every place of the quilt where it lies whole. */
export function figureOutlines(
  brief: Brief,
  answer: Pick<Answer, "blocks">,
  placed: readonly PlacedBlock[],
  shape: MeetingShape,
): Stretch[] {
  const { join, congruent } = tolerances(brief.unit);
  return figuresOf(brief, answer, placed, shape).flatMap((parts) =>
    figureOutline(parts, Math.max(join, congruent)),
  );
}

/** Patch by patch: found once in the upper left of the quilt, carried on as the plan repeats. */
export function figuresOf(
  brief: Brief,
  answer: Pick<Answer, "blocks">,
  placed: readonly PlacedBlock[],
  shape: MeetingShape,
): Polygon[][] {
  const blockAt = new Map(placed.map((p) => [p.id, p]));
  const patches = new Map(answer.blocks.flatMap((b) => b.patches.map((p) => [p.id, p])));
  const { rows, columns } = repeatOf(brief);
  const [most, widest] = extentOf(placed);
  const seen = new Set<string>();
  const found: Polygon[][] = [];
  for (const first of shape.at)
    for (let dr = 0; dr < most; dr += rows)
      for (let dc = 0; dc < widest; dc += columns) {
        const parts = first.map((place) => partAt(place, dr, dc));
        const key = [...parts].sort().join(" ");
        if (seen.has(key)) continue;
        seen.add(key);
        const polygons = parts.map((part) => {
          const [id, patch] = part.split(" ");
          const block = blockAt.get(id);
          const polygon = patches.get(patch)?.polygon;
          return block && polygon && patch.startsWith(`${block.blockId}/`)
            ? applyToPolygon(block.at, polygon)
            : undefined;
        });
        if (polygons.every((p) => p !== undefined)) found.push(polygons);
      }
  return found;
}

function partAt({ placed, patch }: PatchPlace, dr: number, dc: number): string {
  const m = PLACE.exec(placed);
  return m ? `r${Number(m[1]) + dr}c${Number(m[2]) + dc} ${patch}` : `${placed} ${patch}`;
}

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));
const leastCommon = (a: number, b: number): number => (a * b) / greatestCommon(a, b);

/** Rows come again by the plan's repeat and, on point or shifted, by twos. */
const repeatOf = ({ quilt: { plan } }: Brief) => ({
  rows: leastCommon(plan.length, 2),
  columns: plan.map((r) => r.length).reduce(leastCommon, 1),
});

function extentOf(placed: readonly PlacedBlock[]): [number, number] {
  const all = placed.flatMap((p) => {
    const m = PLACE.exec(p.id);
    return m ? [[Number(m[1]), Number(m[2])]] : [];
  });
  return [Math.max(0, ...all.map(([r]) => r)), Math.max(0, ...all.map(([, c]) => c))];
}
