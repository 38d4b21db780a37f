import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, unwrap, wrap } from "idb";
import type { Packed } from "./pack.ts";
import type { ShopRow } from "./shop-row.ts";
import type { NotSaved } from "./types.ts";

/** One design as it stands. Its way here lies in `steps`, its long texts in `pictures`. */
export interface Head {
  readonly id: string;
  readonly title: string;
  /** Counts the writes. Order comes from this and `touched`, never from a clock. */
  readonly revision: number;
  /** Drawn anew at every write: a tab may write only over the mark it has read. */
  readonly mark: string;
  /** Grows by one with every write to any design: the greatest was worked on last. */
  readonly touched: number;
  readonly savedAt: string;
  readonly doc: Packed;
  /** How many of the steps are in force. */
  readonly at: number;
  /** How many steps there are. */
  readonly top: number;
  readonly deleted?: string;
}

export interface StepRow {
  readonly design: string;
  readonly n: number;
  readonly words: string;
  readonly at: string;
  readonly ways: Packed;
}

export interface VersionRow {
  readonly design: string;
  readonly n: number;
  readonly name: string;
  readonly at: string;
  readonly revision: number;
  readonly doc: Packed;
}

export interface PictureRow {
  readonly design: string;
  readonly n: number;
  readonly text: string;
}

/** The real file of a design, with the text it held when this page last read or wrote it. */
export interface FileRow {
  readonly design: string;
  readonly name: string;
  readonly text: string;
  readonly handle?: FileSystemFileHandle;
}

export interface Tables extends DBSchema {
  designs: { key: string; value: Head; indexes: { touched: number } };
  steps: { key: [string, number]; value: StepRow };
  versions: { key: [string, number]; value: VersionRow };
  pictures: { key: [string, number]; value: PictureRow };
  files: { key: string; value: FileRow };
  /** The shop's one book, which belongs to no design. */
  shop: { key: string; value: ShopRow };
}

export type Database = IDBPDatabase<Tables>;
type StoreName = "designs" | "steps" | "versions" | "pictures" | "files" | "shop";
type Upgrade = IDBPTransaction<Tables, StoreName[], "versionchange">;

/**
 * Numbered steps of the storage's own shape, without gaps: UPGRADES[0] makes version 1 from
 * nothing, UPGRADES[1] would make version 2 from 1. None may lose a record.
 */
export const UPGRADES: readonly ((db: Database, tx: Upgrade) => void)[] = [
  (db) => {
    db.createObjectStore("designs", { keyPath: "id" }).createIndex("touched", "touched");
    for (const name of ["steps", "versions", "pictures"] as const)
      db.createObjectStore(name, { keyPath: ["design", "n"] });
    db.createObjectStore("files", { keyPath: "design" });
  },
  (db) => {
    db.createObjectStore("shop", { keyPath: "id" });
  },
];

/** The database was made by a newer edition of this page: it is left alone. */
export class StorageNewer extends Error {}

/**
 * The connection to the storage. It opens at first need, and again after the browser cleared or
 * closed it. Never throws away a database it does not understand.
 */
export class Base {
  private opening: Promise<Database> | null = null;
  private newer = false;
  private readonly name: string;
  private readonly onLost: () => void;
  private readonly upgrades: typeof UPGRADES;

  constructor(name: string, onLost: () => void, upgrades = UPGRADES) {
    this.name = name;
    this.onLost = onLost;
    this.upgrades = upgrades;
  }

  get(): Promise<Database> {
    if (this.newer) return Promise.reject(new StorageNewer());
    this.opening ??= this.open().catch((error) => {
      this.opening = null;
      throw error;
    });
    return this.opening;
  }

  async close(): Promise<void> {
    const db = await this.opening?.catch(() => null);
    db?.close();
    this.opening = null;
  }

  private async open(): Promise<Database> {
    const lost = () => {
      this.opening = null;
      this.onLost();
    };
    const db = await openDB<Tables>(this.name, this.upgrades.length, {
      upgrade: (db, from, _to, tx) => {
        for (const step of this.upgrades.slice(from)) step(db, tx as Upgrade);
      },
      terminated: lost,
    });
    endQuietly(unwrap(db));
    // Another tab wants the database gone, or newer than this page knows: make way at once.
    db.addEventListener("versionchange", (event) => {
      db.close();
      if ((event as IDBVersionChangeEvent).newVersion !== null) this.newer = true;
      lost();
    });
    return db;
  }
}

/**
 * What the browser breaks off fails where it is read or written; the end of a reading, which nobody
 * waits for, must not pass for a fault of the page beside that.
 */
function endQuietly(db: IDBDatabase): void {
  const begin = db.transaction.bind(db);
  db.transaction = (...args) => {
    const tx = begin(...args);
    wrap(tx).done.catch(() => {});
    return tx;
  };
}

/** Why the storage did not take or give something, for the maker. */
export function whyNot(error: unknown): { reason: NotSaved; detail: string } {
  const { name, message } = error instanceof Error ? error : new Error(String(error));
  const detail = message || name;
  if (error instanceof StorageNewer || name === "VersionError")
    return { reason: "storage-newer", detail };
  if (name === "QuotaExceededError") return { reason: "storage-full", detail };
  if (name === "SecurityError" || name === "ReferenceError" || name === "MissingAPIError")
    return { reason: "storage-off", detail };
  if (name === "ReadBackDiffers") return { reason: "read-back-differs", detail };
  return { reason: "failed", detail };
}
