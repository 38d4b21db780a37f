import { describe, expect, test } from "vitest";
import { area, distance, middle, ORIGIN } from "../geometry/index.ts";
import { radialBlock, type SectorCount } from "./radial.ts";

/**
 * n, center angle, inner angle, S/r, S/R, R/r, A/S^2, A/r^2, A/R^2 as tabled in CRC Standard
 * Mathematical Tables, 30th ed., and Compendium Geometry (2011), regular polygons: formulas read
 * there, figures worked out from them to six places. S side, r to a side, R to a corner, A area.
 */
const TABLE: [SectorCount, ...string[]][] = [
  [
    6,
    "60.0000",
    "120.0000",
    "1.154701",
    "1.000000",
    "1.154701",
    "2.598076",
    "3.464102",
    "2.598076",
  ],
  [
    8,
    "45.0000",
    "135.0000",
    "0.828427",
    "0.765367",
    "1.082392",
    "4.828427",
    "3.313708",
    "2.828427",
  ],
  [
    10,
    "36.0000",
    "144.0000",
    "0.649839",
    "0.618034",
    "1.051462",
    "7.694209",
    "3.249197",
    "2.938926",
  ],
  [
    12,
    "30.0000",
    "150.0000",
    "0.535898",
    "0.517638",
    "1.035276",
    "11.196152",
    "3.215390",
    "3.000000",
  ],
  [
    16,
    "22.5000",
    "157.5000",
    "0.397825",
    "0.390181",
    "1.019591",
    "20.109358",
    "3.182598",
    "3.061467",
  ],
];

const A = 3.7;

/** The circle of wedges of a block, measured: what a table of regular polygons has. */
function measured(n: SectorCount) {
  const { patches } = radialBlock({
    id: "round",
    n,
    outline: "square",
    turned: "flat",
    a: A,
    half: 2 * A,
    whole: [],
    join: 1e-9,
  });
  const wedges = patches.filter((p) => p.role.startsWith("wedge")).map((p) => p.polygon);
  expect(wedges.length).toBe(n);
  const corners = wedges[0].filter((p) => distance(p, ORIGIN) > A / 2);
  const [s, R] = [distance(corners[0], corners[1]), distance(corners[0], ORIGIN)];
  const r = distance(middle(corners[0], corners[1]), ORIGIN);
  const whole = wedges.reduce((t, w) => t + area(w), 0);
  const degrees = (x: number): number => (x * 180) / Math.PI;
  const center = degrees(2 * Math.asin(s / (2 * R)));
  const inner = degrees(2 * Math.acos(s / (2 * R)));
  return { s, r, R, whole, center, inner };
}

describe("the wedges of a block are a regular polygon's", () => {
  test.each(TABLE.map(([n, ...printed]) => ({ n, printed })))("$n wedges", ({ n, printed }) => {
    const { s, r, R, whole, center, inner } = measured(n);
    expect([
      center.toFixed(4),
      inner.toFixed(4),
      ...[s / r, s / R, R / r, whole / s ** 2, whole / r ** 2, whole / R ** 2].map((x) =>
        x.toFixed(6),
      ),
    ]).toEqual(printed);
    expect(r).toBeCloseTo(A, 12);
  });

  // The constants of the octagon, common to every table of trigonometry.
  test("constants of 22.5 degrees", () => {
    const { s, r, R } = measured(8);
    expect((s / r / 2).toFixed(9)).toBe("0.414213562");
    expect((s / R / 2).toFixed(9)).toBe("0.382683432");
    expect((r / R).toFixed(9)).toBe("0.923879533");
    expect((R / r).toFixed(9)).toBe("1.082392200");
    expect(((2 * r) / s).toFixed(9)).toBe("2.414213562");
  });
});
