import type { Brief } from "../../brief/index.ts";
import type { Way } from "../../fabric/index.ts";
import { type Length, printWithUnit } from "../../measure/index.ts";
import type { WedgeRound } from "../types/look.ts";
import { inWords, stepOfBrief } from "./word.ts";

/**
 * Which way up a wedge lies, in words. A strip set is known by the fabric at its outer edge; any other
 * by the lower edge of its strip: up, it lies at the outer edge of the octagon.
 */
export function wayWords(b: Brief, fabricId: string, way: Way): string {
  const fabric = b.fabrics.find((f) => f.id === fabricId);
  if (fabric?.kind !== "strip-set") return way === "up" ? "lower edge out" : "lower edge in";
  const strips = way === "up" ? fabric.strips : [...fabric.strips].reverse();
  const name = (id: string): string => b.fabrics.find((f) => f.id === id)?.name ?? id;
  const outer = strips[0].fabric;
  // The same fabric at both edges tells nothing: say which strip instead.
  if (outer === strips[strips.length - 1].fabric)
    return way === "up" ? "first strip out" : "first strip in";
  return `${name(outer)} out`;
}

/** ", begun 1 1/2 in into the repeat, bands tilted 10 degrees": nothing where neither is said. */
export function sayPlace(
  b: Brief,
  p: { readonly fabricId: string; readonly start: Length; readonly tilt?: number },
): string {
  const repeats = b.fabrics.find((f) => f.id === p.fabricId)?.kind === "stripe";
  const begun =
    repeats && p.start !== 0
      ? `, each begun ${printWithUnit(p.start, stepOfBrief(b))} into the repeat`
      : "";
  return p.tilt ? `${begun}, bands tilted ${p.tilt} degrees` : begun;
}

/** Where on the picture of a print a piece lies: "3 1/2 in across and 5 in up, half round". */
export function onPicture(across: string, up: string, turn: number): string {
  const turned =
    turn === 0 ? "" : Math.abs(turn) === 180 ? ", half round" : `, turned ${turn} degrees`;
  return `${across} across and ${up} up${turned}`;
}

/** How the wedges of a print lie, when they are to be alike; nothing for other fabrics. */
export function sayPrint(b: Brief, r: WedgeRound, rounds: number): string | undefined {
  if (r.round === "free" || b.fabrics.find((f) => f.id === r.fabricId)?.kind !== "print")
    return undefined;
  const print = (x: Length): string => printWithUnit(x, stepOfBrief(b));
  const s = r.stacks;
  const from = s
    ? `; ${s.layers} layers of ${print(s.layer)}, ${s.stacks} ${s.stacks === 1 ? "stack" : "stacks"}, ${print(s.length)} of fabric`
    : "";
  if (r.round === "by-place") return undefined;
  const mixed = r.round === "mixed" ? " up and down" : "";
  const alike = `${inWords(r.wedges)} alike in each of ${rounds} ${rounds === 1 ? "round" : "rounds"}`;
  if (!r.at)
    return r.round === "mixed" ? undefined : `${alike}, each cut through all layers${from}`;
  return `all${mixed} from ${onPicture(print(r.at.x), print(r.at.y), r.at.turn)}, ${alike}${from}`;
}
