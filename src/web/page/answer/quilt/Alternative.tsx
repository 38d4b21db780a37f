import { type ReactNode, useMemo } from "react";
import { consequences } from "../../../../core/answer/say/consequences.ts";
import type { Change } from "../../../../core/answer/words/word.ts";
import type { Answered } from "../../answers.ts";
import { ChoicePicture } from "../../ChoicePicture.tsx";
import { useKeepStore } from "../../KeepContext.ts";
import { Said } from "../../said.tsx";
import "../../../style/quilt.css";

interface AlternativeProps {
  /** The sentence, its lit word last. */
  readonly lead: string;
  readonly lit: string;
  readonly now: Answered;
  /** Missing while it is worked out. */
  readonly would: Answered | null;
  /** Missing where it is as it is now. */
  readonly change?: Change;
  readonly children?: ReactNode;
}

/** One way the quilt could be: its true picture, its sentence with one word lit, what would follow. */
export function Alternative({ lead, lit, now, would, change, children }: AlternativeProps) {
  const keep = useKeepStore();
  const rows = useMemo(
    () => (would && change ? consequences(now.answer, would.answer).filter((r) => r.changed) : []),
    [now, would, change],
  );
  const nameOf = (label: string): string =>
    now.brief.fabrics.find((f) => f.id === label)?.name ?? label;
  return (
    <li className="alternative">
      <ChoicePicture kind="quilt" word="" answered={would} leftHanded={false} />
      <p className="says">
        <Said text={lead} /> <b className="lit-ink">{<Said text={lit} />}</b>
      </p>
      <div className="follows">
        {children}
        {!would && <p className="soft">working it out</p>}
        {rows.length > 0 && (
          <ul>
            {rows.map((r) => (
              <li key={r.id} className="changed">
                <span>{nameOf(r.label)}</span>
                <span className={r.doubt ? "doubt" : ""}>
                  <Said text={r.text} />
                </span>
              </li>
            ))}
          </ul>
        )}
      </div>
      <p className="acts">
        {change ? (
          <button
            type="button"
            className="touch tall"
            aria-label={`Take it: ${lit}`}
            disabled={!would}
            onClick={() => keep.act.edit(`"${lit}"`, change)}
          >
            Take it
          </button>
        ) : (
          <b className="small lit-ink">now</b>
        )}
      </p>
    </li>
  );
}
