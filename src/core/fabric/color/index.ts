export * from "./colorings.ts";
export * from "./lab.ts";
export * from "./reads.ts";
export * from "./simulate.ts";
export * from "./srgb.ts";
export * from "./value.ts";
