import * as z from "zod/mini";
import { classPlan, shop } from "./shop-schema.ts";

/**
 * The document: what the maker decides, nothing computed. One source for the types, the reader and
 * the published JSON Schema (docs/schema/brief.schema.json, written by `npm run -s schema`).
 * Lengths are kept as the text typed ("4 1/2", "11.5 cm"); the reader checks each.
 * Unknown keys are refused with their path, except under `notes` and keys that start "x-".
 */
export const FORMAT = "eighthwise-brief";
export const VERSION = 1;

const lengthText = z
  .string()
  .check(z.minLength(1), z.maxLength(40), z.describe("A length as typed: 4 1/2, 4.5, 11.5 cm"));
/** The only name every object answers to that could pass for a maker's own. */
const isFree = (name: string): boolean => name !== "constructor";
const TAKEN = "another name (this one is taken)";

const slug = z
  .string()
  .check(
    z.regex(/^[a-z][a-z0-9-]{0,39}$/, "a short name of small letters, figures and hyphens"),
    z.refine(isFree, TAKEN),
    z.describe("The maker's short name for it: small letters, figures, hyphens"),
  );
const name = z
  .string()
  .check(z.minLength(1), z.maxLength(120), z.regex(/^[^\t\n\r]*$/, "a name on one line"));
const color = z.string().check(z.regex(/^#[0-9a-fA-F]{6}$/, "a color as #RRGGBB"));
const count = z.int().check(z.minimum(1));

const point = z.union([
  z.literal("sharp"),
  z.strictObject({ blunt: lengthText, seam: z.optional(lengthText) }),
  z.strictObject({ flat: lengthText }),
]);

export const ruler = z.strictObject({
  point,
  shortest: z.optional(lengthText),
  longest: z.optional(lengthText),
});

const pieceInHand = z.strictObject({
  width: lengthText,
  length: lengthText,
  count: z._default(count, 1),
});

const fabricCommon = {
  id: slug,
  name,
  usable: lengthText,
  narrower: z
    .optional(lengthText)
    .check(z.describe("The next narrower width the yardage is also given at")),
  folds: z._default(z.union([z.literal(0), z.literal(1)]), 0),
  directional: z._default(z.boolean(), false),
  reversible: z._default(z.boolean(), false),
  color: z._default(color, "#DDDDDD"),
  shrinkage: z
    .optional(
      z.strictObject({
        length: z.number().check(z.minimum(0), z.maximum(30)),
        width: z.number().check(z.minimum(0), z.maximum(30)),
      }),
    )
    .check(z.describe("Per cent lost in the first wash, when it is washed before cutting")),
  inHand: z.optional(z.array(pieceInHand).check(z.maxLength(200))),
};

const band = z.strictObject({ width: lengthText, color });
const photo = z.strictObject({
  data: z
    .string()
    .check(z.maxLength(60_000_000), z.describe("data: address of the picture, inside the file")),
  width: lengthText.check(z.describe("How wide the pictured fabric is, really")),
  height: lengthText,
});

export const fabric = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("plain"), ...fabricCommon }),
  z.strictObject({
    kind: z.literal("stripe"),
    ...fabricCommon,
    runs: z.enum(["along", "across"]).check(z.describe("Bands run along the selvage, or across")),
    bands: z
      .array(band)
      .check(z.minLength(1), z.maxLength(60), z.describe("One repeat, from its start")),
    tilt: z._default(z.number().check(z.minimum(-45), z.maximum(45)), 0),
  }),
  z.strictObject({
    kind: z.literal("strip-set"),
    ...fabricCommon,
    strips: z
      .array(z.strictObject({ fabric: slug, cut: lengthText }))
      .check(
        z.minLength(1),
        z.maxLength(20),
        z.describe("From the outer edge of an up wedge inward"),
      ),
  }),
  z.strictObject({
    kind: z.literal("print"),
    ...fabricCommon,
    photo: z.optional(photo),
    repeat: z.optional(z.strictObject({ along: lengthText, across: z.optional(lengthText) })),
  }),
]);

/** A role, or the id of a patch or piece: what a choice is made for. */
const roleOrId = z
  .string()
  .check(
    z.regex(/^[a-z0-9][a-z0-9/~-]{0,119}$/, "a role, or the id of a patch or piece"),
    z.refine(isFree, TAKEN),
  );

/** A part of one's own block: by the letters of its corners, or its id. */
const lettersOrId = z
  .string()
  .check(
    z.regex(/^[A-Za-z0-9][A-Za-z0-9/~-]{0,119}$/, "the letters of a part's corners, or its id"),
    z.refine(isFree, TAKEN),
  );

/** Fabric by role ("wedge", "wedge-even", "kite", "corner", "background" ...), then by patch id. */
const fabricByRole = z.record(roleOrId, slug);

const recipeChoice = z.strictObject({
  size: z.optional(lengthText).check(z.describe("The maker's own cut size")),
  rule: z
    .optional(z.string().check(z.maxLength(60)))
    .check(z.describe("A rule of thumb to test: strip-1/2")),
  kind: z
    .optional(z.string().check(z.maxLength(40)))
    .check(z.describe("Which way of cutting to take")),
});

const placement = z.strictObject({
  round: z._default(z.enum(["matched", "mixed", "free"]), "free"),
  way: z._default(z.enum(["up", "down"]), "up"),
  start: z
    .optional(lengthText)
    .check(z.describe("Where in the repeat the lower edge of the strip lies")),
  tilt: z
    .optional(z.number().check(z.minimum(-45), z.maximum(45)))
    .check(z.describe("Degrees the bands are turned against the strip, cut askew on purpose")),
  at: z
    .optional(
      z.strictObject({
        x: lengthText,
        y: lengthText,
        turn: z._default(z.number().check(z.minimum(-180), z.maximum(180)), 0),
      }),
    )
    .check(
      z.describe("Where on the photo, from its lower left corner, the center of the piece lies"),
    ),
});

