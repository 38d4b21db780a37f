import { useState } from "react";
import { lengthTextProblem } from "../../../core/answer/words.ts";
import type { Brief, Fabric } from "../../../core/brief/index.ts";
import { useKeepStore } from "../KeepContext.ts";
import { sayAloud } from "../view.ts";
import type { Found } from "./messages.ts";
import { asPrint, asStripe, bandTexts } from "./taken.ts";

interface TakingProps {
  readonly brief: Brief;
  readonly fabric: string;
  readonly found: Found;
  readonly perUnit: number;
  readonly onTaken: () => void;
}

/** What was found, how surely, to be corrected by hand; then taken as a stripe or as a print. */
export function Taking({ brief, fabric, found, perUnit, onTaken }: TakingProps) {
  const keep = useKeepStore();
  const [bands, setBands] = useState(() => bandTexts(brief, found, perUnit));
  const [runs, setRuns] = useState<"along" | "across">("across");
  const now = brief.fabrics.find((f) => f.id === fabric);
  if (!now) return null;
  const wrong = bands.some((b) => lengthTextProblem(b.width, brief.unit) !== undefined);
  const take = (made: Fabric, words: string): void => {
    keep.act.edit(words, (d) => {
      const at = d.fabrics.findIndex((f) => f.id === fabric);
      if (at >= 0) d.fabrics[at] = made;
    });
    sayAloud(`${now.name} taken from its picture`);
    onTaken();
  };
  const { stripe, repeat } = found;
  return (
    <div className="taking">
      <p>
        {bands.length === 0
          ? "No stripe was found."
          : stripe.sure
            ? `A stripe of ${bands.length} bands, seen ${stripe.repeats.toFixed(1)} times: sure.`
            : `Perhaps a stripe, not surely: ${stripe.why ?? "it is not clear"}. Correct its bands by hand.`}
      </p>
      {bands.length > 0 && (
        <>
          <ol className="bands">
            {bands.map((b, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: bands are known by their place
              <li key={i}>
                <input
                  type="color"
                  value={b.color}
                  aria-label={`Color of band ${i + 1}`}
                  onChange={(e) => setBands(changed(bands, i, { ...b, color: e.target.value }))}
                />{" "}
                <input
                  type="text"
                  size={8}
                  value={b.width}
                  aria-label={`Width of band ${i + 1}`}
                  aria-invalid={lengthTextProblem(b.width, brief.unit) !== undefined}
                  onChange={(e) => setBands(changed(bands, i, { ...b, width: e.target.value }))}
                />{" "}
                {brief.unit}{" "}
                <button
                  type="button"
                  className="touch tall"
                  disabled={bands.length === 1}
                  onClick={() => setBands(bands.filter((_, k) => k !== i))}
                >
                  Leave out
                </button>
              </li>
            ))}
          </ol>
          <p>
            <label>
              The bands run{" "}
              <select value={runs} onChange={(e) => setRuns(e.target.value as "along" | "across")}>
                <option value="across">across the fabric</option>
                <option value="along">along the selvage</option>
              </select>
            </label>{" "}
            <button
              type="button"
              className="touch tall"
              disabled={wrong}
              onClick={() => take(asStripe(now, found, bands, runs), `"${now.name}" as a stripe`)}
            >
              Take it as a stripe
            </button>
          </p>
        </>
      )}
      <p>
        {repeat.sure
          ? "The print's repeat was found surely."
          : `The print's repeat was not found surely${repeat.why ? `: ${repeat.why}` : ""}.`}{" "}
        <button
          type="button"
          className="touch tall"
          onClick={() =>
            take(asPrint(brief, now, found, perUnit), `"${now.name}" as a print with its picture`)
          }
        >
          Take it as a print
        </button>
      </p>
    </div>
  );
}

const changed = <T,>(all: readonly T[], at: number, to: T): T[] =>
  all.map((x, i) => (i === at ? to : x));
