import type { Patch } from "immer";
import type { Database, FileRow, Head, StepRow, VersionRow } from "./database.ts";
import { type Line, sharedSteps } from "./history.ts";
import { type Packed, Pictures, pack, unpack } from "./pack.ts";
import { same } from "./same.ts";
import type { Step } from "./types.ts";

/** Everything of one design from `n` on, in the stores keyed by design and number. */
const from = (design: string, n: number): IDBKeyRange =>
  IDBKeyRange.bound([design, n], [design, Number.POSITIVE_INFINITY]);

export const newMark = (): string => randomText(16);

/** Letters and figures drawn at random: names for designs and marks for writes. */
export function randomText(length: number): string {
  const bytes = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(bytes, (b) => (b % 36).toString(36)).join("");
}

/** What a session knows to lie in the storage: nothing, for a design not written yet. */
export interface Known {
  readonly mark: string;
  readonly revision: number;
  readonly line: Line;
}

export type Written =
  | { readonly kind: "written"; readonly known: Known; readonly broughtBack: boolean }
  /** Another tab wrote since: nothing was written. */
  | { readonly kind: "changed" };

/**
 * Writes a line over the state the tab has read, in one transaction: the whole of it or nothing.
 * Steps already stored are not written again. A record that is gone (storage cleared) is written
 * anew in full; a record with another mark is left alone.
 */
export async function writeLine(
  db: Database,
  id: string,
  line: Line,
  known: Known | null,
  pictures: Pictures,
  stamp: { readonly mark: string; readonly now: string },
): Promise<Written> {
  const tx = db.transaction(["designs", "steps", "pictures"], "readwrite", {
    durability: "strict",
  });
  const designs = tx.objectStore("designs");
  const head = await designs.get(id);
  if (head && head.mark !== known?.mark) {
    await tx.done;
    return { kind: "changed" };
  }
  const shared = head && known ? sharedSteps(known.line.steps, line.steps) : 0;
  const doc = pack(line.brief, pictures);
  const rows = line.steps.slice(shared).map((step, i) => toRow(id, shared + 1 + i, step, pictures));
  const latest = await designs.index("touched").openKeyCursor(null, "prev");
  const revision = (head?.revision ?? known?.revision ?? 0) + 1;
  const { mark, now } = stamp;
  const next: Head = {
    id,
    title: line.brief.title,
    revision,
    mark,
    touched: (latest?.key ?? 0) + 1,
    savedAt: now,
    doc,
    at: line.at,
    top: line.steps.length,
  };
  const steps = tx.objectStore("steps");
  const held = new Set(
    (await tx.objectStore("pictures").getAllKeys(from(id, 0))).map(([, n]) => n),
  );
  const fresh = picturesOf([doc, ...rows.map((r) => r.ways)]).filter((n) => !held.has(n));
  await Promise.all([
    designs.put(next),
    steps.delete(from(id, shared + 1)),
    ...rows.map((row) => steps.put(row)),
    ...fresh.map((n) =>
      tx.objectStore("pictures").put({ design: id, n, text: pictures.text(n) ?? "" }),
    ),
    tx.done,
  ]);
  return {
    kind: "written",
    known: { mark, revision, line },
    broughtBack: known !== null && head === undefined,
  };
}

const picturesOf = (packed: readonly Packed[]): number[] => [
  ...new Set(packed.flatMap((p) => p.holes.map((h) => h.picture))),
];

function toRow(design: string, n: number, step: Step, pictures: Pictures): StepRow {
  const ways = pack({ patches: step.patches, inverse: step.inverse }, pictures);
  return { design, n, words: step.words, at: step.at, ways };
}

function toStep(row: StepRow, pictures: Pictures): Step {
  const { patches, inverse } = unpack(row.ways, pictures) as { patches: Patch[]; inverse: Patch[] };
  return { words: row.words, at: row.at, patches, inverse };
}

/**
 * Reads a write back and compares: the design, and every step from `first` on, with its pictures.
 * `changed`: another tab has written in the meantime, so there is nothing to compare with.
 */
export async function readBack(
  db: Database,
  id: string,
  written: Known,
  first: number,
  pictures: Pictures,
): Promise<"equal" | "differs" | "changed"> {
  const tx = db.transaction(["designs", "steps", "pictures"]);
  const [head, rows] = await Promise.all([
    tx.objectStore("designs").get(id),
    tx.objectStore("steps").getAll(from(id, first + 1)),
  ]);
  if (head?.mark !== written.mark) return "changed";
  const { line } = written;
  const sent = line.steps.slice(first).map((s, i) => toRow(id, first + 1 + i, s, pictures));
  const doc = pack(line.brief, pictures);
  const numbers = picturesOf([doc, ...sent.map((r) => r.ways)]);
  const texts = await Promise.all(
    numbers.map(async (n) => (await tx.objectStore("pictures").get([id, n]))?.text),
  );
  const equal =
    head.at === line.at &&
    head.top === line.steps.length &&
    same(head.doc, doc) &&
    same(rows, sent) &&
    numbers.every((n, i) => texts[i] === pictures.text(n));
  return equal ? "equal" : "differs";
}

