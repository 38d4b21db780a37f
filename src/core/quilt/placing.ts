import { type Brief, blockIn } from "../brief/index.ts";
import { knownLength } from "../measure/index.ts";
import { bordersOf } from "./borders.ts";
import { placedEnds } from "./hexagons.ts";
import { hexagonSpots, offsetSpots, onPointEdges, onPointSpots, type Spot } from "./kinds.ts";
import { placedSetting } from "./onPoint.ts";
import { placedOnPointSashes } from "./onPointSashing.ts";
import { cellAt } from "./rows.ts";
import { placedSashes } from "./sashing.ts";
import type { PlacedBlock, QuiltGeometry, QuiltPatch } from "./types.ts";

/** Every block of the quilt where it lies, one by one: for drawing only, never for counting. */
export function* placements(brief: Brief, g: QuiltGeometry): Generator<PlacedBlock> {
  for (const spot of spotsOf(brief, g)) {
    const own = typeof spot.cell === "string" ? { quarters: 0, mirrored: false } : spot.cell;
    yield {
      id: spot.id,
      blockId: spot.part?.id ?? blockIn(spot.cell),
      at: {
        turn: ((spot.eighths + 2 * own.quarters) * Math.PI) / 4,
        x: spot.x,
        y: spot.y,
        mirrored: own.mirrored,
      },
    };
  }
}

/** The places of an arrangement, whole blocks and halves. */
export function* spotsOf(brief: Brief, g: Pick<QuiltGeometry, "pitch">): Generator<Spot> {
  const { plan, rows, columns, arrangement, edges, offset } = brief.quilt;
  if (arrangement === "on-point") {
    yield* onPointSpots(plan, rows, columns, g.pitch.x);
    if (edges === "halves") yield* onPointEdges(plan, rows, columns, g.pitch.x);
  } else if (arrangement === "hexagon-rows") yield* hexagonSpots(plan, rows, columns, g.pitch.y);
  else if (offset) yield* offsetSpots(plan, rows, columns, g.pitch.x, g.pitch.y);
  else yield* straightSpots(brief, g);
}

function* straightSpots(brief: Brief, g: Pick<QuiltGeometry, "pitch">): Generator<Spot> {
  const { plan, rows, columns } = brief.quilt;
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      yield {
        id: `r${r + 1}c${c + 1}`,
        cell: cellAt(plan, r, c),
        x: (c - (columns - 1) / 2) * g.pitch.x,
        y: ((rows - 1) / 2 - r) * g.pitch.y,
        eighths: 0,
      };
}

/** Every patch outside blocks where it lies, for drawing. */
export function* placedPatches(brief: Brief, g: QuiltGeometry): Generator<QuiltPatch> {
  const { quilt, unit } = brief;
  const { rows, columns } = quilt;
  const fabricId = quilt.setting ?? brief.fabrics[0].id;
  const sash = quilt.sashing ? knownLength(quilt.sashing.width, unit) : 0;
  if (quilt.arrangement === "on-point") {
    const placed = { rows, columns, side: g.pitch.x / Math.SQRT2 - sash, sash, fabricId };
    if (quilt.edges !== "halves") yield* placedSetting(placed);
    if (quilt.sashing) yield* placedOnPointSashes({ ...placed, sashing: quilt.sashing });
  }
  if (quilt.arrangement === "hexagon-rows")
    yield* placedEnds({ rows, columns, flats: g.pitch.y, fabricId });
  if (quilt.arrangement === "rows" && quilt.sashing && !quilt.offset)
    yield* placedSashes({
      rows,
      columns,
      width: g.pitch.x - sash,
      height: g.pitch.y - sash,
      sash,
      sashing: quilt.sashing,
    });
  yield* bordersOf(quilt.borders, unit, { width: g.centerWidth, height: g.centerHeight }).placed;
}
