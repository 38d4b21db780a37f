import italic from "@fontsource/alegreya-sans/files/alegreya-sans-latin-400-italic.woff?url";
import sans from "@fontsource/alegreya-sans/files/alegreya-sans-latin-400-normal.woff?url";
import bold from "@fontsource/alegreya-sans/files/alegreya-sans-latin-700-normal.woff?url";
import italicMore from "@fontsource/alegreya-sans/files/alegreya-sans-latin-ext-400-italic.woff?url";
import sansMore from "@fontsource/alegreya-sans/files/alegreya-sans-latin-ext-400-normal.woff?url";
import boldMore from "@fontsource/alegreya-sans/files/alegreya-sans-latin-ext-700-normal.woff?url";
import serif from "@fontsource/young-serif/files/young-serif-latin-400-normal.woff?url";
import serifMore from "@fontsource/young-serif/files/young-serif-latin-ext-400-normal.woff?url";
import type { FaceFiles, FontFiles } from "./fonts.ts";
import { unpackedFont } from "./sfnt.ts";

/** The faces as files of the page itself: no foreign request, and kept for work without a network. */
export async function webFonts(): Promise<FontFiles> {
  const [a, b, c, d] = await Promise.all([
    face(sans, sansMore),
    face(bold, boldMore),
    face(italic, italicMore),
    face(serif, serifMore),
  ]);
  return { sans: a, bold: b, italic: c, serif: d };
}

async function face(latin: string, more: string): Promise<FaceFiles> {
  const [l, m] = await Promise.all([bytes(latin), bytes(more)]);
  return { latin: l, more: m };
}

async function bytes(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`font ${url}: ${response.status}`);
  return unpackedFont(new Uint8Array(await response.arrayBuffer()));
}
