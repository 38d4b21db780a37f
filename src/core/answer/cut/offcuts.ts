import type { FabricPlan, Placement, SheetLayout, Strip } from "../../layout/index.ts";
import type { Length } from "../../measure/index.ts";

/** Offcuts are the planner's own pieces; the maker's have names of their own. */
export const isOffcut = (sheetId: string): boolean => /^offcut-\d+$/.test(sheetId);

/**
 * The long cuts with what is cut from the fabric they leave drawn where it lies: beside the last of
 * them, or above a shorter one.
 */
export function withOffcuts(plan: FabricPlan): readonly Strip[] {
  const { long, pieces } = plan;
  if (!long) return [];
  const served = (pieces?.sheets ?? []).filter((s) => isOffcut(s.sheetId));
  if (served.length === 0) return long.strips;
  const waiting = served.flatMap((s) => Array.from({ length: s.times }, () => s));
  return oneByOne(long.strips).map((strip) => {
    const runs = [...strip.runs];
    for (const place of freePlaces(strip, long.width)) {
      const i = waiting.findIndex((s) => fills(s, place));
      if (i >= 0) runs.push(...laidIn(waiting.splice(i, 1)[0], place));
    }
    return { ...strip, runs };
  });
}

/** Strips that may come to hold different things are told one by one. */
const oneByOne = (strips: readonly Strip[]): Strip[] =>
  strips.flatMap((s) =>
    Array.from({ length: s.times }, (_, i) => ({ ...s, from: s.from + i * s.height, times: 1 })),
  );

interface FreePlace {
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
}

/** The rectangles that a strip of single layers leaves: its end, and what is above each column. */
function freePlaces(strip: Strip, width: Length): FreePlace[] {
  const columns = new Map<Length, Placement[]>();
  for (const run of strip.runs) columns.set(run.x, [...(columns.get(run.x) ?? []), run]);
  const above = [...columns].map(([x, runs]) => {
    const y = Math.max(...runs.map((r) => r.y + r.height));
    return { x, y, width: Math.max(...runs.map((r) => r.width)), height: strip.height - y };
  });
  const end = Math.max(0, ...strip.runs.map((r) => r.x + r.width));
  return [{ x: end, y: 0, width: width - end, height: strip.height }, ...above];
}

const fills = (s: SheetLayout, place: FreePlace): boolean =>
  Math.abs(s.width - place.width) < 1e-6 && Math.abs(s.length - place.height) < 1e-6;

const laidIn = (s: SheetLayout, place: FreePlace): Placement[] =>
  oneByOne(s.strips).flatMap((strip) =>
    strip.runs.map((r) => ({
      ...r,
      x: place.x + r.x,
      y: place.y + strip.from + r.y,
      leftover: true as const,
    })),
  );
