import type { Op, Stroke } from "../core/picture/index.ts";

/**
 * Drawing operators of a PDF content stream, written straight from the picture's list: pdfkit draws
 * words, pictures and the page; lines and fills are these few letters. y is already down, since
 * pdfkit turns every page over once.
 */
export function pathsOf(ops: readonly Op[]): string {
  return ops.map(oneOf).join("");
}

/** Words and photos need fonts and images, so they are drawn by the page's writer instead. */
export const isPlain = (ops: readonly Op[]): boolean =>
  ops.every((op) =>
    op.op === "text" || op.op === "image" || op.op === "use"
      ? false
      : op.op === "group"
        ? isPlain(op.ops)
        : true,
  );

function oneOf(op: Op): string {
  switch (op.op) {
    case "path": {
      const fill = op.fill === "none" ? undefined : op.fill;
      return painted(outline(op.points, op.closed), fill, op.stroke);
    }
    case "strokes":
      return painted(op.segments.map((s) => outline(s, false)).join(""), undefined, op.stroke);
    case "circle":
      return painted(circle(op.at.x, op.at.y, op.radius), op.fill, op.stroke);
    case "group":
      return op.clip ? `q ${outline(op.clip, true)}W n\n${pathsOf(op.ops)}Q\n` : pathsOf(op.ops);
    default:
      throw new RangeError(`path, strokes, circle or group expected, got ${op.op}`);
  }
}

/** A thousandth of a point is far below what any printer sets. */
export const number = (x: number): string => {
  const text = x.toFixed(3);
  const trimmed = text.replace(/\.?0+$/, "");
  return trimmed === "-0" || trimmed === "" ? "0" : trimmed;
};

const outline = (points: readonly { readonly x: number; readonly y: number }[], closed: boolean) =>
  `${points.map((p, i) => `${number(p.x)} ${number(p.y)} ${i === 0 ? "m" : "l"} `).join("")}${closed ? "h " : ""}`;

/** A circle by four cubic curves; the handle is 4/3 (sqrt 2 - 1) of the radius. */
function circle(x: number, y: number, r: number): string {
  const k = r * ((4 / 3) * (Math.SQRT2 - 1));
  const curve = (...v: number[]): string => `${v.map(number).join(" ")} c `;
  return [
    `${number(x + r)} ${number(y)} m `,
    curve(x + r, y + k, x + k, y + r, x, y + r),
    curve(x - k, y + r, x - r, y + k, x - r, y),
    curve(x - r, y - k, x - k, y - r, x, y - r),
    curve(x + k, y - r, x + r, y - k, x + r, y),
    "h ",
  ].join("");
}

export const rgb = (hex: string): string =>
  [1, 3, 5].map((i) => number(Number.parseInt(hex.slice(i, i + 2), 16) / 255)).join(" ");

function painted(path: string, fill: string | undefined, stroke: Stroke | undefined): string {
  if (!fill && !stroke) return "";
  const set = [
    "q ",
    fill ? `${rgb(fill)} rg ` : "",
    stroke ? `${rgb(stroke.color)} RG ${number(stroke.width)} w ` : "",
    stroke?.dash ? `[${stroke.dash.map(number).join(" ")}] 0 d ` : "",
    stroke?.round ? "1 J " : "",
  ].join("");
  const paint = fill && stroke ? "B" : fill ? "f" : "S";
  return `${set}${path}${paint} Q\n`;
}
