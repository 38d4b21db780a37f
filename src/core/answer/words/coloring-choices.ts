import type { Brief } from "../../brief/index.ts";
import { colorings } from "../../fabric/index.ts";
import type { Choice } from "./word.ts";

/** One other coloring of a block; `word` is the part of its label that differs. */
export interface ColoringChoice extends Choice {
  readonly word: string;
}

/**
 * At most four other colorings of one block: two roles exchanged, light and dark inverted, one role in
 * another fabric. Sizes stay. Throws RangeError when the brief has no such block.
 */
export const coloringChoices = (b: Brief, blockId: string): ColoringChoice[] =>
  colorings(b, blockId).map(({ label, word, brief, changes }) => ({
    label,
    word,
    brief,
    change: (d) => {
      for (const { path, to } of changes) {
        const [, index, , role] = path;
        d.blocks[Number(index)].fabric[String(role)] = to;
      }
    },
    pictureKind: "block",
    now: false,
  }));
