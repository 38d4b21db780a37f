/**
 * A design exactly as it lies in the storage, for download: read with the browser's own calls and
 * judged by nobody, so that it works on records and databases this page does not understand.
 * The crash page uses it; it imports nothing.
 */
export interface RawDesign {
  readonly design: unknown;
  readonly others: Readonly<Record<string, readonly unknown[]>>;
}

export async function rawDesign(db: IDBDatabase, id: string): Promise<RawDesign> {
  const names = Array.from(db.objectStoreNames);
  const tx = db.transaction(names);
  const every = await Promise.all(
    names.map(async (name) => [name, await all(tx.objectStore(name))] as const),
  );
  const rows = Object.fromEntries(every);
  const design = (rows.designs ?? []).find((row) => field(row, "id") === id) ?? null;
  const others = every
    .filter(([name]) => name !== "designs")
    .map(([name, list]) => [name, list.filter((row) => field(row, "design") === id)]);
  return { design, others: Object.fromEntries(others) };
}

/** Every record of a store. */
export function all(store: IDBObjectStore): Promise<unknown[]> {
  return new Promise((resolve, reject) => {
    const request = store.getAll();
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

export const field = (row: unknown, name: string): unknown =>
  typeof row === "object" && row !== null ? (row as Record<string, unknown>)[name] : undefined;
