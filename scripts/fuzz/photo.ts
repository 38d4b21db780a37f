import type { Luck } from "./luck.ts";

const be = (n: number, size: number): number[] =>
  Array.from({ length: size }, (_, i) => Math.floor(n / 256 ** (size - 1 - i)) % 256);
const le = (n: number, size: number): number[] => be(n, size).reverse();
const ascii = (s: string): number[] => [...s].map((c) => c.charCodeAt(0));

/** Lengths and sizes as a file made to do harm would state them. */
const stated = (luck: Luck, honest: number, most: number): number =>
  luck.once(3)
    ? luck.pick([0, 1, honest + 1, honest - 1, 65_535, 0x7fffffff, 0xffffffff]) % (most + 1)
    : honest;

/** Bytes that begin like a picture: PNG, JPEG, WebP, a drawing, others; honest or not. */
export function photo(luck: Luck): Uint8Array {
  const kind = luck.pick(["png", "jpeg", "webp", "svg", "other"] as const);
  const made = { png, jpeg, webp, svg, other }[kind](luck);
  const cut = luck.once(4) ? made.slice(0, luck.int(0, made.length)) : made;
  for (let n = luck.once(3) ? luck.int(1, 6) : 0; n > 0 && cut.length > 0; n--)
    cut[luck.int(0, cut.length - 1)] = luck.int(0, 255);
  return Uint8Array.from(cut);
}

const noise = (luck: Luck, most: number): number[] => luck.some(most, () => luck.int(0, 255));

function png(luck: Luck): number[] {
  const chunk = (name: string, data: number[]): number[] => [
    ...be(Math.max(0, stated(luck, data.length, 0xffffffff)), 4),
    ...ascii(name),
    ...data,
    ...noise(luck, 0),
    ...[0, 0, 0, 0],
  ];
  const size = [
    ...be(stated(luck, luck.int(1, 4000), 0xffffffff), 4),
    ...be(stated(luck, luck.int(1, 4000), 0xffffffff), 4),
  ];
  const names = ["IDAT", "tEXt", "eXIf", "acTL", "iCCP", "tRNS", "IHDR"];
  return [
    ...[0x89, ...ascii("PNG\r\n"), 0x1a, 0x0a],
    ...chunk("IHDR", [...size, 8, luck.int(0, 7), 0, 0, 0]),
    ...luck
      .some(4, () => chunk(luck.pick(names), luck.once(3) ? tiff(luck) : noise(luck, 20)))
      .flat(),
    ...chunk("IEND", []),
  ];
}

function tiff(luck: Luck): number[] {
  const big = luck.once(2);
  const n = (v: number, size: number): number[] => (big ? be(v, size) : le(v, size));
  const entries = luck.int(0, 3);
  return [
    ...ascii(big ? "MM" : "II"),
    ...n(42, 2),
    ...n(stated(luck, 8, 0xffffffff), 4),
    ...n(stated(luck, entries, 65_535), 2),
    ...luck
      .some(entries, () => [
        ...n(0x0112, 2),
        ...n(3, 2),
        ...n(1, 4),
        ...n(luck.int(0, 12), 2),
        0,
        0,
      ])
      .flat(),
  ];
}

function jpeg(luck: Luck): number[] {
  const segment = (marker: number, data: number[]): number[] => [
    0xff,
    marker,
    ...be(Math.max(0, stated(luck, data.length + 2, 65_535)), 2),
    ...data,
  ];
  const frame = segment(luck.pick([0xc0, 0xc2, 0xc4]), [
    8,
    ...be(luck.int(0, 65_535), 2),
    ...be(luck.int(0, 9000), 2),
    luck.int(0, 5),
    ...noise(luck, 12),
  ]);
  return [
    0xff,
    0xd8,
    ...luck
      .some(3, () =>
        segment(luck.pick([0xe0, 0xe1, 0xe2, 0xee, 0xfe, 0xff]), [
          ...ascii(luck.pick(["Exif\0\0", "JFIF\0", "ICC_PROFILE\0", ""])),
          ...tiff(luck),
        ]),
      )
      .flat(),
    ...frame,
    ...segment(0xda, noise(luck, 8)),
    ...noise(luck, 60),
    ...(luck.once(3) ? [] : [0xff, 0xd9]),
  ];
}

function webp(luck: Luck): number[] {
  const part = (name: string, data: number[]): number[] => [
    ...ascii(name),
    ...le(Math.max(0, stated(luck, data.length, 0xffffffff)), 4),
    ...data,
  ];
  const chunks = luck
    .some(
      4,
      () => part(luck.pick(["VP8X", "VP8 ", "VP8L", "EXIF", "XMP ", "ALPH"]), noise(luck, 30)),
      1,
    )
    .flat();
  return [
    ...ascii("RIFF"),
    ...le(stated(luck, chunks.length + 4, 0xffffffff), 4),
    ...ascii("WEBP"),
    ...chunks,
  ];
}

const svg = (luck: Luck): number[] =>
  ascii(
    luck.pick([
      "<svg onload='x'>",
      "<?xml version='1.0'?><!DOCTYPE l [<!ENTITY a 'aaaa'>]><svg>",
      "  <SVG>",
      "<html><svg ",
    ]),
  );

const other = (luck: Luck): number[] => [
  ...ascii(
    luck.pick([
      "GIF89a",
      "BM",
      "II*\0",
      "%PDF-1.7",
      "\0\0\0 ftypavif",
      "\0\0\0 ftypheic",
      "PK\x03\x04",
      "",
    ]),
  ),
  ...noise(luck, 80),
];
