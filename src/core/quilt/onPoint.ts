import { point } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { movedBy, quartersTurned } from "./shapes.ts";
import type { CountedPatch, QuiltPatch } from "./types.ts";

export interface OnPoint {
  /** Blocks that stand on a corner along the left edge, and along the top. */
  readonly rows: number;
  readonly columns: number;
  /** Finished side of the square block. */
  readonly side: Length;
  /** Finished sash along every side of a block; 0 when there is none. */
  readonly sash: Length;
  readonly fabricId: string;
}

/** Corner to corner of a square. */
const diagonal = (side: Length): Length => side * Math.SQRT2;

/** From one block of a line to the next: corner to corner of the block and its sash. */
export const pitchOf = (g: Pick<OnPoint, "side" | "sash">): Length => diagonal(g.side + g.sash);

/** Lines of blocks from the top: c blocks, c - 1 between them below, and so on. */
export const linesOf = (rows: number): number => 2 * rows - 1;
export const blocksInLine = (line: number, columns: number): number =>
  line % 2 === 0 ? columns : columns - 1;

export const onPointSize = (g: Omit<OnPoint, "fabricId">) => ({
  width: g.columns * pitchOf(g),
  height: g.rows * pitchOf(g),
});

/** Where block `c` of line `line` has its center. */
export const onPointCenter = (g: Omit<OnPoint, "fabricId">, line: number, c: number) => {
  const d = pitchOf(g);
  const shift = line % 2 === 0 ? 0 : 0.5;
  return {
    x: (c + shift - (g.columns - 1) / 2) * d,
    y: ((g.rows - 1) / 2 - line / 2) * d,
  };
};

/** Side triangle of the top edge: long side up, its middle at the origin. */
const sideTriangle = (d: Length) => [point(0, -d / 2), point(d / 2, 0), point(-d / 2, 0)];
/** Corner triangle of the top right corner: the right angle at the origin, outside. */
const cornerTriangle = (d: Length) => [point(0, 0), point(-d / 2, 0), point(0, -d / 2)];

/**
 * 2 (r + c - 2) side triangles, 4 corner triangles; long sides and right angles outside. Sashing
 * leaves them as they are: halves and quarters of a block, each with its own sashes before it.
 */
export function settingKinds(g: OnPoint): CountedPatch[] {
  const d = diagonal(g.side);
  const kinds: CountedPatch[] = [
    {
      id: "setting/side",
      role: "setting-triangle",
      fabricId: g.fabricId,
      polygon: sideTriangle(d),
      count: 2 * (g.rows + g.columns - 2),
    },
    {
      id: "setting/corner",
      role: "corner-triangle",
      fabricId: g.fabricId,
      polygon: cornerTriangle(d),
      count: 4,
    },
  ];
  return kinds.filter((k) => k.count > 0);
}

/** Every setting and corner triangle where it lies, for drawing. */
export function* placedSetting(g: OnPoint): Generator<QuiltPatch> {
  const d = diagonal(g.side);
  const pitch = pitchOf(g);
  const { width, height } = onPointSize(g);
  const edges = [
    {
      name: "top",
      count: g.columns - 1,
      quarters: 0,
      at: (i: number) => [along(i, g.columns), height / 2],
    },
    {
      name: "left",
      count: g.rows - 1,
      quarters: 1,
      at: (i: number) => [-width / 2, along(i, g.rows)],
    },
    {
      name: "bottom",
      count: g.columns - 1,
      quarters: 2,
      at: (i: number) => [along(i, g.columns), -height / 2],
    },
    {
      name: "right",
      count: g.rows - 1,
      quarters: 3,
      at: (i: number) => [width / 2, along(i, g.rows)],
    },
  ];
  function along(i: number, n: number): Length {
    return (i + 1 - n / 2) * pitch;
  }
  for (const edge of edges) {
    for (let i = 0; i < edge.count; i++) {
      const [x, y] = edge.at(i);
      yield {
        id: `setting/side/${edge.name}-${i + 1}`,
        role: "setting-triangle",
        fabricId: g.fabricId,
        polygon: movedBy(quartersTurned(sideTriangle(d), edge.quarters), x, y),
      };
    }
  }
  const corners = ["top-right", "top-left", "bottom-left", "bottom-right"];
  for (const [q, name] of corners.entries()) {
    const x = q === 0 || q === 3 ? width / 2 : -width / 2;
    const y = q < 2 ? height / 2 : -height / 2;
    yield {
      id: `setting/corner/${name}`,
      role: "corner-triangle",
      fabricId: g.fabricId,
      polygon: movedBy(quartersTurned(cornerTriangle(d), q), x, y),
    };
  }
}
