import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type Brief, readBrief } from "../../core/brief/index.ts";
import { SecondCopies } from "./second.ts";
import { trialBrief } from "./trial.testing.ts";

/** A folder of the page's own, in memory; `wrote` says what was put in place, and when. */
function folderInMemory() {
  const files = new Map<string, string>();
  const wrote: { at: number; rows: number }[] = [];
  const handle = (name: string) => ({
    kind: "file",
    getFile: async () => ({ text: async () => files.get(name) ?? "" }),
    createWritable: async () => {
      let text = "";
      return {
        write: async (part: string) => {
          text += part;
        },
        close: async () => {
          files.set(name, text);
          wrote.push({ at: performance.now(), rows: JSON.parse(text).quilt.rows });
        },
      };
    },
  });
  const folder = {
    getFileHandle: async (name: string) => handle(name),
    removeEntry: async (name: string) => void files.delete(name),
    async *entries() {
      for (const name of files.keys()) yield [name, handle(name)] as const;
    },
  };
  return { files, wrote, root: { getDirectoryHandle: async () => folder } };
}

let disk: ReturnType<typeof folderInMemory>;

beforeEach(() => {
  vi.useFakeTimers();
  disk = folderInMemory();
  vi.stubGlobal("navigator", { storage: { getDirectory: async () => disk.root } });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const brief = (rows: number): Brief => {
  const plain = trialBrief();
  return { ...plain, quilt: { ...plain.quilt, rows } };
};

test("the first edit is copied almost at once, edits without pause every 2.5 seconds, then the last", async () => {
  const copies = new SecondCopies("trial");
  const start = performance.now();
  // An edit every 10 milliseconds for 6 seconds; the count of rows stays within what a design may hold.
  for (let edit = 1; edit <= 600; edit++) {
    copies.note("first", brief(edit));
    await vi.advanceTimersByTimeAsync(10);
  }
  await vi.advanceTimersByTimeAsync(1_000);
  const at = disk.wrote.map((w) => w.at - start);
  expect(at).toHaveLength(4);
  expect(at[0]).toBeLessThanOrEqual(100);
  expect(at[1] - at[0]).toBeCloseTo(2_500, -2);
  expect(at[2] - at[1]).toBeCloseTo(2_500, -2);
  expect(disk.wrote.at(-1)?.rows).toBe(600);
  // What a copy holds is the design as it stood when it was made, give or take the edit under way.
  for (const w of disk.wrote.slice(0, 3))
    expect(Math.abs(w.rows - (w.at - start) / 10)).toBeLessThan(3);
});

test("an edit after a while is copied soon; a design that is let go is not copied again", async () => {
  const copies = new SecondCopies("trial");
  copies.note("first", brief(2));
  await vi.advanceTimersByTimeAsync(60_000);
  copies.note("first", brief(3));
  await vi.advanceTimersByTimeAsync(60);
  expect(disk.wrote.map((w) => w.rows)).toEqual([2, 3]);
  copies.note("first", brief(4));
  const gone = copies.forget("first");
  await vi.advanceTimersByTimeAsync(10_000);
  await gone;
  expect([...disk.files.keys()]).toEqual([]);
});

test("a design that is opened is copied once it stands, so that a visit cut short is made up for", async () => {
  const copies = new SecondCopies("trial");
  copies.opened("first", brief(7));
  await vi.advanceTimersByTimeAsync(600);
  expect(disk.wrote).toEqual([]);
  await vi.advanceTimersByTimeAsync(200);
  expect(disk.wrote.map((w) => w.rows)).toEqual([7]);
});

test("what is read is every copy that is there; closing copies what still waits", async () => {
  const copies = new SecondCopies("trial");
  copies.note("a", brief(2));
  copies.note("b", brief(5));
  await copies.close();
  disk.files.set("notes.txt", "no design");
  const read = (await new SecondCopies("trial").read()).map(({ id, text }) => {
    const { ok } = readBrief(text);
    return [id, ok && JSON.parse(text).quilt.rows];
  });
  expect(read).toEqual([
    ["a", 2],
    ["b", 5],
  ]);
});
