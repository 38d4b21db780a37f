import { useMemo } from "react";
import { type CauseRow, type WhyTable, whyTables } from "../../../../core/answer/sewing/why.ts";
import { keepReading } from "../../../../core/brief/record.ts";
import { useKeepStore } from "../../KeepContext.ts";
import { Said } from "../../said.tsx";
import type { BodyProps } from "../body.ts";
import { Measured } from "./Measured.tsx";
import { ReadingPicture } from "./ReadingPicture.tsx";
import "./sewing.css";

/** Measurements with a ruler, one after another; below them the likely causes, never too sure. */
export function WhyBody({ shown }: BodyProps) {
  const tables = useMemo(() => whyTables(shown.brief, shown.answer), [shown]);
  return tables.map((t) => <Why key={t.block.id} table={t} unit={shown.answer.unit} />);
}

function Why({ table, unit }: { table: WhyTable; unit: string }) {
  const keep = useKeepStore();
  return (
    <div className="kind">
      <h3>{table.block.name}</h3>
      <p className="soft">
        Measure what you can. Two readings are the least; each more tells more.
      </p>
      <ul className="stop-list readings">
        {table.rows.map((r) => (
          <li key={r.name} className={r.wanted ? "wanted" : ""}>
            <ReadingPicture name={r.name} n={table.block.radial?.n ?? 8} />
            <div>
              <h4>{r.what}</h4>
              <p className="soft">
                {r.how} <Said text={`Should be ${r.should}.`} />
              </p>
              {r.wanted && <p className="lit-ink">This would tell the most now.</p>}
              <Measured
                label={`Measured: ${r.what}`}
                unit={unit}
                typed={r.typed}
                problem={r.problem}
                onKeep={(text) =>
                  keep.act.edit(`the ${r.what}`, keepReading(table.block.id, r.name, text))
                }
              />
            </div>
          </li>
        ))}
      </ul>
      <div role="status">
        {table.outcome && (
          <p className="outcome">
            <b>
              <Said text={table.outcome} />
            </b>{" "}
            <Said text={table.findings.join(" ")} />
          </p>
        )}
        <ol className="causes">
          {table.causes.map((c) => (
            <Cause key={c.cause} cause={c} />
          ))}
        </ol>
      </div>
    </div>
  );
}

function Cause({ cause: c }: { cause: CauseRow }) {
  return (
    <li>
      <p>
        <b>
          <Said text={c.text} />
        </b>{" "}
        <span className="soft">
          <Said text={[c.tied ? "a tie" : "", c.chance, c.range].filter(Boolean).join("; ")} />
        </span>
      </p>
      {c.remedies.map((r) => (
        <p key={r}>
          <Said text={r} />
        </p>
      ))}
    </li>
  );
}
