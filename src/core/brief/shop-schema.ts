import * as z from "zod";

const length = z.string().min(1).max(40).describe("A length as typed: 4 1/2, 4.5, 11.5 cm");
const name = z.string().min(1).max(120);
const slug = z.string().regex(/^[a-z][a-z0-9-]{0,39}$/);
const money = z
  .string()
  .regex(/^\d{1,7}([.,]\d{1,2})?$/)
  .describe("Money without its sign: 12.95");
const minutes = z.number().min(0).max(600);

/** What the shop decides about kits of this design. The bolts themselves are the shelf's. */
export const shop = z
  .object({
    kits: z.int().min(1).max(999).optional().describe("How many are wanted; the most, unless told"),
    basis: z
      .enum(["yards", "trimmed"])
      .default("yards")
      .describe("Cut what the pattern says to buy, or what the pieces take with their margin"),
    straighten: length.optional().describe("Lost at the end of each bolt"),
    between: length.optional().describe("Lost at each cut"),
    wrongStrip: z.boolean().default(true).describe("Room for one wrong strip in every kit"),
    repeats: z.boolean().default(true).describe("Registered fabric is cut by whole repeats"),
    from: z
      .record(slug, z.array(name).max(40))
      .optional()
      .describe("Bolts for a fabric, by the name the shelf gives them"),
    leaveOut: z.array(slug).max(100).optional().describe("Fabrics that are not in the kit"),
    sign: z.string().max(4).default("$"),
    hour: money.optional().describe("What an hour of work costs"),
    minutes: z
      .object({ bolt: minutes, cut: minutes, kit: minutes })
      .partial()
      .strict()
      .optional()
      .describe("Getting out and straightening a bolt; one cut; one bag"),
    extras: z
      .array(z.object({ name, cost: money }).strict())
      .max(40)
      .optional()
      .describe("In every bag beside fabric"),
    margin: z.number().min(0).max(95).optional().describe("Per cent of the price"),
    roundTo: money.optional().describe("Prices go up to a multiple of this"),
    weight: z
      .number()
      .min(10)
      .max(2000)
      .optional()
      .describe("Of the fabric: grams to the square meter"),
    scale: z.number().min(0.1).max(100).optional().describe("The marks of the scale, in grams"),
  })
  .strict();

const student = z
  .object({
    name,
    usable: length.optional().describe("Usable width of her own fabric"),
    point: z
      .union([
        z.literal("sharp"),
        z.object({ blunt: length, seam: length.optional() }).strict(),
        z.object({ flat: length }).strict(),
      ])
      .optional(),
    longest: length.optional().describe("The longest line of her ruler"),
    top: name.optional().describe("Which of the design's sizes she makes"),
    test: z
      .object({ strips: z.int().min(2).max(12), width: length, size: length })
      .strict()
      .optional()
      .describe("Strips of one width sewn side by side, and what they measured across"),
  })
  .strict();

/** What the teacher decides about a class on this design. */
export const classPlan = z
  .object({
    students: z.array(student).max(60).optional(),
    hours: z.number().min(0.5).max(60).default(3),
    irons: z.int().min(1).max(60).default(1),
    blocks: z.int().min(1).max(999).default(1).describe("Blocks each student means to finish"),
    rates: z
      .object({ seam: minutes, inch: minutes, press: minutes, step: minutes, cut: minutes })
      .partial()
      .strict()
      .optional(),
  })
  .strict();
