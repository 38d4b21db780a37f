import { type PdfPoint, parseLength } from "../measure/index.ts";
import { printed } from "./needs.ts";
import { lengthOfTicks } from "./ticks.ts";
import type { KitPlan } from "./types.ts";

/** What stands on one label. */
export interface Label {
  readonly title: string;
  readonly kit: number;
  readonly of: number;
  /** "B Shell"; absent on the label of the whole bag. */
  readonly fabric?: string;
  /** "1 yd, 40 in wide", or what is in the bag. */
  readonly what: string;
  readonly uses: string;
}

/** A sheet of labels by its dimensions, in points. */
export interface LabelSheet {
  readonly name: string;
  readonly paper: "letter" | "a4";
  readonly rows: number;
  readonly columns: number;
  readonly width: PdfPoint;
  readonly height: PdfPoint;
  readonly left: PdfPoint;
  readonly top: PdfPoint;
  /** From label to label, gaps counted. */
  readonly across: PdfPoint;
  readonly down: PdfPoint;
}

const POINTS = { in: 72, mm: 72 / 25.4 } as const;
const PAPERS = { letter: [612, 792], a4: [210 * POINTS.mm, 297 * POINTS.mm] } as const;

interface Dimensions {
  readonly unit: "in" | "mm";
  readonly paper: "letter" | "a4";
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly across: number;
  readonly down: number;
}

const sheet = (name: string, d: Dimensions): LabelSheet => {
  const k = POINTS[d.unit];
  return {
    name,
    paper: d.paper,
    rows: d.rows,
    columns: d.columns,
    width: d.width * k,
    height: d.height * k,
    left: d.left * k,
    top: d.top * k,
    across: d.across * k,
    down: d.down * k,
  };
};

/** Sheets in common use, by their dimensions alone (common practice, no source). */
export const LABEL_SHEETS: readonly LabelSheet[] = [
  sheet("2 5/8 x 1 in, 3 by 10", {
    unit: "in",
    paper: "letter",
    columns: 3,
    rows: 10,
    width: 2.625,
    height: 1,
    left: 3 / 16,
    top: 0.5,
    across: 2.75,
    down: 1,
  }),
  sheet("4 x 2 in, 2 by 5", {
    unit: "in",
    paper: "letter",
    columns: 2,
    rows: 5,
    width: 4,
    height: 2,
    left: 5 / 32,
    top: 0.5,
    across: 4.1875,
    down: 2,
  }),
  sheet("63.5 x 38.1 mm, 3 by 7", {
    unit: "mm",
    paper: "a4",
    columns: 3,
    rows: 7,
    width: 63.5,
    height: 38.1,
    left: 7.25,
    top: 15.15,
    across: 66,
    down: 38.1,
  }),
  sheet("99.1 x 57 mm, 2 by 5", {
    unit: "mm",
    paper: "a4",
    columns: 2,
    rows: 5,
    width: 99.1,
    height: 57,
    left: 4.65,
    top: 6,
    across: 101.6,
    down: 57,
  }),
];

/** A sheet of labels, checked: labels that lie on the paper and not on one another. */
export function labelSheet(d: Dimensions): LabelSheet {
  const k = POINTS[d.unit];
  const made = sheet(`${d.width} x ${d.height} ${d.unit}, ${d.columns} by ${d.rows}`, d);
  const size = PAPERS[d.paper];
  const right = made.left + (d.columns - 1) * made.across + made.width;
  const bottom = made.top + (d.rows - 1) * made.down + made.height;
  const numbers = [d.columns, d.rows, d.width, d.height];
  if (numbers.some((n) => !(n > 0)) || !Number.isInteger(d.columns) || !Number.isInteger(d.rows))
    throw new RangeError(
      `rows, columns and label sizes above 0 expected, got ${numbers.join(", ")}`,
    );
  if (right > size[0] + 0.5 || bottom > size[1] + 0.5)
    throw new RangeError(
      `labels within ${d.paper} paper expected; they reach ${(right / k).toFixed(2)} by ${(bottom / k).toFixed(2)} ${d.unit}`,
    );
  if (made.across < made.width - 0.01 || made.down < made.height - 0.01)
    throw new RangeError("labels that do not overlap expected");
  return made;
}

