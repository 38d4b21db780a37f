import { unwrap } from "idb";
import type { Brief } from "../../core/brief/index.ts";
import { Desk } from "./desk.ts";
import { handOver } from "./files.ts";
import { Filing } from "./filing.ts";
import { edited, redone, replaced, undone } from "./history.ts";
import { unpack } from "./pack.ts";
import { rawDesign } from "./raw.ts";
import { purge, readVersions } from "./records.ts";
import type { Session } from "./session.ts";
import type { Keep, KeepOptions, KeepStore } from "./types.ts";

/** A dated version is kept by itself when the last one is this old. */
const VERSION_EVERY = 60 * 60 * 1000;

/** Opens the keep. It reads the storage at once; `ready` tells when a design is on the page. */
export function createKeep(options: KeepOptions): KeepStore {
  const desk = new Desk(options);
  const filing = new Filing(desk);
  const act = guarded(actions(desk, filing), desk);
  const stop = watch(desk, filing);
  void desk.start();
  const close = () => {
    stop();
    return desk.close();
  };
  return { state: desk.state, act: { ...act, close } };
}

function actions(desk: Desk, filing: Filing): Omit<Keep, "close"> {
  const stamp = () => desk.now().toISOString();
  let asked = false;

  const askToLast = () => {
    if (asked) return;
    asked = true;
    void globalThis.navigator?.storage
      ?.persist?.()
      .then((lasting) => desk.state.setState({ lasting }));
  };

  /** Before the first edit in a while, what stood before is kept as a dated version. */
  const keepDated = (session: Session) => {
    const now = desk.now().getTime();
    const last = session.versionAt;
    if (last !== undefined && Math.abs(now - last) < VERSION_EVERY) return;
    session.versionAt = now;
    if (session.line.steps.length > 0) void session.keepVersion("as it stood", session.line.brief);
  };

  const readVersion = async (n: number): Promise<{ name: string; brief: Brief } | null> => {
    const session = desk.current;
    if (!session) return null;
    const rows = await readVersions(await desk.base.get(), session.id);
    const row = rows.find((r) => r.n === n);
    const read = row && desk.options.reader.document(unpack(row.doc, session.pictures));
    return read?.ok ? { name: row!.name, brief: read.brief } : null;
  };
  const copyOf = (title: string) => (brief: Brief) => {
    brief.title = `Copy of ${title}`.slice(0, 120);
  };

  return {
    edit(words, change) {
      const session = desk.current;
      if (!session) return;
      desk.preview(null);
      const next = edited(session.line, words, stamp(), change);
      if (next === session.line) return;
      keepDated(session);
      void session.become(next);
      askToLast();
    },
    preview: (change) => desk.preview(change),
    undo: () => void desk.current?.become(undone(desk.current.line)),
    redo: () => void desk.current?.become(redone(desk.current.line)),

    openDesign: (id) => desk.openDesign(id),
    newDesign: async (brief) => void (await desk.openNew(brief)),
    async duplicate(id) {
      const session = await desk.session(id);
      if (!session) return;
      const { line } = session;
      await desk.openLine(edited(line, "name the copy", stamp(), copyOf(line.brief.title)));
    },
    async rename(id, title) {
      const session = await desk.session(id);
      if (!session) return;
      const change = (brief: Brief) => {
        brief.title = title;
      };
      await session.become(edited(session.line, "rename", stamp(), change));
    },
    remove: (id) => desk.remove(id),
    bringBack: (id) => desk.bringBack(id),
    async emptyDeleted() {
      await purge(await desk.base.get());
      await desk.refreshList();
    },

    async versions() {
      const session = desk.current;
      if (!session) return [];
      const rows = await readVersions(await desk.base.get(), session.id);
      return rows.map(({ n, name, at, revision }) => ({ n, name, at, revision }));
    },
    async keepVersion(name) {
      await desk.current?.keepVersion(name, desk.current.line.brief);
    },
    async goBackTo(n) {
      const session = desk.current;
      const version = await readVersion(n);
      if (!session || !version) return;
      await session.keepVersion("before going back", session.line.brief);
      const words = `go back to "${version.name}"`;
      await session.become(replaced(session.line, words, stamp(), version.brief));
    },
    readVersion: async (n) => (await readVersion(n))?.brief ?? null,
    readDesign: async (id) => (await desk.session(id))?.line.brief ?? null,

    async takeNewer() {
      await desk.current?.takeStored();
    },
    async keepMineAsCopy() {
      const session = desk.current;
      if (!session) return;
      const { line } = session;
      await desk.openLine(edited(line, "name the copy", stamp(), copyOf(line.brief.title)));
      await session.takeStored();
    },
    saveAgain: () => desk.saveAll(),

    openFile: () => filing.openFile(),
    openGiven: (file, handle) => filing.openGiven(file, handle),
    saveFile: () => filing.saveFile(),
    saveFileAs: () => filing.saveFileAs(),
    saveOverChanged: () => filing.saveOverChanged(),
    takeFromFile: () => filing.takeFromFile(),
    async downloadRaw(id) {
      handOver(
        `${id}-raw.json`,
        JSON.stringify(await rawDesign(unwrap(await desk.base.get()), id), null, 2),
      );
    },
    text: () => (desk.current ? filing.text(desk.current) : ""),
    dismiss: (notice) =>
      desk.state.setState(({ notices }) => ({ notices: notices.filter((n) => n !== notice) })),
  };
}

/** What fails on account of storage or files is told as a notice; the page never sees it thrown. */
function guarded<T extends object>(acts: T, desk: Desk): T {
  const tellOf = (error: unknown) => {
    const why = [(error as Error).message || String(error)];
    desk.tell({ kind: "refused", name: desk.current?.line.brief.title ?? "", why });
  };
  const wrap = (act: unknown) =>
    typeof act !== "function"
      ? act
      : (...args: unknown[]) => {
          const result = act(...args);
          return result instanceof Promise ? result.catch(tellOf) : result;
        };
  return Object.fromEntries(Object.entries(acts).map(([name, act]) => [name, wrap(act)])) as T;
}

/** Looks at the storage and the file whenever the tab comes forward; warns before losing an edit. */
function watch(desk: Desk, filing: Filing): () => void {
  const look = () => {
    if (document.visibilityState === "hidden") return;
    void desk.current?.refresh();
    void filing.look().catch(() => {});
  };
  const warn = (event: BeforeUnloadEvent) => {
    if (desk.unsafe) event.preventDefault();
  };
  void globalThis.navigator?.storage
    ?.persisted?.()
    .then((lasting) => desk.state.setState({ lasting }));
  if (typeof window === "undefined") return () => {};
  window.addEventListener("focus", look);
  window.addEventListener("pageshow", look);
  document.addEventListener("visibilitychange", look);
  window.addEventListener("beforeunload", warn);
  return () => {
    window.removeEventListener("focus", look);
    window.removeEventListener("pageshow", look);
    document.removeEventListener("visibilitychange", look);
    window.removeEventListener("beforeunload", warn);
  };
}
