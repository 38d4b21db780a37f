import {
  finishRun,
  kitsCut,
  leftOf,
  type Run,
  remembering,
  sayTaken,
} from "../../../core/shop/index.ts";
import { csvText } from "../../../core/table/index.ts";
import { type KeepStore, useKeep } from "../../keep/index.ts";
import { Said } from "../said.tsx";
import { sayAloud } from "../view.ts";
import { give, slugOf, today } from "./give.ts";
import { Act, Part } from "./parts.tsx";
import { shopStore, useShop } from "./store.ts";

const DATE = new Intl.DateTimeFormat("en-US", { dateStyle: "long" });
const dated = (at: string): string => {
  const day = new Date(at);
  return Number.isNaN(day.getTime()) ? "" : DATE.format(day);
};

/** The runs that were begun: every cut with its tick, what it takes of the bolts, newest first. */
export function RunsPart({ keep }: { keep: KeepStore }) {
  const runs = useShop((s) => s.book.runs);
  if (runs.length === 0) return null;
  return (
    <Part heading="How far are the cuts?" trade="run sheets; every tick is kept">
      {[...runs].reverse().map((run) => (
        <OneRun key={run.id} run={run} keep={keep} />
      ))}
    </Part>
  );
}

const change = (run: Run, words: string, next: Partial<Run>): void =>
  void shopStore().edit(words, (book) => {
    book.runs = book.runs.map((r) => (r.id === run.id ? { ...r, ...next } : r));
  });

/** Takes a run off the shelf, and notes in the record of its design that its kits are cut. */
function finish(run: Run, keep: KeepStore): void {
  void shopStore().edit(`${run.title} taken off the shelf`, (book) => {
    book.shelf = finishRun(book.shelf, run);
    book.runs = book.runs.map((r) =>
      r.id === run.id ? { ...r, finished: new Date().toISOString() } : r,
    );
  });
  const note = kitsCut(run, today());
  const open = keep.state.getState().open;
  const here = note && open?.id === run.of?.design;
  // Taken off, taken back and taken off again the same kits are noted once.
  const noted = leftOf(open?.brief ?? {}).some((e) => JSON.stringify(e) === JSON.stringify(note));
  if (here && !noted) keep.act.edit("kits cut, noted", remembering([note]));
  sayAloud(
    here
      ? "The bolts are shorter by what the run took; the design's record has its kits."
      : "The bolts are shorter by what the run took.",
  );
}

function OneRun({ run, keep }: { run: Run; keep: KeepStore }) {
  const openId = useKeep(keep, (s) => s.open?.id);
  const done = new Set(run.ticked);
  const bolts = [...new Set(run.rows.map((r) => r.boltId))];
  const heading = `${run.kits} kits of ${run.title}, ${dated(run.at)}`;
  const tick = (i: number): void => {
    const ticked = done.has(i) ? run.ticked.filter((t) => t !== i) : [...run.ticked, i];
    const { bolt, cut } = run.rows[i];
    change(run, `the tick at cut ${cut} of ${bolt}`, { ticked });
  };
  return (
    <details className="shop-run" open={run.finished === undefined}>
      <summary className="touch">
        {heading}: {run.ticked.length} of {run.rows.length} cuts
        {run.finished && `, taken off the shelf ${dated(run.finished)}`}
      </summary>
      {bolts.map((boltId) => {
        const rows = run.rows.flatMap((r, i) => (r.boltId === boltId ? [{ r, i }] : []));
        const used = run.used.find((u) => u.boltId === boltId);
        return (
          <section key={boltId}>
            <h3>{rows[0].r.bolt}</h3>
            <p className="soft small">
              <Said
                text={`straighten ${used?.straighten ?? ""}; the run takes ${used?.usedText ?? ""} and leaves ${used?.leftText ?? ""}`}
              />
            </p>
            <ol className="cuts-to-tick">
              {rows.map(({ r, i }) => (
                <li key={i}>
                  <label className="tick">
                    <input
                      type="checkbox"
                      checked={done.has(i)}
                      disabled={run.finished !== undefined}
                      onChange={() => tick(i)}
                    />
                    <span>
                      <Said
                        text={`Cut ${r.cut}, kit ${r.kit}, ${r.fabric}: ${r.length}; so far ${r.soFar}`}
                      />
                    </span>
                  </label>
                </li>
              ))}
            </ol>
          </section>
        );
      })}
      {run.finished !== undefined && (
        <>
          <h3>What it took</h3>
          <ul className="told">
            {sayTaken(run).map((line) => (
              <li key={line}>
                <Said text={line} />
              </li>
            ))}
          </ul>
        </>
      )}
      {run.finished === undefined && run.of && run.of.design !== openId && (
        <p className="soft small">
          This run is of another design than the one that is open: open {run.title} first, and its
          record notes the kits.
        </p>
      )}
      <p className="acts">
        {run.finished === undefined && (
          <Act onClick={() => finish(run, keep)}>
            {run.ticked.length < run.rows.length && run.ticked.length > 0
              ? `All is cut, with ${run.rows.length - run.ticked.length} not ticked: take it off the shelf`
              : "All is cut: take it off the shelf"}
          </Act>
        )}
        <Act
          label={`${heading}, as CSV`}
          onClick={() =>
            give(
              `${slugOf(run.title)}-run.csv`,
              csvText([
                ["bolt", "cut", "kit", "fabric", "length", "so far", "left", "cut already"],
                ...run.rows.map((r, i) => [
                  r.bolt,
                  r.cut,
                  r.kit,
                  r.fabric,
                  r.length,
                  r.soFar,
                  r.left,
                  done.has(i) ? "yes" : "no",
                ]),
              ]),
              "text/csv;charset=utf-8",
            )
          }
        >
          As CSV
        </Act>
        <Act
          label={`Delete the run of ${heading}`}
          onClick={() =>
            void shopStore().edit(`the run of ${run.title} deleted`, (book) => {
              book.runs = book.runs.filter((r) => r.id !== run.id);
            })
          }
        >
          Delete this run
        </Act>
      </p>
    </details>
  );
}
