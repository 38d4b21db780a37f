import type { Point, Polygon, Rigid } from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";

/**
 * A picture: marks in the document's real units, y up, before anyone decides pixels or points.
 * The page, the command line's SVG and the printed sheets draw from the same marks, so words and
 * pictures cannot disagree. Widths and colours of lines are the renderers' business; marks say what
 * a line *means*.
 */
export interface Picture {
  /** Spoken name: the one-line finding of the picture. */
  readonly title: string;
  readonly unit: Unit;
  /** The rectangle of the picture in its own frame. */
  readonly left: Length;
  readonly bottom: Length;
  readonly width: Length;
  readonly height: Length;
  /** Drawn once, stamped often (a kind of block, a kind of strip). */
  readonly stamps: Readonly<Record<string, readonly Mark[]>>;
  readonly marks: readonly Mark[];
}

/**
 * cut: raw edge. seam: line of stitches on a piece. sewn: seam in a finished block. rule: tape,
 * dimension. hair: layout help. lost: edge of lost fabric. ghost: what was, or what is missing.
 * lit: the accent. fold: fold of the fabric. doubt: not proved.
 */
export type Line =
  | "cut"
  | "seam"
  | "sewn"
  | "rule"
  | "hair"
  | "lost"
  | "ghost"
  | "lit"
  | "fold"
  | "doubt"
  | "outline";

/** What a shape is filled with. `fabric`: the renderer knows its colour, hatch, bands or photo. */
export type Fill =
  | {
      readonly kind: "fabric";
      readonly fabricId: string;
      readonly at?: Rigid;
      readonly faint?: boolean;
    }
  | { readonly kind: "color"; readonly color: string }
  | { readonly kind: "lost" }
  | { readonly kind: "paper" };

export type Mark =
  | {
      readonly kind: "shape";
      readonly polygon: Polygon;
      readonly fill?: Fill;
      readonly line?: Line;
      /** Id of the patch, piece, strip ... for lighting and touching. */
      readonly id?: string;
    }
  | {
      readonly kind: "line";
      readonly points: readonly Point[];
      readonly line: Line;
      readonly id?: string;
    }
  | { readonly kind: "dot"; readonly at: Point; readonly line: Line; readonly id?: string }
  | {
      readonly kind: "text";
      readonly at: Point;
      readonly text: string;
      /** Nominal size relative to the renderer's small print: 1 small print, 1.3 letter ... */
      readonly size: number;
      readonly anchor: "start" | "middle" | "end";
      readonly weight?: "regular" | "bold";
      readonly tone?: "ink" | "soft" | "lit" | "on-fabric";
    }
  | {
      readonly kind: "arrow";
      readonly from: Point;
      readonly to: Point;
      readonly line: Line;
    }
  | {
      readonly kind: "group";
      readonly at: Rigid;
      readonly marks: readonly Mark[];
      readonly clip?: Polygon;
      readonly id?: string;
    }
  | { readonly kind: "stamp"; readonly of: string; readonly at: Rigid; readonly id?: string };
