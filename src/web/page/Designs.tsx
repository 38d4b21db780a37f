import { useEffect, useRef, useState } from "react";
import type { Brief } from "../../core/brief/index.ts";
import { type DesignLine, type KeepStore, useKeep, type Version } from "../keep/index.ts";
import { useKeepStore } from "./KeepContext.ts";
import { later } from "./later.tsx";
import { Notices } from "./Notices.tsx";

const FromHere = later(() => import("./from/FromHere.tsx").then((m) => m.FromHere));

const DATE = new Intl.DateTimeFormat("en-US", { dateStyle: "long", timeStyle: "short" });
const dated = (at: string): string => {
  const day = new Date(at);
  return Number.isNaN(day.getTime()) ? "" : DATE.format(day);
};

/** All designs, plainly: what, when, and what can be done with each. */
export function Designs({ fresh }: { fresh: () => Brief }) {
  const keep = useKeepStore();
  const designs = useKeep(keep, (s) => s.designs);
  const openId = useKeep(keep, (s) => s.open?.id);
  const lasting = useKeep(keep, (s) => s.lasting);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const alive = designs.filter((d) => !d.deleted);
  const deleted = designs.filter((d) => d.deleted);
  return (
    <main className="page designs-page">
      <header className="head">
        <h1 ref={heading} tabIndex={-1}>
          All designs
        </h1>
        <p>
          <a className="touch tall" href="#page">
            Back to the design
          </a>
        </p>
      </header>
      <p className="soft">
        {lasting
          ? "Kept in this browser, which has promised not to clear them by itself."
          : "Kept in this browser. It may clear them when it runs short of room: keep a file of what matters."}
      </p>
      <Notices keep={keep} failed={null} />
      <p className="acts">
        <button
          type="button"
          className="touch tall"
          onClick={() => void keep.act.newDesign(fresh()).then(back)}
        >
          A new design
        </button>
        <button
          type="button"
          className="touch tall"
          onClick={() => void keep.act.openFile().then(back)}
        >
          Open a file
        </button>
      </p>
      <ul className="designs">
        {alive.map((d) => (
          <Line key={d.id} line={d} open={d.id === openId} keep={keep} />
        ))}
      </ul>
      <FromHere />
      <Versions keep={keep} openId={openId} />
      {deleted.length > 0 && <Deleted lines={deleted} keep={keep} />}
      <p className="soft">
        If something here will not open:{" "}
        <a className="touch tall" href="crash.html">
          See your designs as they are kept
        </a>
      </p>
    </main>
  );
}

const back = (): void => {
  location.hash = "#page";
};

function Line({ line, open, keep }: { line: DesignLine; open: boolean; keep: KeepStore }) {
  const [naming, setNaming] = useState(false);
  const [title, setTitle] = useState(line.title);
  const done = (): void => {
    setNaming(false);
    if (title.trim() && title !== line.title) void keep.act.rename(line.id, title.trim());
  };
  return (
    <li aria-current={open ? "true" : undefined}>
      {naming ? (
        <form
          onSubmit={(e) => {
            e.preventDefault();
            done();
          }}
        >
          <input
            type="text"
            value={title}
            maxLength={120}
            aria-label={`New name of ${line.title}`}
            // biome-ignore lint/a11y/noAutofocus: the field was asked for
            autoFocus
            onChange={(e) => setTitle(e.target.value)}
            onBlur={done}
            onKeyDown={(e) => {
              if (e.key !== "Escape") return;
              setTitle(line.title);
              setNaming(false);
            }}
          />
        </form>
      ) : (
        <button
          type="button"
          className="touch tall title"
          disabled={line.unreadable !== undefined}
          onClick={() => void keep.act.openDesign(line.id).then((ok) => ok && back())}
        >
          {line.title}
        </button>
      )}
      <p className="soft">
        {dated(line.savedAt)}
        {open && ", open now"}
        {line.unreadable && `. It cannot be opened: ${line.unreadable}`}
      </p>
      <p className="acts">
        {!line.unreadable && (
          <>
            <button
              type="button"
              className="touch tall"
              aria-label={`Duplicate ${line.title}`}
              onClick={() => void keep.act.duplicate(line.id)}
            >
              Duplicate
            </button>
            <button
              type="button"
              className="touch tall"
              aria-label={`Rename ${line.title}`}
              onClick={() => setNaming(true)}
            >
              Rename
            </button>
          </>
        )}
        <button
          type="button"
          className="touch tall"
          aria-label={`Download ${line.title} as it is kept`}
          onClick={() => void keep.act.downloadRaw(line.id)}
        >
          Download as kept
        </button>
        <button
          type="button"
          className="touch tall"
          aria-label={`Delete ${line.title}`}
          onClick={() => void keep.act.remove(line.id)}
        >
          Delete
        </button>
      </p>
    </li>
  );
}

/** Dated states of the open design to go back to. */
function Versions({ keep, openId }: { keep: KeepStore; openId: string | undefined }) {
  const revision = useKeep(keep, (s) => s.open?.revision);
  const title = useKeep(keep, (s) => s.open?.title);
  const [versions, setVersions] = useState<readonly Version[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read anew when the design has been written
  useEffect(() => {
    let live = true;
    void keep.act.versions().then((v) => live && setVersions(v));
    return () => {
      live = false;
    };
  }, [keep, openId, revision]);
  if (!openId) return null;
  return (
    <section>
      <h2>Earlier states of {title}</h2>
      <p className="acts">
        <button
          type="button"
          className="touch tall"
          onClick={() =>
            void keep.act
              .keepVersion("kept by hand")
              .then(() => keep.act.versions().then(setVersions))
          }
        >
          Keep the present state
        </button>
      </p>
      <ul className="designs">
        {versions.map((v) => (
          <li key={v.n}>
            <p>
              {dated(v.at)}, {v.name}
            </p>
            <p className="acts">
              <button
                type="button"
                className="touch tall"
                aria-label={`Go back to the state of ${dated(v.at)}, ${v.name}`}
                onClick={() => void keep.act.goBackTo(v.n).then(back)}
              >
                Go back to it
              </button>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Deleted({ lines, keep }: { lines: readonly DesignLine[]; keep: KeepStore }) {
  return (
    <section>
      <h2>Deleted</h2>
      <ul className="designs">
        {lines.map((d) => (
          <li key={d.id}>
            <p>{d.title}</p>
            <p className="soft">deleted {dated(d.deleted ?? "")}</p>
            <p className="acts">
              <button
                type="button"
                className="touch tall"
                aria-label={`Bring back ${d.title}`}
                onClick={() => void keep.act.bringBack(d.id)}
              >
                Bring it back
              </button>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
