/**
 * Lengths carry their unit in the type. A plain number may become any of these, but one of them
 * never silently becomes another: `Inch` handed to a `Millimetre` is a type error.
 *
 * `Length` is the float64 of the *document's* unit: all geometry runs in it (docs/conventions.md).
 */
declare const flavor: unique symbol;
type Flavor<Name extends string> = number & { readonly [flavor]?: Name };

/** A length in the unit the document is written in. */
export type Length = Flavor<"length in the document's unit">;
export type Inch = Flavor<"inch">;
export type Millimetre = Flavor<"millimetre">;
/** A PDF point, 1/72 inch. */
export type PdfPoint = Flavor<"pdf point">;
export type Radian = Flavor<"radian">;
export type Degree = Flavor<"degree">;

/** The two units a document may be written in. Centimetres may be typed; they are kept as mm. */
export type Unit = "in" | "mm";

/** Exactly, by the international agreement of 1959. */
export const MM_PER_INCH = 25.4;
/** ISO 32000-1, 8.3.2: the default user space unit is 1/72 inch. */
export const POINTS_PER_INCH = 72;

export const toRadians = (d: Degree): Radian => (d * Math.PI) / 180;
export const toDegrees = (r: Radian): Degree => (r * 180) / Math.PI;

export const lengthToInch = (x: Length, unit: Unit): Inch => +x / (unit === "in" ? 1 : MM_PER_INCH);
export const inchToLength = (x: Inch, unit: Unit): Length => +x * (unit === "in" ? 1 : MM_PER_INCH);
export const lengthToMillimetre = (x: Length, unit: Unit): Millimetre =>
  +x * (unit === "mm" ? 1 : MM_PER_INCH);
export const lengthToPoints = (x: Length, unit: Unit): PdfPoint =>
  lengthToInch(x, unit) * POINTS_PER_INCH;
