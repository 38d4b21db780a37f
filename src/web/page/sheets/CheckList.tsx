import type { Check, OpenPoint } from "../../../core/sheet/index.ts";
import { Said } from "../said.tsx";
import { goTo } from "../view.ts";

const WHERE: Readonly<Record<OpenPoint["at"], string>> = {
  sentence: "mend it in the sentence",
  fabrics: "see the fabrics",
  size: "see How big is it?",
  cover: "see Does it cover?",
  look: "see What will my fabric look like?",
  enough: "see Is there enough?",
  order: "see In what order?",
  measure: "see What should it measure now?",
  "make-size": "see Will it make size?",
  why: "see Why is mine off?",
  meeting: "see What appears where blocks meet?",
  finish: "see And then?",
  "hand-out": "mend it here",
};

/** The release checklist: nothing open, or each reason for "draft" with the way to where it is mended. */
export function CheckList({ checks }: { checks: readonly Check[] }) {
  const open = checks.flatMap((c) => c.open.map((o) => ({ ...o, number: c.number })));
  const reasons = open.filter((o, i) => open.findIndex((p) => p.why === o.why) === i);
  return (
    <div className="release">
      {reasons.length === 0 ? (
        <p>
          All {checks.length} points of the release checklist are met: it prints without “draft”.
        </p>
      ) : (
        <>
          <p>
            <b>It prints as a draft.</b>{" "}
            {reasons.length === 1 ? "One point is" : `${reasons.length} points are`} open:
          </p>
          <ul className="plain-list">
            {reasons.map((r) => (
              <li key={r.why}>
                <Said text={r.why} />{" "}
                {r.at !== "hand-out" && (
                  <button type="button" className="touch" onClick={() => goTo(r.at)}>
                    {WHERE[r.at]}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      <details>
        <summary className="touch tall">The checklist</summary>
        <ol className="plain-list">
          {checks.map((c) => (
            <li key={c.number}>
              {c.open.length === 0 ? "Met: " : "Open: "}
              {c.point}
            </li>
          ))}
        </ol>
      </details>
    </div>
  );
}
