import "fake-indexeddb/auto";
import { openDB } from "idb";
import { afterEach, describe, expect, test } from "vitest";
import type { Brief } from "../../core/brief/index.ts";
import { isKept, trialBrief, trialKeep, until } from "./trial.testing.ts";
import type { KeepOptions, KeepStore } from "./types.ts";

let count = 0;
const opened: KeepStore[] = [];
const newName = () => `trial-${++count}`;

async function open(database: string, more: Partial<KeepOptions> = {}): Promise<KeepStore> {
  const keep = trialKeep(database, more);
  opened.push(keep);
  await until(keep, isKept);
  return keep;
}

const opening = (keep: KeepStore) => keep.state.getState().open!;
const setRows = (rows: number) => (brief: Brief) => {
  brief.quilt.rows = rows;
};
const edit = async (keep: KeepStore, rows: number) => {
  keep.act.edit(`make it ${rows} rows`, setRows(rows));
  return until(keep, isKept);
};

afterEach(async () => {
  await Promise.all(opened.splice(0).map((keep) => keep.act.close()));
});

describe("one tab", () => {
  test("at first start the sample is there, saved and read back", async () => {
    const keep = await open(newName());
    expect(opening(keep).title).toBe("Reed runner");
    expect(keep.state.getState().kept).toEqual({ kind: "browser", revision: 1 });
    expect(keep.state.getState().designs).toHaveLength(1);
  });

  test("between an edit and its reading back the state says it is not saved", async () => {
    const keep = await open(newName());
    keep.act.edit("make it 7 rows", setRows(7));
    expect(keep.state.getState().kept).toEqual({ kind: "not-saved", reason: "writing" });
    const { kept } = await until(keep, isKept);
    expect(kept).toEqual({ kind: "browser", revision: 2 });
  });

  test("undo and redo live on after the page is loaded again", async () => {
    const name = newName();
    const first = await open(name);
    for (const rows of [4, 6, 9]) await edit(first, rows);
    first.act.undo();
    await until(first, isKept);
    await first.act.close();

    const again = await open(name);
    expect(opening(again).brief.quilt.rows).toBe(6);
    expect(opening(again).undoWords).toBe("make it 6 rows");
    expect(opening(again).redoWords).toBe("make it 9 rows");
    again.act.redo();
    expect(opening(again).brief.quilt.rows).toBe(9);
    for (let i = 0; i < 5; i++) again.act.undo();
    expect(opening(again).brief).toEqual(trialBrief());
    expect(opening(again).undoWords).toBeUndefined();
  });

  test("an edit after undo lets the undone steps go, in the storage too", async () => {
    const name = newName();
    const keep = await open(name);
    for (const rows of [4, 6, 9]) await edit(keep, rows);
    keep.act.undo();
    keep.act.undo();
    await edit(keep, 8);
    await keep.act.close();
    const again = await open(name);
    expect(opening(again).brief.quilt.rows).toBe(8);
    expect(opening(again).redoWords).toBeUndefined();
    again.act.undo();
    expect(opening(again).brief.quilt.rows).toBe(4);
    const db = await openDB(name);
    expect(await db.count("steps")).toBe(2);
    db.close();
  });

  test("a preview is shown and never kept", async () => {
    const keep = await open(newName());
    keep.act.preview(setRows(11));
    expect(opening(keep).shown.quilt.rows).toBe(11);
    expect(opening(keep).brief.quilt.rows).toBe(3);
    expect(keep.state.getState().kept.kind).toBe("browser");
    keep.act.preview(null);
    expect(opening(keep).shown).toBe(opening(keep).brief);
  });

  test("what could not be read again is not made", async () => {
    const keep = await open(newName());
    const { brief } = opening(keep);
    keep.act.edit("make the seam a thumb", (b) => {
      b.seam = "a thumb";
    });
    expect(opening(keep).brief).toBe(brief);
    expect(keep.state.getState().notices.at(-1)).toMatchObject({ kind: "refused" });
    await keep.act.rename(opening(keep).id, "");
    expect(opening(keep).title).toBe("Reed runner");
    expect(keep.state.getState().notices).toHaveLength(1);
  });

  test("a shown preview stays the same object while nothing changes it", async () => {
    const keep = await open(newName());
    keep.act.preview(setRows(11));
    const { shown } = opening(keep);
    await keep.act.keepVersion("by hand");
    await keep.act.saveAgain();
    expect(opening(keep).shown).toBe(shown);
  });

  test("photos are stored once, however many edits, steps and versions hold them", async () => {
    const name = newName();
    const keep = await open(name);
    const data = `data:image/png;base64,${"Q".repeat(20_000)}`;
    keep.act.edit("add a photo", (brief) => {
      brief.fabrics.push({
        ...brief.fabrics[0],
        kind: "print",
        id: "tide",
        photo: { data, width: "9", height: "7" },
      } as Brief["fabrics"][number]);
    });
    await edit(keep, 4);
    await keep.act.keepVersion("with the photo");
    await edit(keep, 5);
    await keep.act.close();
    const db = await openDB(name);
    expect(await db.count("pictures")).toBe(1);
    for (const store of ["designs", "steps", "versions"])
      expect(JSON.stringify(await db.getAll(store))).not.toContain("QQQQQQQQ");
    db.close();
    const again = await open(name);
    const tide = opening(again).brief.fabrics[2];
    expect(tide.kind === "print" && tide.photo?.data).toBe(data);
  });

  test("dated versions can be gone back to, as one step", async () => {
    const keep = await open(newName());
    await edit(keep, 4);
    await keep.act.keepVersion("before the class");
    await edit(keep, 6);
    const [version] = (await keep.act.versions()).filter((v) => v.name === "before the class");
    await keep.act.goBackTo(version.n);
    expect(opening(keep).brief.quilt.rows).toBe(4);
    expect(opening(keep).undoWords).toBe('go back to "before the class"');
    keep.act.undo();
    expect(opening(keep).brief.quilt.rows).toBe(6);
    expect((await keep.act.versions())[0].name).toBe("before going back");
  });

  test("a version is kept by itself before the first edit in an hour", async () => {
    const name = newName();
    let hours = 0;
    const now = () => new Date(Date.UTC(2031, 2, 4, 5 + hours, 6, 7));
    const keep = await open(name, { now });
    await edit(keep, 4);
    await edit(keep, 5);
    expect(await keep.act.versions()).toHaveLength(0);
    hours = 2;
    await edit(keep, 6);
    const versions = await keep.act.versions();
    expect(versions.map((v) => v.name)).toEqual(["as it stood"]);
    expect((await keep.act.readVersion(versions[0].n))?.quilt.rows).toBe(5);

    await keep.act.close();
    const again = await open(name, { now });
    await edit(again, 7);
    expect(await again.act.versions()).toHaveLength(1);
    hours = 4;
    await edit(again, 8);
    expect(await again.act.versions()).toHaveLength(2);
  });

  test("a clock set back harms nothing", async () => {
    const name = newName();
    let year = 2031;
    const now = () => new Date(Date.UTC(year, 1, 2));
    const keep = await open(name, { now });
    await edit(keep, 4);
    await keep.act.newDesign(trialBrief("Foam throw"));
    year = 1999;
    const first = keep.state.getState().designs.find((d) => d.title === "Reed runner")!;
    await keep.act.openDesign(first.id);
    await edit(keep, 5);
    await keep.act.close();
    const again = await open(name, { now });
    expect(opening(again).brief.quilt.rows).toBe(5);
    const { designs } = again.state.getState();
    expect(designs.map((d) => d.title)).toEqual(["Reed runner", "Foam throw"]);
    expect(designs[0].savedAt < designs[1].savedAt).toBe(true);
  });
});

