import fc from "fast-check";
import { expect, test } from "vitest";
import { LONG, Pictures, pack, unpack } from "./pack.ts";
import { same } from "./same.ts";

const SEED = 4_417;

const long = fc
  .tuple(fc.nat(3), fc.nat(2))
  .map(([letter, more]) => "pqrs"[letter].repeat(LONG + more));

const data = fc.letrec((tie) => ({
  node: fc.oneof(
    { depthSize: "small" },
    long,
    fc.string({ maxLength: 5 }),
    fc.constant("x".repeat(LONG - 1)),
    fc.integer(),
    fc.constant(null),
    fc.array(tie("node"), { maxLength: 4 }),
    fc.dictionary(fc.constantFrom("data", "0", "a", "__proto__", "value", "holes"), tie("node"), {
      maxKeys: 4,
    }),
  ),
})).node;

test(`what is packed comes back equal, with no long text left inside (seed ${SEED})`, () => {
  fc.assert(
    fc.property(data, (value) => {
      const pictures = new Pictures();
      const packed = pack(value, pictures);
      expect(same(unpack(packed, pictures), value)).toBe(true);
      expect(JSON.stringify(packed.value)).not.toMatch(
        /pppppppppp|qqqqqqqqqq|rrrrrrrrrr|ssssssssss/,
      );
      if (packed.holes.length === 0) expect(packed.value).toBe(value);
      const again = new Pictures(
        packed.holes.map(({ picture }) => ({ n: picture, text: pictures.text(picture)! })),
      );
      expect(same(unpack(structuredClone(packed), again), value)).toBe(true);
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test("the same long text is one picture", () => {
  const pictures = new Pictures([{ n: 7, text: "y".repeat(LONG) }]);
  const z = "z".repeat(LONG);
  const packed = pack({ a: z, b: ["y".repeat(LONG), z] }, pictures);
  expect(packed.holes).toEqual([
    { path: ["a"], picture: 8 },
    { path: ["b", "0"], picture: 7 },
    { path: ["b", "1"], picture: 8 },
  ]);
});