const SHEET =
  /^(\d{1,2})\s*(?:x|×|by)\s*(\d{1,2})\s+(?:of\s+)?([\d ./]+?)\s*(?:x|×|by)\s*([\d ./]+?)\s*(in|mm)\b(.*)$/i;

/**
 * A sheet of the shop's own, said by its dimensions: "3 by 8 of 70 x 37 mm, left 0, top 0.5, gap 0 x 0".
 * Columns by rows of width by height; what is not said is even: gaps of nothing, margins alike on both
 * sides. Gives what is wrong with it in words where it cannot be.
 */
export function readLabelSheet(text: string, paper: "letter" | "a4"): LabelSheet | string {
  const m = SHEET.exec(text.trim());
  if (!m)
    return `"${text}" is no label sheet; say it as 3 by 8 of 70 x 37 mm, left 0, top 0.5, gap 0 x 0`;
  const unit = m[5].toLowerCase() as "in" | "mm";
  const said = (name: string): string | undefined =>
    new RegExp(`\\b${name}\\s+([\\d ./]+)(?:x\\s*([\\d ./]+))?`, "i")
      .exec(m[6])
      ?.slice(1)
      .join("x");
  const number = (t: string | undefined): number | undefined => {
    const read = t === undefined || t === "" ? undefined : parseLength(t.trim(), unit);
    return read?.ok ? +read.length.value.valueOf() : undefined;
  };
  const [columns, rows] = [Number(m[1]), Number(m[2])];
  const [width, height] = [number(m[3]), number(m[4])];
  if (width === undefined || height === undefined) return `"${text}" has no size of a label`;
  const [gapAcross, gapDown] = (said("gap") ?? "0x0").split("x").map((t) => number(t) ?? 0);
  const [wide, high] = PAPERS[paper].map((p) => p / POINTS[unit]);
  const across = width + gapAcross;
  const down = height + gapDown;
  const left = number(said("left")?.split("x")[0]) ?? (wide - columns * across + gapAcross) / 2;
  const top = number(said("top")?.split("x")[0]) ?? (high - rows * down + gapDown) / 2;
  const size = { unit, paper, columns, rows, width, height, left, top, across, down };
  try {
    return labelSheet(size);
  } catch (e) {
    return (e as RangeError).message;
  }
}

/** One label for every piece of every kit and one for its bag, kit by kit. */
export function labelsOf(plan: KitPlan, brief: Parameters<typeof printed>[0]): Label[] {
  const out: Label[] = [];
  for (let kit = 1; kit <= plan.kits; kit++) {
    const base = { title: plan.title, kit, of: plan.kits };
    out.push({
      ...base,
      what: `${plan.fabrics.length} ${plan.fabrics.length === 1 ? "fabric" : "fabrics"}`,
      uses: plan.fabrics.map((f) => `${f.letter} ${f.name}`).join(", "),
    });
    for (const f of plan.fabrics) {
      const run = plan.runs.find((r) =>
        r.cuts.some((c) => c.kit === kit && c.fabricId === f.fabricId),
      );
      const cut = run?.cuts.find((c) => c.kit === kit && c.fabricId === f.fabricId);
      const width = f.bolts.find((b) => b.boltId === run?.boltId)?.cut.width;
      if (!cut || width === undefined) continue;
      const size = printed(brief, lengthOfTicks(cut.length, plan.unit));
      out.push({
        ...base,
        fabric: `${f.letter} ${f.name}`,
        what: `${size} long, ${printed(brief, lengthOfTicks(width, plan.unit))} usable`,
        uses: f.uses,
      });
    }
  }
  return out;
}