/** The mark and fate of a design, without reading it all. */
export async function readHead(db: Database, id: string): Promise<Head | undefined> {
  return db.get("designs", id);
}

/** A design as stored, its document not yet judged. Null when there is none. */
export async function readRows(
  db: Database,
  id: string,
): Promise<{ head: Head; document: unknown; steps: Step[]; pictures: Pictures } | null> {
  const tx = db.transaction(["designs", "steps", "pictures"]);
  const [head, rows, texts] = await Promise.all([
    tx.objectStore("designs").get(id),
    tx.objectStore("steps").getAll(from(id, 0)),
    tx.objectStore("pictures").getAll(from(id, 0)),
  ]);
  if (!head) return null;
  const pictures = new Pictures(texts);
  const document = unpack(head.doc, pictures);
  return { head, document, steps: readSteps(head, rows, pictures), pictures };
}

/** A damaged history is let go rather than followed into states that never were. */
function readSteps(head: Head, rows: readonly StepRow[], pictures: Pictures): Step[] {
  const whole =
    rows.length === head.top && rows.every((row, i) => row.n === i + 1) && head.at <= head.top;
  try {
    return whole ? rows.map((row) => toStep(row, pictures)) : [];
  } catch {
    return [];
  }
}

/** Marks a design deleted, or not; the record itself stays. */
export async function setDeleted(db: Database, id: string, deleted: string | null): Promise<void> {
  const tx = db.transaction("designs", "readwrite", { durability: "strict" });
  const head = await tx.store.get(id);
  if (head) {
    const { deleted: _, ...rest } = head;
    const next = { ...rest, revision: head.revision + 1, mark: newMark() };
    await tx.store.put(deleted === null ? next : { ...next, deleted });
  }
  await tx.done;
}

/** Deletes for good what lies among the deleted. */
export async function purge(db: Database): Promise<void> {
  const stores = ["designs", "steps", "versions", "pictures", "files"] as const;
  const tx = db.transaction(stores, "readwrite", { durability: "strict" });
  const gone = (await tx.objectStore("designs").getAll()).filter((h) => h.deleted);
  await Promise.all([
    ...gone.flatMap(({ id }) => [
      tx.objectStore("designs").delete(id),
      tx.objectStore("files").delete(id),
      ...(["steps", "versions", "pictures"] as const).map((s) =>
        tx.objectStore(s).delete(from(id, 0)),
      ),
    ]),
    tx.done,
  ]);
}

/**
 * Keeps a state of a design as a dated version, if the tab's picture of the design is still the
 * stored one (otherwise its picture numbers could be another tab's). False when it is not.
 */
export async function writeVersion(
  db: Database,
  id: string,
  known: Known,
  version: { readonly name: string; readonly at: string; readonly brief: unknown },
  pictures: Pictures,
): Promise<boolean> {
  const stores = ["designs", "versions", "pictures"] as const;
  const tx = db.transaction(stores, "readwrite", { durability: "strict" });
  const head = await tx.objectStore("designs").get(id);
  if (head?.mark !== known.mark) {
    await tx.done;
    return false;
  }
  const versions = tx.objectStore("versions");
  const last = await versions.openKeyCursor(from(id, 0), "prev");
  const n = (last ? last.key[1] : 0) + 1;
  const { name, at, brief } = version;
  const doc = pack(brief, pictures);
  await Promise.all([
    versions.put({ design: id, n, name, at, revision: known.revision, doc }),
    ...picturesOf([doc]).map((p) =>
      tx.objectStore("pictures").put({ design: id, n: p, text: pictures.text(p) ?? "" }),
    ),
    tx.done,
  ]);
  return true;
}

/** The dated versions of a design, newest first. */
export async function readVersions(db: Database, id: string): Promise<VersionRow[]> {
  return (await db.getAll("versions", from(id, 0))).reverse();
}

/** When the newest dated version was kept, in milliseconds; undefined when there is none. */
export async function lastVersionAt(db: Database, id: string): Promise<number | undefined> {
  const cursor = await db.transaction("versions").store.openCursor(from(id, 0), "prev");
  return cursor ? Date.parse(cursor.value.at) : undefined;
}

export async function readFileRow(db: Database, id: string): Promise<FileRow | undefined> {
  return db.get("files", id);
}

export async function writeFileRow(db: Database, row: FileRow): Promise<void> {
  await db.put("files", row);
}
