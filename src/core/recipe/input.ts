import type { RulerText } from "../brief/schema.ts";
import type { Length, Step, Unit } from "../measure/index.ts";
import type { Piece, PieceFabric } from "../piece/index.ts";
import type { Bench, CutPlan } from "./plan.ts";
import type { Recipe } from "./types.ts";

/** What the maker may say about one piece: brief `block.cut`. */
export interface RecipeChoice {
  readonly size?: string;
  readonly rule?: string;
  readonly kind?: string;
}

/** `striped`: quarter turns are out, because the bands must keep their direction. */
export interface RecipeFabric extends PieceFabric {
  readonly striped?: boolean;
}

/** The octagon of a block, for rules that speak of its strip. */
export interface WedgeFacts {
  readonly strip: Length;
  readonly a: Length;
}

export interface RecipesInput {
  readonly pieces: readonly Piece[];
  readonly ruler: RulerText;
  readonly seam: Length;
  readonly step: Step;
  readonly unit: Unit;
  readonly fabrics: Readonly<Record<string, RecipeFabric>>;
  /** Block id -> role ("wedge", "kite", "background" ...) or piece id -> choice. */
  readonly choices?: Readonly<Record<string, Readonly<Record<string, RecipeChoice>>>>;
  readonly wedges?: Readonly<Record<string, WedgeFacts>>;
  readonly accepted?: readonly { readonly place: string; readonly code: string }[];
}

/** A piece with its recipe, and what the maker asked for that could not be done. */
export interface Judged {
  readonly piece: Piece;
  readonly plan: CutPlan;
  readonly recipe: Recipe;
  readonly bench: Bench;
  readonly refused: {
    readonly kind?: string;
    readonly kinds?: readonly string[];
    readonly rule?: string;
    readonly size?: Length;
  };
}
