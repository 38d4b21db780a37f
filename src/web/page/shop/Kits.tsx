import { useCallback, useState } from "react";
import { fabricLetters } from "../../../core/answer/cut/fabrics.ts";
import { say } from "../../../core/findings/say.ts";
import { stepOf } from "../../../core/measure/index.ts";
import {
  beginRun,
  LABEL_SHEETS,
  readLabelSheet,
  rulesOf,
  sayBag,
  sayCosts,
  sayCut,
  sayPlan,
  sayWay,
  sayWeight,
  type Way,
  weighBag,
} from "../../../core/shop/index.ts";
import type { KeepStore } from "../../keep/index.ts";
import type { Answered } from "../answers.ts";
import { Said } from "../said.tsx";
import { editionOf } from "../sheets/choices.ts";
import { sayAloud } from "../view.ts";
import { shopWorker, useAsked } from "./asking.ts";
import { today } from "./give.ts";
import { decide, KitDecisions } from "./KitDecisions.tsx";
import { Act, Field, Papers, Part, Pick } from "./parts.tsx";
import type { KitAnswer } from "./services.ts";
import { shopStore, useShop } from "./store.ts";

/** How many kits, what limits them, what would give more, what one costs and weighs. */
export function KitsPart({ now, keep }: { now: Answered; keep: KeepStore }) {
  const { brief, answer } = now;
  const shelf = useShop((s) => s.book.shelf);
  const asked = useAsked(
    useCallback(() => shopWorker.ask("kits", "kits", brief, answer, shelf), [brief, answer, shelf]),
  );
  const letters = fabricLetters(brief);
  const fabrics = brief.fabrics
    .filter((f) => f.kind !== "strip-set" && answer.layouts.some((l) => l.fabricId === f.id))
    .map((f) => ({ fabricId: f.id, name: f.name, letter: letters[f.id] ?? "" }));
  return (
    <Part heading="How many kits do they give?" trade={`kits of ${brief.title}`}>
      <KitDecisions brief={brief} keep={keep} shelf={shelf} fabrics={fabrics} />
      <p className="soft small" role="status">
        {asked.busy && "Counting. "}
        {asked.failed && `The kits could not be counted: ${asked.failed}.`}
      </p>
      {asked.value && <Found found={asked.value} now={now} keep={keep} />}
    </Part>
  );
}

interface FoundProps {
  readonly found: KitAnswer;
  readonly now: Answered;
  readonly keep: KeepStore;
}

