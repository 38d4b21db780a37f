export * from "./halfplane.ts";
export * from "./point.ts";
export * from "./polygon.ts";
export * from "./rigid.ts";
