import { describe, expect, test } from "vitest";
import { say } from "../../findings/index.ts";
import { stepOf } from "../../measure/index.ts";
import { MOST_BYTES, sniffImage } from "./sniff.ts";
import { seeded } from "./stripes.testing.ts";

const ascii = (s: string): number[] => [...s].map((c) => c.charCodeAt(0));
const be16 = (n: number): number[] => [(n >> 8) & 255, n & 255];
const be32 = (n: number): number[] => [...be16(Math.floor(n / 65536)), ...be16(n & 65535)];
const le32 = (n: number): number[] => [...be32(n)].reverse();
const bytes = (...parts: number[][]): Uint8Array => Uint8Array.from(parts.flat());

const chunk = (name: string, data: number[]): number[] => [
  ...be32(data.length),
  ...ascii(name),
  ...data,
  0,
  0,
  0,
  0,
];
const SIGNATURE = [0x89, ...ascii("PNG\r\n"), 0x1a, 0x0a];
const ihdr = (w: number, h: number, color: number) =>
  chunk("IHDR", [...be32(w), ...be32(h), 8, color, 0, 0, 0]);
const png = (w: number, h: number, color = 2, extra: number[] = []): Uint8Array =>
  bytes(SIGNATURE, ihdr(w, h, color), extra, chunk("IDAT", [1, 2, 3]), chunk("IEND", []));

const segment = (marker: number, data: number[]): number[] => [
  0xff,
  marker,
  ...be16(data.length + 2),
  ...data,
];
const frame = (w: number, h: number, parts: number): number[] =>
  segment(0xc0, [8, ...be16(h), ...be16(w), parts, ...new Array(3 * parts).fill(1)]);
/** A TIFF block, big end first, with only the orientation in it. */
const exif = (orientation: number): number[] =>
  segment(0xe1, [
    ...ascii("Exif\0\0MM"),
    ...be16(42),
    ...be32(8),
    ...be16(1),
    ...be16(0x0112),
    ...be16(3),
    ...be32(1),
    ...be16(orientation),
    0,
    0,
  ]);
const SCAN = [...segment(0xda, [1, 1, 0, 0, 63, 0]), 0x12, 0xff, 0, 0x34, 0xff, 0xd0, 0x56];
const jpeg = (w: number, h: number, parts = 3, before: number[] = []): Uint8Array =>
  bytes([0xff, 0xd8], before, frame(w, h, parts), SCAN, [0xff, 0xd9]);

const webp = (chunks: number[]): Uint8Array =>
  bytes(ascii("RIFF"), le32(4 + chunks.length), ascii("WEBP"), chunks);
const part = (name: string, data: number[]): number[] => [
  ...ascii(name),
  ...le32(data.length),
  ...data,
  ...(data.length % 2 ? [0] : []),
];
const vp8x = (flags: number, w: number, h: number): number[] =>
  part("VP8X", [flags, 0, 0, 0, ...le32(w - 1).slice(0, 3), ...le32(h - 1).slice(0, 3)]);

const facts = (b: Uint8Array) => {
  const s = sniffImage(b, "tide");
  return s.ok ? s.image : s.finding.code;
};

