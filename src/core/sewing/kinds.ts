import type { SeamTree } from "../block/types.ts";
import { applyTo, distance, type Rigid } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { layOn, type PatchKey } from "./same.ts";
import { middleOf, type SeamNode, seamNodes, stageOf } from "./tree.ts";
import type { Press } from "./types.ts";

/** Units that are alike: the first one found and every node of the tree that is the same unit. */
export interface Kind {
  readonly node: SeamNode;
  readonly stage: number;
  /** Each member, and whether its first part is the first of `node`. */
  readonly members: readonly { readonly node: SeamNode; readonly sameSide: boolean }[];
}

/** The same pressing with the parts named the other way about; round is round either way. */
const swapped = (p: Press): Press => (p === "first" ? "second" : p === "second" ? "first" : p);

/**
 * Units of the tree in sewing order, congruent ones together. When `pressed` is given, units whose
 * seams are pressed differently are kept apart, because they cannot stand for one another.
 */
export function kindsOf(
  tree: SeamTree,
  key: PatchKey,
  near: Length,
  pressed?: Readonly<Record<string, Press>>,
): Kind[] {
  const kinds: {
    node: SeamNode;
    stage: number;
    members: { node: SeamNode; sameSide: boolean }[];
  }[] = [];
  for (const node of seamNodes(tree)) {
    const stage = stageOf(node);
    let joined = false;
    for (const kind of kinds) {
      if (kind.stage !== stage) continue;
      const motion = layOn(kind.node, node, key, key, near);
      if (!motion || (pressed && !pressedAlike(kind.node, node, motion, pressed, near))) continue;
      kind.members.push({ node, sameSide: firstOnFirst(kind.node, node, motion, near) });
      joined = true;
      break;
    }
    if (!joined) kinds.push({ node, stage, members: [{ node, sameSide: true }] });
  }
  return kinds
    .map((kind, i) => ({ kind, i }))
    .sort((a, b) => a.kind.stage - b.kind.stage || a.i - b.i)
    .map(({ kind }) => kind);
}

const firstOnFirst = (a: SeamNode, b: SeamNode, t: Rigid, near: Length): boolean =>
  distance(applyTo(t, middleOf(a.parts[0])), middleOf(b.parts[0])) <= 10 * near;

/** Do all seams of a, moved on those of b, lie toward the same side? */
function pressedAlike(
  a: SeamNode,
  b: SeamNode,
  t: Rigid,
  pressed: Readonly<Record<string, Press>>,
  near: Length,
): boolean {
  const others = seamNodes(b);
  return seamNodes(a).every((s) => {
    const from = applyTo(t, s.seam.from);
    const to = applyTo(t, s.seam.to);
    const mate = others.find(
      ({ seam: u }) =>
        (distance(u.from, from) <= near && distance(u.to, to) <= near) ||
        (distance(u.from, to) <= near && distance(u.to, from) <= near),
    );
    if (!mate) return false;
    const mine = pressed[s.id];
    return pressed[mate.id] === (firstOnFirst(s, mate, t, near) ? mine : swapped(mine));
  });
}
