export * from "./lay-out.ts";
export * from "./outline.ts";
export { grow, outlineOf, type Plan, patchesOf, unitsOf } from "./plan.ts";
export * from "./radial.ts";
export type { Circle, Turned } from "./sectors.ts";
export { circleOf } from "./sectors.ts";
export * from "./types.ts";