describe("what a picture file is", () => {
  test("sizes of PNG, JPEG and WebP", () => {
    expect(facts(png(731, 402))).toMatchObject({ kind: "png", width: 731, height: 402 });
    expect(facts(jpeg(613, 217))).toMatchObject({ kind: "jpeg", width: 613, height: 217 });
    expect(facts(webp([...vp8x(0, 519, 301), ...part("VP8 ", [1, 2])]))).toMatchObject({
      kind: "webp",
      width: 519,
      height: 301,
      transparent: false,
    });
    const lossless = (298 - 1) | ((177 - 1) << 14);
    expect(facts(webp(part("VP8L", [0x2f, ...le32(lossless >>> 0), 0, 0, 0, 0, 0])))).toMatchObject(
      {
        width: 298,
        height: 177,
      },
    );
    expect(facts(webp(part("VP8 ", [0, 0, 0, 0x9d, 1, 0x2a, 0x91, 1, 0x2c, 1])))).toMatchObject({
      width: 0x191,
      height: 0x12c,
    });
  });

  test("how the camera was held", () => {
    expect(facts(jpeg(60, 40, 3, exif(6)))).toMatchObject({ orientation: 6 });
    expect(facts(jpeg(60, 40))).toMatchObject({ orientation: 1 });
    expect(facts(jpeg(60, 40, 3, exif(77)))).toMatchObject({ orientation: 1 });
  });

  test("see-through pictures open, with advice that they are flattened", () => {
    const s = sniffImage(png(9, 8, 6), "tide");
    expect(s.ok && s.findings.map((f) => f.code)).toEqual(["photo-flattened"]);
    expect(facts(png(9, 8, 2, chunk("tRNS", [0, 1])))).toMatchObject({ transparent: true });
    expect(facts(webp(vp8x(16, 40, 30)))).toMatchObject({ transparent: true });
  });

  test.each([
    ["an SVG", bytes(ascii('<?xml version="1.0"?><svg onload="x()">')), "photo-drawing"],
    [
      "an SVG with a mark and spaces",
      bytes([0xef, 0xbb, 0xbf], ascii(" \n<SVG >")),
      "photo-drawing",
    ],
    ["a web page", bytes(ascii("<html><body>no")), "photo-not-an-image"],
    ["nothing", bytes([]), "photo-not-an-image"],
    ["a GIF", bytes(ascii("GIF89a....")), "photo-not-an-image"],
    ["a moving PNG", png(40, 30, 2, chunk("acTL", [0, 0, 0, 2, 0, 0, 0, 0])), "photo-animated"],
    ["a moving WebP", webp(vp8x(2, 40, 30)), "photo-animated"],
    ["printing inks", jpeg(40, 30, 4), "photo-cmyk"],
    ["a cut-off PNG", png(40, 30).slice(0, 40), "photo-truncated"],
    ["a cut-off JPEG", jpeg(40, 30).slice(0, -2), "photo-truncated"],
    [
      "a cut-off WebP",
      webp([...vp8x(0, 40, 30), ...part("VP8 ", [1, 2])]).slice(0, -3),
      "photo-truncated",
    ],
    ["a JPEG with no frame", bytes([0xff, 0xd8, 0xff, 0xe0, 0, 2, 0xff, 0xd9]), "photo-truncated"],
    ["60 megapixels claimed", png(10_000, 6_000), "photo-too-large"],
    ["a file larger than any camera's", new Uint8Array(MOST_BYTES + 1), "photo-too-large-file"],
    ["no height", png(40, 0), "photo-truncated"],
  ])("%s is refused", (_, b, code) => {
    expect(facts(b)).toBe(code);
  });

  test("the sentence of a refusal is whole", () => {
    const s = sniffImage(bytes(ascii("GIF89a....")), "tide");
    expect(!s.ok && say(s.finding, { step: stepOf("1/8", "in") })).toBe(
      "tide is not a picture this can read (it looks like a GIF). Use a PNG, JPEG or WebP picture.",
    );
  });

  test("any bytes at all are answered, never thrown at (seed 4711)", () => {
    const random = seeded(4711);
    const starts = [png(20, 10), jpeg(20, 10, 3, exif(3)), webp(vp8x(0, 20, 10))];
    for (let i = 0; i < 1500; i++) {
      const b = Uint8Array.from(starts[i % 3]);
      for (let k = 0; k < 4; k++) b[8 + Math.floor(random() * (b.length - 8))] = random() * 256;
      const part = b.slice(0, Math.floor(random() * (b.length + 1)));
      expect(typeof sniffImage(part, "x").ok).toBe("boolean");
    }
  });
});
