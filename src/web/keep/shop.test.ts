import "fake-indexeddb/auto";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Bolt } from "../../core/shop/index.ts";
import { Base, UPGRADES } from "./database.ts";
import { createShop, type ShopStore } from "./shop.ts";

let name = "";
let count = 0;
const open: ShopStore[] = [];
const shop = (): ShopStore => {
  const s = createShop({ database: name });
  open.push(s);
  return s;
};
const bolt = (id: string): Bolt => ({ id, name: `Bolt ${id}`, length: "2 yd" });
const add = (s: ShopStore, id: string) =>
  s.edit(`bolt ${id}`, (b) => {
    b.shelf = { ...b.shelf, bolts: [...b.shelf.bolts, bolt(id)] };
  });
const ids = (s: ShopStore) => s.state.getState().book.shelf.bolts.map((b) => b.id);
const ready = async (s: ShopStore): Promise<void> => {
  while (!s.state.getState().ready) await new Promise((r) => setTimeout(r, 1));
};

beforeEach(() => {
  count += 1;
  name = `shop-${count}`;
});
afterEach(async () => {
  await Promise.all(open.splice(0).map((s) => s.close()));
});

describe("the shop's book", () => {
  test("is kept: another visit finds the bolts, the runs and the way back", async () => {
    const first = shop();
    await add(first, "b1");
    await add(first, "b2");
    const again = shop();
    await ready(again);
    expect(ids(again)).toEqual(["b1", "b2"]);
    expect(again.state.getState().undoWords).toBe("bolt b2");
    await again.undo();
    expect(ids(again)).toEqual(["b1"]);
    await again.redo();
    expect(ids(again)).toEqual(["b1", "b2"]);
  });

  test("a change after undo lets the undone go; a change of nothing is none", async () => {
    const s = shop();
    await add(s, "b1");
    await add(s, "b2");
    await s.undo();
    await add(s, "b3");
    expect(ids(s)).toEqual(["b1", "b3"]);
    expect(s.state.getState().redoWords).toBeUndefined();
    await s.edit("nothing", () => {});
    expect(s.state.getState().undoWords).toBe("bolt b3");
  });

  test("two tabs that add at once lose nothing of each other", async () => {
    const [one, two] = [shop(), shop()];
    await Promise.all(Array.from({ length: 10 }, (_, i) => add(i % 2 ? one : two, `b${i}`)));
    const third = shop();
    await ready(third);
    expect(new Set(ids(third)).size).toBe(10);
  });

  test("a database of the first edition is brought up, and its designs stay", async () => {
    const old = await openDB(name, 1, {
      upgrade: (db, _from, _to, tx) => UPGRADES[0](db as never, tx as never),
    });
    await old.put("designs", { id: "kept", title: "Kept", touched: 1 });
    old.close();
    const s = shop();
    await add(s, "b1");
    expect(ids(s)).toEqual(["b1"]);
    const base = new Base(name, () => {});
    expect(await (await base.get()).get("designs", "kept")).toMatchObject({ title: "Kept" });
    await base.close();
  });

  test("a book of a newer edition is left alone and said", async () => {
    const base = new Base(name, () => {});
    const db = await base.get();
    await db.put("shop", { id: "book", version: 99, precious: true } as never);
    const s = shop();
    await add(s, "b1");
    expect(s.state.getState().trouble?.reason).toBe("storage-newer");
    expect(await db.get("shop", "book")).toEqual({ id: "book", version: 99, precious: true });
    await base.close();
  });
});
