import type { Brief } from "../../brief/index.ts";
import { onBlocks, type Placed, wedgeBlocks } from "./wedges.ts";
import { choiceWord, type WordSpec } from "./word.ts";

/** "flat side to the edge": which way a circle of sectors is turned, where it makes another block. */
export function turnedWord({ block, index }: Placed): WordSpec | undefined {
  if (
    block.setting !== "sectors" ||
    (block.outline === "square" && (block.n === 6 || block.n === 10))
  )
    return undefined;
  const say = (turned: string): string =>
    `${turned === "flat" ? "flat side" : "corner"} to the edge`;
  return choiceWord({
    id: `turned/${block.id}`,
    role: "How the circle is turned",
    path: `blocks/${index}/turned`,
    text: say(block.turned ?? "flat"),
    options: (["flat", "corner"] as const).map((turned) => ({
      label: say(turned),
      change: onBlocks([block.id], (d) => {
        d.turned = turned;
      }),
      picture: "block",
    })),
  });
}

/** "in squares" or "in hexagons", for the circles that fit a hexagon. */
export function outlineWord(_b: Brief, { block, index }: Placed): WordSpec | undefined {
  if (block.n !== 6 && block.n !== 12) return undefined;
  return choiceWord({
    id: `outline/${block.id}`,
    role: "Outline of the block",
    path: `blocks/${index}/outline`,
    text: `in ${block.outline}s`,
    options: (["square", "hexagon"] as const).map((outline) => ({
      label: `in ${outline}s`,
      change: onBlocks([block.id], (d) => {
        d.outline = outline;
        delete d.side;
      }),
      picture: "block",
    })),
  });
}

/** "corners last": which of the possible orders of a plain block is sewn. */
export function treeWord(b: Brief): WordSpec | undefined {
  const plain = wedgeBlocks(b).filter(({ block }) => block.setting === "plain" && block.n === 8);
  if (plain.length === 0) return undefined;
  const ids = plain.map((p) => p.block.id);
  const now = plain[0].block.tree ?? "corners-last";
  const say = (tree: string): string => tree.replaceAll("-", " ");
  return choiceWord({
    id: "tree",
    role: "When the corners are sewn on",
    path: `blocks/${plain[0].index}/tree`,
    text: say(now),
    options: ["corners-last", "corners-first"].map((tree) => ({
      label: say(tree),
      change: onBlocks(ids, (d) => {
        d.tree = tree;
      }),
      picture: "none",
    })),
  });
}
