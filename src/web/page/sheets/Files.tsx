import type { SheetName } from "../../../core/sheet/index.ts";
import { slugOf } from "../../keep/index.ts";
import { type Form, useFiles } from "./files.ts";
import type { Printing } from "./services.ts";

const FORMS: readonly { readonly form: Form; readonly label: string }[] = [
  { form: "svg", label: "pictures and templates (SVG)" },
  { form: "dxf", label: "templates (DXF)" },
  { form: "csv", label: "lists (CSV)" },
  { form: "json", label: "design and answer (JSON)" },
];

interface FilesProps {
  readonly printing: Printing;
  readonly name: SheetName;
  readonly names: readonly SheetName[];
  readonly title: string;
}

/** Print, download, and the forms that other programs take. */
export function Files({ printing, name, names, title }: FilesProps) {
  const { writing, stop, onePdf, toPrint, everything, oneForm } = useFiles(
    printing,
    slugOf(title) || "pattern",
  );
  const busy = writing?.state === "writing";
  return (
    <div className="files">
      <p className="acts">
        <button type="button" className="touch tall" disabled={busy} onClick={() => toPrint(name)}>
          Open to print
        </button>
        <button type="button" className="touch tall" disabled={busy} onClick={() => onePdf(name)}>
          Download PDF
        </button>
        <button
          type="button"
          className="touch tall"
          disabled={busy}
          onClick={() => everything(names)}
        >
          Download everything
        </button>
      </p>
      <p className="soft small">
        In the print dialog choose actual size, 100 percent, no fitting to the page: the file asks
        for no scaling. Then measure the test square before cutting.
      </p>
      <p className="acts">
        <span className="soft">For other programs:</span>
        {FORMS.map(({ form, label }) => (
          <button
            key={form}
            type="button"
            className="touch tall"
            disabled={busy}
            onClick={() => oneForm(form)}
          >
            {label}
          </button>
        ))}
      </p>
      <p role="status" className="writing">
        {writing?.state === "writing" && (
          <>
            Writing {writing.what}
            {writing.of > 1 && `, ${writing.done} of ${writing.of}`}{" "}
            <progress value={writing.done} max={writing.of} aria-label="Files written" />{" "}
            <button type="button" className="touch tall" onClick={stop}>
              Stop
            </button>
          </>
        )}
        {writing?.state === "done" && `Written: ${writing.what}.`}
        {writing?.state === "stopped" && "Stopped; nothing was written."}
        {writing?.state === "failed" && `It could not be written: ${writing.why}.`}
      </p>
    </div>
  );
}
