import { whyNot } from "./database.ts";

/** Pauses before a second, third and fourth try, in milliseconds. */
const PAUSES = [60, 300, 1200];

/**
 * Reads from the storage, and once more when the browser says that reading failed: a storage opened
 * right after a crash may answer so at first. A design must not pass for missing or damaged because
 * of that. Faults that no patience mends (full, off, newer) and faults of the data come through at once.
 */
export async function again<T>(read: () => Promise<T>, pauses = PAUSES): Promise<T> {
  for (const pause of pauses) {
    try {
      return await read();
    } catch (error) {
      if (!(error instanceof DOMException) || whyNot(error).reason !== "failed") throw error;
      await new Promise((done) => setTimeout(done, pause));
    }
  }
  return read();
}