function Found({ found, now, keep }: FoundProps) {
  const { plan, costs } = found;
  const { brief } = now;
  const shelf = useShop((s) => s.book.shelf);
  const [labels, setLabels] = useState(LABEL_SHEETS[brief.unit === "mm" ? 2 : 0]);
  const [first, setFirst] = useState(1);
  const rules = rulesOf(brief);
  const [head, ...limits] = sayPlan(plan, brief);
  const step = stepOf(brief.step, brief.unit);
  const nameOf = (w: Way): string =>
    "fabricId" in w ? (plan.fabrics.find((f) => f.fabricId === w.fabricId)?.name ?? "") : "";
  return (
    <>
      <p className="line" aria-live="polite">
        <b>
          <Said text={head} />
        </b>{" "}
        {limits.map((t) => (
          <span key={t}>
            <Said text={t} />{" "}
          </span>
        ))}
      </p>
      <ul className="told">
        {plan.findings.map((f) => (
          <li key={`${f.code} ${f.place}`}>
            <Said text={say(f, { step })} />
          </li>
        ))}
      </ul>
      {plan.ways.length > 0 && (
        <>
          <h3>What would give more</h3>
          <ul className="shop-ways">
            {plan.ways.map((w) => (
              <li key={JSON.stringify(w)}>
                <Said text={sayWay(w, plan, shelf)} />{" "}
                <Act
                  label={`Take it: ${sayWay(w, plan, shelf)}`}
                  onClick={() => take(keep, brief.shop?.from, w, nameOf(w))}
                >
                  Take it
                </Act>
              </li>
            ))}
          </ul>
        </>
      )}
      <div className="scroll">
        <table className="figures">
          <caption className="said">What one kit holds</caption>
          <thead>
            <tr>
              <th scope="col">in each kit</th>
              <th scope="col">cut</th>
              <th scope="col" className="number">
                kits it gives
              </th>
              <th scope="col">for</th>
            </tr>
          </thead>
          <tbody>
            {plan.fabrics.map((f) => {
              const cut = f.bolts[0]?.cut ?? f.cut;
              return (
                <tr key={f.fabricId}>
                  <th scope="row">
                    <b>{f.letter}</b> {f.name}
                  </th>
                  <td>{cut && <Said text={sayCut(cut, brief)} />}</td>
                  <td className="number">{f.most}</td>
                  <td>{f.uses}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {plan.kits > 0 && (
        <>
          <h3>What one costs</h3>
          {costs && (
            <ul className="told">
              {sayCosts(costs, rules, brief).map((t) => (
                <li key={t}>
                  <Said text={t} />
                </li>
              ))}
            </ul>
          )}
          <h3>Is every bag whole?</h3>
          <p>
            <Said text={sayWeight(found.weight, rules)} />
          </p>
          <Weigh found={found} />
          <p className="acts">
            <Act onClick={() => void begin(now, plan, keep)}>Begin the run of {plan.kits}</Act>
          </p>
          <Begun title={plan.title} />
          <p className="shop-sentence">
            Labels on sheets of{" "}
            <Pick
              label="Label sheet, by its dimensions"
              value={labels.name}
              options={[...new Set([...LABEL_SHEETS.map((s) => s.name), labels.name])].map(
                (n): [string, string] => [n, n],
              )}
              onPick={(v) => setLabels(LABEL_SHEETS.find((s) => s.name === v) ?? labels)}
            />
            , or your own{" "}
            <Field
              wide
              label="A label sheet of your own: columns by rows of width by height, left, top, gap"
              value=""
              hint="3 by 8 of 70 x 37 mm"
              problem={(t) => {
                const read = t === "" ? labels : readLabelSheet(t, paperOf(brief));
                return typeof read === "string" ? read : undefined;
              }}
              onTake={(t) => {
                const read = readLabelSheet(t, paperOf(brief));
                if (typeof read !== "string") setLabels(read);
              }}
            />
            , from label{" "}
            <Field
              label="The first label left on the first sheet"
              value={String(first)}
              problem={(t) => (/^[1-9]\d{0,2}$/.test(t) ? undefined : "a whole number from 1")}
              onTake={(t) => setFirst(Number(t))}
            />{" "}
            on.
          </p>
          <Papers
            shown={now}
            papers={[
              { words: "Run sheet", name: "run-sheet", paper: { what: "run", shelf } },
              {
                words: "Labels",
                name: "labels",
                paper: { what: "labels", shelf, sheet: labels, first },
              },
              { words: "Costs", name: "costs", paper: { what: "costs", shelf } },
            ]}
          />
        </>
      )}
    </>
  );
}

/** Begins a run: its cuts as planned now, and what its kits carry, for the record when all is cut. */
async function begin(now: Answered, plan: KitAnswer["plan"], keep: KeepStore): Promise<void> {
  const { brief, answer } = now;
  const design = keep.state.getState().open?.id;
  const told = {
    what: "cut" as const,
    of: "kits" as const,
    version: editionOf(brief).version,
    date: today(),
    count: plan.kits,
  };
  const left = await shopWorker.ask("leaving", "leaving", brief, answer, told);
  const of = design && left.kind === "done" ? { design, kits: left.value } : undefined;
  const run = beginRun(plan, brief, crypto.randomUUID(), new Date().toISOString(), of);
  await shopStore().edit(`the run of ${plan.kits} kits`, (book) => {
    book.runs = [...book.runs, run];
  });
  sayAloud(`A run of ${plan.kits} kits is begun; its cuts stand below.`);
}

/** A run that was begun has not left the shelf yet: the count above still has its fabric. */
function Begun({ title }: { title: string }) {
  const runs = useShop((s) => s.book.runs).filter((r) => r.finished === undefined);
  if (runs.length === 0) return null;
  const kits = runs.reduce((n, r) => n + r.kits, 0);
  return (
    <p className="because">
      The count above still has the fabric of {kits} {kits === 1 ? "kit" : "kits"} begun
      {runs.every((r) => r.title === title) ? "" : ", some of other designs"}. Take a run off the
      shelf below when all of it is cut.
    </p>
  );
}

/** Makes a way out the decision. */
function take(
  keep: KeepStore,
  from: Readonly<Record<string, readonly string[]>> | undefined,
  way: Way,
  /** The fabric's own bolt, where no other is named for it. */
  fabric: string,
): void {
  if (way.kind === "trimmed") {
    decide(keep, "kits cut to length and margin", { basis: "trimmed" });
    return;
  }
  if (way.kind === "no-wrong-strip") {
    decide(keep, "no room for a wrong strip", { wrongStrip: false });
    return;
  }
  const { bolts } = shopStore().state.getState().book.shelf;
  const name = bolts.find((b) => b.id === way.boltId)?.name ?? way.boltId;
  const all = Object.fromEntries(Object.entries(from ?? {}).map(([k, v]) => [k, [...v]]));
  const own = way.kind === "as-well" ? (all[way.fabricId] ?? [fabric]) : [];
  decide(keep, `${name} for the kits`, {
    from: { ...all, [way.fabricId]: [...new Set([...own, name])] },
  });
}

const paperOf = (brief: { readonly unit: "in" | "mm" }) => (brief.unit === "mm" ? "a4" : "letter");

const grams = (text: string): string | undefined =>
  text === "" || Number(text.replace(",", ".")) > 0 ? undefined : "grams, such as 420";

/** Two weights in, and whether the bag is like the first. */
function Weigh({ found }: { found: KitAnswer }) {
  const [first, setFirst] = useState("");
  const [bag, setBag] = useState("");
  const [a, b] = [Number(first.replace(",", ".")), Number(bag.replace(",", "."))];
  return (
    <p>
      The first bag weighs{" "}
      <Field
        label="Weight of the first bag, in grams"
        value={first}
        problem={grams}
        onTake={setFirst}
      />{" "}
      g, this one{" "}
      <Field label="Weight of this bag, in grams" value={bag} problem={grams} onTake={setBag} /> g
      <span role="status">{a > 0 && b > 0 && `: ${sayBag(weighBag(found.weight, a, b))}`}</span>.
    </p>
  );
}
