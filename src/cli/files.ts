import { mkdir, mkdtemp, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { type Brief, canonicalText, LONGEST_TEXT, readBrief } from "../core/brief/index.ts";
import { Ending, EXIT } from "./exit.ts";
import type { Io } from "./io.ts";

/** A brief and where it came from ("-" is standard input). */
export interface Input {
  readonly path: string;
  readonly brief: Brief;
}

/** Reads and checks a brief. Refusals end the command with code 2, unreadable files with 3. */
export async function readInput(path: string, io: Io): Promise<Input> {
  const text = path === "-" ? await readStdin(io) : await readText(path);
  const read = readBrief(text);
  if (read.ok) return { path, brief: read.brief };
  const from = path === "-" ? "standard input" : path;
  throw new Ending(
    EXIT.bad,
    ...read.refusals.map((r) => `${from}: ${r.path ? `${r.path}: ` : ""}${r.message}`),
  );
}

/**
 * A brief that was changed by what stands on the command line, as it was given. One that would not
 * open again ends the command with code 2, the place and the reason.
 */
export function readable(command: string, brief: Brief): Brief {
  const read = readBrief(canonicalText(brief));
  if (read.ok) return brief;
  throw new Ending(EXIT.bad, ...read.refusals.map((r) => `${command}: ${r.path}: ${r.message}`));
}

/** The text of a file; unreadable ones end the command with code 3. */
export async function readText(path: string): Promise<string> {
  try {
    const { size } = await stat(path);
    if (size > LONGEST_TEXT) throw new Error(`larger than ${LONGEST_TEXT} bytes`);
    return decode(await readFile(path));
  } catch (e) {
    if (e instanceof Ending) throw e;
    throw new Ending(EXIT.io, `cannot read ${path}: ${reason(e)}`);
  }
}

async function readStdin(io: Io): Promise<string> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of io.input()) {
    size += chunk.length;
    if (size > LONGEST_TEXT)
      throw new Ending(EXIT.bad, "standard input: larger than a brief may be");
    chunks.push(chunk);
  }
  return decode(Buffer.concat(chunks));
}

function decode(bytes: Buffer): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Ending(EXIT.bad, "the text is not UTF-8");
  }
}

export interface Writing {
  /** Files that were read: none of them is ever written over. */
  readonly inputs: readonly string[];
  /** Names of files that are briefs: one that is there already may have been worked on since. */
  readonly briefs?: readonly string[];
}

/**
 * Writes a set of files into `folder`, all or nothing as far as the file system allows: everything
 * is first written under temporary names beside its place, then renamed. Never writes over what was
 * read, nor over a brief that is there and differs.
 */
export async function writeAll(
  folder: string,
  files: ReadonlyMap<string, string | Uint8Array>,
  { inputs, briefs = [] }: Writing,
): Promise<void> {
  const target = resolve(folder);
  const read = new Set(inputs.map((path) => resolve(path)));
  for (const name of files.keys())
    if (read.has(resolve(target, name)))
      throw new Ending(EXIT.bad, `${name} would overwrite what was read from it`);
  let temporary: string | undefined;
  try {
    for (const name of briefs) await notThere(join(target, name), files.get(name));
    await mkdir(target, { recursive: true });
    temporary = await mkdtemp(join(target, ".eighthwise-"));
    for (const [name, content] of files) {
      await mkdir(dirname(join(temporary, name)), { recursive: true });
      await writeFile(join(temporary, name), content);
    }
    for (const name of files.keys()) {
      await mkdir(dirname(join(target, name)), { recursive: true });
      await rename(join(temporary, name), join(target, name));
    }
  } catch (e) {
    throw new Ending(EXIT.io, `cannot write to ${folder}: ${reason(e)}`);
  } finally {
    if (temporary) await rm(temporary, { recursive: true, force: true });
  }
}

/** Throws where a file is there that holds anything else than this. */
async function notThere(path: string, content: string | Uint8Array | undefined): Promise<void> {
  const there = await readFile(path).catch((e: NodeJS.ErrnoException) => {
    if (e.code !== "ENOENT" && e.code !== "ENOTDIR") throw e;
  });
  if (there && content !== undefined && !there.equals(Buffer.from(content)))
    throw new Error(`${basename(path)} is there already, and holds another design`);
}

/** Writes one file; refuses to replace one that is there, and leaves none that is cut short. */
export async function writeNew(path: string, content: string): Promise<void> {
  try {
    await mkdir(dirname(resolve(path)), { recursive: true });
    await writeFile(path, content, { flag: "wx" });
  } catch (e) {
    const mine = ["ENOSPC", "EFBIG", "EDQUOT", "EIO"];
    if (mine.includes((e as NodeJS.ErrnoException).code ?? "")) await rm(path, { force: true });
    throw new Ending(EXIT.io, `cannot write ${path}: ${reason(e)}`);
  }
}

/** Why a file or a stream could not be read or written, in words. */
export const reason = (e: unknown): string => {
  const code = (e as NodeJS.ErrnoException).code;
  const known: Record<string, string> = {
    ENOENT: "there is no such file",
    EACCES: "permission denied",
    EISDIR: "it is a folder",
    EEXIST: "a file of that name is there already",
    ENOTDIR: "a part of the path is not a folder",
    ENOSPC: "the disk is full",
    EDQUOT: "the disk is full",
    EFBIG: "larger than a file may be here",
    EROFS: "the disk cannot be written to",
  };
  return (code && known[code]) ?? (e as Error).message;
};
