import { type Brief, withOtherUnit } from "../../brief/index.ts";
import { freshId } from "./mix.ts";
import { kindsInPlan, MIXES, planOf, TURNINGS } from "./plan-of-kinds.ts";
import { type Change, changed } from "./word.ts";

/**
 * A change that brings the blocks of another design into this one, by turns with those that are
 * there: its blocks of one's own, or all of its plan when it has none. Fabrics come along, unless one
 * of the same name is there. Lengths keep their unit.
 */
export function bringBlocks(other: Brief): Change {
  return (d) => {
    const from = other.unit === d.unit ? other : changed(other, (o) => withOtherUnit(o, d.unit));
    const named = kindsInPlan(from);
    const own = from.blocks.filter((k) => k.kind === "own");
    const wanted = own.length > 0 ? own : from.blocks.filter((k) => named.includes(k.id));
    const fabricOf = new Map<string, string>();
    const ids = wanted.map((block) => {
      const id = freshId(d, block.id);
      const fabric = Object.fromEntries(
        Object.entries(block.fabric).map(([role, f]) => [
          role,
          broughtFabric(d, from, f, fabricOf),
        ]),
      );
      d.blocks.push({ ...structuredClone(block), id, fabric });
      return id;
    });
    d.quilt.plan = planOf(MIXES["by turns"]([...kindsInPlan(d), ...ids]), TURNINGS["none turned"]);
  };
}

/** The fabric's id here; it comes with what it is made of, if it is not here by its name already. */
function broughtFabric(d: Brief, from: Brief, id: string, known: Map<string, string>): string {
  const there = known.get(id);
  if (there !== undefined) return there;
  const fabric = from.fabrics.find((f) => f.id === id);
  const same = d.fabrics.find((f) => f.name === fabric?.name && f.kind === fabric.kind);
  if (!fabric || same) {
    known.set(id, same?.id ?? d.fabrics[0].id);
    return same?.id ?? d.fabrics[0].id;
  }
  let fresh = id;
  for (let i = 2; d.fabrics.some((f) => f.id === fresh); i++) fresh = `${id}-${i}`;
  known.set(id, fresh);
  const made = { ...structuredClone(fabric), id: fresh };
  if (made.kind === "strip-set")
    made.strips = made.strips.map((s) => ({
      ...s,
      fabric: broughtFabric(d, from, s.fabric, known),
    }));
  d.fabrics.push(made);
  return fresh;
}
