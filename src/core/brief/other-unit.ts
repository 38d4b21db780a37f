import type { Unit } from "../measure/index.ts";
import { isLengthAt } from "./read.ts";
import type { Brief } from "./schema.ts";

const HAS_UNIT = /[a-z"″”]\s*$/i;

/**
 * Makes another unit the document's own, on a draft. Lengths typed without a unit get the one they
 * had, so that every length stays what it was; the ruler's step becomes a common one.
 */
export function withOtherUnit(draft: Brief, unit: Unit): void {
  const was = draft.unit;
  if (was === unit) return;
  const { notes, record } = draft;
  delete draft.notes;
  delete draft.record;
  said(draft as unknown as Record<string, unknown>, "", was);
  if (notes !== undefined) draft.notes = notes;
  if (record !== undefined) draft.record = record;
  draft.margin ??= { straighten: was === "in" ? "1 in" : "25 mm", wrongStrip: true };
  const binding = draft.finishing?.binding;
  if (binding) binding.spare ??= was === "in" ? "10 in" : "254 mm";
  draft.unit = unit;
  draft.step = unit === "in" ? "1/8" : "1";
}

function said(value: Record<string, unknown>, path: string, unit: Unit): void {
  for (const [key, v] of Object.entries(value)) {
    const here = path ? `${path}/${key}` : key;
    if (typeof v === "string") {
      if (isLengthAt(key, here) && !HAS_UNIT.test(v)) value[key] = `${v.trim()} ${unit}`;
      else if (key === "rule") value[key] = ruleWith(v, unit);
    } else if (key === "seams" && Array.isArray(v))
      value[key] = v.map((seam) => seamWith(String(seam), unit));
    else if (v !== null && typeof v === "object" && key !== "fabric")
      said(v as Record<string, unknown>, here, unit);
  }
}

/** `strip-1/2` -> `strip-1/2in`: a number that is added is a length, one that multiplies is not. */
const ruleWith = (rule: string, unit: Unit): string =>
  rule.replace(/([+-]\s*)(\d[\d\s./]*\d|\d)(?!\s*(?:in|mm|cm|"|[\d./]))/g, `$1$2${unit}`);

/** `2 1/2 from A toward B` -> `2 1/2 in from A toward B`. */
const seamWith = (seam: string, unit: Unit): string =>
  seam.replace(/(\d[\d\s./]*\d|\d)(\s+from\s)/g, `$1 ${unit}$2`);
