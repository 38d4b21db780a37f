import { type Brief, type Fabric, leftAfterWash, usableWidth } from "../../brief/index.ts";
import { setWidth } from "../../fabric/index.ts";
import type { FabricToPlan, Sheet } from "../../layout/index.ts";
import { knownLength, type Length } from "../../measure/index.ts";

/**
 * Every fabric as the planner cuts from it, washed if the brief says so; at the next narrower width
 * where there is one and it is asked for.
 */
export function stockOf(brief: Brief, seam: Length, narrower = false): FabricToPlan[] {
  return brief.fabrics.map((f): FabricToPlan => {
    const stock = { fabricId: f.id, width: usableWidth(brief, f, narrower), folds: f.folds };
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

/** Pieces in hand shrink with their fabric. Without a direction or stripe they may lie either way. */
function piecesInHand(brief: Brief, f: Fabric): Sheet[] {
  const { along, across } = leftAfterWash(f);
  const eitherWay = !f.directional && (f.kind === "plain" || f.kind === "print");
  return (f.inHand ?? []).map((p, i) => ({
    id: `${f.id}-in-hand-${i + 1}`,
    fabricId: f.id,
    width: knownLength(p.width, brief.unit) * across,
    length: knownLength(p.length, brief.unit) * along,
    count: p.count,
    ...(eitherWay && { eitherWay }),
  }));
}
