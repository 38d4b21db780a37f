/** What is read off a printed pattern: nothing here knows the design it was made from. */
export interface Reading {
  readonly unit: "in" | "mm";
  readonly sentence: string;
  readonly seam?: number;
  readonly top?: readonly [number, number];
  readonly block?: { readonly finished: number; readonly raw: number };
  readonly blocks?: number;
  /** Half blocks; those of a quilt of hexagons are all it has. */
  readonly halves?: number;
  readonly grid?: readonly [number, number];
  readonly usable: readonly number[];
  readonly fabrics: readonly Fabric[];
  readonly straighten?: number;
  /** Room for one wrong strip, and for reaching a repeat, by fabric letter. */
  readonly wrongStrip: ReadonlyMap<string, number>;
  readonly toRepeat: ReadonlyMap<string, number>;
  readonly extra: ReadonlyMap<string, number>;
  /** The part of its length that a fabric loses in the wash, by fabric letter. */
  readonly washed: ReadonlyMap<string, number>;
  readonly cuts: readonly CutLine[];
  readonly hands: string;
  readonly proofs: readonly Proof[];
  readonly kinds: readonly { readonly name: string; readonly count: number }[];
  readonly steps: readonly Step[];
  readonly after: readonly AfterStep[];
  readonly map: ReadonlyMap<string, number>;
  readonly mapWords: string;
  readonly feet: readonly string[];
}

export interface Fabric {
  readonly letter: string;
  readonly text: string;
  readonly uses: ReadonlyMap<string, number>;
  readonly yards: readonly number[];
  /** Said with the fabric where the widths differ from fabric to fabric. */
  readonly usable?: number;
}

export interface CutLine {
  readonly fabric: string;
  readonly strips?: number;
  readonly wide?: number;
  readonly into: string;
  readonly letters: readonly string[];
  readonly name: string;
  /** As the piece's name has it. */
  readonly hand?: "left" | "right";
  readonly pieces?: number;
}

export interface Proof {
  readonly letter: string;
  readonly text: string;
}

export interface Step {
  readonly number: number;
  readonly name: string;
  readonly kind: string;
  readonly words: string;
  readonly stop: string;
}

export interface AfterStep {
  readonly number: number;
  readonly words: string;
}
