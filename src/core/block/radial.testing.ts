import fc from "fast-check";
import { tolerances, type Unit } from "../measure/index.ts";
import { leastHalf, type RadialSpec, SECTOR_COUNTS, type SectorCount } from "./radial.ts";

/** For tests: every kind of radial block, in inches and millimetres, from the least side up. */
export const radialSpec: fc.Arbitrary<RadialSpec & { unit: Unit }> = fc
  .record({
    n: fc.constantFrom<SectorCount>(...SECTOR_COUNTS),
    hexagon: fc.boolean(),
    turned: fc.constantFrom("flat", "corner"),
    bits: fc.oneof(fc.constant(0), fc.nat({ max: 0xffff })),
    aInch: fc.double({ min: 0.4, max: 14, noNaN: true }),
    float: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 2, noNaN: true })),
    frame: fc.option(fc.double({ min: 1.02, max: 2.5, noNaN: true }), { nil: undefined, freq: 4 }),
    unit: fc.constantFrom<Unit>("in", "mm"),
  })
  .map(({ n, hexagon, turned, bits, aInch, float, frame, unit }) => {
    const outline = hexagon && (n === 6 || n === 12) ? "hexagon" : "square";
    const whole = Array.from({ length: n }, (_, i) => i).filter((i) => (bits >> i) & 1);
    const a = unit === "in" ? aInch : aInch * 25.4;
    const least = leastHalf({ n, outline, turned, a, whole });
    const half = (least > 0 ? least : a) * (1 + float);
    return {
      id: "star",
      n,
      outline,
      turned,
      a,
      half,
      whole,
      ...(frame !== undefined && outline === "square" ? { frame: half * frame } : {}),
      join: tolerances(unit).join,
      unit,
    } as const;
  });
