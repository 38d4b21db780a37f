import * as z from "zod/mini";

const length = z
  .string()
  .check(z.minLength(1), z.maxLength(40), z.describe("A length as typed: 4 1/2, 4.5, 11.5 cm"));
const name = z
  .string()
  .check(z.minLength(1), z.maxLength(120), z.regex(/^[^\t\n\r]*$/, "a name on one line"));
const slug = z.string().check(z.regex(/^[a-z][a-z0-9-]{0,39}$/, "the short name of a fabric"));
const money = z
  .string()
  .check(
    z.regex(/^\d{1,7}([.,]\d{1,2})?$/, "an amount of money such as 12.95"),
    z.describe("Money without its sign: 12.95"),
  );
const minutes = z.number().check(z.minimum(0), z.maximum(600));

/** What the shop decides about kits of this design. The bolts themselves are the shelf's. */
export const shop = z.strictObject({
  kits: z
    .optional(z.int().check(z.minimum(1), z.maximum(999)))
    .check(z.describe("How many are wanted; the most, unless told")),
  basis: z
    ._default(z.enum(["yards", "trimmed"]), "yards")
    .check(
      z.describe("Cut what the pattern says to buy, or what the pieces take with their margin"),
    ),
  straighten: z.optional(length).check(z.describe("Lost at the end of each bolt")),
  between: z.optional(length).check(z.describe("Lost at each cut")),
  wrongStrip: z
    ._default(z.boolean(), true)
    .check(z.describe("Room for one wrong strip in every kit")),
  repeats: z
    ._default(z.boolean(), true)
    .check(z.describe("Registered fabric is cut by whole repeats")),
  from: z
    .optional(z.record(slug, z.array(name).check(z.maxLength(40))))
    .check(z.describe("Bolts for a fabric, by the name the shelf gives them")),
  leaveOut: z
    .optional(z.array(slug).check(z.maxLength(100)))
    .check(z.describe("Fabrics that are not in the kit")),
  sign: z._default(z.string().check(z.maxLength(4)), "$"),
  hour: z.optional(money).check(z.describe("What an hour of work costs")),
  minutes: z
    .optional(z.partial(z.strictObject({ bolt: minutes, cut: minutes, kit: minutes })))
    .check(z.describe("Getting out and straightening a bolt; one cut; one bag")),
  extras: z
    .optional(z.array(z.strictObject({ name, cost: money })).check(z.maxLength(40)))
    .check(z.describe("In every bag beside fabric")),
  margin: z
    .optional(z.number().check(z.minimum(0), z.maximum(95)))
    .check(z.describe("Per cent of the price")),
  roundTo: z.optional(money).check(z.describe("Prices go up to a multiple of this")),
  weight: z
    .optional(z.number().check(z.minimum(10), z.maximum(2000)))
    .check(z.describe("Of the fabric: grams to the square meter")),
  scale: z
    .optional(z.number().check(z.minimum(0.1), z.maximum(100)))
    .check(z.describe("The marks of the scale, in grams")),
});

const student = z.strictObject({
  name,
  usable: z.optional(length).check(z.describe("Usable width of her own fabric")),
  point: z.optional(
    z.union([
      z.literal("sharp"),
      z.strictObject({ blunt: length, seam: z.optional(length) }),
      z.strictObject({ flat: length }),
    ]),
  ),
  longest: z.optional(length).check(z.describe("The longest line of her ruler")),
  top: z.optional(name).check(z.describe("Which of the design's sizes she makes")),
  test: z
    .optional(
      z.strictObject({
        strips: z.int().check(z.minimum(2), z.maximum(12)),
        width: length,
        size: length,
      }),
    )
    .check(z.describe("Strips of one width sewn side by side, and what they measured across")),
});

/** What the teacher decides about a class on this design. */
export const classPlan = z.strictObject({
  students: z.optional(z.array(student).check(z.maxLength(60))),
  hours: z._default(z.number().check(z.minimum(0.5), z.maximum(60)), 3),
  irons: z._default(z.int().check(z.minimum(1), z.maximum(60)), 1),
  blocks: z
    ._default(z.int().check(z.minimum(1), z.maximum(999)), 1)
    .check(z.describe("Blocks each student means to finish")),
  rates: z.optional(
    z.partial(
      z.strictObject({ seam: minutes, inch: minutes, press: minutes, step: minutes, cut: minutes }),
    ),
  ),
});
