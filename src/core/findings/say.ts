import { printWithUnit, roundUp, type Step } from "../measure/index.ts";
import type { Finding, FindingCode } from "./finding.ts";

/** How a finding's numbers are printed: the maker's step and unit. */
export interface Speech {
  readonly step: Step;
}

interface Words {
  /** `needed` as text with its unit; empty when the finding has none. */
  readonly needed: string;
  readonly found: string;
  /** `needed` up to the next mark of the maker's ruler. */
  readonly neededUp: string;
  /** needed - found and found - needed, for "add so much" and "so much too much". */
  readonly short: string;
  readonly over: string;
  readonly place: string;
  /** A named word the finding carries; empty when it has none. */
  readonly w: (name: string) => string;
}

type Sentence = (f: Words) => string;

/** The only place where findings are worded, for page, command line and sheets alike. */
const SENTENCES: Readonly<Record<FindingCode, Sentence>> = {
  // brief
  "fabric-not-defined": (f) =>
    `${f.place} names the fabric "${f.w("fabric")}", which is not among the fabrics. Add it, or name one of: ${f.w("known")}.`,
  "block-not-defined": (f) =>
    `${f.place} names the block "${f.w("block")}", which is not among the blocks. Add it, or name one of: ${f.w("known")}.`,
  "size-not-positive": (f) => `${f.place} must be more than nothing; it is ${f.found}.`,
  "size-absurd": (f) =>
    `${f.place} is ${f.found}; the most this works with is ${f.needed}. Is the unit right?`,
  "too-many-blocks": (f) =>
    `The quilt has ${f.found} blocks; the most this works with is ${f.needed}.`,
  "id-twice": (f) => `${f.place} uses the name "${f.w("id")}" again; every name must be its own.`,
  "fabric-not-chosen": (f) =>
    `No fabric is chosen for the ${f.w("role")} of block ${f.w("block")}.`,
  // block
  "octagon-does-not-fit": (f) =>
    `The wedges of ${f.place} need a block of ${f.w("more") === "" ? "at least" : "more than"} ${f.needed} finished; it is ${f.found}. Make the block larger (${f.neededUp} or more on your ruler's marks) or the strip narrower.`,
  "side-not-free": (f) =>
    `${f.place} finishes ${f.needed} because of its strip; a side of ${f.found} cannot be chosen for it. Leave the side out, or let the wedges float.`,
  "side-missing": (f) =>
    `${f.place} needs a finished side, because its setting leaves it free: anything from ${f.needed}.`,
  "seam-misses-outline": (f) =>
    `Seam "${f.w("seam")}" of ${f.place} does not run from edge to edge of one part. ${f.w("works")}`,
  "seam-twice": (f) =>
    `Seam "${f.w("seam")}" of ${f.place} runs along a seam or an edge that is there already. ${f.w("works")}`,
  sliver: (f) =>
    `${f.place} leaves a sliver ${f.found} wide; two allowances need ${f.needed}. Move the seam by ${f.short} or more.`,
  "circle-not-closed": (f) =>
    `The wedges of ${f.place} fill ${f.found} of the circle; they must fill ${f.needed}. ${f.w("works")}`,
  "seam-not-understood": (f) =>
    `Seam "${f.w("seam")}" of ${f.place} is not understood. ${f.w("works")}`,
  "pattern-of-sectors": (f) => {
    const { place } = f;
    switch (f.w("why")) {
      case "hexagon-takes-6-or-12":
        return `${place}: a hexagon takes 6 or 12 wedges, not ${f.w("sectors")}. Take a square, or 6 or 12 wedges.`;
      case "named-setting":
        return `${place}: the setting "${f.w("setting")}" is for 8 wedges in a square. Take the setting "sectors", and say which way it is turned and which sectors stay whole.`;
      case "sector-out-of-range":
        return `${place} leaves sector ${f.w("sector")} whole, but its sectors are 0 to ${f.w("last")}.`;
      case "sector-twice":
        return `${place} names sector ${f.w("sector")} twice; name each at most once.`;
      default:
        return `${place}: the setting "${f.w("setting")}" decides "${f.w("why")}" itself. Leave it out, or take the setting "sectors".`;
    }
  },
  "tree-not-known": (f) =>
    `${f.place} asks for the sewing order "${f.w("asked")}"; the orders it has are: ${f.w("known")}. The first is taken.`,
  "role-not-known": (f) =>
    `${f.place} gives the role "${f.w("role")}" to "${f.w("patch")}". A patch is named by the letters of its corners; a role is one of: ${f.w("known")}.`,
  "unit-not-square": (f) =>
    `${f.place} is a ${f.w("unit")} unit, which is square: ${f.needed} wide, it cannot be ${f.found} high. Leave the height out, or take a half-rectangle.`,
  // ruler and recipe
  "ruler-tip-too-wide": (f) =>
    `The ruler's flat tip is ${f.found} wide, but its shortest line is only ${f.needed} long there. Measure the tip again.`,
  "ruler-too-short": (f) =>
    `${f.place} needs a strip of ${f.needed}; the ruler's longest line is ${f.found}. Lengthen it with a straight edge, cut in two passes, or use the template.`,
  "ruler-too-long": (f) =>
    `${f.place} needs a strip of ${f.needed}; the ruler's shortest line is ${f.found}.`,
  "thin-cover": (f) =>
    `${f.place} covers, but with ${f.found} of allowance where ${f.needed} is wanted, over ${f.w("over")} of seam. ${f.w("smallest")}`,
  "does-not-cover": (f) =>
    `${f.place} does not cover: ${f.found} of allowance where ${f.needed} is wanted. ${f.w("smallest")}`,
  "rule-not-understood": (f) =>
    `The rule "${f.w("rule")}" of ${f.place} is not understood. Say it as strip-1/2, strip+1/4 or 2*strip-1.`,
  "cut-off-step": (f) =>
    `${f.place} must be cut at ${f.found}, which lies between the marks of your ruler; it sets the size, so it is not rounded. ${f.w("how")}`,
  "cut-neighbours": (f) =>
    `${f.place} is cut at ${f.found}. On your ruler's marks: ${f.w("below")} or ${f.w("above")}. ${f.w("how")}`,
  "allowances-overlap": (f) =>
    `${f.place} is only ${f.found} wide when sewn, so its allowances overlap; trim them to ${f.needed} after sewing.`,
  "bias-outside": (f) =>
    `${f.place} has a stretchy edge on the outside of the block, ${f.w("angle")} from the thread. ${f.w("avoid")}`,
  "one-hand-only": (f) =>
    `${f.place}: one rectangle cut once gives two of the same hand. Cut half of them with the other diagonal, or with the fabric folded.`,
  "leftover-wedge": (f) =>
    `${f.place} leaves ${f.w("count")} true wedges, each for an octagon ${f.found} across flats; their long sides lie ${f.w("grain")}.`,
  "way-does-not-fit": (f) =>
    `${f.place} cannot be cut as "${f.w("kind")}". Ways that work: ${f.w("kinds")}.`,
  "cut-not-free": (f) =>
    `${f.place} sets the finished size, so its cut stays ${f.needed}; ${f.found} cannot be chosen for it.`,
  "strip-all-seam": (f) =>
    `A strip of ${f.found} for the wedges of ${f.place} goes into the seams; ${f.needed} would leave a sliver. Take a wider strip (${f.neededUp} at the very least) or a narrower seam.`,
  // fabric
  "ring-narrow": (f) =>
    `A ring of ${f.place} shows only ${f.found}; under ${f.needed} it is hard to sew straight.`,
  "seam-in-allowance": (f) =>
    `A seam of ${f.place} falls inside a seam allowance, ${f.found} from the raw edge. Make the outer strip ${f.short} wider.`,
  "seam-in-bulk": (f) =>
    `A seam of ${f.place} falls ${f.found} from the center, where all the points meet; keep it ${f.needed} away.`,
  "strip-set-sum": (f) =>
    `The strips of ${f.place} sew up to ${f.found}; the wedge needs ${f.needed}. ${f.w("change")}`,
  "photo-missing": (f) =>
    `The picture of ${f.place} is not in the file; it is drawn in its plain color.`,
  "eye-will-not-part": (f) =>
    `${f.w("a")} and ${f.w("b")} lie side by side in ${f.place} and are nearly the same value; the line between them will not show.`,
  "odd-wedges": (f) => `${f.place}: ${f.w("what")}`,
  "strip-set-in-itself": (f) => `The strip set ${f.place} is made of itself; name other fabrics.`,
  "strip-hidden": (f) =>
    `${f.w("strip")} of ${f.place} does not show in a wedge cut ${f.w("way")}: all of it lies in the seams.`,
  "strip-too-narrow": (f) =>
    `${f.w("strip")} of ${f.place} is cut ${f.found}; it must be wider than its two seam allowances, ${f.needed}.`,
  "set-strip-on-step": (f) =>
    `No widths on your ruler's marks sew ${f.place} up to ${f.needed}; the nearest sew up to ${f.found}. Trim the ${f.over} off its outer strip.`,
  "rings-do-not-meet": (f) =>
    `The rings of ${f.place} miss each other by up to ${f.found} at a seam. ${f.w("works")}`,
  "rings-nearly-meet": (f) =>
    `The rings of ${f.place} miss each other by as little as ${f.found}; a miss on purpose should be ${f.needed} or more everywhere. ${f.w("works")}`,
  "photo-not-an-image": (f) =>
    `${f.place} is not a picture this can read${f.w("kind") ? ` (it looks like ${f.w("kind")})` : ""}. Use a PNG, JPEG or WebP picture.`,
  "photo-truncated": (f) =>
    `The picture ${f.place} breaks off before its end. Copy it again from where it came.`,
  "photo-too-large": (f) =>
    `The picture ${f.place} has ${f.found} pixels; the most this works with is ${f.needed}. Make it smaller first.`,
  "photo-too-large-file": (f) =>
    `The file of the picture ${f.place} is too large to open; make the picture smaller first.`,
  "photo-animated": (f) => `The picture ${f.place} moves; use a still one.`,
  "photo-cmyk": (f) =>
    `The picture ${f.place} is in printing inks (CMYK), whose colors cannot be read truly here. Save it as an ordinary RGB picture.`,
  "photo-drawing": (f) =>
    `${f.place} is a drawing (SVG), which may carry a program; it is not opened. Use a PNG, JPEG or WebP picture.`,
  "photo-flattened": (f) =>
    `The picture ${f.place} has see-through parts; they are taken as white fabric.`,
  "stripe-unsure": (f) =>
    `The stripe of ${f.place} could not be measured surely: ${f.w("why")}. Mark one repeat by hand.`,
  "repeat-unsure": (f) =>
    `The repeat of ${f.place} could not be found surely: ${f.w("why")}. Mark it by hand.`,
  "photo-too-small": (f) =>
    `The picture of ${f.place} shows ${f.found} of fabric; the piece needs ${f.needed}.`,
  "stock-empty": () => "The list has no rows of fabric.",
  "stock-column-missing": (f) =>
    `The list has no column for ${f.w("missing")}; its columns are: ${f.w("columns")}. Name one so.`,
  "stock-too-many-rows": (f) =>
    `The list has ${f.found} rows; the first ${f.needed} are read. Bring the rest as a second list.`,
  "stock-quote-open": (f) =>
    `${f.place} opens a quote that is never shut, so where its cells end is not known. Shut it, or leave it out.`,
  "stock-too-many-cells": (f) =>
    `${f.place} has ${f.w("what")} cells, more than there are columns. Put quotes round a cell with the separator in it, such as "18,5".`,
  "stock-cell-missing": (f) => `${f.place} has no ${f.w("what")}.`,
  "stock-cell-not-read": (f) =>
    `${f.place}: the ${f.w("what")} "${f.w("text")}" is not a length. Write it as 18, 4 1/2, 2 1/2 yd or 45 cm.`,
  "stock-not-positive": (f) =>
    `${f.place}: the ${f.w("what")} is "${f.w("text")}"; it must be more than nothing.`,
  "stock-count": (f) =>
    `${f.place}: "${f.w("text")}" is not how many there are. Write a whole number from 1 to 1000.`,
  "stock-cost-not-read": (f) =>
    `${f.place}: the cost "${f.w("text")}" is not a number; the row is kept without it.`,
  "repeat-not-said": (f) =>
    `Pieces of ${f.place} are to be alike, but its repeat is not said: how much fabric that takes is not known. Give its repeat.`,
  // layout
  "piece-wider-than-fabric": (f) =>
    `${f.place} is ${f.needed} long and ${f.w("fabric")} is only ${f.found} wide. ${f.w("works")}`,
  "near-miss": (f) =>
    `One more ${f.w("piece")} would fit each strip if ${f.place} were ${f.found} wider.`,
  "not-enough-in-hand": (f) =>
    `The pieces in hand of ${f.place} are ${f.short} short of what is needed. ${f.w("works")}`,
  // quilt
  "blocks-differ-in-size": (f) =>
    `Block ${f.w("a")} finishes ${f.found} and block ${f.w("b")} finishes ${f.needed}; blocks in one quilt must be the same size.`,
  "border-wider-than-quilt": (f) =>
    `${f.place} is ${f.found} wide, more than the ${f.needed} of the quilt inside it.`,
  "no-room-for-corners": (f) =>
    `${f.place} has no room for one block on point with its corner triangles: that takes ${f.needed}. ${f.w("works")}`,
  "allowances-fill-it": (f) =>
    `${f.place} finishes ${f.found}; the two allowances under it fill it. That can be sewn, but press with care.`,
  "block-cut-in-two": (f) => `${f.place}: ${f.w("what")}`,
  "size-not-reached": (f) =>
    `${f.place} does not come to ${f.needed}; the nearest this design comes is ${f.found}.`,
  "block-not-square": (f) =>
    `Block ${f.w("block")} is not square and cannot lie so. ${f.w("works")}`,
  "outline-does-not-fit": (f) =>
    `Block ${f.w("block")} does not lie together with others in this arrangement. ${f.w("works")}`,
  "sashing-in-rows-only": () =>
    "Sashing goes with straight rows or with blocks on point. Leave it out, or take one of those.",
  // sewing
  "crossing-does-not-nest": (f) =>
    `The seams at ${f.place} lie the same way and cannot nest. ${f.w("why")}`,
  "reading-impossible": (f) =>
    `${f.place} cannot be ${f.found}; planned is ${f.needed}. Measure it again.`,
  "reading-other-unit": (f) =>
    `${f.place} was read as ${f.found}; planned is ${f.needed}. It looks like another unit.`,
  "reading-far": (f) =>
    `${f.place} is ${f.found} where ${f.needed} is planned: more than sewing can do. Is it this block, and this strip?`,
  "reading-missing": (f) => `Not enough was measured to tell the causes apart. ${f.w("ask")}`,
  "more-than-one-fault": (f) =>
    `No single cause explains all that was measured on ${f.place}. ${f.w("which")}`,
  // shop
  "kit-no-bolt": (f) =>
    `No bolt on the shelf is named ${f.w("fabric")}. Say which bolt is to be cut for it, or leave it out of the kit.`,
  "kit-bolt-too-narrow": (f) =>
    `The bolt ${f.w("bolt")} has ${f.found} usable: too narrow for a piece of ${f.w("fabric")}. It is not counted.`,
  "kits-fewer": (f) => `${f.needed} kits are wanted; the bolts give ${f.found}.`,
  "kits-not-proved": (f) =>
    `${f.found} kits can be cut. Whether one more can, up to ${f.needed}, was not looked into: too many fabrics share too many bolts.`,
  "kit-several-bolts": (f) =>
    `${f.w("fabric")} comes from ${f.found} bolts: kits of one bolt may differ from those of another in color. No kit mixes them.`,
  // any
  "not-worked-out": (f) =>
    `${f.place} could not be worked out: this is a fault of the program (${f.w("said")}). The rest stands, and the design is kept as it is.`,
};

/** The finding as one or two plain sentences. */
export function say(f: Finding, speech: Speech): string {
  const print = (x: number | undefined): string =>
    x === undefined ? "" : printNumber(x, f.unit, speech);
  const gap = f.needed !== undefined && f.found !== undefined ? f.needed - f.found : undefined;
  return SENTENCES[f.code]({
    needed: print(f.needed),
    found: print(f.found),
    neededUp: f.needed === undefined ? "" : print(roundUp(f.needed, speech.step)),
    short: print(gap),
    over: print(gap === undefined ? undefined : -gap),
    place: f.words?.place ?? f.place,
    w: (name) => f.words?.[name] ?? "",
  }).trim();
}

function printNumber(x: number, unit: Finding["unit"], speech: Speech): string {
  if (unit === "count") return String(x);
  if (unit === "degrees") return `${Number(x.toFixed(1))} degrees`;
  return printWithUnit(x, speech.step);
}
