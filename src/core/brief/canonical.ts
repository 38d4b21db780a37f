import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";

/**
 * The one serialization: keys sorted, two spaces, a newline at the end. Equal documents give equal
 * bytes, whatever order their keys were typed in.
 */
export const canonicalText = (value: unknown): string =>
  `${JSON.stringify(sorted(value), null, 2)}\n`;

/** SHA-256 (FIPS 180-4) of the canonical text, in hex. */
export const contentHash = (value: unknown): string =>
  bytesToHex(sha256(utf8ToBytes(JSON.stringify(sorted(value)))));

/**
 * The same for what was computed: numbers on a grid of 1e-10 of their unit, far below every tolerance.
 * Engines may differ in the last bit of a sine, and equal briefs give equal bytes all the same.
 */
export const computedText = (value: unknown): string => canonicalText(onGrid(value));

function onGrid(value: unknown): unknown {
  if (typeof value === "number") return Number.isInteger(value) ? value : Number(value.toFixed(10));
  if (Array.isArray(value)) return value.map(onGrid);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, onGrid(v)]));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== "object") return value;
  const entries = Object.entries(value).filter(([, v]) => v !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return Object.fromEntries(entries.map(([k, v]) => [k, sorted(v)]));
}
