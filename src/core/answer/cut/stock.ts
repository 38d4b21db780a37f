import type { Brief, Fabric } from "../../brief/index.ts";
import { setWidth } from "../../fabric/index.ts";
import { type FabricToPlan, type Sheet, washed } from "../../layout/index.ts";
import { knownLength, type Length } from "../../measure/index.ts";

/**
 * Every fabric as the planner cuts from it, washed if the brief says so; at the next narrower width
 * where there is one and it is asked for. A strip set is as long as the narrowest of its fabrics.
 */
export function stockOf(brief: Brief, seam: Length, narrower = false): FabricToPlan[] {
  return brief.fabrics.map((f): FabricToPlan => {
    const stock = { fabricId: f.id, width: widthOf(brief, f, narrower), folds: f.folds };
    const inHand = piecesInHand(brief, f);
    return {
      stock,
      ...(inHand.length > 0 && { inHand }),
      ...(f.kind === "strip-set" &&
        !feedsItself(brief, f) && {
          stripSet: {
            strips: f.strips.map((s) => ({
              fabricId: s.fabric,
              cut: knownLength(s.cut, brief.unit),
            })),
            height: setWidth(
              f.strips.map((s) => knownLength(s.cut, brief.unit)),
              seam,
            ),
          },
        }),
    };
  });
}

/** Does this set, through the sets it is sewn from, need itself? Such a set cannot be planned. */
export function feedsItself(brief: Brief, f: Fabric, from: readonly string[] = []): boolean {
  if (from.includes(f.id)) return f.id === from[0];
  if (f.kind !== "strip-set") return false;
  return f.strips.some(({ fabric }) => {
    const member = brief.fabrics.find((x) => x.id === fabric);
    return member !== undefined && feedsItself(brief, member, [...from, f.id]);
  });
}

/** Usable width as it is cut. */
function widthOf(
  brief: Brief,
  f: Fabric,
  narrower: boolean,
  within: readonly string[] = [],
): Length {
  const own = knownLength((narrower ? f.narrower : undefined) ?? f.usable, brief.unit);
  if (f.kind !== "strip-set")
    return washed({ fabricId: f.id, width: own, folds: 0 }, f.shrinkage?.width ?? 0).width;
  const members = f.strips.flatMap(({ fabric }) => {
    const member = brief.fabrics.find((x) => x.id === fabric);
    if (!member || member.id === f.id || within.includes(member.id)) return [];
    return [widthOf(brief, member, narrower, [...within, f.id])];
  });
  return Math.min(own, ...members);
}

/** Pieces in hand shrink with their fabric. Without a direction or stripe they may lie either way. */
function piecesInHand(brief: Brief, f: Fabric): Sheet[] {
  const { length = 0, width = 0 } = f.shrinkage ?? {};
  const eitherWay = !f.directional && (f.kind === "plain" || f.kind === "print");
  return (f.inHand ?? []).map((p, i) => ({
    id: `${f.id}-in-hand-${i + 1}`,
    fabricId: f.id,
    width: knownLength(p.width, brief.unit) * (1 - width / 100),
    length: knownLength(p.length, brief.unit) * (1 - length / 100),
    count: p.count,
    ...(eitherWay && { eitherWay }),
  }));
}
