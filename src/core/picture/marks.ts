import type { Shown } from "../fabric/index.ts";
import type { Point, Polygon, Rigid } from "../geometry/index.ts";
import type { Length, Radian, Unit } from "../measure/index.ts";

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
  /**
   * Height of small print in the picture's own unit, when its labels were laid out for one scale.
   * Without it the renderer takes its own.
   */
  readonly small?: Length;
  /** Drawn once, stamped often (a kind of block, a kind of strip). */
  readonly stamps: Readonly<Record<string, readonly Mark[]>>;
  readonly marks: readonly Mark[];
}

/**
 * cut: raw edge. seam: line of stitches on a piece. sewn: seam in a finished block. rule: tape,
 * dimension. hair: layout help. lost: edge of lost fabric. ghost: what was, or what is missing.
 * lit: the accent. fold: fold of the fabric. doubt: not proved. step: the seam sewn in this step.
 * press: where an allowance is pressed to. grain: along the thread.
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
  | "outline"
  | "step"
  | "press"
  | "grain";

/** What a shape is filled with. `fabric`: the renderer knows its colour, hatch, bands or photo. */
export type Fill =
  | {
      readonly kind: "fabric";
      readonly fabricId: string;
      /** Carries the fabric (x along the strip, y across it) to the frame of the polygon. */
      readonly at?: Rigid;
      /** What shows of it, when that is known part by part; in the frame of the polygon. */
      readonly shown?: readonly Shown[];
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
  /** A small round mark; `ring` when hollow. Its size is the renderer's business. */
  | {
      readonly kind: "dot";
      readonly at: Point;
      readonly line: Line;
      readonly ring?: boolean;
      readonly id?: string;
    }
  | {
      readonly kind: "text";
      readonly at: Point;
      readonly text: string;
      /** Nominal size relative to the renderer's small print: 1 small print, 1.3 letter ... */
      readonly size: number;
      readonly anchor: "start" | "middle" | "end";
      readonly weight?: "regular" | "bold";
      /** on-fabric: with a casing of paper, so that it reads on any fabric and hatch. */
      readonly tone?: "ink" | "soft" | "lit" | "on-fabric";
      /** Set along a line at this angle; without it text always stands upright. */
      readonly turn?: Radian;
    }
  | {
      readonly kind: "arrow";
      readonly from: Point;
      readonly to: Point;
      readonly line: Line;
      /** A head at each end (grain). */
      readonly both?: boolean;
    }
  | {
      readonly kind: "group";
      readonly at: Rigid;
      readonly marks: readonly Mark[];
      readonly clip?: Polygon;
      readonly id?: string;
    }
  | { readonly kind: "stamp"; readonly of: string; readonly at: Rigid; readonly id?: string };
