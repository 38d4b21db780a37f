import { useState } from "react";
import { lengthTextProblem } from "../../../core/answer/words/word.ts";
import type { Brief, Fabric } from "../../../core/brief/index.ts";
import { useKeepStore } from "../KeepContext.ts";
import { sayAloud } from "../view.ts";
import { BandList, BandsOnPicture, type Marked } from "./Bands.tsx";
import type { Found } from "./messages.ts";
import { Repeat, repeatProblem, repeatTexts } from "./Repeat.tsx";
import { asPrint, asStripe, bandTexts } from "./taken.ts";
import { useSampled } from "./useSampled.ts";

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
  const now = brief.fabrics.find((f) => f.id === fabric);
  const [kind, setKind] = useState<"stripe" | "print">(() => likely(found, now));
  if (!now) return null;
  const take = (made: Fabric, words: string): void => {
    keep.act.edit(words, (d) => {
      const at = d.fabrics.findIndex((f) => f.id === fabric);
      if (at >= 0) d.fabrics[at] = made;
    });
    sayAloud(`${now.name} taken from its picture`);
    onTaken();
  };
  const common = { brief, now, found, perUnit, take };
  return (
    <div className="taking">
      <fieldset className="eyes">
        <legend className="soft small">Taken as</legend>
        {(["stripe", "print"] as const).map((k) => (
          <label key={k} className="touch tall">
            <input type="radio" checked={k === kind} onChange={() => setKind(k)} />a {k}
          </label>
        ))}
      </fieldset>
      {kind === "stripe" ? <AsStripe {...common} /> : <AsPrint {...common} />}
    </div>
  );
}

/** What it surely is; where neither is sure, what the fabric is already. */
function likely({ stripe, repeat }: Found, now: Fabric | undefined): "stripe" | "print" {
  if (stripe.sure !== repeat.sure) return stripe.sure ? "stripe" : "print";
  return now?.kind === "print" && !stripe.sure ? "print" : "stripe";
}

interface AsProps {
  readonly brief: Brief;
  readonly now: Fabric;
  readonly found: Found;
  readonly perUnit: number;
  readonly take: (made: Fabric, words: string) => void;
}

function AsStripe({ brief, now, found, perUnit, take }: AsProps) {
  const { stripe } = found;
  const [marked, setMarked] = useState<Marked>(() => ({
    start: stripe.start,
    bands: bandTexts(brief, found, perUnit),
  }));
  const [runs, setRuns] = useState<"along" | "across">("across");
  const sampled = useSampled(found);
  const { bands } = marked;
  const wrong = bands.map((b) => lengthTextProblem(b.width, brief.unit)?.problem).find((p) => p);
  const { unit } = brief;
  const parts = { unit, found, perUnit, marked, onMarked: setMarked, sampled };
  return (
    <>
      <p>
        {stripe.sure
          ? `A stripe of ${bands.length} bands, seen ${stripe.repeats.toFixed(1)} times: sure.`
          : `Unsure: ${stripe.why ?? "no stripe is seen"}. ${bands.length > 0 ? "Drag its lines to one repeat, or type its bands." : "Mark one repeat by hand, band by band from its lower edge."}`}
      </p>
      <div className="correcting">
        <BandsOnPicture {...parts} />
        <div>
          <BandList {...parts} />
        </div>
      </div>
      {wrong && (
        <p role="alert" className="small problem">
          {wrong}
        </p>
      )}
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
          disabled={wrong !== undefined || bands.length === 0}
          onClick={() => take(asStripe(now, found, bands, runs), `"${now.name}" as a stripe`)}
        >
          Take it as a stripe
        </button>
      </p>
    </>
  );
}

function AsPrint({ brief, now, found, perUnit, take }: AsProps) {
  const { repeat } = found;
  const { unit } = brief;
  const [text, setText] = useState(() => repeatTexts(unit, found, perUnit));
  const wrong = repeatProblem(text, unit);
  return (
    <>
      <p>
        {repeat.sure
          ? "The print's repeat was found: sure."
          : `Unsure of its repeat: ${repeat.why ?? "none is seen"}. Drag the lines to frame one repeat, or type it.`}
      </p>
      <Repeat unit={unit} found={found} perUnit={perUnit} repeat={text} onRepeat={setText} />
      {wrong && (
        <p role="alert" className="small problem">
          {wrong}
        </p>
      )}
      <p>
        <button
          type="button"
          className="touch tall"
          disabled={wrong !== undefined}
          onClick={() =>
            take(
              asPrint(brief, now, found, perUnit, text),
              `"${now.name}" as a print with its picture`,
            )
          }
        >
          Take it as a print
        </button>
      </p>
    </>
  );
}
