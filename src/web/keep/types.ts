import type { Patch } from "immer";
import type { StoreApi } from "zustand/vanilla";
import type { Brief, ReadResult } from "../../core/brief/index.ts";

/**
 * Where the work on a design is, at this moment. There is no fourth state.
 * `browser`: written to this browser's storage, read back and found equal.
 * `file`: written to the named file, read back and found equal, and not edited since.
 * `not-saved`: neither; `reason` says why (`writing` lasts a few milliseconds after each edit).
 */
export type Kept =
  | { readonly kind: "browser"; readonly revision: number }
  | { readonly kind: "file"; readonly name: string; readonly revision: number }
  | { readonly kind: "not-saved"; readonly reason: NotSaved; readonly detail?: string };

export type NotSaved =
  | "writing"
  | "storage-full"
  | "storage-off"
  | "storage-newer"
  | "changed-elsewhere"
  | "deleted-elsewhere"
  | "read-back-differs"
  | "failed";

/** One gesture of the maker: what it did, in words, as patches both ways. */
export interface Step {
  /** Names the change for "Take back ...": small first letter, no stop. */
  readonly words: string;
  /** When, ISO 8601, by this machine's clock: shown, never compared. */
  readonly at: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
}

/** A dated state of a design to go back to. */
export interface Version {
  readonly n: number;
  readonly name: string;
  readonly at: string;
  readonly revision: number;
}

/** One line of the list of designs, the last worked on first. */
export interface DesignLine {
  readonly id: string;
  readonly title: string;
  readonly savedAt: string;
  readonly revision: number;
  /** When it was deleted, if it lies among the deleted. It can be brought back. */
  readonly deleted?: string;
  /** Why it cannot be opened; it can still be downloaded as it is. */
  readonly unreadable?: string;
}

/** The design on the page. */
export interface OpenDesign {
  readonly id: string;
  readonly title: string;
  /** The document as last decided. */
  readonly brief: Brief;
  /** What the page shows: `brief`, or what it would be with the choice under the finger. */
  readonly shown: Brief;
  readonly revision: number;
  /** Words of the step that undo would take back, and that redo would bring again. */
  readonly undoWords?: string;
  readonly redoWords?: string;
  /** The real file this design was opened from or last saved to. */
  readonly file?: { readonly name: string; readonly changedOnDisk: boolean };
}

/** Something the maker should be told once; the page says it and lets it go. */
export type Notice =
  | { readonly kind: "followed"; readonly words: string }
  | { readonly kind: "written-back" }
  | { readonly kind: "handed-over"; readonly name: string }
  | { readonly kind: "refused"; readonly name: string; readonly why: readonly string[] }
  | { readonly kind: "deleted"; readonly id: string; readonly title: string }
  /** The browser had lost its database; these designs came back from their second copies. */
  | { readonly kind: "from-copies"; readonly titles: readonly string[] }
  | { readonly kind: "file-changed"; readonly name: string };

/** This tab has edits made on a state that another tab has since replaced. Nothing is written. */
export interface Stale {
  /** What the storage holds now; absent when the other tab deleted the design. */
  readonly newer?: { readonly brief: Brief; readonly revision: number };
}

export interface KeepState {
  readonly ready: boolean;
  readonly designs: readonly DesignLine[];
  readonly open: OpenDesign | null;
  readonly kept: Kept;
  readonly stale: Stale | null;
  readonly notices: readonly Notice[];
  /** The browser has promised not to clear the storage by itself. */
  readonly lasting: boolean;
}

export type Recipe = (brief: Brief) => void;

/** What the page may do. Nothing here throws on account of storage or files: see `kept`. */
export interface Keep {
  /** One gesture: changes the design, remembers how to take it back, saves. */
  edit(words: string, change: Recipe): void;
  /** Shows what a change would give, without making it. `null` shows the design again. */
  preview(change: Recipe | null): void;
  undo(): void;
  redo(): void;

  /** Opens a design; false when it cannot be read (then only `downloadRaw` helps). */
  openDesign(id: string): Promise<boolean>;
  /** Begins a design of its own; the one before stays as it is. */
  newDesign(brief: Brief): Promise<void>;
  duplicate(id: string): Promise<void>;
  rename(id: string, title: string): Promise<void>;
  /** Moves it among the deleted, from where `bringBack` fetches it. */
  remove(id: string): Promise<void>;
  bringBack(id: string): Promise<void>;
  /** Deletes for good what lies among the deleted. Cannot be taken back. */
  emptyDeleted(): Promise<void>;

  /** The dated versions of the open design, newest first. */
  versions(): Promise<readonly Version[]>;
  /** Keeps the present state as a dated version. */
  keepVersion(name: string): Promise<void>;
  /** Makes an old version the present state, as one step that can be taken back. */
  goBackTo(n: number): Promise<void>;
  readVersion(n: number): Promise<Brief | null>;
  /** A design as it stands, without opening it; null when it cannot be read. */
  readDesign(id: string): Promise<Brief | null>;

  /** Stale: show what the storage holds and let go of this tab's edits. */
  takeNewer(): Promise<void>;
  /** Stale: keep this tab's state, with its history, as a design of its own. */
  keepMineAsCopy(): Promise<void>;
  /** Tries to save again, after room was made. */
  saveAgain(): Promise<void>;

  /** Lets the maker choose a file and opens it as a design. */
  openFile(): Promise<void>;
  /** Opens a file that was dropped or chosen. `handle` lets it be saved in place later. */
  openGiven(file: File, handle?: FileSystemFileHandle): Promise<void>;
  /** Saves to the design's file, or asks for one; where that cannot be, hands over a download. */
  saveFile(): Promise<void>;
  saveFileAs(): Promise<void>;
  /** Writes over a file that another program changed. */
  saveOverChanged(): Promise<void>;
  /** Takes what another program wrote to the file, as one step that can be taken back. */
  takeFromFile(): Promise<void>;
  /** Downloads a stored design as it lies in the storage, read or not. */
  downloadRaw(id: string): Promise<void>;
  /** The open design as the text a file would hold, equal to the byte to the file it came from. */
  text(): string;

  dismiss(notice: Notice): void;
  close(): Promise<void>;
}

/** How the keep reads documents; the page gives the core's readers. */
export interface Reader {
  readonly text: (text: string) => ReadResult;
  readonly document: (value: unknown) => ReadResult;
}

export interface KeepOptions {
  readonly reader: Reader;
  /** The design that opens when there is none yet. */
  readonly sample: () => Brief;
  /** Name of the database; tests give their own. */
  readonly database?: string;
  /** Dates what is shown; nothing is ordered by it. */
  readonly now?: () => Date;
}

/** The kept work: its state to read and follow, and what can be done with it. */
export interface KeepStore {
  readonly state: StoreApi<KeepState>;
  readonly act: Keep;
}
