import type { Patch } from "../../block/index.ts";
import type { Brief } from "../../brief/index.ts";
import { neighborsOf, PARTS_FROM_LIGHTNESS, patchLab, valueWord } from "../../fabric/index.ts";
import { applyToPolygon, area, distance, edges, type Point } from "../../geometry/index.ts";
import { type Length, tolerances } from "../../measure/index.ts";
import { nameShape, placements } from "../../quilt/index.ts";
import type { Answer } from "../types/answer.ts";
import type { MeetingShape, PatchPlace } from "../types/meeting.ts";
import { changed } from "../words/word.ts";
import { looksOf } from "./looks.ts";

type Meeting = Pick<Answer, "quilt" | "blocks" | "pieces" | "demands" | "layouts">;

interface Seen {
  readonly patch: Patch;
  readonly place: PatchPlace;
  readonly spot: string;
  readonly fabricId: string;
  readonly lightness: number;
}

/** Rows and columns looked at: one more than the plan repeats by, and no more than is quick. */
const lookedAt = (repeat: number): number => Math.max(3, Math.min(5, repeat + 1));

/**
 * Shapes across blocks, from the values alone: patches side by side that the eye does not part run
 * together, as do alike ones whose points meet at a corner of blocks. Only what lies whole within a
 * few blocks is named. Nothing where sashing keeps blocks apart.
 */
export function meetingShapes(brief: Brief, answer: Meeting): MeetingShape[] {
  if (!answer.quilt || brief.quilt.sashing) return [];
  const { join, congruent } = tolerances(brief.unit);
  const { seen, corners } = windowOf(brief, answer);
  const groups = grouped(seen, corners, congruent, join);
  const shapes = groups.flatMap((group): MeetingShape[] => {
    const blocks = new Set(group.map((s) => s.spot)).size;
    if (blocks < 2) return [];
    const name = nameShape(
      group.map((s) => s.patch.polygon),
      congruent,
    );
    if (!name) return [];
    const fabricIds = [...new Set(group.map((s) => s.fabricId))].sort();
    const mean = group.reduce((sum, s) => sum + s.lightness, 0) / group.length;
    const value = valueWord({ l: mean, a: 0, b: 0 });
    return [{ ...name, fabricIds, blocks, value, at: [group.map((s) => s.place)] }];
  });
  const once = new Map<string, MeetingShape>();
  for (const shape of shapes) {
    const { at, ...what } = shape;
    const key = JSON.stringify(what);
    once.set(key, { ...shape, at: [...(once.get(key)?.at ?? []), ...at] });
  }
  return [...once.keys()].sort().map((k) => once.get(k) as MeetingShape);
}

/** The patches of a few blocks where they lie, and the corners at which blocks meet. */
function windowOf(brief: Brief, answer: Meeting): { seen: Seen[]; corners: Point[] } {
  const few = changed(brief, (d) => {
    const { plan } = brief.quilt;
    d.quilt.rows = Math.min(d.quilt.rows, lookedAt(plan.length));
    const widest = Math.max(...plan.map((row) => row.length));
    d.quilt.columns = Math.min(d.quilt.columns, lookedAt(widest));
  });
  const looks = looksOf(brief, answer);
  const blocks = new Map(answer.blocks.map((b) => [b.id, b]));
  // A strip narrower than its wedge leaves patches where no fabric shows: they are left out.
  const lookOf = new Map(
    Object.values(looks)
      .flat()
      .filter((l) => l.shown.some((s) => area(s.polygon) > 0))
      .map((l) => [l.patchId, { fabricId: l.fabricId, lightness: patchLab(l).l }]),
  );
  const seen: Seen[] = [];
  const corners: Point[] = [];
  for (const placed of placements(few, answer.quilt!)) {
    const block = blocks.get(placed.blockId);
    if (!block) continue;
    corners.push(...applyToPolygon(placed.at, block.outline));
    for (const patch of block.patches) {
      const look = lookOf.get(patch.id);
      if (!look) continue;
      seen.push({
        patch: {
          ...patch,
          id: `${placed.id} ${patch.id}`,
          polygon: applyToPolygon(placed.at, patch.polygon),
        },
        place: { placed: placed.id, patch: patch.id },
        spot: placed.id.split("~")[0],
        fabricId: look.fabricId,
        lightness: look.lightness,
      });
    }
  }
  return { seen, corners };
}

/** Patches that run together, group by group; groups that reach the edge of what is looked at left out. */
function grouped(
  seen: readonly Seen[],
  corners: readonly Point[],
  near: Length,
  join: Length,
): Seen[][] {
  const root = new Map(seen.map((s) => [s.patch.id, s.patch.id]));
  const find = (id: string): string => {
    const up = root.get(id) as string;
    return up === id ? id : find(up);
  };
  const byId = new Map(seen.map((s) => [s.patch.id, s]));
  const alike = (p: Seen, q: Seen): boolean =>
    Math.abs(p.lightness - q.lightness) < PARTS_FROM_LIGHTNESS;
  const open = new Map(seen.map((s) => [s.patch.id, perimeter(s.patch)]));
  for (const n of neighborsOf(
    seen.map((s) => s.patch),
    Math.max(join, near),
  )) {
    for (const id of [n.a, n.b]) open.set(id, (open.get(id) as Length) - n.seam);
    if (alike(byId.get(n.a) as Seen, byId.get(n.b) as Seen)) root.set(find(n.a), find(n.b));
  }
  for (const corner of corners) {
    const here = seen.filter((s) => s.patch.polygon.some((v) => distance(v, corner) <= near));
    here.forEach((p, i) => {
      for (const q of here.slice(i + 1))
        if (alike(p, q)) root.set(find(p.patch.id), find(q.patch.id));
    });
  }
  const groups = new Map<string, Seen[]>();
  for (const s of seen) {
    const id = find(s.patch.id);
    groups.set(id, [...(groups.get(id) ?? []), s]);
  }
  return [...groups.values()].filter((g) =>
    g.every((s) => (open.get(s.patch.id) as Length) <= perimeter(s.patch) * 1e-6),
  );
}

const perimeter = (p: Patch): Length =>
  edges(p.polygon).reduce((sum, e) => sum + distance(e.from, e.to), 0);

const COUNTS = ["", "", "two", "three", "four", "five", "six", "seven", "eight"];

/** "a star of four points in Straw, across four blocks". */
export function shapeWords(s: MeetingShape, brief: Brief): string {
  const names = s.fabricIds.map((id) => brief.fabrics.find((f) => f.id === id)?.name ?? id);
  const count = COUNTS[s.points] ?? String(s.points);
  const what = {
    ring: "a ring",
    pinwheel: `a pinwheel of ${count} blades`,
    star: `a star of ${count} points`,
    square: "a square",
    diamond: "a diamond",
    hexagon: "a hexagon",
    octagon: "an octagon",
  }[s.shape];
  return `${what} in ${names.join(" and ")}, across ${COUNTS[s.blocks] ?? s.blocks} blocks`;
}
