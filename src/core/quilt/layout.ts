import type { Brief } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import { type Length, tolerances } from "../measure/index.ts";
import { countKinds, placeRows } from "./rows.ts";
import type { PlacedBlock, QuiltGeometry } from "./types.ts";

export interface BlockSize {
  readonly width: Length;
  readonly height: Length;
}

export interface LaidOutQuilt {
  readonly geometry?: QuiltGeometry;
  readonly findings: readonly Finding[];
}

/**
 * The quilt's sizes and counts from the finished sizes of its kinds of block. Blocks of one quilt
 * must finish alike; where they do not, the finding names both and there is no geometry.
 */
export function layOutQuilt(
  brief: Brief,
  sizes: Readonly<Record<string, BlockSize>>,
): LaidOutQuilt {
  const { rows, columns, plan } = brief.quilt;
  const counts = countKinds(plan, rows, columns);
  const kinds = Object.keys(counts).sort();
  if (kinds.some((k) => !sizes[k])) return { findings: [] };
  const findings = differing(kinds, sizes, brief);
  if (findings.length > 0) return { findings };
  const { width, height } = sizes[kinds[0]];
  const centerWidth = columns * width;
  const centerHeight = rows * height;
  return {
    geometry: {
      rows,
      columns,
      width: centerWidth,
      height: centerHeight,
      centerWidth,
      centerHeight,
      counts,
      extras: [],
    },
    findings: [],
  };
}

function differing(
  kinds: readonly string[],
  sizes: Readonly<Record<string, BlockSize>>,
  brief: Brief,
): Finding[] {
  const [first, ...others] = kinds;
  const { congruent } = tolerances(brief.unit);
  return others.flatMap((kind): Finding[] => {
    const a = sizes[first];
    const b = sizes[kind];
    const same =
      Math.abs(a.width - b.width) <= congruent && Math.abs(a.height - b.height) <= congruent;
    if (same) return [];
    return [
      {
        code: "blocks-differ-in-size",
        severity: "blocks",
        place: "quilt",
        needed: a.width,
        found: b.width,
        unit: brief.unit,
        words: { a: kind, b: first },
      },
    ];
  });
}

/** Every placed block, one by one: for drawing only, never for counting. */
export function placements(brief: Brief, geometry: QuiltGeometry): Generator<PlacedBlock> {
  const { rows, columns, plan } = brief.quilt;
  const pitch = { x: geometry.centerWidth / columns, y: geometry.centerHeight / rows };
  return placeRows(plan, rows, columns, pitch);
}
