import { produce } from "immer";
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Brief } from "../../core/brief/index.ts";
import { again } from "./again.ts";
import { Base, type Head } from "./database.ts";
import { freshLine, type Line } from "./history.ts";
import { Pictures } from "./pack.ts";
import { lastVersionAt, randomText, readFileRow, setDeleted } from "./records.ts";
import { SecondCopies } from "./second.ts";
import { load, Session } from "./session.ts";
import type { DesignLine, KeepOptions, KeepState, Notice, OpenDesign, Recipe } from "./types.ts";

const NOTHING: KeepState = {
  ready: false,
  designs: [],
  open: null,
  kept: { kind: "not-saved", reason: "writing" },
  stale: null,
  notices: [],
  lasting: false,
};

/** The first design has a name of its own, so that two tabs at first start make only one. */
const FIRST = "first";

/** The designs in hand in this tab, the one on the page, and the state the page sees of them. */
export class Desk {
  readonly state: StoreApi<KeepState> = createStore(() => NOTHING);
  readonly base: Base;
  readonly options: KeepOptions;
  readonly now: () => Date;
  current: Session | null = null;
  private readonly sessions = new Map<string, Session>();
  private readonly unreadable = new Map<string, string>();
  private readonly channel: BroadcastChannel;
  private readonly copies: SecondCopies;
  private previewed: Recipe | null = null;
  private lastShown: { of: Brief; change: Recipe; shown: Brief } | null = null;

  constructor(options: KeepOptions) {
    this.options = options;
    this.now = options.now ?? (() => new Date());
    const name = options.database ?? "eighthwise";
    this.base = new Base(name, () => {
      for (const session of this.sessions.values()) void session.doubt();
    });
    this.copies = new SecondCopies(`${name}-copies`);
    this.channel = new BroadcastChannel(`${name}-keep`);
    this.channel.onmessage = ({ data }) => {
      void this.refreshList();
      void this.sessions.get(data)?.refresh();
    };
  }

  // --- what the page sees ---

  publish = (): void => {
    const session = this.current;
    const open = session && this.seen(session);
    this.state.setState((was) => ({
      open: open && was.open && alike(open, was.open) ? was.open : open,
      kept: session ? session.kept : was.kept,
      stale: session?.stale ?? null,
    }));
  };

  private seen({ id, line, revision, file }: Session): OpenDesign {
    const undo = line.steps[line.at - 1];
    const redo = line.steps[line.at];
    return {
      id,
      title: line.brief.title,
      brief: line.brief,
      shown: this.shownOf(line.brief),
      revision,
      ...(undo && { undoWords: undo.words }),
      ...(redo && { redoWords: redo.words }),
      ...(file && { file: this.seenFile(file) }),
    };
  }

  /** The same object for the same question: whoever follows the state need not answer it twice. */
  private shownOf(brief: Brief): Brief {
    if (!this.previewed) return brief;
    const { of, change, shown } = this.lastShown ?? {};
    if (shown && of === brief && change === this.previewed) return shown;
    const fresh = produce(brief, this.previewed);
    this.lastShown = { of: brief, change: this.previewed, shown: fresh };
    return fresh;
  }

  private seenFile = memo((file: { name: string; changedOnDisk: boolean }) => ({
    name: file.name,
    changedOnDisk: file.changedOnDisk,
  }));

  /** What is told again takes the place of its like: a tab left alone does not fill with news. */
  tell = (notice: Notice): void => {
    const other = (n: Notice) => n.kind !== notice.kind || n.kind === "deleted";
    this.state.setState(({ notices }) => ({ notices: [...notices.filter(other), notice] }));
  };

  preview(change: Recipe | null): void {
    if (this.previewed === change) return;
    this.previewed = change;
    this.publish();
  }

  /** Other tabs should look at this design and at the list. */
  announce(id: string): void {
    this.channel.postMessage(id);
    void this.refreshList();
  }

  async refreshList(): Promise<void> {
    const all = async (): Promise<Head[]> => (await this.base.get()).getAll("designs");
    const heads = await again(all).catch(() => []);
    heads.sort((a, b) => (Number(b.touched) || 0) - (Number(a.touched) || 0));
    this.state.setState({ designs: heads.map((head) => this.lineOf(head)) });
  }

  private lineOf(head: Head): DesignLine {
    const why = this.unreadable.get(head.id);
    return {
      id: String(head.id),
      title: String(head.title),
      savedAt: String(head.savedAt),
      revision: head.revision,
      ...(head.deleted !== undefined && { deleted: head.deleted }),
      ...(why !== undefined && { unreadable: why }),
    };
  }

  // --- designs in hand ---

  /** Opens the design this tab had, else the one worked on last, else the sample. */
  async start(): Promise<void> {
    await this.refreshList();
    await this.bringCopies();
    const { designs } = this.state.getState();
    const mine = tabMemory.read();
    const order = [...designs].filter((d) => !d.deleted);
    order.sort((a, b) => Number(b.id === mine) - Number(a.id === mine));
    for (const { id } of order) if (await this.openDesign(id)) break;
    if (!this.current)
      await this.openNew(this.options.sample(), designs.length ? undefined : FIRST);
    await this.refreshList();
    this.state.setState({ ready: true });
  }

