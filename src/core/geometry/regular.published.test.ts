import { describe, expect, test } from "vitest";
import { regularPolygonFacts } from "./regular.ts";

/**
 * n, center angle, inner angle, S/r, S/R, R/r, A/S^2, A/r^2, A/R^2 as tabled in CRC Standard
 * Mathematical Tables, 30th ed., and Compendium Geometry (2011), regular polygons: formulas read
 * there, figures worked out from them to six places.
 */
const TABLE: [number, ...string[]][] = [
  [
    3,
    "120.0000",
    "60.0000",
    "3.464102",
    "1.732051",
    "2.000000",
    "0.433013",
    "5.196152",
    "1.299038",
  ],
  [4, "90.0000", "90.0000", "2.000000", "1.414214", "1.414214", "1.000000", "4.000000", "2.000000"],
  [
    5,
    "72.0000",
    "108.0000",
    "1.453085",
    "1.175571",
    "1.236068",
    "1.720477",
    "3.632713",
    "2.377641",
  ],
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
    7,
    "51.4286",
    "128.5714",
    "0.963149",
    "0.867767",
    "1.109916",
    "3.633912",
    "3.371022",
    "2.736410",
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
    9,
    "40.0000",
    "140.0000",
    "0.727940",
    "0.684040",
    "1.064178",
    "6.181824",
    "3.275732",
    "2.892544",
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
    11,
    "32.7273",
    "147.2727",
    "0.587253",
    "0.563465",
    "1.042217",
    "9.365640",
    "3.229891",
    "2.973524",
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
    13,
    "27.6923",
    "152.3077",
    "0.492956",
    "0.478631",
    "1.029928",
    "13.185768",
    "3.204212",
    "3.020701",
  ],
  [
    14,
    "25.7143",
    "154.2857",
    "0.456487",
    "0.445042",
    "1.025717",
    "15.334502",
    "3.195409",
    "3.037186",
  ],
  [
    15,
    "24.0000",
    "156.0000",
    "0.425113",
    "0.415823",
    "1.022341",
    "17.642363",
    "3.188348",
    "3.050525",
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

describe("regular polygons", () => {
  test.each(TABLE.map(([n, ...printed]) => ({ n, printed })))("$n sides", ({ n, printed }) => {
    const f = regularPolygonFacts(n);
    expect([
      f.centerAngle.toFixed(4),
      f.innerAngle.toFixed(4),
      f.sidePerFlat.toFixed(6),
      f.sidePerCorner.toFixed(6),
      f.cornerPerFlat.toFixed(6),
      f.areaPerSide2.toFixed(6),
      f.areaPerFlat2.toFixed(6),
      f.areaPerCorner2.toFixed(6),
    ]).toEqual(printed);
  });

  test.each([2, 2.5, Number.NaN, -8])("%d sides are refused", (n) => {
    expect(() => regularPolygonFacts(n)).toThrow(RangeError);
  });

  // The constants of the octagon, common to every table of trigonometry.
  test("constants of 22.5 degrees", () => {
    const { sidePerFlat, sidePerCorner, cornerPerFlat } = regularPolygonFacts(8);
    expect((sidePerFlat / 2).toFixed(9)).toBe("0.414213562");
    expect((sidePerCorner / 2).toFixed(9)).toBe("0.382683432");
    expect((1 / cornerPerFlat).toFixed(9)).toBe("0.923879533");
    expect(cornerPerFlat.toFixed(9)).toBe("1.082392200");
    expect((2 / sidePerFlat).toFixed(9)).toBe("2.414213562");
  });
});
