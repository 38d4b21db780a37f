import { IDBFactory, IDBObjectStore } from "fake-indexeddb";
import "fake-indexeddb/auto";
import { deleteDB, openDB } from "idb";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Brief } from "../../core/brief/index.ts";
import { Base } from "./database.ts";
import { isKept, trialBrief, trialKeep, until } from "./trial.testing.ts";
import type { KeepStore } from "./types.ts";

const NAME = "trial";
const opened: KeepStore[] = [];

function start(): KeepStore {
  const keep = trialKeep(NAME);
  opened.push(keep);
  return keep;
}

async function open(): Promise<KeepStore> {
  const keep = start();
  await until(keep, isKept);
  return keep;
}

const opening = (keep: KeepStore) => keep.state.getState().open!;
const setRows = (rows: number) => (brief: Brief) => {
  brief.quilt.rows = rows;
};
const edit = (keep: KeepStore, rows: number) =>
  keep.act.edit(`make it ${rows} rows`, setRows(rows));

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(opened.splice(0).map((keep) => keep.act.close()));
});

/** Every write to the storage fails with this error until the mock is restored. */
function failWrites(name: string): void {
  vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
    throw new DOMException("as the test wants", name);
  });
}

describe("storage full", () => {
  test("is said, loses nothing in the tab, and ends when there is room", async () => {
    const keep = await open();
    failWrites("QuotaExceededError");
    edit(keep, 4);
    const { kept } = await until(keep, (s) => "reason" in s.kept && s.kept.reason !== "writing");
    expect(kept).toMatchObject({ kind: "not-saved", reason: "storage-full" });
    edit(keep, 6);
    vi.restoreAllMocks();
    await keep.act.saveAgain();
    expect(keep.state.getState().kept).toEqual({ kind: "browser", revision: 2 });
    keep.act.undo();
    expect(opening(keep).brief.quilt.rows).toBe(4);
  });

  test("a design that could not be saved stays in hand while another is shown", async () => {
    const keep = await open();
    const { id } = opening(keep);
    await keep.act.newDesign(trialBrief("Foam throw"));
    await keep.act.openDesign(id);
    failWrites("QuotaExceededError");
    edit(keep, 7);
    await until(keep, (s) => "reason" in s.kept && s.kept.reason === "storage-full");
    const other = keep.state.getState().designs.find((d) => d.id !== id)!;
    await keep.act.openDesign(other.id);
    expect(keep.state.getState().kept.kind).toBe("browser");
    await keep.act.openDesign(id);
    expect(opening(keep).brief.quilt.rows).toBe(7);
    expect(keep.state.getState().kept).toMatchObject({ reason: "storage-full" });
  });

  test("at first start the sample is there all the same", async () => {
    failWrites("QuotaExceededError");
    const keep = start();
    const { open: design, kept } = await until(keep, (s) => s.ready);
    expect(design?.title).toBe("Reed runner");
    expect(kept).toMatchObject({ reason: "storage-full" });
  });
});

test("without any storage the page works and says that nothing is kept", async () => {
  vi.spyOn(indexedDB, "open").mockImplementation(() => {
    throw new DOMException("as the test wants", "SecurityError");
  });
  const keep = start();
  await until(keep, (s) => s.ready);
  edit(keep, 4);
  const { kept } = await until(keep, (s) => "reason" in s.kept && s.kept.reason !== "writing");
  expect(kept).toMatchObject({ kind: "not-saved", reason: "storage-off" });
  keep.act.undo();
  expect(opening(keep).brief.quilt.rows).toBe(3);
});

test("what is read back and differs is not called saved", async () => {
  const keep = await open();
  const get = IDBObjectStore.prototype.get;
  let lie = true;
  vi.spyOn(IDBObjectStore.prototype, "get").mockImplementation(function (this: never, key) {
    const request = get.call(this, key);
    if ((this as IDBObjectStore).name === "designs" && lie)
      request.addEventListener("success", () => {
        if (request.result?.doc.value.quilt.rows === 4) request.result.doc.value.quilt.rows = 5;
      });
    return request;
  });
  edit(keep, 4);
  const { kept } = await until(keep, (s) => "reason" in s.kept && s.kept.reason !== "writing");
  expect(kept).toMatchObject({ kind: "not-saved", reason: "read-back-differs" });
  lie = false;
  await keep.act.saveAgain();
  expect(keep.state.getState().kept.kind).toBe("browser");
});

test.each([
  ["opened", () => vi.spyOn(IDBFactory.prototype, "open")],
  ["listed", () => vi.spyOn(IDBObjectStore.prototype, "getAll")],
  ["read", () => vi.spyOn(IDBObjectStore.prototype, "get")],
] as const)(
  "a storage that cannot be %s at first is asked again before a sample is made",
  async (_, spy) => {
    const before = await open();
    edit(before, 4);
    await until(before, isKept);
    const { id } = opening(before);
    await before.act.close();
    for (let time = 0; time < 2; time++)
      spy().mockImplementationOnce(() => {
        throw new DOMException("as the test wants", "UnknownError");
      });
    const after = await open();
    expect(opening(after).id).toBe(id);
    expect(opening(after).brief.quilt.rows).toBe(4);
    expect(after.state.getState().designs).toMatchObject([{ id }]);
  },
);

