import type { RepeatFound, StripeFound } from "../../../core/fabric/index.ts";
import type { Finding } from "../../../core/findings/index.ts";

/** What the page asks of the worker that holds the picture. */
export type Ask =
  | { readonly ask: "open"; readonly file: Blob; readonly fabric: string }
  /** Cropped to the box, then turned anticlockwise by `angle`, degrees; 0 leaves it. */
  | { readonly ask: "find"; readonly angle: number; readonly crop: Box };

/** Part of a picture in its pixels, from its top left corner. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Opened {
  readonly width: number;
  readonly height: number;
  /** Encoded anew, so that nothing of what the camera wrote is in it. */
  readonly picture: Blob;
  readonly notes: readonly Finding[];
}

export interface Found {
  readonly width: number;
  readonly height: number;
  /** data: address of the straightened picture. */
  readonly data: string;
  readonly color: string;
  /** Degrees anticlockwise from level at which the bands lie in that picture. */
  readonly tilt: number;
  readonly stripe: StripeFound;
  readonly repeat: RepeatFound;
}

export type Reply =
  | { readonly reply: "progress"; readonly done: number }
  | { readonly reply: "refused"; readonly finding: Finding }
  | { readonly reply: "failed"; readonly message: string }
  | { readonly reply: "opened"; readonly opened: Opened }
  | { readonly reply: "found"; readonly found: Found };
