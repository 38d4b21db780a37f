export * from "./cut.ts";
export * from "./direction.ts";
export * from "./halfplane.ts";
export * from "./point.ts";
export * from "./polygon.ts";
export * from "./rigid.ts";