describe("many designs", () => {
  test("duplicate, rename, delete and bring back", async () => {
    const keep = await open(newName());
    const { id } = opening(keep);
    await edit(keep, 4);
    await keep.act.duplicate(id);
    expect(opening(keep).title).toBe("Copy of Reed runner");
    expect(opening(keep).id).not.toBe(id);
    await keep.act.rename(opening(keep).id, "Peat bed");
    expect(opening(keep).title).toBe("Peat bed");
    keep.act.undo();
    expect(opening(keep).title).toBe("Copy of Reed runner");
    await until(keep, isKept);

    const copy = opening(keep).id;
    await keep.act.remove(copy);
    expect(opening(keep).id).toBe(id);
    expect(keep.state.getState().designs.find((d) => d.id === copy)?.deleted).toBeDefined();
    expect(keep.state.getState().notices.at(-1)).toMatchObject({ kind: "deleted", id: copy });
    await keep.act.bringBack(copy);
    expect(opening(keep).id).toBe(copy);
    expect(opening(keep).brief.quilt.rows).toBe(4);

    await keep.act.remove(copy);
    await keep.act.emptyDeleted();
    expect(keep.state.getState().designs.map((d) => d.id)).toEqual([id]);
  });

  test("renaming a design that is not on the page leaves the page alone", async () => {
    const keep = await open(newName());
    const { id } = opening(keep);
    await keep.act.newDesign(trialBrief("Foam throw"));
    await keep.act.rename(id, "Marsh runner");
    expect(opening(keep).title).toBe("Foam throw");
    const { designs } = await until(keep, (s) => s.designs.some((d) => d.title === "Marsh runner"));
    expect(designs).toHaveLength(2);
  });

  test("with the last one deleted a new sample is there", async () => {
    const keep = await open(newName());
    const { id } = opening(keep);
    await keep.act.remove(id);
    await until(keep, isKept);
    expect(opening(keep).id).not.toBe(id);
  });
});

