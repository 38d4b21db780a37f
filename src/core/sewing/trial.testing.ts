/** The trial behind the diagnosis' figures: used by its test (short) and by bench/sewing-diagnosis.ts. */
import { diagnose } from "./diagnose.ts";
import { type Plant, readByHand, trueReadings } from "./planted.testing.ts";
import { normals, uniforms } from "./random.ts";
import type { ReadingError, SewnCircle } from "./readings.ts";

export const SETUP = {
  blocks: 1000,
  seed: 1,
  wedges: 8,
  /** Standard deviation of a reading, and the marks it is rounded to. */
  sd: 1 / 64,
  step: 1 / 32,
};

const RANGES = {
  seam: [1 / 64, 1 / 16],
  strip: [1 / 32, 1 / 8],
  angle: [1 / 8, 1 / 2],
  drift: [1 / 128, 1 / 32],
} as const;
type Planted = keyof typeof RANGES;
const PLANTED = Object.keys(RANGES) as Planted[];
/** Sharp strips a maker uses; the finished circle follows. */
const STRIPS = [3, 3.5, 4.5, 5, 6, 8];

export function runDiagnosis(setup: typeof SETUP) {
  const draw = uniforms(setup.seed);
  const normal = normals(setup.seed + 1);
  const error: ReadingError = { sd: setup.sd, step: setup.step };
  const circle = (): SewnCircle => {
    const strip = STRIPS[Math.floor(draw() * STRIPS.length)];
    const seam = 0.25;
    const a = strip - seam - seam / Math.sin(Math.PI / setup.wedges);
    return { n: setup.wedges, a, seam, missing: 0, unit: "in" };
  };
  const sign = () => (draw() < 0.5 ? -1 : 1);
  const judge = (c: SewnCircle, p: Plant) =>
    diagnose(c, readByHand(trueReadings(c, p), setup.sd, setup.step, normal), error);

  const found = Array.from({ length: setup.blocks }, (_, i) => {
    const cause = PLANTED[i % PLANTED.length];
    const [low, high] = RANGES[cause];
    const plant: Plant = { cause, size: sign() * (low + draw() * (high - low)), pivot: draw() };
    const d = judge(circle(), plant);
    const [top] = d.causes;
    const right = d.confidence !== "nothing-wrong" && top?.cause === cause;
    return { cause, d, right, off: right ? Math.abs(top.size - plant.size) : Number.NaN };
  });
  const sure = found.filter((f) => f.d.confidence === "sure");
  const tie = found.filter((f) => f.d.confidence === "tie");
  const sizes = (cause: Planted) =>
    found.filter((f) => f.cause === cause && f.right).map((f) => f.off);
  const accused = Array.from({ length: setup.blocks }, () =>
    judge(circle(), { cause: "none", size: 0, pivot: 0 }),
  ).filter((d) => d.confidence !== "nothing-wrong");
  // A fault of twice the reading error: 1/32 as a length at the piece; for an angle, at its leg's end.
  const twice = Array.from({ length: setup.blocks }, (_, i) => {
    const cause = PLANTED[i % PLANTED.length];
    const c = circle();
    const leg = c.a / Math.cos(Math.PI / c.n);
    const size = cause === "angle" ? ((2 * setup.sd) / leg) * (180 / Math.PI) : 2 * setup.sd;
    const d = judge(c, { cause, size: sign() * size, pivot: draw() });
    return { cause, missed: d.confidence === "nothing-wrong" };
  });
  const share = <T>(list: readonly T[], is: (x: T) => boolean): number =>
    list.length === 0 ? 1 : list.filter(is).length / list.length;
  return {
    rightFirst: share(found, (f) => f.right),
    byCause: Object.fromEntries(
      PLANTED.map((c) => [
        c,
        share(
          found.filter((f) => f.cause === c),
          (f) => f.right,
        ),
      ]),
    ),
    sure: sure.length / found.length,
    rightWhenSure: share(sure, (f) => f.right),
    tie: tie.length / found.length,
    rightAmongTied: share(tie, (f) => f.d.tied.includes(f.cause)),
    seamWithin: share(sizes("seam"), (x) => x <= 1 / 128),
    seamWorst: Math.max(...sizes("seam")),
    angleWithin: share(sizes("angle"), (x) => x <= 1 / 12),
    angleWorst: Math.max(...sizes("angle")),
    accused: accused.length / setup.blocks,
    missed: share(twice, (t) => t.missed),
    missedByCause: Object.fromEntries(
      PLANTED.map((c) => [
        c,
        share(
          twice.filter((t) => t.cause === c),
          (t) => t.missed,
        ),
      ]),
    ),
  };
}
