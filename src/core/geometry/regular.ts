import type { Degree } from "../measure/index.ts";

/**
 * Ratios of the regular n-gon: S side, r distance from center to a side (half across flats when n is
 * even), R distance from center to a corner. S = 2 r tan(180/n) = 2 R sin(180/n), area
 * A = n r^2 tan(180/n). Formulas: CRC Standard Mathematical Tables, 30th ed., regular polygons.
 */
export interface RegularPolygonFacts {
  readonly centerAngle: Degree;
  readonly innerAngle: Degree;
  readonly sidePerFlat: number;
  readonly sidePerCorner: number;
  readonly cornerPerFlat: number;
  readonly areaPerSide2: number;
  readonly areaPerFlat2: number;
  readonly areaPerCorner2: number;
}

/** Throws RangeError unless n is a whole number from 3 up. */
export function regularPolygonFacts(n: number): RegularPolygonFacts {
  if (!Number.isInteger(n) || n < 3)
    throw new RangeError(`regular polygon: a whole number of sides from 3 up expected, got ${n}`);
  const half = Math.PI / n;
  const tan = Math.tan(half);
  const sin = Math.sin(half);
  const cos = Math.cos(half);
  return {
    centerAngle: 360 / n,
    innerAngle: 180 - 360 / n,
    sidePerFlat: 2 * tan,
    sidePerCorner: 2 * sin,
    cornerPerFlat: 1 / cos,
    areaPerSide2: n / (4 * tan),
    areaPerFlat2: n * tan,
    areaPerCorner2: n * sin * cos,
  };
}
