import type { Role } from "./types.ts";

/** The broader words a brief may use for a role: "wedge" stands for even and odd wedges alike. */
export const BROADER_ROLES: Readonly<Partial<Record<Role, readonly string[]>>> = {
  "wedge-even": ["wedge"],
  "wedge-odd": ["wedge"],
  "background-left": ["background"],
  "background-right": ["background"],
  corner: ["background"],
  trapezoid: ["background"],
  kite: ["background"],
  bar: ["background"],
};
