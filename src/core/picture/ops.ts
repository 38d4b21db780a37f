import { type Point, point, type Rigid } from "../geometry/index.ts";
import type { Run } from "./fraction.ts";
import type { Segment } from "./hatch.ts";
import type { Swatches } from "./swatch.ts";
import type { FabricLook, Stroke, Theme } from "./theme.ts";

/**
 * A picture as strokes, fills and words in output units, y down, with every color and width decided.
 * The SVG writer and the PDF writer are both a plain reading of this list, so the printed diagram
 * and the one on the page are the same drawing.
 */
export type Op =
  | {
      readonly op: "path";
      readonly points: readonly Point[];
      readonly closed: boolean;
      readonly fill?: string;
      readonly stroke?: Stroke;
      readonly id?: string;
    }
  /** Many separate strokes of one kind: a hatch. */
  | { readonly op: "strokes"; readonly segments: readonly Segment[]; readonly stroke: Stroke }
  | {
      readonly op: "circle";
      readonly at: Point;
      readonly radius: number;
      readonly fill?: string;
      readonly stroke?: Stroke;
      readonly id?: string;
    }
  | {
      readonly op: "text";
      readonly at: Point;
      readonly runs: readonly Run[];
      readonly size: number;
      readonly bold: boolean;
      readonly color: string;
      readonly anchor: "start" | "middle" | "end";
      /** Degrees, clockwise as seen. */
      readonly turn: number;
      readonly halo?: { readonly color: string; readonly width: number };
    }
  | {
      readonly op: "image";
      readonly data: string;
      readonly clip: readonly Point[];
      /** Tiles: a, b, c, d, e, f of the matrix that carries a width x height tile into place. */
      readonly tiles: readonly (readonly number[])[];
      readonly width: number;
      readonly height: number;
    }
  | {
      readonly op: "group";
      readonly ops: readonly Op[];
      readonly clip?: readonly Point[];
      readonly id?: string;
    }
  /** A stamp put down: the matrix a, b, c, d, e, f of SVG and PDF. */
  | {
      readonly op: "use";
      readonly of: string;
      readonly matrix: readonly number[];
      readonly id?: string;
    };

export interface Drawing {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly stamps: Readonly<Record<string, readonly Op[]>>;
  readonly ops: readonly Op[];
}

export interface DrawOptions {
  readonly theme: Theme;
  readonly swatches: Swatches;
  /** Output units to one unit of the picture. */
  readonly scale: number;
  /** Height of small print in output units; default the picture's own, then the theme's. */
  readonly small?: number;
  readonly fabrics?: FabricLook;
  /** Ids drawn with the accent. */
  readonly lit?: ReadonlySet<string>;
}

/** The options, with what was left to them decided. */
export interface Context extends DrawOptions {
  readonly small: number;
  readonly fabrics: FabricLook;
  readonly shift: Point;
}

/** Into output units, y down: the one place where pictures are turned over for SVG and PDF. */
export const flip = (c: Context, p: Point): Point =>
  point((p.x - c.shift.x) * c.scale, (c.shift.y - p.y) * c.scale);

export const flipAll = (c: Context, ps: readonly Point[]): Point[] => ps.map((p) => flip(c, p));

/** The matrix that does in output space what `t` does in the picture's, for a stamp drawn at (0, 0). */
export function matrixOf(c: Context, t: Rigid): number[] {
  const cos = Math.cos(t.turn);
  const sin = Math.sin(t.turn);
  const m = t.mirrored ? -1 : 1;
  const at = flip(c, point(t.x, t.y));
  return [cos * m, -sin * m, sin, cos, at.x, at.y];
}
