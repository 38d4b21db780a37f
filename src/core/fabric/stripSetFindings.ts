import type { Fabric } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import {
  inchToLength,
  knownLength,
  type Length,
  printWithUnit,
  type Step,
  tolerances,
} from "../measure/index.ts";
import { cutsOnStep, cutsThatSum, setWidth, showing } from "./stripSet.ts";
import { stripOf, type Way, type WedgeCut } from "./types.ts";

/** A ring narrower than this is hard to sew straight (common practice, no source), in inches. */
export const NARROW_RING_INCHES = 0.25;

/** What a strip of a set shows in a wedge: along the axis from the center outward. */
export interface SetRing {
  /** Place in the set, from 0. */
  readonly strip: number;
  readonly inner: Length;
  readonly outer: Length;
}

/** The rings a set shows, strip by strip in the set's order; hidden strips have outer <= inner. */
export function setRings(cuts: readonly Length[], cut: WedgeCut, way: Way): SetRing[] {
  const clamp = (r: Length): Length => Math.min(cut.a, Math.max(0, r));
  return showing(cuts, cut.seam).map(({ from, to }, strip) => {
    const [low, high] =
      way === "up"
        ? [cut.a + cut.seam - to, cut.a + cut.seam - from]
        : [from - cut.past, to - cut.past];
    return { strip, inner: clamp(low), outer: clamp(high) };
  });
}

/**
 * Where all the wedge's fabric already lies double under its two legs' allowances: within
 * SA / tan(A/2) of the center. A seam of the set there adds its plies to the bulk.
 */
export const bulkRadius = (seam: Length, halfAngle: number): Length => seam / Math.tan(halfAngle);

/**
 * What is wrong with a strip set for a wedge. `ways`: the ways up that are cut from it; `halfAngle`
 * in radians. Blocks when it sews up too narrow; everything else is for the maker to judge.
 */
export function stripSetFindings(
  set: Extract<Fabric, { kind: "strip-set" }>,
  cut: WedgeCut,
  ways: readonly Way[],
  halfAngle: number,
  step: Step,
): Finding[] {
  const unit = step.unit;
  const cuts = set.strips.map((s) => knownLength(s.cut, unit));
  return [
    ...tooNarrow(set.id, cuts, cut.seam, step),
    ...wrongSum(set.id, cuts, cut, step),
    ...ways.flatMap((way) => ringFindings(set.id, cuts, cut, way, halfAngle, step)),
  ];
}

const named = (strip: number): string => `Strip ${strip + 1}`;

function tooNarrow(place: string, cuts: readonly Length[], seam: Length, step: Step): Finding[] {
  const { unit } = step;
  return cuts.flatMap((found, i): Finding[] => {
    const seams = cuts.length === 1 ? 0 : i === 0 || i === cuts.length - 1 ? 1 : 2;
    const needed = seams * seam;
    if (found > needed + tolerances(unit).join) return [];
    return [
      {
        code: "strip-too-narrow",
        severity: "blocks",
        place,
        needed,
        found,
        unit,
        words: { strip: named(i) },
      },
    ];
  });
}

function wrongSum(place: string, cuts: readonly Length[], cut: WedgeCut, step: Step): Finding[] {
  const { unit } = step;
  const needed = stripOf(cut);
  const found = setWidth(cuts, cut.seam);
  if (Math.abs(found - needed) <= tolerances(unit).step) return [];
  const exact = cutsThatSum(cuts, needed, cut.seam);
  const stepped = cutsOnStep(cuts, needed, cut.seam, step);
  const list = (widths: readonly Length[]): string =>
    widths.map((w) => printWithUnit(w, step)).join(", ");
  const change =
    stepped.trim === 0
      ? `Cut them ${list(stepped.cuts)}.`
      : `Cut them ${list(exact)}; or ${list(stepped.cuts)} and trim ${printWithUnit(stepped.trim, step)} off the outer edge of the set.`;
  return [
    {
      code: "strip-set-sum",
      severity: found < needed ? "blocks" : "draft",
      place,
      needed,
      found,
      unit,
      words: { change },
    },
  ];
}

function ringFindings(
  place: string,
  cuts: readonly Length[],
  cut: WedgeCut,
  way: Way,
  halfAngle: number,
  step: Step,
): Finding[] {
  const { unit } = step;
  const narrow = inchToLength(NARROW_RING_INCHES, unit);
  const slack = tolerances(unit).step;
  const words = (strip: number) => ({ strip: named(strip), way });
  const rings = setRings(cuts, cut, way);
  const shown = rings.flatMap((r): Finding[] => {
    const found = r.outer - r.inner;
    if (found <= slack)
      return [{ code: "strip-hidden", severity: "draft", place, words: words(r.strip) }];
    if (found >= narrow - slack) return [];
    return [
      {
        code: "ring-narrow",
        severity: "advice",
        place,
        needed: narrow,
        found,
        unit,
        words: words(r.strip),
      },
    ];
  });
  return [...shown, ...seamPlaces(place, cuts, cut, way, halfAngle, step)];
}

/** Seams of the set that fall under the outer seam's allowance, or into the bulk at the center. */
function seamPlaces(
  place: string,
  cuts: readonly Length[],
  cut: WedgeCut,
  way: Way,
  halfAngle: number,
  step: Step,
): Finding[] {
  const { unit } = step;
  const slack = tolerances(unit).step;
  const bulk = bulkRadius(cut.seam, halfAngle);
  return showing(cuts, cut.seam)
    .slice(1)
    .flatMap(({ from }, i): Finding[] => {
      const radius = way === "up" ? cut.a + cut.seam - from : from - cut.past;
      const fromRaw = cut.a + cut.seam - radius;
      const words = { way, strip: `${named(i)} and ${named(i + 1).toLowerCase()}` };
      if (radius > cut.a - slack)
        return [
          {
            code: "seam-in-allowance",
            severity: "draft",
            place,
            needed: cut.seam + inchToLength(NARROW_RING_INCHES, unit),
            found: fromRaw,
            unit,
            words,
          },
        ];
      if (radius < bulk - slack && radius > -cut.past)
        return [
          {
            code: "seam-in-bulk",
            severity: "advice",
            place,
            needed: bulk,
            found: Math.max(0, radius),
            unit,
            words,
          },
        ];
      return [];
    });
}
