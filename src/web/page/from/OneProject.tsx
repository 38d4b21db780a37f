import { useCallback, useState } from "react";
import { printLength, printWithUnit, stepOf } from "../../../core/measure/index.ts";
import { layoutPicture } from "../../../core/picture/layout.ts";
import type { Picture } from "../../../core/picture/marks.ts";
import { type CutOfHere, layoutsOfProject } from "../../../core/turn/fromLayouts.ts";
import type { Project } from "../../../core/turn/fromStock.ts";
import { sayTaken, sayTimes } from "../../../core/turn/say.ts";
import { useKeepStore } from "../KeepContext.ts";
import { PictureView } from "../PictureView.tsx";
import { Said } from "../said.tsx";
import { useSwatches } from "../useSwatches.ts";

/** One design that can be made: how often, from what, what is left; opened, its layouts to scale. */
export function OneProject({ project }: { project: Project }) {
  const keep = useKeepStore();
  const [open, setOpen] = useState(false);
  const { design, taken } = project;
  const { id } = design;
  return (
    <li>
      <h3>{design.name}</h3>
      <p>
        <b>
          <Said text={sayTimes(project)} />
        </b>
      </p>
      <ul className="small">
        {taken.map((t) => (
          <li key={t.fabricId}>
            <Said text={sayTaken(t, design.brief)} />
          </li>
        ))}
      </ul>
      <p className="acts">
        <button
          type="button"
          className="touch tall"
          aria-expanded={open}
          onClick={() => setOpen(!open)}
        >
          Its cutting layouts<span className="said"> of {design.name}</span>
        </button>
        {id !== undefined && (
          <button
            type="button"
            className="touch tall"
            onClick={() =>
              void keep.act.openDesign(id).then((ok) => {
                if (ok) location.hash = "#page";
              })
            }
          >
            Open it<span className="said">, {design.name}</span>
          </button>
        )}
      </p>
      {open &&
        layoutsOfProject(project).map((cut, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: they keep their order
          <OneCut key={i} cut={cut} project={project} />
        ))}
    </li>
  );
}

function OneCut({ cut, project }: { cut: CutOfHere; project: Project }) {
  const { brief } = project.design;
  const swatches = useSwatches(brief);
  const make = useCallback(
    (small: number): Picture =>
      layoutPicture(cut.layout, {
        unit: brief.unit,
        ...project.drawn,
        room: cut.turned ? cut.width : cut.length,
        say: (x) => printLength(x, stepOf(brief.step, brief.unit)),
        small,
      }),
    [cut, project, brief],
  );
  const step = stepOf(brief.step, brief.unit);
  const name = brief.fabrics.find((f) => f.id === cut.fabricId)?.name ?? cut.fabricId;
  const size = `${printWithUnit(cut.width, step)} by ${printWithUnit(cut.length, step)}`;
  const pieces = cut.times === 1 ? "one piece" : `${cut.times} pieces, each`;
  const what = cut.from === "bolt" ? `${name}, the bolt, ${size}` : `${name}, ${pieces} ${size}`;
  return (
    <figure>
      <figcaption className="small">
        <Said text={what} />
      </figcaption>
      <PictureView
        make={make}
        swatches={swatches}
        small={14}
        most={brief.unit === "in" ? 10 : 10 / 25.4}
        label={`Cutting layout of ${what}, to scale`}
      />
    </figure>
  );
}
