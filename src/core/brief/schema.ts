import * as z from "zod";
import { classPlan, shop } from "./shop-schema.ts";

/**
 * The document: what the maker decides, nothing computed. One source for the types, the reader and
 * the published JSON Schema (docs/schema/brief.schema.json, written by `npm run -s schema`).
 * Lengths are kept as the text typed ("4 1/2", "11.5 cm"); the reader checks each.
 * Unknown keys are refused with their path, except under `notes` and keys that start "x-".
 */
export const FORMAT = "eighthwise-brief";
export const VERSION = 1;

const lengthText = z.string().min(1).max(40).describe("A length as typed: 4 1/2, 4.5, 11.5 cm");
/** The only name every object answers to that could pass for a maker's own. */
const isFree = (name: string): boolean => name !== "constructor";
const TAKEN = "another name (this one is taken)";

const slug = z
  .string()
  .regex(/^[a-z][a-z0-9-]{0,39}$/, "a short name of small letters, figures and hyphens")
  .refine(isFree, TAKEN)
  .describe("The maker's short name for it: small letters, figures, hyphens");
const name = z.string().min(1).max(120);
const color = z.string().regex(/^#[0-9a-fA-F]{6}$/, "a color as #RRGGBB");
const count = z.int().min(1);

const point = z.union([
  z.literal("sharp"),
  z.object({ blunt: lengthText, seam: lengthText.optional() }).strict(),
  z.object({ flat: lengthText }).strict(),
]);

export const ruler = z
  .object({ point, shortest: lengthText.optional(), longest: lengthText.optional() })
  .strict();

const pieceInHand = z
  .object({ width: lengthText, length: lengthText, count: count.default(1) })
  .strict();

const fabricCommon = {
  id: slug,
  name,
  usable: lengthText,
  narrower: lengthText.optional().describe("The next narrower width the yardage is also given at"),
  folds: z.union([z.literal(0), z.literal(1)]).default(0),
  directional: z.boolean().default(false),
  reversible: z.boolean().default(false),
  color: color.default("#DDDDDD"),
  shrinkage: z
    .object({ length: z.number().min(0).max(30), width: z.number().min(0).max(30) })
    .strict()
    .optional()
    .describe("Per cent lost in the first wash, when it is washed before cutting"),
  inHand: z.array(pieceInHand).max(200).optional(),
};

const band = z.object({ width: lengthText, color }).strict();
const photo = z
  .object({
    data: z.string().max(60_000_000).describe("data: address of the picture, inside the file"),
    width: lengthText.describe("How wide the pictured fabric is, really"),
    height: lengthText,
  })
  .strict();

export const fabric = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("plain"), ...fabricCommon }).strict(),
  z
    .object({
      kind: z.literal("stripe"),
      ...fabricCommon,
      runs: z.enum(["along", "across"]).describe("Bands run along the selvage, or across"),
      bands: z.array(band).min(1).max(60).describe("One repeat, from its start"),
      tilt: z.number().min(-45).max(45).default(0),
    })
    .strict(),
  z
    .object({
      kind: z.literal("strip-set"),
      ...fabricCommon,
      strips: z
        .array(z.object({ fabric: slug, cut: lengthText }).strict())
        .min(1)
        .max(20)
        .describe("From the outer edge of an up wedge inward"),
    })
    .strict(),
  z
    .object({
      kind: z.literal("print"),
      ...fabricCommon,
      photo: photo.optional(),
      repeat: z.object({ along: lengthText, across: lengthText.optional() }).strict().optional(),
    })
    .strict(),
]);

/** A role, or the id of a patch or piece: what a choice is made for. */
const roleOrId = z
  .string()
  .regex(/^[a-z0-9][a-z0-9/~-]{0,119}$/, "a role, or the id of a patch or piece")
  .refine(isFree, TAKEN);

/** A part of one's own block: by the letters of its corners, or its id. */
const lettersOrId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9/~-]{0,119}$/, "the letters of a part's corners, or its id")
  .refine(isFree, TAKEN);

/** Fabric by role ("wedge", "wedge-even", "kite", "corner", "background" ...), then by patch id. */
const fabricByRole = z.record(roleOrId, slug);

const recipeChoice = z
  .object({
    size: lengthText.optional().describe("The maker's own cut size"),
    rule: z.string().max(60).optional().describe("A rule of thumb to test: strip-1/2"),
    kind: z.string().max(40).optional().describe("Which way of cutting to take"),
  })
  .strict();

const placement = z
  .object({
    round: z.enum(["matched", "mixed", "free"]).default("free"),
    way: z.enum(["up", "down"]).default("up"),
    start: lengthText.optional().describe("Where in the repeat the lower edge of the strip lies"),
    tilt: z
      .number()
      .min(-45)
      .max(45)
      .optional()
      .describe("Degrees the bands are turned against the strip, cut askew on purpose"),
    at: z
      .object({ x: lengthText, y: lengthText, turn: z.number().min(-180).max(180).default(0) })
      .strict()
      .optional()
      .describe("Where on the photo, from its lower left corner, the center of the piece lies"),
  })
  .strict();

const blockCommon = {
  id: slug,
  name: name.optional(),
  fabric: fabricByRole,
  cut: z.record(roleOrId, recipeChoice).optional().describe("By role or piece id"),
  place: z.record(roleOrId, placement).optional().describe("By role or patch id"),
};

