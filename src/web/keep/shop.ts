import { applyPatches, enablePatches, type Patch, produce, produceWithPatches } from "immer";
import { createStore, type StoreApi } from "zustand/vanilla";
import { emptyShelf, type Shelf } from "../../core/shop/index.ts";
import { Base, whyNot } from "./database.ts";
import { newMark } from "./records.ts";
import { same } from "./same.ts";
import type { ShopBook, ShopRow } from "./shop-row.ts";
import type { NotSaved } from "./types.ts";

enablePatches();

export const SHOP_VERSION = 1;
/** Changes that can be taken back. */
const MOST_STEPS = 100;

export interface ShopState {
  readonly ready: boolean;
  readonly book: ShopBook;
  readonly undoWords?: string;
  readonly redoWords?: string;
  /** Nothing, or why the last change is not kept. */
  readonly trouble?: { readonly reason: NotSaved; readonly detail: string };
}

export type ShopChange = (book: { -readonly [K in keyof ShopBook]: ShopBook[K] }) => void;

export interface ShopStore {
  readonly state: StoreApi<ShopState>;
  edit(words: string, change: ShopChange): Promise<void>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  close(): Promise<void>;
}

const freshRow = (unit: Shelf["unit"]): ShopRow => ({
  id: "book",
  version: SHOP_VERSION,
  mark: "",
  book: { shelf: emptyShelf(unit), runs: [] },
  at: 0,
  steps: [],
});

const patched = (book: ShopBook, patches: readonly Patch[]): ShopBook =>
  applyPatches(book, patches as Patch[]);

/**
 * The shop's book in this browser's storage. Every change reads what is stored, changes that and
 * writes it in one transaction, so two tabs never lose each other's bolts; then it is read back.
 */
export function createShop(
  options: { readonly database?: string; readonly unit?: Shelf["unit"] } = {},
): ShopStore {
  const { database = "eighthwise", unit = "in" } = options;
  const base = new Base(database, () => {});
  const state = createStore<ShopState>(() => ({ ready: false, book: freshRow(unit).book }));
  const channel = new BroadcastChannel(`${database}-shop`);
  channel.onmessage = () => void look();

  const show = (row: ShopRow): void => {
    const undo = row.steps[row.at - 1]?.words;
    const redo = row.steps[row.at]?.words;
    state.setState(
      {
        ready: true,
        book: row.book,
        ...(undo && { undoWords: undo }),
        ...(redo && { redoWords: redo }),
      },
      true,
    );
  };
  const failed = (error: unknown): void =>
    state.setState((s) => ({ ...s, ready: true, trouble: whyNot(error) }));

  const look = async (): Promise<void> => {
    try {
      show(readable(await (await base.get()).get("shop", "book")) ?? freshRow(unit));
    } catch (error) {
      failed(error);
    }
  };

  /** What is stored becomes `next` of it, in one transaction; nothing is written where it is null. */
  const turn = async (next: (row: ShopRow) => ShopRow | null): Promise<void> => {
    try {
      const db = await base.get();
      const tx = db.transaction("shop", "readwrite", { durability: "strict" });
      const stored = readable(await tx.store.get("book")) ?? freshRow(unit);
      const row = next(stored);
      if (row) await tx.store.put({ ...row, mark: newMark() });
      await tx.done;
      const back = await db.get("shop", "book");
      if (row && back && !same(back.book, row.book) && back.at === row.at)
        throw Object.assign(new Error("what was read back differs"), { name: "ReadBackDiffers" });
      show(readable(back) ?? freshRow(unit));
      channel.postMessage("changed");
    } catch (error) {
      failed(error);
    }
  };

  void look();
  return {
    state,
    edit: (words, change) => {
      // Shown at once, under the finger; what is stored takes its place when it is written.
      state.setState((s) => ({ ...s, book: produce(s.book, change as (b: ShopBook) => void) }));
      return turn((row) => {
        const [book, patches, inverse] = produceWithPatches(row.book, (draft) => {
          change(draft as ShopBook);
        });
        if (patches.length === 0) return null;
        const steps = [...row.steps.slice(0, row.at), { words, patches, inverse }].slice(
          -MOST_STEPS,
        );
        return { ...row, book, steps, at: steps.length };
      });
    },
    undo: () =>
      turn((row) => {
        const step = row.steps[row.at - 1];
        return step ? { ...row, book: patched(row.book, step.inverse), at: row.at - 1 } : null;
      }),
    redo: () =>
      turn((row) => {
        const step = row.steps[row.at];
        return step ? { ...row, book: patched(row.book, step.patches), at: row.at + 1 } : null;
      }),
    close: async () => {
      channel.close();
      await base.close();
    },
  };
}

/** A row of this version; one of a later edition is not touched. */
function readable(row: ShopRow | undefined): ShopRow | undefined {
  if (row && row.version > SHOP_VERSION)
    throw Object.assign(new Error("a newer edition of this page keeps the shelf"), {
      name: "VersionError",
    });
  return row;
}
