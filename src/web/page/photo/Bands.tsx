import { lengthTextProblem, shownLength } from "../../../core/answer/words/word.ts";
import { knownLength, type Unit } from "../../../core/measure/index.ts";
import { type Mark, Marks } from "./Marks.tsx";
import type { Found } from "./messages.ts";
import { type BandText, markStep, textOf } from "./taken.ts";
import type { Sampled } from "./useSampled.ts";

export interface Marked {
  /** How far above the middle of the picture the first band begins, square to the bands; pixels. */
  readonly start: number;
  readonly bands: readonly BandText[];
}

interface BandsProps {
  readonly unit: Unit;
  readonly found: Found;
  readonly perUnit: number;
  readonly marked: Marked;
  readonly onMarked: (m: Marked) => void;
  readonly sampled: Sampled | null;
}

/** Least width of a band that a line may be dragged to, in pixels. */
const LEAST = 2;

const pixels = (b: BandText, unit: Unit, perUnit: number): number =>
  lengthTextProblem(b.width, unit) ? LEAST : knownLength(b.width, unit) * perUnit;

/** Where each band ends, above the middle; the first entry is where the first begins. */
function edgesOf(m: Marked, unit: Unit, perUnit: number): number[] {
  const out = [m.start];
  for (const b of m.bands) out.push(out[out.length - 1] + pixels(b, unit, perUnit));
  return out;
}

/** One line moved to `above`: the first takes all with it, an inner one parts its two neighbors anew. */
export function edgeMoved(
  m: Marked,
  unit: Unit,
  perUnit: number,
  i: number,
  above: number,
): Marked {
  if (i === 0) return { ...m, start: above };
  const edges = edgesOf(m, unit, perUnit);
  const last = i === m.bands.length;
  const low = edges[i - 1] + LEAST;
  const at = Math.max(low, last ? above : Math.min(above, edges[i + 1] - LEAST));
  const width = (k: number, from: number, to: number): BandText => ({
    ...m.bands[k],
    width: textOf(unit, (to - from) / perUnit),
  });
  return {
    ...m,
    bands: m.bands.map((b, k) => {
      if (k === i - 1) return width(k, edges[i - 1], at);
      return k === i && !last ? width(k, at, edges[i + 1]) : b;
    }),
  };
}

/** The picture turned so that its bands lie level, a line at each edge of one repeat. */
export function BandsOnPicture({ unit, found, perUnit, marked, onMarked }: BandsProps) {
  const { width: w, height: h, data } = found;
  const upright = Math.abs(found.tilt) > 45;
  const [width, height] = upright ? [h, w] : [w, h];
  const edges = edgesOf(marked, unit, perUnit);
  const marks = edges.map(
    (above, i): Mark => ({
      id: String(i),
      kind: "level",
      at: -above,
      label:
        i === 0
          ? "Where the repeat begins"
          : i === marked.bands.length
            ? "Where the repeat ends"
            : `Between bands ${i} and ${i + 1}`,
      says: i === 0 ? "" : `band ${i} is ${shownLength(marked.bands[i - 1].width, unit)}`,
    }),
  );
  return (
    <Marks
      box={{ x: -width / 2, y: -height / 2, width, height }}
      label="One repeat, marked on the picture"
      marks={marks}
      step={markStep(unit, perUnit)}
      onMove={(id, to) => onMarked(edgeMoved(marked, unit, perUnit, Number(id), -to.y))}
    >
      <image
        href={data}
        x={-w / 2}
        y={-h / 2}
        width={w}
        height={h}
        transform={`rotate(${found.tilt})`}
      />
    </Marks>
  );
}

/** The bands as figures, first at the bottom: color, width, and the ways to part and join them. */
export function BandList({ unit, perUnit, marked, onMarked, sampled }: BandsProps) {
  const { bands } = marked;
  const set = (next: readonly BandText[]): void => onMarked({ ...marked, bands: next });
  const edges = edgesOf(marked, unit, perUnit);
  const add = (): void => {
    const last = bands[bands.length - 1];
    const from = edges[edges.length - 1];
    const width = last?.width ?? textOf(unit, 40 / perUnit);
    const color = sampled?.(from, from + pixels({ width, color: "" }, unit, perUnit)) ?? "#888888";
    set([...bands, { width, color }]);
  };
  return (
    <>
      <ol className="bands">
        {bands.map((b, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: bands are known by their place
          <li key={i}>
            <input
              type="color"
              value={b.color}
              aria-label={`Color of band ${i + 1}`}
              onChange={(e) => set(changed(bands, i, { ...b, color: e.target.value }))}
            />{" "}
            <input
              type="text"
              size={8}
              value={b.width}
              aria-label={`Width of band ${i + 1}`}
              aria-invalid={lengthTextProblem(b.width, unit) !== undefined}
              onChange={(e) => set(changed(bands, i, { ...b, width: e.target.value }))}
            />{" "}
            {unit}{" "}
            {sampled && (
              <button
                type="button"
                className="touch tall"
                onClick={() =>
                  set(changed(bands, i, { ...b, color: sampled(edges[i], edges[i + 1]) }))
                }
              >
                Color from the picture
              </button>
            )}{" "}
            <button
              type="button"
              className="touch tall"
              disabled={bands.length === 1}
              onClick={() => set(bands.filter((_, k) => k !== i))}
            >
              Leave out
            </button>
          </li>
        ))}
      </ol>
      <p>
        <button type="button" className="touch tall" onClick={add}>
          One more band
        </button>
      </p>
    </>
  );
}

export const changed = <T,>(all: readonly T[], at: number, to: T): T[] =>
  all.map((x, i) => (i === at ? to : x));
