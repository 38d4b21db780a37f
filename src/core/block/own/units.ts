import type { OwnBlock, UnitBlock } from "../../brief/schema.ts";
import type { Finding } from "../../findings/finding.ts";
import { knownLength, type Length, tolerances, type Unit } from "../../measure/index.ts";
import { layOutOwn, type OwnLaidOut } from "./lay-out-own.ts";

/** The common units, each said in the words a maker would use for a block of her own. */
const SEAMS: Readonly<Record<Exclude<UnitBlock["unit"], "half-rectangle">, readonly string[]>> = {
  square: [],
  "half-square": ["from A to C"],
  "quarter-square": ["from A to C", "from B to the center", "from D to the center"],
  "four-patch": [
    "from the middle of AB to the middle of CD",
    "from the middle of DA to the middle of BC",
  ],
  "nine-patch": [
    "from a third of AB to a third of DC",
    "from two thirds of AB to two thirds of DC",
    "from a third of AD to a third of BC",
    "from two thirds of AD to two thirds of BC",
  ],
};

/** Units whose diagonals are at 45 degrees, so that a rectangle cannot be one. */
const SQUARE_ONLY: readonly UnitBlock["unit"][] = ["half-square", "quarter-square"];

/**
 * A unit said by name, as a block. Both triangles of a half-rectangle have the same hand: a right
 * one stands on its long leg with the square corner at the right; right when no hand is said.
 * Finding `unit-not-square` when a half- or quarter-square is not.
 */
export function layOutUnit(block: UnitBlock, unit: Unit, seam: Length): OwnLaidOut {
  const width = knownLength(block.width, unit);
  const height = block.height === undefined ? width : knownLength(block.height, unit);
  const alike = Math.abs(width - height) <= tolerances(unit).join;
  const seams =
    block.unit === "half-rectangle"
      ? [diagonal(block.hand ?? "right", width > height)]
      : [...SEAMS[block.unit]];
  const own: OwnBlock = {
    kind: "own",
    id: block.id,
    fabric: block.fabric,
    outline: { width: block.width, height: block.height ?? block.width },
    seams,
  };
  const laid = layOutOwn(own, unit, seam);
  if (alike || !SQUARE_ONLY.includes(block.unit)) return laid;
  const finding: Finding = {
    code: "unit-not-square",
    severity: "blocks",
    place: block.id,
    needed: width,
    found: height,
    unit,
    words: { unit: block.unit },
  };
  return { ...laid, findings: [...laid.findings, finding] };
}

/** A wide half-rectangle cut from A to C stands on AB with its square corner at B, at the right. */
const diagonal = (hand: "left" | "right", wide: boolean): string =>
  (hand === "right") === wide ? "from A to C" : "from B to D";
