import type { Length, Unit } from "../measure/index.ts";

/** blocks: nothing may be cut from it. draft: a pattern may not lose the word. advice: good to know. */
export type Severity = "blocks" | "draft" | "advice";

/**
 * What is wrong with a design, or worth knowing: data, never an exception. `place` is an id of the
 * brief or the answer (a piece, block, fabric, quilt ...). `code` never changes its meaning; its
 * sentence stands once, in say.ts. `words` fills the sentence with names the numbers cannot carry.
 */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly place: string;
  readonly needed?: Length;
  readonly found?: Length;
  readonly unit?: Unit | "degrees" | "count";
  readonly words?: Readonly<Record<string, string>>;
}

/** Every code there is, by stage. Add at the end of a stage's list; never reuse one. */
export const FINDING_CODES = [
  // brief
  "fabric-not-defined",
  "block-not-defined",
  "size-not-positive",
  "size-absurd",
  "too-many-blocks",
  "id-twice",
  "fabric-not-chosen",
  // block
  "octagon-does-not-fit",
  "side-not-free",
  "side-missing",
  "seam-misses-outline",
  "seam-twice",
  "sliver",
  "circle-not-closed",
  "seam-not-understood",
  "pattern-of-sectors",
  "tree-not-known",
  "role-not-known",
  "unit-not-square",
  // ruler and recipe
  "ruler-tip-too-wide",
  "ruler-too-short",
  "ruler-too-long",
  "thin-cover",
  "does-not-cover",
  "rule-not-understood",
  "cut-off-step",
  "cut-neighbours",
  "allowances-overlap",
  "bias-outside",
  "one-hand-only",
  "leftover-wedge",
  "way-does-not-fit",
  "cut-not-free",
  "strip-all-seam",
  // fabric
  "ring-narrow",
  "seam-in-allowance",
  "seam-in-bulk",
  "strip-set-sum",
  "photo-missing",
  "eye-will-not-part",
  "odd-wedges",
  "strip-set-in-itself",
  "strip-hidden",
  "strip-too-narrow",
  "set-strip-on-step",
  "rings-do-not-meet",
  "rings-nearly-meet",
  "photo-not-an-image",
  "photo-truncated",
  "photo-too-large",
  "photo-too-large-file",
  "photo-animated",
  "photo-cmyk",
  "photo-drawing",
  "photo-flattened",
  "stripe-unsure",
  "repeat-unsure",
  "photo-too-small",
  "stock-empty",
  "stock-column-missing",
  "stock-too-many-rows",
  "stock-quote-open",
  "stock-too-many-cells",
  "stock-cell-missing",
  "stock-cell-not-read",
  "stock-not-positive",
  "stock-count",
  "stock-cost-not-read",
  "repeat-not-said",
  // layout
  "piece-wider-than-fabric",
  "near-miss",
  "not-enough-in-hand",
  // quilt
  "blocks-differ-in-size",
  "border-wider-than-quilt",
  "no-room-for-corners",
  "allowances-fill-it",
  "block-cut-in-two",
  "size-not-reached",
  "block-not-square",
  "outline-does-not-fit",
  "sashing-in-rows-only",
  // sewing
  "crossing-does-not-nest",
  "reading-impossible",
  "reading-other-unit",
  "reading-far",
  "reading-missing",
  "more-than-one-fault",
  // shop
  "kit-no-bolt",
  "kit-bolt-too-narrow",
  "kits-fewer",
  "kits-not-proved",
  "kit-several-bolts",
  // any
  "not-worked-out",
] as const;

export type FindingCode = (typeof FINDING_CODES)[number];