  /** A database without any design, beside copies of some: the browser has thrown it away. */
  private async bringCopies(): Promise<void> {
    const empty = await this.base
      .get()
      .then(async (db) => (await db.count("designs")) === 0)
      .catch(() => false);
    if (!empty) return;
    const titles: string[] = [];
    for (const { id, text } of await this.copies.read()) {
      const read = this.options.reader.text(text);
      if (!read.ok) continue;
      titles.push(read.brief.title);
      await this.openLine(freshLine(read.brief), id);
    }
    if (titles.length === 0) return;
    await this.refreshList();
    this.tell({ kind: "from-copies", titles });
  }

  async openDesign(id: string): Promise<boolean> {
    const session = await this.session(id);
    if (!session) return false;
    this.show(session);
    if (session.safe) this.copies.opened(id, session.line.brief);
    return true;
  }

  async openNew(brief: Brief, id = randomText(12)): Promise<Session> {
    return this.openLine(freshLine(brief), id);
  }

  /** Begins a design with a history; it is written at once. */
  async openLine(line: Line, id = randomText(12)): Promise<Session> {
    const session = this.hold(id, { line, known: null, pictures: new Pictures() });
    this.show(session);
    await session.save();
    return session;
  }

  /** The design in hand, or fetched from the storage; null when it is missing or unreadable. */
  async session(id: string): Promise<Session | null> {
    const held = this.sessions.get(id);
    if (held) return held;
    const found = await load(this.base, this.options.reader, id).catch(() => null);
    if (found?.kind === "unreadable") {
      this.unreadable.set(id, found.why);
      await this.refreshList();
    }
    if (found?.kind !== "found" || found.deleted) return null;
    const twice = this.sessions.get(id);
    if (twice) return twice;
    const session: Session = this.hold(id, found.start);
    if (found.renewed) {
      await session.keepVersion("as it was before this page was renewed", found.renewed);
      await session.save();
    }
    session.versionAt = await this.base
      .get()
      .then((db) => lastVersionAt(db, id))
      .catch(() => undefined);
    await this.relink(session);
    return session;
  }

  /** Lets go of a design that is no longer shown, unless that would lose something. */
  private release(session: Session): void {
    void session.settled().then(() => {
      if (session.safe && session !== this.current) this.sessions.delete(session.id);
    });
  }

  private hold(id: string, start: ConstructorParameters<typeof Session>[1]): Session {
    const session: Session = new Session(id, start, {
      base: this.base,
      reader: this.options.reader,
      now: this.now,
      changed: () => this.current === session && this.publish(),
      wrote: () => {
        this.announce(id);
        this.copies.note(id, session.line.brief);
      },
      tell: (notice) => this.current === session && this.tell(notice),
    });
    this.sessions.set(id, session);
    return session;
  }

  private show(session: Session): void {
    const before = this.current;
    if (before === session) return;
    this.current = session;
    this.previewed = null;
    tabMemory.write(session.id);
    if (before) this.release(before);
    this.publish();
  }

  private async relink(session: Session): Promise<void> {
    const row = await this.base
      .get()
      .then((db) => readFileRow(db, session.id))
      .catch(() => undefined);
    if (!row || session.file) return;
    const { name, text, handle } = row;
    session.file = { name, text, handle, brief: null, changedOnDisk: false };
    this.publish();
  }

  /** Moves a design among the deleted and shows another. */
  async remove(id: string): Promise<void> {
    await this.sessions.get(id)?.settled();
    const title = this.state.getState().designs.find((d) => d.id === id)?.title ?? "";
    await setDeleted(await this.base.get(), id, this.now().toISOString());
    await this.copies.forget(id);
    this.sessions.get(id)?.rest();
    this.sessions.delete(id);
    if (this.current?.id === id) this.current = null;
    this.announce(id);
    await this.refreshList();
    if (!this.current) await this.start();
    this.tell({ kind: "deleted", id, title });
  }

  async bringBack(id: string): Promise<void> {
    await setDeleted(await this.base.get(), id, null);
    await this.sessions.get(id)?.takeStored();
    this.announce(id);
    await this.refreshList();
    await this.openDesign(id);
    if (this.current?.id === id) this.copies.note(id, this.current.line.brief);
  }

  /** Whether closing the tab now would lose an edit. */
  get unsafe(): boolean {
    return [...this.sessions.values()].some((s) => !s.safe && s.kept.kind !== "file");
  }

  /** Tries again to save whatever could not be saved. */
  async saveAll(): Promise<void> {
    await Promise.all([...this.sessions.values()].map((s) => s.save()));
  }

  async close(): Promise<void> {
    await Promise.all([...this.sessions.values()].map((s) => s.settled()));
    for (const session of this.sessions.values()) session.rest();
    await this.copies.close();
    this.channel.close();
    await this.base.close();
  }
}

function alike(a: OpenDesign, b: OpenDesign): boolean {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof OpenDesign>;
  return [...keys].every((key) => Object.is(a[key], b[key]));
}

/** Remembers the last result, so that an unchanged thing stays the same object. */
function memo<In extends object, Out>(make: (from: In) => Out): (from: In) => Out {
  const known = new WeakMap<In, Out>();
  return (from) => {
    if (!known.has(from)) known.set(from, make(from));
    return known.get(from) as Out;
  };
}

/** Which design this tab shows: of this tab alone, and no harm if the browser forgets it. */
const tabMemory = {
  read(): string | null {
    try {
      return sessionStorage.getItem("eighthwise-open");
    } catch {
      return null;
    }
  },
  write(id: string): void {
    try {
      sessionStorage.setItem("eighthwise-open", id);
    } catch {}
  },
};
