import { labOf } from "./lab.ts";
import { fromLight, hexOf, LIGHT, type Rgb, rgbOf, toLight } from "./srgb.ts";

/** How a page is looked at: as it is, as a gray print, or with a common color blindness. */
export type Sight = "full" | "gray" | "protan" | "deutan" | "tritan";

/**
 * G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation
 * of Color Vision Deficiency", IEEE TVCG 15(6), 2009: severity 1.0, rows for linear R, G, B. Figures
 * as transcribed in the open-source library culori 4.0.2; that they act on linear light is from
 * memory of the paper.
 */
const MACHADO = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const;

/** The color as it is seen. Gray keeps the lightness L*. */
export function seenAs(hex: string, sight: Sight): string {
  if (sight === "full") return hex;
  if (sight === "gray") return grayOf(hex);
  const light = rgbOf(hex).map(toLight);
  const seen = MACHADO[sight].map((row) =>
    fromLight(row[0] * light[0] + row[1] * light[1] + row[2] * light[2]),
  );
  return hexOf([seen[0], seen[1], seen[2]]);
}

/** The gray of the same lightness. */
function grayOf(hex: string): string {
  const { l } = labOf(hex);
  const f = (l + 16) / 116;
  const y = f ** 3 > 216 / 24389 ? f ** 3 : l / (24389 / 27);
  const c = fromLight(y);
  return hexOf([c, c, c] as Rgb);
}

/** Every pixel of a picture (R, G, B, A in turn) as it is seen, written over what it was. */
export function seenPixels(data: Uint8ClampedArray, sight: Sight): void {
  if (sight === "full") return;
  for (let i = 0; i + 3 < data.length; i += 4) {
    const [r, g, b] = [LIGHT[data[i]], LIGHT[data[i + 1]], LIGHT[data[i + 2]]];
    if (sight === "gray") {
      data.fill(fromLight(LUMINANCE[0] * r + LUMINANCE[1] * g + LUMINANCE[2] * b), i, i + 3);
      continue;
    }
    const rows = MACHADO[sight];
    for (let k = 0; k < 3; k++)
      data[i + k] = fromLight(rows[k][0] * r + rows[k][1] * g + rows[k][2] * b);
  }
}

/** Y of XYZ from linear sRGB (IEC 61966-2-1): the gray of the same Y has the same L*. */
const LUMINANCE = [0.2126, 0.7152, 0.0722] as const;
