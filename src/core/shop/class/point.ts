import type { StudentText } from "../../brief/index.ts";
import { parseLength, type Unit } from "../../measure/index.ts";

type Point = NonNullable<StudentText["point"]>;

/** A ruler's point as it is typed: sharp, blunt, blunt:3/16 (past the center), flat:3/8 (wide). */
export function readPointText(text: string, unit: Unit): Point | undefined {
  const said = text.trim().toLowerCase();
  if (said === "sharp") return "sharp";
  // Blunt alone is cut as far past the center as the quarter-inch seam it is made for.
  if (said === "blunt") return { blunt: unit === "in" ? "1/4" : "6.35" };
  const m = /^(blunt|flat)\s*:?\s+?(.+)$|^(blunt|flat):(.+)$/.exec(said);
  const kind = m?.[1] ?? m?.[3];
  const size = (m?.[2] ?? m?.[4])?.trim();
  if (!kind || !size || !parseLength(size, unit).ok) return undefined;
  return kind === "blunt" ? { blunt: size } : { flat: size };
}

/** The same, read back. */
export const sayPointText = (p: Point | undefined): string => {
  if (p === undefined) return "";
  if (p === "sharp") return "sharp";
  return "blunt" in p ? `blunt:${p.blunt}` : `flat:${p.flat}`;
};
