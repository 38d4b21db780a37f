import { type KeepStore, type Notice, sayNotice, useKeep } from "../keep/index.ts";

/** What the maker should be told once, and what two tabs on one design must ask. */
export function Notices({ keep, failed }: { keep: KeepStore; failed: string | null }) {
  const notices = useKeep(keep, (s) => s.notices);
  const stale = useKeep(keep, (s) => s.stale);
  if (notices.length === 0 && !stale && !failed) return null;
  return (
    <div className="notices" role="status">
      {failed && (
        <p>The answer could not be worked out: {failed}. What you see is the one before.</p>
      )}
      {stale && (
        <p>
          {stale.newer
            ? "This design was changed in another tab. Nothing of this tab is written over it."
            : "This design was deleted in another tab."}{" "}
          <button type="button" className="touch tall" onClick={() => void keep.act.takeNewer()}>
            Show what the other tab has
          </button>{" "}
          <button
            type="button"
            className="touch tall"
            onClick={() => void keep.act.keepMineAsCopy()}
          >
            Keep mine as a copy
          </button>
        </p>
      )}
      {notices.map((n) => (
        <p key={`${n.kind} ${sayNotice(n)}`}>
          {sayNotice(n)} <Ways notice={n} keep={keep} />
          <button type="button" className="touch tall" onClick={() => keep.act.dismiss(n)}>
            Read
          </button>
        </p>
      ))}
    </div>
  );
}

function Ways({ notice, keep }: { notice: Notice; keep: KeepStore }) {
  const way = (label: string, act: () => void) => (
    <>
      <button
        type="button"
        className="touch tall"
        onClick={() => {
          act();
          keep.act.dismiss(notice);
        }}
      >
        {label}
      </button>{" "}
    </>
  );
  if (notice.kind === "deleted")
    return way("Bring it back", () => void keep.act.bringBack(notice.id));
  if (notice.kind === "file-changed")
    return (
      <>
        {way("Take what the file has", () => void keep.act.takeFromFile())}
        {way("Write over it", () => void keep.act.saveOverChanged())}
      </>
    );
  return null;
}
