import type { BlockGeometry } from "../block/index.ts";
import { type Brief, blockIn } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import { knownLength, type Length } from "../measure/index.ts";
import { bordersOf } from "./borders.ts";
import { type Counted, countIn } from "./count.ts";
import { borderFindings, outlineFindings, sizeFindings } from "./findings.ts";
import { endKinds, hexagonSize } from "./hexagons.ts";
import { onPointSize, pitchOf, settingKinds } from "./onPoint.ts";
import { onPointSashKinds } from "./onPointSashing.ts";
import { centerSize, sashKinds } from "./sashing.ts";
import type { CountedPatch, QuiltGeometry } from "./types.ts";

export interface LaidOutQuilt {
  readonly geometry?: QuiltGeometry;
  readonly findings: readonly Finding[];
}

interface Center {
  readonly width: Length;
  readonly height: Length;
  readonly pitch: { readonly x: Length; readonly y: Length };
  readonly extras: readonly CountedPatch[];
  readonly assembly: QuiltGeometry["assembly"];
}

/**
 * The quilt's sizes, counts and patches outside blocks, from the finished geometry of its kinds of
 * block. What keeps blocks from lying together comes back as findings, and then there is no geometry.
 * Its cost follows the kinds of block and the plan's repeat, not the number of blocks.
 */
export function layOutQuilt(brief: Brief, blocks: readonly BlockGeometry[]): LaidOutQuilt {
  const named = [...new Set(brief.quilt.plan.flat().map(blockIn))].sort();
  const used = named.flatMap((id) => blocks.filter((b) => b.id === id));
  if (used.length < named.length || used.length === 0) return { findings: [] };
  const wrong = [...outlineFindings(brief, used), ...sizeFindings(brief, used)];
  if (wrong.length > 0) return { findings: wrong };
  const center = centerOf(brief, used[0]);
  const { counts, halves }: Counted = countIn(brief);
  const bordered = bordersOf(brief.quilt.borders, brief.unit, center);
  return {
    geometry: {
      arrangement: brief.quilt.arrangement,
      rows: brief.quilt.rows,
      columns: brief.quilt.columns,
      pitch: center.pitch,
      width: bordered.width,
      height: bordered.height,
      centerWidth: center.width,
      centerHeight: center.height,
      counts,
      halves,
      extras: [...center.extras, ...bordered.kinds],
      borders: bordered.facts,
      assembly: center.assembly,
    },
    findings: borderFindings(brief, center),
  };
}

function centerOf(brief: Brief, block: BlockGeometry): Center {
  const { arrangement } = brief.quilt;
  if (arrangement === "on-point") return onPointCenter(brief, block);
  if (arrangement === "hexagon-rows") return hexagonCenter(brief, block);
  return rowsCenter(brief, block);
}

function rowsCenter(brief: Brief, { width, height }: BlockGeometry): Center {
  const { rows, columns, sashing, offset } = brief.quilt;
  const sash = sashing && !offset ? knownLength(sashing.width, brief.unit) : 0;
  const g = { rows, columns, width, height, sash, sashing };
  const shifted = offset ? Math.floor(rows / 2) : 0;
  return {
    ...centerSize(g),
    pitch: { x: width + sash, y: height + sash },
    extras: sashKinds(g),
    assembly: {
      rows,
      rowSeams:
        rows * (columns - 1) * (sash > 0 ? 2 : 1) + shifted + (sash > 0 ? sashRowSeams(g) : 0),
      joinSeams: (rows - 1) * (sash > 0 ? 2 : 1),
    },
  };
}

/** With cornerstones each row of sashes is itself pieced. */
const sashRowSeams = (g: {
  rows: number;
  columns: number;
  sashing: Brief["quilt"]["sashing"];
}): number => (g.sashing?.cornerstone ? (g.rows - 1) * 2 * (g.columns - 1) : 0);

function onPointCenter(brief: Brief, { width: side }: BlockGeometry): Center {
  const { rows, columns, setting, edges, sashing } = brief.quilt;
  const sash = sashing ? knownLength(sashing.width, brief.unit) : 0;
  const g = { rows, columns, side, sash, fabricId: setting ?? brief.fabrics[0].id };
  const pitch = pitchOf(g);
  return {
    ...onPointSize(g),
    pitch: { x: pitch, y: pitch },
    extras: [
      ...(edges === "halves" ? [] : settingKinds(g)),
      ...(sashing ? onPointSashKinds({ ...g, sashing }) : []),
    ],
    assembly: onPointAssembly(brief.quilt),
  };
}

/** Every diagonal row ends in two setting pieces, each row of stones in two halves; two of the four corners go on last. */
function onPointAssembly({ rows, columns, sashing }: Brief["quilt"]): QuiltGeometry["assembly"] {
  const blocks = rows * columns + (rows - 1) * (columns - 1);
  const diagonals = rows + columns - 1;
  if (!sashing)
    return { rows: diagonals, rowSeams: blocks + diagonals, joinSeams: diagonals - 1 + 2 };
  const inSashRows = sashing.cornerstone ? 4 * rows * columns : 0;
  return {
    rows: diagonals,
    rowSeams: 2 * (blocks + diagonals) + inSashRows,
    joinSeams: diagonals + (rows + columns) - 1 + 2,
  };
}

function hexagonCenter(brief: Brief, { width: flats }: BlockGeometry): Center {
  const { rows, columns, setting } = brief.quilt;
  const g = { rows, columns, flats, fabricId: setting ?? brief.fabrics[0].id };
  const { width, height } = hexagonSize(g);
  return {
    width,
    height,
    pitch: { x: width / Math.max(1, columns), y: flats },
    extras: endKinds(g),
    assembly: { rows: 2 * rows, rowSeams: 2 * rows * (columns + 1), joinSeams: 2 * rows - 1 },
  };
}
