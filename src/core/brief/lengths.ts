import { knownLength, type Length } from "../measure/index.ts";
import type { Brief, Fabric } from "./schema.ts";

/** The seam everything is sewn with, in the brief's unit. */
export const seamOf = (brief: Pick<Brief, "seam" | "unit">): Length =>
  knownLength(brief.seam, brief.unit);

/**
 * What of a length and a width of this fabric is left when it is cut, 0 to 1: less than 1 where it is
 * washed first. Widths, bands and repeats are said as the fabric was bought; `along` is the way of
 * the selvage.
 */
export function leftAfterWash(fabric: Pick<Fabric, "shrinkage">): {
  readonly along: number;
  readonly across: number;
} {
  const { length = 0, width = 0 } = fabric.shrinkage ?? {};
  return { along: 1 - length / 100, across: 1 - width / 100 };
}

/**
 * Usable width as it is cut: after the wash, at the next narrower width where there is one and it is
 * asked for. A strip set is as long as the narrowest of its fabrics; one that feeds itself is left
 * out of its own.
 */
export function usableWidth(
  brief: Pick<Brief, "fabrics" | "unit">,
  f: Fabric,
  narrower = false,
  within: readonly string[] = [],
): Length {
  const own = knownLength((narrower ? f.narrower : undefined) ?? f.usable, brief.unit);
  if (f.kind !== "strip-set") return own * leftAfterWash(f).across;
  const members = f.strips.flatMap(({ fabric }) => {
    const member = brief.fabrics.find((x) => x.id === fabric);
    if (!member || member.id === f.id || within.includes(member.id)) return [];
    return [usableWidth(brief, member, narrower, [...within, f.id])];
  });
  return Math.min(own, ...members);
}
