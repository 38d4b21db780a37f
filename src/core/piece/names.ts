import type { Hand, Role } from "../block/types.ts";

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
