import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Face } from "../core/sheet/index.ts";
import { FONT_PATHS, type FontFiles } from "./fonts.ts";
import { unpackedFont } from "./sfnt.ts";

let unpacked: FontFiles | undefined;

/** The faces from the installed packages, unpacked once. */
export function nodeFonts(): FontFiles {
  unpacked ??= read();
  return unpacked;
}

function read(): FontFiles {
  const require = createRequire(import.meta.url);
  const bytes = (path: string): Uint8Array =>
    unpackedFont(new Uint8Array(readFileSync(require.resolve(path))));
  const faces = Object.entries(FONT_PATHS).map(([face, paths]) => [
    face as Face,
    { latin: bytes(paths.latin), more: bytes(paths.more) },
  ]);
  return Object.fromEntries(faces) as FontFiles;
}