export const wedgeBlock = z
  .object({
    kind: z.literal("wedges"),
    ...blockCommon,
    n: z
      .union([z.literal(6), z.literal(8), z.literal(10), z.literal(12), z.literal(16)])
      .default(8),
    outline: z.enum(["square", "hexagon"]).default("square"),
    strip: lengthText.describe("The strip the wedges are cut from"),
    setting: z.enum(["plain", "kites", "floating", "framed", "deep", "sectors"]),
    side: lengthText.optional().describe("Finished side, where the setting leaves it free"),
    inner: z.enum(["plain", "kites"]).optional().describe("What a framed block frames"),
    turned: z.enum(["flat", "corner"]).optional(),
    whole: z.array(z.int().min(0).max(15)).max(16).optional().describe("Sectors left whole"),
    tree: slug.optional().describe("corners-last, corners-first ..."),
  })
  .strict();

/** A block of one's own: outline and seams said in words, one by one. */
export const ownBlock = z
  .object({
    kind: z.literal("own"),
    ...blockCommon,
    outline: z.union([
      z.object({ width: lengthText, height: lengthText }).strict(),
      z.object({ hexagon: lengthText }).strict(),
    ]),
    seams: z.array(z.string().min(1).max(120)).max(200),
    roles: z.record(lettersOrId, z.string().max(40).refine(isFree, TAKEN)).optional(),
  })
  .strict();

/** Common units said by name, to go between wedge blocks. */
export const unitBlock = z
  .object({
    kind: z.literal("unit"),
    ...blockCommon,
    unit: z.enum([
      "square",
      "half-square",
      "quarter-square",
      "four-patch",
      "nine-patch",
      "half-rectangle",
    ]),
    width: lengthText,
    height: lengthText.optional(),
    hand: z.enum(["left", "right"]).optional(),
  })
  .strict();

export const block = z.discriminatedUnion("kind", [wedgeBlock, ownBlock, unitBlock]);

const placed = z.union([
  slug,
  z
    .object({
      block: slug,
      quarters: z.int().min(0).max(3).default(0),
      mirrored: z.boolean().default(false),
    })
    .strict(),
]);

const border = z
  .object({
    width: lengthText,
    fabric: slug,
    join: z.enum(["butted", "mitred"]).default("butted"),
    cornerstone: slug.optional(),
    cut: z.enum(["across", "along"]).default("across"),
  })
  .strict();

export const quilt = z
  .object({
    arrangement: z.enum(["rows", "on-point", "hexagon-rows"]).default("rows"),
    rows: count,
    columns: count,
    plan: z.array(z.array(placed).min(1).max(40)).min(1).max(40).describe("Repeats over the quilt"),
    sashing: z
      .object({ width: lengthText, fabric: slug, cornerstone: slug.optional() })
      .strict()
      .optional(),
    setting: slug.optional().describe("Fabric of setting and corner triangles"),
    edges: z
      .enum(["triangles", "halves"])
      .optional()
      .describe("On point: what fills the edges; triangles unless told"),
    offset: z.boolean().optional().describe("Every second row shifted by half a block"),
    borders: z.array(border).max(12).default([]),
  })
  .strict();

const finishing = z
  .object({
    binding: z
      .object({
        width: lengthText,
        fabric: slug,
        cut: z.enum(["straight", "bias"]).default("straight"),
        join: z.enum(["slant", "slant-cut", "straight"]).default("slant"),
        spare: lengthText.optional().describe("Length over the perimeter, for corners and ends"),
      })
      .strict()
      .optional(),
    backing: z
      .object({ fabric: slug, overhang: lengthText, whose: name.optional() })
      .strict()
      .optional(),
    batting: z.object({ overhang: lengthText }).strict().optional(),
  })
  .strict();

const margin = z
  .object({
    straighten: lengthText.default("1"),
    wrongStrip: z.boolean().default(true).describe("Room for one wrong strip"),
    extra: lengthText.optional(),
  })
  .strict();

const accepted = z
  .object({ place: z.string().max(200), code: slug, why: z.string().max(400).optional() })
  .strict();

export const brief = z
  .object({
    format: z.literal(FORMAT),
    version: z.literal(VERSION),
    title: name,
    unit: z.enum(["in", "mm"]),
    seam: lengthText,
    step: lengthText,
    ruler,
    fabrics: z.array(fabric).min(1).max(100),
    blocks: z.array(block).min(1).max(100),
    quilt,
    margin: margin.optional(),
    sizes: z
      .array(z.object({ name, width: lengthText, length: lengthText }).strict())
      .max(20)
      .optional(),
    finishing: finishing.optional(),
    shop: shop.optional(),
    class: classPlan.optional(),
    accepted: z.array(accepted).max(400).optional(),
    notes: z.unknown().optional(),
    record: z.array(z.unknown()).max(2000).optional(),
  })
  .strict();

export type Brief = z.infer<typeof brief>;
export type Fabric = z.infer<typeof fabric>;
export type Block = z.infer<typeof block>;
export type WedgeBlock = z.infer<typeof wedgeBlock>;
export type OwnBlock = z.infer<typeof ownBlock>;
export type UnitBlock = z.infer<typeof unitBlock>;
export type Quilt = z.infer<typeof quilt>;
export type RulerText = z.infer<typeof ruler>;
export type Placement = z.infer<typeof placement>;
export type Border = z.infer<typeof border>;
export type Placed = z.infer<typeof placed>;
export type ShopText = z.infer<typeof shop>;
export type ClassText = z.infer<typeof classPlan>;
export type StudentText = NonNullable<ClassText["students"]>[number];
