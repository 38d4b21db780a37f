import { sizeText, totalBuy } from "../../core/answer/say/phrases.ts";
import { type KeepStore, sayKept, useKeep } from "../keep/index.ts";
import type { Answered } from "./answers.ts";
import { Doubtful, Said } from "./said.tsx";
import { goTo } from "./view.ts";

interface StatusProps {
  readonly now: Answered;
  readonly shown: Answered;
  readonly keep: KeepStore;
  readonly busy: boolean;
}

/** Size, fabric, where the work is, and what can be done with it. */
export function Status({ now, shown, keep, busy }: StatusProps) {
  const kept = useKeep(keep, (s) => s.kept);
  const open = useKeep(keep, (s) => s.open);
  const trying = shown.brief !== now.brief;
  const doubt = shown.answer.findings.some((f) => f.severity !== "advice");
  const buy = totalBuy(shown.answer);
  const size = sizeText(shown.brief, shown.answer);
  const unsafe = kept.kind === "not-saved" && kept.reason !== "writing";
  const inFile = kept.kind === "file";
  return (
    <div className={`status ${trying ? "trying" : ""} ${unsafe ? "unsafe" : ""}`} aria-busy={busy}>
      <p className="sizes">
        {size && (
          <span>
            <b className={trying ? "lit-ink" : ""}>
              <Said text={size} />
            </b>{" "}
            {trying ? (
              <>
                would be finished, <Said text={sizeText(now.brief, now.answer)} /> now
              </>
            ) : (
              "finished"
            )}
          </span>
        )}
        {shown.answer.yardages.length > 0 && (
          <span>
            <b className={trying ? "lit-ink" : ""}>
              <Doubtful text={buy.text} doubt={doubt} />
            </b>{" "}
            {trying ? (
              <>
                in all, <Said text={totalBuy(now.answer).text} /> now
              </>
            ) : (
              buy.fabrics
            )}
          </span>
        )}
      </p>
      <p className={`kept ${unsafe ? "" : "soft"}`} role="status">
        {sayKept(kept)}
        {kept.kind === "browser" &&
          (open?.file ? `; not yet in ${open.file.name}` : "; not yet in a file")}
      </p>
      <p className="acts">
        {unsafe && (
          <button type="button" className="touch tall" onClick={() => void keep.act.saveAgain()}>
            Save again
          </button>
        )}
        <button
          type="button"
          className="touch tall"
          disabled={inFile}
          onClick={() => void keep.act.saveFile()}
        >
          Save a file
        </button>
        <button
          type="button"
          className="touch tall"
          disabled={!open?.undoWords}
          onClick={() => keep.act.undo()}
        >
          Take back
          {open?.undoWords ? (
            <>
              {" "}
              <Said text={open.undoWords} />
            </>
          ) : (
            ""
          )}
        </button>
        {shown.answer.pieces.length > 0 && (
          <button type="button" className="touch tall" onClick={() => goTo("print")}>
            Print the pattern
          </button>
        )}
        {open?.redoWords && (
          <button type="button" className="touch tall" onClick={() => keep.act.redo()}>
            Do again <Said text={open.redoWords} />
          </button>
        )}
      </p>
    </div>
  );
}
