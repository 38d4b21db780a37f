export type { BandFound } from "./foundBands.ts";
export * from "./pixels.ts";
export * from "./repeat.ts";
export * from "./shape.ts";
export { type ImageFacts, MOST_BYTES, type Sniffed, sniffImage } from "./sniff.ts";
export * from "./stripe.ts";
export * from "./summary.ts";
