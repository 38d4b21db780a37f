import { type Document, design } from "./design.ts";
import { HOSTILE } from "./harm.ts";
import type { Luck } from "./luck.ts";

const NAMES = ["Ada", "=1+1", "<b>B.</b>", "ß é 😀", "x".repeat(120), "Reef", "Foam & spray"];
const SIZES = ["8", "8 1/4", "7.9 in", "20 cm", "0", "-1", "", "nonsense", "99999", "1/0"];
const UNITS = ["block-0", "block-0/s0/wedge", "block-0/", "p-0000000000", "toString", "", "quilt"];
const CODES = ["cover-thin", "does-not-cover", "no-such-code", "not-worked-out"];

/** What a design carries beside its quilt: what was done, sold and taught, photos, notes. */
export function whole(luck: Luck): Document {
  const d = design(luck);
  const fabrics = d.fabrics as Document[];
  for (const f of fabrics) if (f.kind === "print" && luck.once(2)) f.photo = photo(luck);
  return {
    ...d,
    ...(luck.once(2) && { record: luck.some(luck.once(30) ? 2000 : 12, () => recorded(luck)) }),
    ...(luck.once(2) && { shop: shop(luck) }),
    ...(luck.once(2) && { class: classOf(luck) }),
    ...(luck.once(3) && {
      accepted: luck.some(4, () => ({
        place: luck.pick(UNITS),
        code: luck.pick(CODES),
        ...(luck.once(2) && { why: luck.pick(NAMES) }),
      })),
    }),
    ...(luck.once(3) && { notes: luck.pick(HOSTILE)() }),
    ...(luck.once(3) && { "x-mine": luck.pick(HOSTILE)() }),
  };
}

const photo = (luck: Luck): Document => ({
  data: luck.pick([
    "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
    "data:image/png;base64,",
    "data:text/html,<script>1</script>",
    "javascript:alert(1)",
    "https://elsewhere.invalid/a.png",
    `data:image/jpeg;base64,${"A".repeat(luck.int(0, 400))}`,
  ]),
  width: luck.pick(["9", "0", "300", "1e9"]),
  height: luck.pick(["7", "12", "-3"]),
});

/** One entry of the record: sound, nearly so, or anything. */
function recorded(luck: Luck): unknown {
  const size = (): string => luck.pick(SIZES);
  const unit = (): string => luck.pick(UNITS);
  return luck.pick<() => unknown>([
    () => ({ what: "sewn", unit: unit() }),
    () => ({ what: "measured", unit: unit(), width: "across", size: size(), should: size() }),
    () => ({ what: "seam-test", strips: luck.int(-1, 14), cut: size(), size: size() }),
    () => ({
      what: "reading",
      block: "block-0",
      name: luck.pick(["acrossOne", "halfGap", "toString"]),
      size: size(),
    }),
    () => ({
      what: luck.pick(["printed", "cut", "handed-out", "corrected", "lost"]),
      of: luck.pick(["pattern", "kit", "card", "templates", "toString"]),
      version: luck.pick(["1", "", NAMES[2]]),
      date: luck.pick(["2026-11-25", "yesterday", ""]),
      hash: luck.pick(["", "00"]),
      ...(luck.once(2) && { to: luck.pick(NAMES), count: luck.int(-1, 40) }),
      facts: luck.some(4, () =>
        luck.once(6)
          ? luck.pick(HOSTILE)()
          : { key: unit(), where: luck.pick(NAMES), text: luck.pick([...SIZES, ...NAMES]) },
      ),
    }),
    luck.pick(HOSTILE),
  ])();
}

const MONEY = ["0", "12.95", "0,5", "9999999.99"];

const shop = (luck: Luck): Document => ({
  ...(luck.once(2) && { kits: luck.pick([1, 2, 12, 999]) }),
  basis: luck.pick(["yards", "trimmed"]),
  wrongStrip: luck.once(2),
  repeats: luck.once(2),
  ...(luck.once(3) && { straighten: luck.pick(["1", "0", "2 in", "900"]) }),
  ...(luck.once(3) && { between: luck.pick(["0", "1/8", "40"]) }),
  ...(luck.once(3) && { from: { reef: [luck.pick(NAMES)], [luck.pick(["foam", "none"])]: [] } }),
  ...(luck.once(4) && { leaveOut: luck.some(3, () => luck.pick(["reef", "foam", "none"])) }),
  sign: luck.pick(["$", "€", "", "=1"]),
  ...(luck.once(2) && { hour: luck.pick(MONEY) }),
  ...(luck.once(3) && { minutes: { bolt: luck.int(0, 600), kit: luck.int(0, 9) } }),
  ...(luck.once(3) && {
    extras: luck.some(3, () => ({ name: luck.pick(NAMES), cost: luck.pick(MONEY) })),
  }),
  ...(luck.once(3) && { margin: luck.pick([0, 40, 95]) }),
  ...(luck.once(3) && { roundTo: luck.pick(MONEY) }),
  ...(luck.once(3) && { weight: luck.int(10, 2000), scale: luck.pick([0.1, 5, 100]) }),
});

const classOf = (luck: Luck): Document => ({
  hours: luck.pick([0.5, 3, 60]),
  irons: luck.int(1, 60),
  blocks: luck.pick([1, 4, 999]),
  ...(luck.once(3) && { rates: { seam: luck.int(0, 600), inch: 0 } }),
  students: luck.some(3, () => ({
    name: luck.pick(NAMES),
    ...(luck.once(2) && { usable: luck.pick(["36", "18", "3", "1000"]) }),
    ...(luck.once(2) && { point: luck.pick(["sharp", { blunt: "1/4" }, { flat: "3" }]) }),
    ...(luck.once(3) && { longest: luck.pick(["6", "0.5"]) }),
    ...(luck.once(3) && { top: luck.pick(["Throw", "none"]) }),
    ...(luck.once(2) && {
      test: { strips: luck.int(2, 12), width: luck.pick(["1 1/2", "40"]), size: luck.pick(SIZES) },
    }),
  })),
});
