import "./sheets.css";
import type { Answered } from "../answers.ts";
import { CheckList } from "./CheckList.tsx";
import { choose, useChoices, useOpened, usePrinting } from "./choices.ts";
import { Files } from "./Files.tsx";
import { Options } from "./Options.tsx";
import { Pages } from "./Pages.tsx";
import { nameIn, useSheet } from "./useSheet.ts";

/** The sheets: which, on what paper, what is still open, the files, and every page as it will print. */
export function SheetsBody({ shown }: { shown: Answered }) {
  const wanted = useChoices().sheet;
  const printing = usePrinting(shown);
  const opened = useOpened(shown);
  const { state, stop, again } = useSheet(printing, wanted);
  const { overview, sheet } = state;
  const name = overview ? nameIn(overview, wanted) : undefined;
  return (
    <>
      {overview && name && (
        <fieldset className="picks">
          <legend className="soft">Sheet</legend>
          {overview.sheets.map((s) => (
            <label key={s.name} className="pick">
              <input
                type="radio"
                name="sheet"
                checked={s.name === name}
                onChange={() => choose({ sheet: s.name })}
              />
              <span>{s.what}</span>
            </label>
          ))}
        </fieldset>
      )}
      <Options shown={shown} opened={opened} forPattern={name === "pattern"} />
      {overview && <CheckList checks={overview.checks} />}
      {overview && name && (
        <Files
          printing={printing}
          name={name}
          names={overview.sheets.map((s) => s.name)}
          title={shown.brief.title}
        />
      )}
      <p className="setting soft" role="status">
        {state.busy && "Setting the pages. "}
        {state.stopped && "Stopped; the pages below are the last that were set. "}
        {state.failed && `The pages could not be set: ${state.failed}. `}
        {state.busy ? (
          <button type="button" className="touch tall" onClick={stop}>
            Stop
          </button>
        ) : (
          (state.stopped || state.failed) && (
            <button type="button" className="touch tall" onClick={() => void again()}>
              Set them again
            </button>
          )
        )}
      </p>
      {sheet && <Pages sheet={sheet} busy={state.busy} />}
    </>
  );
}
