export { handOf } from "./hand.ts";
export * from "./lay-out.ts";
export { hexagon, type OutlineKind, rectangle } from "./outline.ts";
export { OWN_ROLES } from "./own/lay-out-own.ts";
export type { LetteredPoint } from "./own/letters.ts";
export { grow, outlineOf, type Plan, patchesOf, unitsOf } from "./plan.ts";
export * from "./radial.ts";
export { type Circle, circleOf, type Turned } from "./sectors.ts";
export * from "./types.ts";
