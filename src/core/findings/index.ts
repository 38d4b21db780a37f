export * from "./finding.ts";
export * from "./say.ts";