describe("several tabs on one design", () => {
  test("two tabs at first start make one sample", async () => {
    const name = newName();
    const [a, b] = await Promise.all([open(name), open(name)]);
    await until(b, isKept);
    expect(opening(a).id).toBe(opening(b).id);
    const { designs } = await until(a, (s) => s.designs.length > 0);
    expect(designs).toHaveLength(1);
  });

  test("a tab without edits of its own follows", async () => {
    const name = newName();
    const a = await open(name);
    const b = await open(name);
    await edit(a, 8);
    const state = await until(b, (s) => s.open?.brief.quilt.rows === 8);
    expect(state.notices).toEqual([{ kind: "followed", words: "make it 8 rows" }]);
    b.act.undo();
    await until(a, (s) => s.open?.brief.quilt.rows === 3);
    expect(a.state.getState().stale).toBeNull();
  });

  test("edits made in two tabs at once: one is kept, the other is offered as a copy", async () => {
    const name = newName();
    const a = await open(name);
    const b = await open(name);
    a.act.edit("make it 8 rows", setRows(8));
    b.act.edit("make it 5 rows", setRows(5));
    const isDone = (k: KeepStore) => until(k, (s) => s.stale !== null || s.kept.kind === "browser");
    await Promise.all([isDone(a), isDone(b)]);
    const [loser, winner] = a.state.getState().stale ? [a, b] : [b, a];
    const mine = opening(loser).brief.quilt.rows;
    const theirs = opening(winner).brief.quilt.rows;
    expect(new Set([mine, theirs])).toEqual(new Set([8, 5]));
    expect(loser.state.getState().kept).toEqual({
      kind: "not-saved",
      reason: "changed-elsewhere",
    });
    expect(loser.state.getState().stale?.newer?.brief.quilt.rows).toBe(theirs);

    // Further edits of the stale tab never reach the storage.
    loser.act.edit("make it 2 rows", setRows(2));
    await loser.act.saveAgain();
    const c = await open(name);
    expect(opening(c).brief.quilt.rows).toBe(theirs);

    const id = opening(loser).id;
    await loser.act.keepMineAsCopy();
    expect(opening(loser)).toMatchObject({ title: "Copy of Reed runner" });
    expect(opening(loser).brief.quilt.rows).toBe(2);
    expect(loser.state.getState().stale).toBeNull();
    loser.act.undo();
    loser.act.undo();
    expect(opening(loser).brief.quilt.rows).toBe(mine);
    await loser.act.openDesign(id);
    expect(opening(loser).brief.quilt.rows).toBe(theirs);
  });

  test("the newer state can be taken instead", async () => {
    const name = newName();
    const a = await open(name);
    const b = await open(name);
    a.act.edit("make it 8 rows", setRows(8));
    b.act.edit("make it 5 rows", setRows(5));
    const loser = await Promise.race(
      [a, b].map((k) => until(k, (s) => s.stale !== null).then(() => k)),
    );
    const theirs = loser.state.getState().stale?.newer?.brief.quilt.rows;
    await loser.act.takeNewer();
    expect(opening(loser).brief.quilt.rows).toBe(theirs);
    expect(loser.state.getState().kept.kind).toBe("browser");
  });

  test("five tabs editing without pause lose no confirmed edit", async () => {
    const name = newName();
    const tabs = await Promise.all([1, 2, 3, 4, 5].map(() => open(name)));
    const confirmed: number[] = [];
    await Promise.all(
      tabs.map(async (tab, t) => {
        for (let k = 0; k < 6; k++) {
          const value = 10 + 7 * t + k;
          tab.act.edit(`make it ${value} rows`, setRows(value));
          const state = await until(tab, (s) => s.stale !== null || isKept(s));
          if (state.stale) {
            await tab.act.takeNewer();
            continue;
          }
          if (state.open?.brief.quilt.rows === value) confirmed.push(value);
        }
      }),
    );
    await Promise.all(tabs.map((tab) => tab.act.close()));
    const last = await open(name);
    const made: number[] = [];
    for (; opening(last).undoWords; last.act.undo()) made.push(opening(last).brief.quilt.rows);
    expect(confirmed.length).toBeGreaterThan(0);
    for (const value of confirmed) expect(made).toContain(value);
  });

  test("a design deleted in another tab is not written over, and can be brought back", async () => {
    const name = newName();
    const a = await open(name);
    await edit(a, 4);
    const b = await open(name);
    const { id } = opening(b);
    await a.act.remove(id);
    const { kept } = await until(b, (s) => s.stale !== null);
    expect(kept).toEqual({ kind: "not-saved", reason: "deleted-elsewhere" });
    await b.act.bringBack(id);
    await until(b, isKept);
    expect(opening(b).brief.quilt.rows).toBe(4);
    expect(b.state.getState().stale).toBeNull();
  });
});
