import { u32le } from "./sniff.ts";

/**
 * A picture file without what it says of its maker: place, time, camera, thumbnails, remarks. Pixels
 * and the color profile stay byte for byte; what follows the picture's end is dropped. Turn the
 * picture by its orientation first (`sniffImage`): that goes too. Files of another kind, and broken
 * ones, come back undefined: nothing with traces is ever passed on.
 */
export function withoutTraces(bytes: Uint8Array): Uint8Array | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 12));
  if (head.startsWith("\x89PNG\r\n\x1a\n")) return png(bytes);
  if (head.startsWith("\xff\xd8\xff")) return jpeg(bytes);
  if (head.startsWith("RIFF") && head.endsWith("WEBP")) return webp(bytes);
  return undefined;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const p of parts) {
    out.set(p, at);
    at += p.length;
  }
  return out;
}

const nameAt = (b: Uint8Array, at: number): string =>
  String.fromCharCode(...b.subarray(at, at + 4));

/** Chunks that draw the picture or say what its numbers mean; all others go. */
const PNG_KEPT = new Set([
  "IHDR",
  "PLTE",
  "IDAT",
  "IEND",
  "tRNS",
  "gAMA",
  "cHRM",
  "sRGB",
  "iCCP",
  "cICP",
  "sBIT",
  "pHYs",
]);

function png(b: Uint8Array): Uint8Array | undefined {
  const parts = [b.subarray(0, 8)];
  for (let at = 8; at + 12 <= b.length; ) {
    const length = ((b[at] << 24) | (b[at + 1] << 16) | (b[at + 2] << 8) | b[at + 3]) >>> 0;
    const end = at + 12 + length;
    if (end > b.length) return undefined;
    const name = nameAt(b, at + 4);
    if (PNG_KEPT.has(name)) parts.push(b.subarray(at, end));
    if (name === "IEND") return joined(parts);
    at = end;
  }
  return undefined;
}

/** JFIF, color profile and the inks' meaning stay; all other application segments and remarks go. */
function keptJpeg(b: Uint8Array, at: number): boolean {
  const marker = b[at + 1];
  // Tables, frames and scans draw the picture; remarks and what no standard reads may hold anything.
  if (marker < 0xc0 || marker > 0xef) return false;
  if (marker < 0xe0) return true;
  const label = String.fromCharCode(...b.subarray(at + 4, at + 16));
  if (marker === 0xe0) return label.startsWith("JFIF\0");
  if (marker === 0xe2) return label.startsWith("ICC_PROFILE\0");
  return marker === 0xee && label.startsWith("Adobe");
}

function jpeg(b: Uint8Array): Uint8Array | undefined {
  const parts = [b.subarray(0, 2)];
  let at = 2;
  while (at + 4 <= b.length) {
    if (b[at] !== 0xff) return undefined;
    const marker = b[at + 1];
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === 0xd9) return joined([...parts, b.subarray(at, at + 2)]);
    const end = at + 2 + ((b[at + 2] << 8) | b[at + 3]);
    if (end > b.length || end < at + 4) return undefined;
    if (keptJpeg(b, at)) parts.push(b.subarray(at, end));
    at = end;
    if (marker !== 0xda) continue;
    // The scan's own data runs to the next marker that is neither a stuffed FF nor a restart.
    const from = at;
    while (at + 1 < b.length && !(b[at] === 0xff && !inScan(b[at + 1]))) at++;
    parts.push(b.subarray(from, at));
  }
  return at + 2 <= b.length && b[at] === 0xff && b[at + 1] === 0xd9
    ? joined([...parts, b.subarray(at, at + 2)])
    : undefined;
}

const inScan = (next: number): boolean => next === 0 || (next >= 0xd0 && next <= 0xd7);

/** Flags of VP8X for EXIF and XMP (RFC 9649). */
const WEBP_TRACES = 0x08 | 0x04;

function webp(b: Uint8Array): Uint8Array | undefined {
  const size = u32le(b, 4) + 8;
  if (size > b.length || size < 20) return undefined;
  const parts: Uint8Array[] = [b.slice(0, 12)];
  for (let at = 12; at + 8 <= size; ) {
    const length = u32le(b, at + 4);
    const end = at + 8 + length + (length % 2);
    if (at + 8 + length > size) return undefined;
    const name = nameAt(b, at);
    if (["VP8X", "VP8 ", "VP8L", "ALPH", "ICCP"].includes(name)) {
      const chunk = b.slice(at, Math.min(end, size));
      if (name === "VP8X") chunk[8] &= ~WEBP_TRACES;
      parts.push(chunk);
    }
    at = end;
  }
  const out = joined(parts);
  new DataView(out.buffer).setUint32(4, out.length - 8, true);
  return out;
}