const blockCommon = {
  id: slug,
  name: z.optional(name),
  fabric: fabricByRole,
  cut: z.optional(z.record(roleOrId, recipeChoice)).check(z.describe("By role or piece id")),
  place: z.optional(z.record(roleOrId, placement)).check(z.describe("By role or patch id")),
};

export const wedgeBlock = z.strictObject({
  kind: z.literal("wedges"),
  ...blockCommon,
  n: z._default(
    z.union([z.literal(6), z.literal(8), z.literal(10), z.literal(12), z.literal(16)]),
    8,
  ),
  outline: z._default(z.enum(["square", "hexagon"]), "square"),
  strip: lengthText.check(z.describe("The strip the wedges are cut from")),
  setting: z.enum(["plain", "kites", "floating", "framed", "deep", "sectors"]),
  side: z.optional(lengthText).check(z.describe("Finished side, where the setting leaves it free")),
  inner: z.optional(z.enum(["plain", "kites"])).check(z.describe("What a framed block frames")),
  turned: z.optional(z.enum(["flat", "corner"])),
  whole: z
    .optional(z.array(z.int().check(z.minimum(0), z.maximum(15))).check(z.maxLength(16)))
    .check(z.describe("Sectors left whole")),
  tree: z.optional(slug).check(z.describe("corners-last, corners-first ...")),
});

/** A block of one's own: outline and seams said in words, one by one. */
export const ownBlock = z.strictObject({
  kind: z.literal("own"),
  ...blockCommon,
  outline: z.union([
    z.strictObject({ width: lengthText, height: lengthText }),
    z.strictObject({ hexagon: lengthText }),
  ]),
  seams: z.array(z.string().check(z.minLength(1), z.maxLength(120))).check(z.maxLength(200)),
  roles: z.optional(
    z.record(lettersOrId, z.string().check(z.maxLength(40), z.refine(isFree, TAKEN))),
  ),
});

/** Common units said by name, to go between wedge blocks. */
export const unitBlock = z.strictObject({
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
  height: z.optional(lengthText),
  hand: z.optional(z.enum(["left", "right"])),
});

export const block = z.discriminatedUnion("kind", [wedgeBlock, ownBlock, unitBlock]);

const placed = z.union([
  slug,
  z.strictObject({
    block: slug,
    quarters: z._default(z.int().check(z.minimum(0), z.maximum(3)), 0),
    mirrored: z._default(z.boolean(), false),
  }),
]);

const border = z.strictObject({
  width: lengthText,
  fabric: slug,
  join: z._default(z.enum(["butted", "mitred"]), "butted"),
  cornerstone: z.optional(slug),
  cut: z._default(z.enum(["across", "along"]), "across"),
});

export const quilt = z.strictObject({
  arrangement: z._default(z.enum(["rows", "on-point", "hexagon-rows"]), "rows"),
  rows: count,
  columns: count,
  plan: z
    .array(z.array(placed).check(z.minLength(1), z.maxLength(40)))
    .check(z.minLength(1), z.maxLength(40), z.describe("Repeats over the quilt")),
  sashing: z.optional(
    z.strictObject({ width: lengthText, fabric: slug, cornerstone: z.optional(slug) }),
  ),
  setting: z.optional(slug).check(z.describe("Fabric of setting and corner triangles")),
  edges: z
    .optional(z.enum(["triangles", "halves"]))
    .check(z.describe("On point: what fills the edges; triangles unless told")),
  offset: z.optional(z.boolean()).check(z.describe("Every second row shifted by half a block")),
  borders: z._default(z.array(border).check(z.maxLength(12)), []),
});

const finishing = z.strictObject({
  binding: z.optional(
    z.strictObject({
      width: lengthText,
      fabric: slug,
      cut: z._default(z.enum(["straight", "bias"]), "straight"),
      join: z._default(z.enum(["slant", "slant-cut", "straight"]), "slant"),
      spare: z
        .optional(lengthText)
        .check(z.describe("Length over the perimeter, for corners and ends")),
    }),
  ),
  backing: z.optional(
    z.strictObject({ fabric: slug, overhang: lengthText, whose: z.optional(name) }),
  ),
  batting: z.optional(z.strictObject({ overhang: lengthText })),
});

const margin = z.strictObject({
  straighten: z._default(lengthText, "1"),
  wrongStrip: z._default(z.boolean(), true).check(z.describe("Room for one wrong strip")),
  extra: z.optional(lengthText),
});

const accepted = z.strictObject({
  place: z.string().check(z.maxLength(200)),
  code: slug,
  why: z.optional(z.string().check(z.maxLength(400))),
});

export const brief = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  title: name,
  unit: z.enum(["in", "mm"]),
  seam: lengthText,
  step: lengthText,
  ruler,
  fabrics: z.array(fabric).check(z.minLength(1), z.maxLength(100)),
  blocks: z.array(block).check(z.minLength(1), z.maxLength(100)),
  quilt,
  margin: z.optional(margin),
  sizes: z.optional(
    z.array(z.strictObject({ name, width: lengthText, length: lengthText })).check(z.maxLength(20)),
  ),
  finishing: z.optional(finishing),
  shop: z.optional(shop),
  class: z.optional(classPlan),
  accepted: z.optional(z.array(accepted).check(z.maxLength(400))),
  notes: z.optional(z.unknown()),
  record: z.optional(z.array(z.unknown()).check(z.maxLength(2000))),
});

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
