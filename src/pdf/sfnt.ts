import { unzlibSync } from "fflate";

/** "wOFF", the first four bytes of a WOFF 1.0 file. */
const SIGNATURE = 0x774f4646;
const HEADER = 44;
const ENTRY = 20;

interface Table {
  readonly tag: number;
  readonly checksum: number;
  readonly bytes: Uint8Array;
}

/**
 * A WOFF 1.0 font as the plain font inside it (W3C, WOFF File Format 1.0: a directory of tables, each
 * packed by zlib when that makes it smaller). Unpacked once here, since the PDF library would unpack
 * a table each time it looks into it. Throws RangeError when it is no WOFF.
 */
export function unpackedFont(woff: Uint8Array): Uint8Array {
  const view = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.length < HEADER || view.getUint32(0) !== SIGNATURE)
    throw new RangeError("a WOFF 1.0 font expected, got another file");
  const flavor = view.getUint32(4);
  const count = view.getUint16(12);
  const tables: Table[] = [];
  for (let i = 0; i < count; i++) {
    const at = HEADER + i * ENTRY;
    const offset = view.getUint32(at + 4);
    const packed = view.getUint32(at + 8);
    const length = view.getUint32(at + 12);
    const data = woff.subarray(offset, offset + packed);
    tables.push({
      tag: view.getUint32(at),
      checksum: view.getUint32(at + 16),
      bytes: packed < length ? unzlibSync(data) : data,
    });
  }
  return sfnt(flavor, tables);
}

const padded = (length: number): number => (length + 3) & ~3;

/** OpenType, "Organization of an OpenType Font": table directory, then the tables on fours of bytes. */
function sfnt(flavor: number, tables: readonly Table[]): Uint8Array {
  const start = 12 + 16 * tables.length;
  const total = tables.reduce((sum, t) => sum + padded(t.bytes.length), start);
  const out = new Uint8Array(total);
  const view = new DataView(out.buffer);
  const power = Math.floor(Math.log2(tables.length));
  view.setUint32(0, flavor);
  view.setUint16(4, tables.length);
  view.setUint16(6, 16 * 2 ** power);
  view.setUint16(8, power);
  view.setUint16(10, 16 * (tables.length - 2 ** power));
  let at = start;
  tables.forEach((t, i) => {
    const entry = 12 + 16 * i;
    view.setUint32(entry, t.tag);
    view.setUint32(entry + 4, t.checksum);
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, t.bytes.length);
    out.set(t.bytes, at);
    at += padded(t.bytes.length);
  });
  return out;
}
