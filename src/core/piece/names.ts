import type { Hand, Role } from "../block/types.ts";
import { cross, edges } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { isSymmetric, type Shape } from "./shape.ts";

const ROLE_NAMES: Readonly<Record<Role, string>> = {
  "wedge-even": "wedge",
  "wedge-odd": "wedge",
  kite: "kite",
  corner: "corner",
  trapezoid: "trapezoid",
  "background-left": "background",
  "background-right": "background",
  background: "background",
  bar: "bar",
  patch: "patch",
  sash: "sash",
  cornerstone: "cornerstone",
  border: "border",
  "setting-triangle": "setting triangle",
  "corner-triangle": "corner triangle",
};

/** What the trade calls the piece: shape by role, with its hand when it has one. */
export function nameOf(role: Role, corners: number, hand: Hand): string {
  const plain =
    corners === 3 && (role === "corner" || role === "background")
      ? `${ROLE_NAMES[role]} triangle`
      : ROLE_NAMES[role];
  return hand === "none" ? plain : `${hand} ${plain}`;
}

/**
 * The hand of a shape that stands in its frame, as seen on the right side with edge 0 (the outside
 * edge where there is one) at the bottom: the half of a block's side it would lie in, its fuller end
 * toward the middle, as backgrounds lie. So a piece that leans left is a right. Blocks name the hands
 * of their patches themselves; this is for patches that come without. Symmetric shapes have none.
 */
export function handOf(s: Shape, slack: Length): Hand {
  if (isSymmetric(s, slack)) return "none";
  const middle = (s.finished[0].x + s.finished[1].x) / 2;
  return leanAbout(s, middle) < 0 ? "right" : "left";
}

/** Six times the first moment of area about the upright at `x`: negative when it leans left. */
const leanAbout = (s: Shape, x: Length): number =>
  edges(s.finished).reduce(
    (sum, { from, to }) => sum + cross(from, to) * (from.x + to.x - 3 * x),
    0,
  );
