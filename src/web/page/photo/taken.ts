import type { Brief, Fabric } from "../../../core/brief/index.ts";
import { type Length, printLength, stepOf } from "../../../core/measure/index.ts";
import type { Found } from "./messages.ts";

/** A band as it stands in the form: its width as text, to be corrected by hand. */
export interface BandText {
  readonly width: string;
  readonly color: string;
}

/** Printed to marks finer than any photo tells. */
function text(b: Pick<Brief, "unit">, x: Length): string {
  const step = stepOf(b.unit === "in" ? "1/32" : "0.5", b.unit);
  const size = step.size.valueOf();
  return printLength(Math.max(size, Math.round(x / size) * size), step);
}

/** The bands found, as widths of the brief's unit; `perUnit`: pixels to one unit. */
export const bandTexts = (b: Pick<Brief, "unit">, found: Found, perUnit: number): BandText[] =>
  found.stripe.bands.map(({ from, to, color }) => ({
    width: text(b, ((to - from) * found.stripe.period) / perUnit),
    color,
  }));

type Common = Omit<Extract<Fabric, { kind: "plain" }>, "kind">;

/** What every fabric says, whatever its kind. */
function common(f: Fabric, color: string): Common {
  const { id, name, usable, folds, directional, reversible, narrower, shrinkage, inHand } = f;
  return {
    id,
    name,
    usable,
    folds,
    directional,
    reversible,
    color,
    ...(narrower !== undefined && { narrower }),
    ...(shrinkage && { shrinkage }),
    ...(inHand && { inHand }),
  };
}

/** The fabric as a printed stripe with these bands. */
export const asStripe = (
  f: Fabric,
  found: Found,
  bands: readonly BandText[],
  runs: "along" | "across",
): Fabric => ({
  kind: "stripe",
  ...common(f, found.color),
  runs,
  bands: bands.map((x) => ({ ...x })),
  tilt: 0,
});

/** The fabric as a print with its picture; its repeat only where it was found surely. */
export function asPrint(b: Pick<Brief, "unit">, f: Fabric, found: Found, perUnit: number): Fabric {
  const { across, along, sure } = found.repeat;
  const size = (pixels: number): string => text(b, pixels / perUnit);
  return {
    kind: "print",
    ...common(f, found.color),
    photo: { data: found.data, width: size(found.width), height: size(found.height) },
    ...(sure &&
      along > 0 && {
        repeat: { along: size(along), ...(across > 0 && { across: size(across) }) },
      }),
  };
}
