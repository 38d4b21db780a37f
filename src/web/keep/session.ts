import type { Brief } from "../../core/brief/index.ts";
import { again } from "./again.ts";
import { type Base, whyNot } from "./database.ts";
import { freshLine, type Line, sharedSteps } from "./history.ts";
import { Pictures, pack } from "./pack.ts";
import {
  type Known,
  newMark,
  readBack,
  readHead,
  readRows,
  writeLine,
  writeVersion,
} from "./records.ts";
import { same } from "./same.ts";
import { sentences } from "./say.ts";
import type { Kept, Notice, NotSaved, Reader, Stale, Step } from "./types.ts";

/** After how long, in milliseconds, a failed save is tried again: the last of these from then on. */
const RETRIES = [200, 1_000, 5_000, 30_000];
/** Waiting does not help against these. */
const LASTING: readonly NotSaved[] = ["storage-newer", "storage-off"];

/** The real file a design belongs to, and the text it held when last read or written. */
export interface FileLink {
  readonly name: string;
  readonly text: string;
  readonly handle?: FileSystemFileHandle;
  /** The design the file holds, if that is known. */
  readonly brief: Brief | null;
  readonly changedOnDisk: boolean;
}

export interface Surroundings {
  readonly base: Base;
  readonly reader: Reader;
  readonly now: () => Date;
  /** The session looks different now. */
  readonly changed: () => void;
  /** This design was written: other tabs should look. */
  readonly wrote: () => void;
  readonly tell: (notice: Notice) => void;
}

export interface Start {
  readonly line: Line;
  readonly known: Known | null;
  readonly pictures: Pictures;
}

/**
 * One design in this tab: its line, what of it is known to lie in the storage, and the saving.
 * Everything that touches the storage runs one after the other. Each write happens only over the
 * state this tab has read; when another tab was faster, nothing is written and `stale` says so.
 */
export class Session {
  readonly id: string;
  line: Line;
  file: FileLink | null = null;
  stale: Stale | null = null;
  pictures: Pictures;
  /** When the last dated version was kept, in milliseconds. */
  versionAt: number | undefined;
  private known: Known | null;
  /** The state that was read back from the storage and found equal. */
  private proved: Line | null;
  private tried: Known | null = null;
  private trouble: { reason: NotSaved; detail?: string } | null = null;
  private turn: Promise<unknown> = Promise.resolve();
  private failures = 0;
  private retry: ReturnType<typeof setTimeout> | undefined;
  private readonly around: Surroundings;

  constructor(id: string, start: Start, around: Surroundings) {
    this.id = id;
    this.around = around;
    this.line = start.line;
    this.known = start.known;
    this.proved = start.known?.line ?? null;
    this.pictures = start.pictures;
  }

  get revision(): number {
    return this.known?.revision ?? 0;
  }

  get kept(): Kept {
    const { revision } = this;
    if (this.file && same(this.file.brief, this.line.brief))
      return { kind: "file", name: this.file.name, revision };
    if (this.stale) {
      const reason = this.stale.newer ? "changed-elsewhere" : "deleted-elsewhere";
      return { kind: "not-saved", reason };
    }
    if (this.proved === this.line) return { kind: "browser", revision };
    return { kind: "not-saved", ...(this.trouble ?? { reason: "writing" }) };
  }

  /** Nothing would be lost if the tab were closed now. */
  get safe(): boolean {
    return this.proved === this.line;
  }

  /** Takes a new state, if it could be read again: nothing is kept that would not open. */
  become(line: Line): Promise<void> {
    if (line === this.line) return Promise.resolve();
    // Photos are left out of the reading: they are long, and any text will do for them.
    const read = this.around.reader.document(pack(line.brief, new Pictures()).value);
    if (!read.ok) {
      this.around.tell({ kind: "refused", name: line.brief.title, why: sentences(read.refusals) });
      return Promise.resolve();
    }
    this.line = line;
    this.around.changed();
    return this.save();
  }

  save(): Promise<void> {
    return this.inTurn(() => this.saveNow());
  }

  /** Looks whether another tab wrote, and follows it or, with edits of its own, turns stale. */
  refresh(): Promise<void> {
    return this.inTurn(async () => {
      await this.lookAgain();
      await this.saveNow();
    });
  }

  /** Lets go of this tab's edits and shows what the storage holds. */
  takeStored(): Promise<void> {
    return this.inTurn(async () => {
      await this.adopt();
      this.around.changed();
    });
  }

  /** The storage was closed or cleared under us: nothing in it is certain until looked at. */
  doubt(): Promise<void> {
    this.proved = null;
    this.around.changed();
    return this.refresh();
  }

  keepVersion(name: string, brief: Brief): Promise<void> {
    return this.inTurn(async () => {
      if (!this.known) await this.saveNow();
      if (!this.known || this.stale) return;
      const version = { name, at: this.around.now().toISOString(), brief };
      await writeVersion(await this.around.base.get(), this.id, this.known, version, this.pictures);
    });
  }

  /** Stops trying again; for a session that is let go. */
  rest(): void {
    clearTimeout(this.retry);
  }

