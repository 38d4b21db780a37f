import { useId, useState } from "react";
import { readStock } from "../../../core/fabric/stock.ts";
import { say } from "../../../core/findings/say.ts";
import { stepOf } from "../../../core/measure/index.ts";
import type { NamedDesign } from "../../../core/turn/fromStock.ts";
import { useKeep } from "../../keep/index.ts";
import { useKeepStore } from "../KeepContext.ts";
import { OneProject } from "./OneProject.tsx";
import { useFrom } from "./useFrom.ts";
import "./from.css";

/** What the fabric that is here makes: a list of it in, the kept designs that can be made out. */
export function FromHere() {
  const id = useId();
  const keep = useKeepStore();
  const lines = useKeep(keep, (s) => s.designs);
  const unit = useKeep(keep, (s) => s.open?.brief.unit) ?? "in";
  const [text, setText] = useState("");
  const list = readStock(text, unit);
  const step = stepOf(unit === "in" ? "1/8" : "1", unit);
  const { looking, look, stop } = useFrom();
  const { state, here } = looking;
  const begin = async (): Promise<void> => {
    const designs: NamedDesign[] = [];
    for (const d of lines) {
      const brief = d.deleted || d.unreadable ? null : await keep.act.readDesign(d.id);
      if (brief) designs.push({ id: d.id, name: brief.title, brief });
    }
    look(designs, list.pieces);
  };
  const told = text.trim() === "" ? [] : list.findings;
  return (
    <section className="from-here" aria-labelledby={`${id}-h`}>
      <h2 id={`${id}-h`}>What does the fabric that is here make?</h2>
      <p>
        <label htmlFor={`${id}-t`}>
          Bolts, quarters, strips and scraps, one a line: fabric, width, length, how many, kind
        </label>
      </p>
      <textarea
        id={`${id}-t`}
        value={text}
        rows={6}
        spellCheck={false}
        aria-describedby={`${id}-f`}
        placeholder={"Shell, 40, 2 1/2 yd, 1, bolt\nKelp, 21, 18, 4, quarter"}
        onChange={(e) => setText(e.target.value)}
      />
      <p className="acts">
        <label className="file">
          Or a list saved as CSV:{" "}
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            onChange={(e) => void e.target.files?.[0]?.text().then(setText)}
          />
        </label>
        <button
          type="button"
          className="touch tall"
          disabled={list.pieces.length === 0 || state === "looking"}
          onClick={() => void begin()}
        >
          See what it makes
        </button>
        {state === "looking" && (
          <button type="button" className="touch tall" onClick={stop}>
            Stop looking
          </button>
        )}
      </p>
      <div id={`${id}-f`} className="small">
        {list.pieces.length > 0 && (
          <p className="soft">
            {list.pieces.length} {list.pieces.length === 1 ? "row" : "rows"} read.
          </p>
        )}
        <ul>
          {told.map((f) => (
            <li key={`${f.place} ${f.code} ${f.words?.what ?? ""}`}>{say(f, { step })}</li>
          ))}
        </ul>
      </div>
      <p className="soft small" aria-busy={state === "looking"}>
        {here && state !== "failed" && `${here.done} of ${here.all} designs looked at.`}
        {state === "failed" && `The search failed: ${looking.message}.`}
      </p>
      <ol className="projects">
        {here?.projects.map((p) => (
          <OneProject key={p.design.id ?? p.design.name} project={p} />
        ))}
      </ol>
      {here?.notMade.map((n) => (
        <p key={n.design.id ?? n.design.name} className="small soft">
          {n.design.name} cannot be made: too little {n.short.join(", ")}.
        </p>
      ))}
    </section>
  );
}
