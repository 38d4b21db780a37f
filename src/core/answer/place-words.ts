import type { Brief } from "../brief/index.ts";
import type { Way } from "../fabric/index.ts";
import { type Length, printWithUnit } from "../measure/index.ts";
import { stepOfBrief } from "./words.ts";

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
