import { type Brief, canonicalText } from "../../core/brief/index.ts";

/** The first edit after a while is copied almost at once; in milliseconds, as all here. */
const SOON = 50;
/** Then a design is copied when it has been still this long, and at the latest this long after the copy before. */
const STILL = 700;
const LATEST = 2_500;

interface Waiting {
  readonly brief: Brief;
  /** Edits without pause do not put the copy off beyond this. */
  readonly latest: number;
  readonly timer: ReturnType<typeof setTimeout>;
}

/**
 * A second copy of every design as it stands, in small files of the page's own that the browser
 * keeps apart from its database. A browser that finds its database damaged after a crash throws all
 * of it away without a word; then these bring the designs back, without their history. Each file is
 * written beside the old one and put in its place at once. Where the browser has no such files,
 * nothing is copied.
 */
export class SecondCopies {
  private readonly folder: string;
  private readonly waiting = new Map<string, Waiting>();
  private readonly begun = new Map<string, number>();
  private turn: Promise<unknown> = Promise.resolve();

  constructor(folder: string) {
    this.folder = folder;
    globalThis.document?.addEventListener("visibilitychange", this.whenHidden);
  }

  /** This design was opened as it was kept: what the last visit could no longer copy is copied now. */
  opened(id: string, brief: Brief): void {
    this.note(id, brief, STILL);
  }

  /** This design was kept as it now stands. */
  note(id: string, brief: Brief, soon = SOON): void {
    const before = this.waiting.get(id);
    clearTimeout(before?.timer);
    const now = performance.now();
    const begun = this.begun.get(id) ?? Number.NEGATIVE_INFINITY;
    const latest = before?.latest ?? Math.max(now + soon, begun + LATEST);
    const pause = Math.max(0, Math.min(now + STILL, latest) - now);
    this.waiting.set(id, { brief, latest, timer: setTimeout(() => this.copy(id), pause) });
  }

  /** The design is gone on purpose: its copy must not bring it back. */
  forget(id: string): Promise<void> {
    clearTimeout(this.waiting.get(id)?.timer);
    this.waiting.delete(id);
    return this.inTurn((folder) => folder.removeEntry(`${id}.json`));
  }

  /** Every copy: the design's id, and its document as text. */
  async read(): Promise<{ readonly id: string; readonly text: string }[]> {
    const found: { id: string; text: string }[] = [];
    await this.inTurn(async (folder) => {
      for await (const [name, handle] of folder.entries()) {
        if (handle.kind !== "file" || !name.endsWith(".json")) continue;
        const text = await (await (handle as FileSystemFileHandle).getFile()).text();
        found.push({ id: name.slice(0, -".json".length), text });
      }
    });
    return found;
  }

  /** Copies what still waits, and looks at the page no more. */
  async close(): Promise<void> {
    globalThis.document?.removeEventListener("visibilitychange", this.whenHidden);
    for (const id of [...this.waiting.keys()]) this.copy(id);
    await this.turn;
  }

  private readonly whenHidden = (): void => {
    if (document.visibilityState !== "hidden") return;
    for (const id of [...this.waiting.keys()]) this.copy(id);
  };

  private copy(id: string): void {
    const one = this.waiting.get(id);
    if (!one) return;
    clearTimeout(one.timer);
    this.waiting.delete(id);
    this.begun.set(id, performance.now());
    void this.inTurn(async (folder) => {
      const file = await folder.getFileHandle(`${id}.json`, { create: true });
      const writing = await file.createWritable();
      await writing.write(canonicalText(one.brief));
      await writing.close();
    });
  }

  /** One thing after the other. The database is what counts: a copy that fails is not told. */
  private inTurn(work: (folder: FileSystemDirectoryHandle) => Promise<unknown>): Promise<void> {
    const next = this.turn.then(async () => {
      try {
        const root = await navigator.storage.getDirectory();
        await work(await root.getDirectoryHandle(this.folder, { create: true }));
      } catch {}
    });
    this.turn = next;
    return next;
  }
}
