import type { Finding } from "../../findings/index.ts";
import { MOST_PIXELS } from "./pixels.ts";

/** What the first bytes of a picture file say, before anything is decoded. */
export interface ImageFacts {
  readonly kind: "png" | "jpeg" | "webp";
  readonly width: number;
  readonly height: number;
  /** Some of it may be see-through. */
  readonly transparent: boolean;
  /** 1 to 8 as in EXIF: how the camera was held; 1 when it does not say. */
  readonly orientation: number;
}

export type Sniffed =
  | { readonly ok: true; readonly image: ImageFacts; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly finding: Finding };

/** Largest file looked at, in bytes. */
export const MOST_BYTES = 45_000_000;

type Read =
  | { readonly fault: "photo-truncated" | "photo-animated" | "photo-cmyk" }
  | { readonly facts: ImageFacts };

/**
 * Is this a picture that may be opened? PNG, JPEG and WebP are; drawings, moving pictures, printing
 * inks, cut-off and huge files are refused, each by its own finding. Reads headers only, in one pass,
 * and never past the end. `place`: the fabric the picture is for.
 */
export function sniffImage(bytes: Uint8Array, place: string): Sniffed {
  const no = (code: Finding["code"], words?: Record<string, string>): Sniffed => ({
    ok: false,
    finding: { code, severity: "draft", place, ...(words && { words }) },
  });
  if (bytes.length > MOST_BYTES) return no("photo-too-large-file");
  if (looksLikeDrawing(bytes)) return no("photo-drawing");
  const read = readerOf(bytes)?.(bytes);
  if (!read) return no("photo-not-an-image", { kind: otherKind(bytes) });
  if ("fault" in read) return no(read.fault);
  const { width, height, transparent } = read.facts;
  if (width === 0 || height === 0) return no("photo-truncated");
  if (width * height > MOST_PIXELS)
    return {
      ok: false,
      finding: {
        code: "photo-too-large",
        severity: "draft",
        place,
        needed: MOST_PIXELS,
        found: width * height,
        unit: "count",
      },
    };
  const findings: Finding[] = transparent
    ? [{ code: "photo-flattened", severity: "advice", place }]
    : [];
  return { ok: true, image: read.facts, findings };
}

const text = (b: Uint8Array, from: number, length: number): string =>
  String.fromCharCode(...b.subarray(from, from + length));

function readerOf(b: Uint8Array): ((b: Uint8Array) => Read) | undefined {
  if (text(b, 0, 8) === "\x89PNG\r\n\x1a\n") return readPng;
  if (b[0] === 0xff && b[1] === 0xd8 && b[2] === 0xff) return readJpeg;
  if (text(b, 0, 4) === "RIFF" && text(b, 8, 4) === "WEBP") return readWebp;
  return undefined;
}

/** Markup that opens an svg element, whatever stands before it; scripts in it are never run. */
function looksLikeDrawing(b: Uint8Array): boolean {
  const head = new TextDecoder("utf-8", { fatal: false }).decode(b.subarray(0, 4096));
  return /^[\s\uFEFF]*</.test(head) && /<svg[\s>]/i.test(head);
}

function otherKind(b: Uint8Array): string {
  if (text(b, 0, 4) === "GIF8") return "a GIF";
  if (text(b, 0, 2) === "BM") return "a BMP";
  if (text(b, 4, 4) === "ftyp")
    return /avif|avis/.test(text(b, 8, 8)) ? "an AVIF" : "a HEIC or a film";
  if (["II*\0", "MM\0*"].includes(text(b, 0, 4))) return "a TIFF or a raw picture";
  if (text(b, 0, 4) === "%PDF") return "a PDF";
  return "";
}

const u16 = (b: Uint8Array, at: number): number => (b[at] << 8) | b[at + 1];
const u32 = (b: Uint8Array, at: number): number => u16(b, at) * 65536 + u16(b, at + 2);
const u24le = (b: Uint8Array, at: number): number => b[at] | (b[at + 1] << 8) | (b[at + 2] << 16);
export const u32le = (b: Uint8Array, at: number): number => u24le(b, at) + b[at + 3] * 16777216;

