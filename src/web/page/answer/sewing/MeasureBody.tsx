import { useMemo } from "react";
import { type StopRow, type StopTable, stopTables } from "../../../../core/answer/sewing/stops.ts";
import { keepMeasured } from "../../../../core/brief/record.ts";
import { useKeepStore } from "../../KeepContext.ts";
import { Said } from "../../said.tsx";
import type { BodyProps } from "../body.ts";
import { Measured } from "./Measured.tsx";
import "./sewing.css";
import { StopPicture } from "./StopPicture.tsx";

/** At every stop: what the unit should measure, what it does, and what that means for the rest. */
export function MeasureBody({ shown }: BodyProps) {
  const tables = useMemo(() => stopTables(shown.brief, shown.answer), [shown]);
  return tables.map((t) => (
    <div key={t.block.id} className="kind">
      <h3>{t.block.name}</h3>
      <p className="soft">
        <Said text={t.spare} />
      </p>
      <ol className="stop-list">
        {t.rows.map((row) => (
          <li key={row.id}>
            <StopPicture row={row} table={t} shown={shown} />
            <div>
              <h4>{row.name}</h4>
              <Figures row={row} />
              <Take row={row} unit={shown.answer.unit} />
            </div>
          </li>
        ))}
      </ol>
      <Outcome table={t} />
    </div>
  ));
}

function Figures({ row }: { row: StopRow }) {
  const figures = [
    ["should measure", row.should],
    ["finished", row.finished],
    ["before trimming", row.before],
    ["now to be expected", row.now],
  ].filter(([, text]) => text !== "");
  return (
    <dl className="stop-figures">
      {figures.map(([name, text], i) => (
        <div key={name} className={name.startsWith("now") ? "changed" : ""}>
          <dt>{name}</dt>
          <dd className={i === 0 ? "first" : ""}>
            <Said text={text} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** Where she types what she measured; the verdict stands beside it. */
export function Take({ row, unit }: { row: StopRow; unit: string }) {
  const keep = useKeepStore();
  return (
    <Measured
      label={`Measured: ${row.name}`}
      unit={unit}
      typed={row.typed}
      problem={row.problem}
      onKeep={(text) =>
        keep.act.edit(
          `the measure of ${row.name}`,
          keepMeasured(row.unitId, row.width, text, row.should),
        )
      }
    >
      {row.verdict && (
        <span className={`verdict ${row.verdict.kind}`}>
          <Said text={row.verdict.text} />
        </span>
      )}
    </Measured>
  );
}

function Outcome({ table }: { table: StopTable }) {
  return (
    <p className="outcome" role="status">
      {table.outcome ? (
        <Said text={table.outcome} />
      ) : (
        <span className="soft">
          Type what you measure and the rest of the plan follows it. A minus before the light under
          a straight edge means that it rocks: the light is at both ends.
        </span>
      )}
    </p>
  );
}