  /** When everything asked so far is done. */
  settled(): Promise<unknown> {
    return this.turn;
  }

  private inTurn(work: () => Promise<void>): Promise<void> {
    clearTimeout(this.retry);
    const done = this.turn.then(work).catch((error) => {
      this.trouble = whyNot(error);
      this.tryLater();
      this.around.changed();
    });
    this.turn = done;
    return done;
  }

  private tryLater(): void {
    if (!this.trouble || LASTING.includes(this.trouble.reason)) return;
    const wait = RETRIES[Math.min(this.failures++, RETRIES.length - 1)];
    this.retry = setTimeout(() => void this.refresh(), wait);
  }

  private async saveNow(): Promise<void> {
    while (this.proved !== this.line && !this.stale) await this.writeOnce(this.line);
    this.around.changed();
  }

  private async writeOnce(line: Line): Promise<void> {
    const { base, now } = this.around;
    const db = await base.get();
    const before = this.known;
    const stamp = { mark: newMark(), now: now().toISOString() };
    this.tried = { mark: stamp.mark, revision: this.revision + 1, line };
    const outcome = await writeLine(db, this.id, line, before, this.pictures, stamp);
    if (outcome.kind === "changed") return this.lookAgain();
    this.known = outcome.known;
    this.tried = null;
    const whole = outcome.broughtBack || before === null;
    const first = whole ? 0 : sharedSteps(before.line.steps, line.steps);
    const back = await readBack(db, this.id, outcome.known, first, this.pictures);
    if (back === "differs") {
      // Distrust all that is stored: the next try writes it whole.
      this.known = { ...outcome.known, line: freshLine(line.brief) };
      throw Object.assign(new Error("what was read back differs"), { name: "ReadBackDiffers" });
    }
    this.proved = line;
    this.trouble = null;
    this.failures = 0;
    if (outcome.broughtBack) this.around.tell({ kind: "written-back" });
    this.around.wrote();
    if (back === "changed") await this.lookAgain();
  }

  private async lookAgain(): Promise<void> {
    const head = await readHead(await this.around.base.get(), this.id);
    if (!head) {
      this.proved = null;
      return;
    }
    if (head.mark === this.known?.mark) return;
    if (head.mark === this.tried?.mark) {
      // The write whose answer was lost had gone through after all.
      this.known = this.tried;
      return;
    }
    const decided = this.known !== null || this.line.steps.length > 0;
    if (decided && this.line !== this.known?.line) this.stale = await this.readNewer();
    else await this.adopt();
    this.around.changed();
  }

  private async readNewer(): Promise<Stale> {
    const rows = await readRows(await this.around.base.get(), this.id);
    if (!rows || rows.head.deleted) return {};
    const read = this.around.reader.document(rows.document);
    return read.ok ? { newer: { brief: read.brief, revision: rows.head.revision } } : {};
  }

  /** Takes over what the storage holds. */
  private async adopt(): Promise<void> {
    const found = await load(this.around.base, this.around.reader, this.id);
    if (found.kind !== "found" || found.deleted) {
      this.stale = {};
      return;
    }
    const news = !same(found.start.line.brief, this.line.brief);
    this.line = found.start.line;
    this.known = found.start.known;
    this.proved = this.line;
    this.pictures = found.start.pictures;
    this.stale = null;
    this.trouble = null;
    if (news)
      this.around.tell({ kind: "followed", words: lastWords(this.line.steps, this.line.at) });
  }
}

const lastWords = (steps: readonly Step[], at: number): string => steps[at - 1]?.words ?? "";

export type Found =
  | {
      readonly kind: "found";
      readonly start: Start;
      readonly deleted: boolean;
      readonly renewed: Brief | null;
    }
  | { readonly kind: "missing" }
  | { readonly kind: "unreadable"; readonly why: string };

/** Reads a design from the storage and judges its document. A damaged record is left as it is. */
export async function load(base: Base, reader: Reader, id: string): Promise<Found> {
  let rows: Awaited<ReturnType<typeof readRows>>;
  try {
    rows = await again(async () => readRows(await base.get(), id));
  } catch (error) {
    if (whyNot(error).reason !== "failed") throw error;
    return { kind: "unreadable", why: `the record is damaged (${(error as Error).message})` };
  }
  if (!rows) return { kind: "missing" };
  const read = reader.document(rows.document);
  if (!read.ok) {
    return { kind: "unreadable", why: sentences(read.refusals)[0] };
  }
  const { head, steps, pictures, document } = rows;
  // A document brought to a newer version is a new beginning: old steps would not fit it.
  const renewed = same(read.brief, document) ? null : (document as Brief);
  const kept = renewed === null && steps.length === head.top;
  const fresh = freshLine(read.brief);
  const line = kept ? { ...fresh, at: head.at, steps } : fresh;
  // Of a renewed document nothing is stored yet: the session will write it.
  const stored = renewed === null ? line : freshLine(read.brief);
  const known = { mark: head.mark, revision: head.revision, line: stored };
  return {
    kind: "found",
    start: { line, known, pictures },
    deleted: head.deleted !== undefined,
    renewed,
  };
}