/** PNG (ISO/IEC 15948): chunks of length, name, data, check, from IHDR to IEND. */
function readPng(b: Uint8Array): Read {
  let facts: ImageFacts | undefined;
  for (let at = 8; at + 12 <= b.length; ) {
    const length = u32(b, at);
    const name = text(b, at + 4, 4);
    const end = at + 12 + length;
    if (end > b.length) return { fault: "photo-truncated" };
    if (name === "IHDR" && length >= 13) {
      const color = b[at + 17];
      facts = {
        kind: "png",
        width: u32(b, at + 8),
        height: u32(b, at + 12),
        transparent: color === 4 || color === 6,
        orientation: 1,
      };
    }
    if (name === "acTL") return { fault: "photo-animated" };
    if (name === "tRNS" && facts) facts = { ...facts, transparent: true };
    if (name === "eXIf" && facts)
      facts = { ...facts, orientation: orientationIn(b, at + 8, at + 8 + length) };
    if (name === "IEND") return facts ? { facts } : { fault: "photo-truncated" };
    at = end;
  }
  return { fault: "photo-truncated" };
}

const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

/** JPEG (ISO/IEC 10918-1): segments to the first scan, and the end marker at the very end. */
function readJpeg(b: Uint8Array): Read {
  let size: { width: number; height: number } | undefined;
  let orientation = 1;
  for (let at = 2; at + 4 <= b.length; ) {
    if (b[at] !== 0xff) return { fault: "photo-truncated" };
    const marker = b[at + 1];
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = u16(b, at + 2);
    if (length < 2 || at + 2 + length > b.length) return { fault: "photo-truncated" };
    if (marker === 0xe1 && text(b, at + 4, 6) === "Exif\0\0")
      orientation = orientationIn(b, at + 10, at + 2 + length);
    if (isFrame(marker)) {
      if (b[at + 9] === 4) return { fault: "photo-cmyk" };
      size = { height: u16(b, at + 5), width: u16(b, at + 7) };
    }
    if (marker === 0xda) {
      if (!size || !endsJpeg(b)) return { fault: "photo-truncated" };
      return { facts: { kind: "jpeg", ...size, transparent: false, orientation } };
    }
    at += 2 + length;
  }
  return { fault: "photo-truncated" };
}

/** Some cameras pad after the end marker; it must stand somewhere in the last part. */
function endsJpeg(b: Uint8Array): boolean {
  for (let i = b.length - 2; i >= Math.max(2, b.length - 65536); i--)
    if (b[i] === 0xff && b[i + 1] === 0xd9) return true;
  return false;
}

/** WebP (RFC 9649): RIFF chunks VP8, VP8L or VP8X. */
function readWebp(b: Uint8Array): Read {
  if (b.length < 30 || u32le(b, 4) + 8 > b.length) return { fault: "photo-truncated" };
  const name = text(b, 12, 4);
  const common = { kind: "webp", orientation: 1 } as const;
  if (name === "VP8X") {
    const flags = b[20];
    if (flags & 2) return { fault: "photo-animated" };
    return {
      facts: {
        ...common,
        width: 1 + u24le(b, 24),
        height: 1 + u24le(b, 27),
        transparent: (flags & 16) !== 0,
      },
    };
  }
  if (name === "VP8L" && b[20] === 0x2f) {
    const bits = u32le(b, 21);
    return {
      facts: {
        ...common,
        width: 1 + (bits & 0x3fff),
        height: 1 + ((bits >>> 14) & 0x3fff),
        transparent: ((bits >>> 28) & 1) === 1,
      },
    };
  }
  if (name === "VP8 " && b[23] === 0x9d && b[24] === 0x01 && b[25] === 0x2a)
    return {
      facts: {
        ...common,
        width: (b[26] | (b[27] << 8)) & 0x3fff,
        height: (b[28] | (b[29] << 8)) & 0x3fff,
        transparent: false,
      },
    };
  return { fault: "photo-truncated" };
}

/** Tag 0x0112 of the first directory of a TIFF block (as EXIF keeps it); 1 when it is not there. */
function orientationIn(b: Uint8Array, from: number, to: number): number {
  const little = text(b, from, 2) === "II";
  if (to - from < 14 || (!little && text(b, from, 2) !== "MM")) return 1;
  const short = (at: number): number => (little ? b[at] | (b[at + 1] << 8) : u16(b, at));
  const long = (at: number): number => (little ? u32le(b, at) : u32(b, at));
  const directory = from + long(from + 4);
  if (directory + 2 > to) return 1;
  const entries = short(directory);
  for (let i = 0; i < entries; i++) {
    const at = directory + 2 + 12 * i;
    if (at + 12 > to) return 1;
    if (short(at) !== 0x0112) continue;
    const value = short(at + 8);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}
