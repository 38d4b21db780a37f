import { LONGEST_TEXT } from "../../core/brief/index.ts";
import { exactText } from "./text.ts";

/** Real files. Browsers that let a page write them (File System Access) do; the others download. */
interface FilePickers {
  showOpenFilePicker?: (options: object) => Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>;
}

interface Permitted extends FileSystemFileHandle {
  queryPermission?: (mode: object) => Promise<PermissionState>;
  requestPermission?: (mode: object) => Promise<PermissionState>;
}

const TYPES = [{ description: "Design", accept: { "application/json": [".json"] } }];
const pickers = (): FilePickers => globalThis as FilePickers;

export interface Chosen {
  readonly file: File;
  readonly handle?: FileSystemFileHandle;
}

/** Lets the maker choose a file. Null when nothing was chosen. */
export async function chooseFile(): Promise<Chosen | null> {
  const pick = pickers().showOpenFilePicker;
  if (!pick) return chooseByInput();
  const handle = await unlessGivenUp(pick.call(globalThis, { types: TYPES }).then(([h]) => h));
  return handle && { file: await handle.getFile(), handle };
}

function chooseByInput(): Promise<Chosen | null> {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  return new Promise((resolve) => {
    input.onchange = () => resolve(input.files?.[0] ? { file: input.files[0] } : null);
    input.oncancel = () => resolve(null);
    input.click();
  });
}

/** Lets the maker name a file to save to. `unable`: this browser cannot; null: given up. */
export async function chooseWhere(name: string): Promise<FileSystemFileHandle | "unable" | null> {
  const pick = pickers().showSaveFilePicker;
  if (!pick) return "unable";
  return unlessGivenUp(pick.call(globalThis, { suggestedName: name, types: TYPES }));
}

async function unlessGivenUp<T>(choice: Promise<T>): Promise<T | null> {
  return choice.catch((error) => {
    if ((error as Error).name === "AbortError") return null;
    throw error;
  });
}

/** The exact text of a file; a sentence when it cannot be a design. */
export async function readText(file: File): Promise<{ text: string } | { why: string }> {
  if (file.size > LONGEST_TEXT) return { why: `it is larger than ${LONGEST_TEXT} bytes` };
  const text = exactText(await file.arrayBuffer());
  return text === null ? { why: "it is not text in UTF-8" } : { text };
}

export async function mayWrite(handle: Permitted, ask: boolean): Promise<boolean> {
  const mode = { mode: "readwrite" };
  if (!handle.queryPermission) return true;
  if ((await handle.queryPermission(mode)) === "granted") return true;
  return ask && (await handle.requestPermission?.(mode)) === "granted";
}

/** Writes a file and reads it back. Throws when it does not hold what was written. */
export async function writeFile(handle: FileSystemFileHandle, text: string): Promise<void> {
  const stream = await handle.createWritable();
  try {
    await stream.write(text);
    await stream.close();
  } catch (error) {
    await stream.abort().catch(() => {});
    throw error;
  }
  const back = await readText(await handle.getFile());
  if (!("text" in back) || back.text !== text) throw new Error("what was read back differs");
}

/** Hands a file to the browser's downloads. Whether it arrives there the page cannot know. */
export function handOver(name: string, content: BlobPart, type = "application/json"): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/**
 * Lets files be dropped anywhere on the page. Gives back how to stop.
 * A dropped file carries its handle where the browser knows such, so that it can be saved in place.
 */
export function acceptDrops(
  target: EventTarget,
  open: (file: File, handle?: FileSystemFileHandle) => Promise<void>,
): () => void {
  const over = (event: Event) => {
    if ((event as DragEvent).dataTransfer?.types.includes("Files")) event.preventDefault();
  };
  const drop = async (event: Event) => {
    const transfer = (event as DragEvent).dataTransfer;
    if (!transfer?.files.length) return;
    event.preventDefault();
    // Both must be asked before the first wait: the list of items dies with the event.
    const [file] = transfer.files;
    const item = transfer.items[0] as DataTransferItem & {
      getAsFileSystemHandle?: () => Promise<FileSystemHandle | null>;
    };
    const handle = await item.getAsFileSystemHandle?.().catch(() => null);
    await open(file, handle?.kind === "file" ? (handle as FileSystemFileHandle) : undefined);
  };
  target.addEventListener("dragover", over);
  target.addEventListener("drop", drop);
  return () => {
    target.removeEventListener("dragover", over);
    target.removeEventListener("drop", drop);
  };
}
