import type { Face } from "../core/sheet/index.ts";

/** One face as plain font files (unpacked): Latin, and the file with more Latin letters, embedded only when used. */
export interface FaceFiles {
  readonly latin: Uint8Array;
  readonly more: Uint8Array;
}

export type FontFiles = Readonly<Record<Face, FaceFiles>>;

/** Where the files lie in their packages (both SIL Open Font License 1.1). */
export const FONT_PATHS: Readonly<Record<Face, { readonly latin: string; readonly more: string }>> =
  {
    sans: {
      latin: "@fontsource/alegreya-sans/files/alegreya-sans-latin-400-normal.woff",
      more: "@fontsource/alegreya-sans/files/alegreya-sans-latin-ext-400-normal.woff",
    },
    bold: {
      latin: "@fontsource/alegreya-sans/files/alegreya-sans-latin-700-normal.woff",
      more: "@fontsource/alegreya-sans/files/alegreya-sans-latin-ext-700-normal.woff",
    },
    italic: {
      latin: "@fontsource/alegreya-sans/files/alegreya-sans-latin-400-italic.woff",
      more: "@fontsource/alegreya-sans/files/alegreya-sans-latin-ext-400-italic.woff",
    },
    serif: {
      latin: "@fontsource/young-serif/files/young-serif-latin-400-normal.woff",
      more: "@fontsource/young-serif/files/young-serif-latin-ext-400-normal.woff",
    },
  };
