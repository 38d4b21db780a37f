import { type Brief, commonOf, type Fabric } from "../../../core/brief/index.ts";
import { type Length, printLength, stepOf, type Unit } from "../../../core/measure/index.ts";
import type { Found } from "./messages.ts";

/** A band as it stands in the form: its width as text, to be corrected by hand. */
export interface BandText {
  readonly width: string;
  readonly color: string;
}

/** Marks finer than any photo tells. */
const fine = (unit: Unit) => stepOf(unit === "in" ? "1/32" : "0.5", unit);

/** A length off a photo as text: never nothing. */
export function textOf(unit: Unit, x: Length): string {
  const step = fine(unit);
  const size = step.size.valueOf();
  return printLength(Math.max(size, Math.round(x / size) * size), step);
}

/** Pixels of the least move that changes such a text: one, or one mark. */
export const markStep = (unit: Unit, perUnit: number): number =>
  Math.max(1, fine(unit).size.valueOf() * perUnit);

/** The bands found, as widths of the brief's unit; `perUnit`: pixels to one unit. */
export const bandTexts = (b: Pick<Brief, "unit">, found: Found, perUnit: number): BandText[] =>
  found.stripe.bands.map(({ from, to, color }) => ({
    width: textOf(b.unit, ((to - from) * found.stripe.period) / perUnit),
    color,
  }));

/** The fabric as a printed stripe with these bands. */
export const asStripe = (
  f: Fabric,
  found: Found,
  bands: readonly BandText[],
  runs: "along" | "across",
): Fabric => ({
  kind: "stripe",
  ...commonOf(f),
  color: found.color,
  runs,
  bands: bands.map((x) => ({ ...x })),
  tilt: 0,
});

/** The fabric as a print with its picture, and the repeat as it was found or corrected by hand. */
export function asPrint(
  b: Pick<Brief, "unit">,
  f: Fabric,
  found: Found,
  perUnit: number,
  repeat: { readonly along: string; readonly across: string },
): Fabric {
  const size = (pixels: number): string => textOf(b.unit, pixels / perUnit);
  const [along, across] = [repeat.along.trim(), repeat.across.trim()];
  return {
    kind: "print",
    ...commonOf(f),
    color: found.color,
    photo: { data: found.data, width: size(found.width), height: size(found.height) },
    ...(along !== "" && { repeat: { along, ...(across !== "" && { across }) } }),
  };
}