test("storage cleared under an open tab: the design is written back with its history", async () => {
  const keep = await open();
  edit(keep, 4);
  edit(keep, 6);
  await until(keep, isKept);
  const was = keep.state.getState().kept;
  await deleteDB(NAME);
  const { notices } = await until(keep, (s) => s.notices.length > 0 && isKept(s));
  expect(notices).toEqual([{ kind: "written-back" }]);
  expect(keep.state.getState().kept).toEqual({
    kind: "browser",
    revision: was.kind === "browser" ? was.revision + 1 : 0,
  });
  await keep.act.close();
  const again = await open();
  expect(opening(again).brief.quilt.rows).toBe(6);
  again.act.undo();
  again.act.undo();
  expect(opening(again).brief.quilt.rows).toBe(3);
});

describe("databases of other editions", () => {
  test("a newer one is left alone, and the state says so", async () => {
    const keep = await open();
    await keep.act.close();
    const newer = await openDB(NAME, 9, { upgrade: (db) => void db.createObjectStore("later") });
    await newer.put("later", "of tomorrow", "key");
    newer.close();
    const again = start();
    await until(again, (s) => s.ready);
    edit(again, 4);
    const { kept } = await until(again, (s) => "reason" in s.kept && s.kept.reason !== "writing");
    expect(kept).toMatchObject({ kind: "not-saved", reason: "storage-newer" });
    const db = await openDB(NAME);
    expect(db.version).toBe(9);
    expect(await db.get("later", "key")).toBe("of tomorrow");
    expect(await db.count("designs")).toBe(1);
    db.close();
  });

  test("a newer one that comes while the page is open makes this page give way", async () => {
    const keep = await open();
    const newer = await openDB(NAME, 9);
    edit(keep, 4);
    const { kept } = await until(keep, (s) => "reason" in s.kept && s.kept.reason !== "writing");
    expect(kept).toMatchObject({ reason: "storage-newer" });
    newer.close();
  });

  test("an older one is brought up step by step and keeps its records", async () => {
    const keep = await open();
    edit(keep, 4);
    await until(keep, isKept);
    await keep.act.close();
    const { UPGRADES } = await import("./database.ts");
    const ran: number[] = [];
    const longer = [
      ...UPGRADES,
      () => void ran.push(2),
      ((db) => {
        ran.push(3);
        db.createObjectStore("later" as never);
      }) as (typeof UPGRADES)[number],
    ];
    const base = new Base(NAME, () => {}, longer);
    const db = await base.get();
    expect(ran).toEqual([2, 3]);
    expect(db.version).toBe(UPGRADES.length + 2);
    expect(await db.count("designs")).toBe(1);
    expect(await db.count("steps")).toBe(1);
    await base.close();
  });
});

describe("a damaged record", () => {
  async function damage(change: (head: Record<string, unknown>) => unknown): Promise<string> {
    const keep = await open();
    edit(keep, 4);
    await until(keep, isKept);
    const { id } = opening(keep);
    await keep.act.close();
    const db = await openDB(NAME);
    await db.put("designs", change(await db.get("designs", id)));
    db.close();
    return id;
  }

  const wounds: [string, (head: Record<string, unknown>) => unknown][] = [
    ["no document", ({ doc: _, ...head }) => head],
    ["a document of another kind", (head) => ({ ...head, doc: { value: [7], holes: [] } })],
    ["a brief with a length that is none", (head) => wounded(head, { seam: "a thumb" })],
    ["a brief of a later version", (head) => wounded(head, { version: 5 })],
    ["only its name", ({ id }) => ({ id })],
  ];
  const wounded = (head: Record<string, unknown>, part: object) => {
    const doc = head.doc as { value: object };
    return { ...head, doc: { ...doc, value: { ...doc.value, ...part } } };
  };

  test.each(wounds)("(%s) is kept as it is; the page opens another design", async (_, wound) => {
    const id = await damage(wound);
    const db = await openDB(NAME);
    const before = JSON.stringify(await db.get("designs", id));
    const keep = await open();
    expect(opening(keep).id).not.toBe(id);
    const line = keep.state.getState().designs.find((d) => d.id === id);
    expect(line?.unreadable).toBeTruthy();
    expect(await keep.act.openDesign(id)).toBe(false);
    edit(keep, 5);
    await until(keep, isKept);
    expect(JSON.stringify(await db.get("designs", id))).toBe(before);
    db.close();
  });

  test("with a step missing the design opens; only its history is let go", async () => {
    const keep = await open();
    for (const rows of [4, 6, 9]) edit(keep, rows);
    await until(keep, isKept);
    const { id } = opening(keep);
    await keep.act.close();
    const db = await openDB(NAME);
    await db.delete("steps", [id, 2]);
    const again = await open();
    expect(opening(again).brief.quilt.rows).toBe(9);
    expect(opening(again).undoWords).toBeUndefined();
    edit(again, 7);
    await until(again, isKept);
    expect(await db.count("steps")).toBe(1);
    db.close();
  });
});
