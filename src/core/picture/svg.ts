import type { Point } from "../geometry/index.ts";
import { lengthToInch } from "../measure/index.ts";
import { type Drawing, type DrawOptions, draw, type Op } from "./draw.ts";
import { FRACTION_GAP, FRACTION_SLASH, type Run } from "./fraction.ts";
import type { Picture } from "./marks.ts";
import type { Swatches } from "./swatch.ts";
import { type FabricLook, type Stroke, THEMES, type ThemeName } from "./theme.ts";

export interface SvgOptions {
  readonly theme?: ThemeName;
  readonly swatches: Swatches;
  /** Width in CSS pixels (points in the paper themes); default 640. */
  readonly width?: number;
  /**
   * True size: width and height are written in inches or millimetres. The drawing inside is at life
   * size too, unless that is larger than `width`, so that its small print keeps its proportion.
   */
  readonly realUnits?: boolean;
  readonly fabrics?: FabricLook;
  readonly lit?: ReadonlySet<string>;
  /** Small print, in output units. */
  readonly small?: number;
  /** Put before every id inside, when several pictures share a page. */
  readonly prefix?: string;
}

/**
 * A picture as one SVG string. The same picture and options give the same bytes: numbers are
 * rounded to a thousandth of an output unit, attributes always stand in one order.
 */
export function toSvg(picture: Picture, options: SvgOptions): string {
  const theme = THEMES[options.theme ?? "light"];
  const inches = lengthToInch(picture.width, picture.unit);
  const width = options.width ?? 640;
  const drawn = options.realUnits ? Math.min(theme.perInch * inches, width) : width;
  const scale = drawn / picture.width;
  const drawOptions: DrawOptions = {
    theme,
    swatches: options.swatches,
    scale,
    ...(options.small !== undefined ? { small: options.small } : {}),
    ...(options.fabrics ? { fabrics: options.fabrics } : {}),
    ...(options.lit ? { lit: options.lit } : {}),
  };
  const drawing = draw(picture, drawOptions);
  const size = options.realUnits
    ? `width="${decimals(picture.width, 5)}${picture.unit}" height="${decimals(picture.height, 5)}${picture.unit}"`
    : `width="${n(drawing.width)}" height="${n(drawing.height)}"`;
  return writeSvg(drawing, size, options.prefix ?? "");
}

function writeSvg(drawing: Drawing, size: string, prefix: string): string {
  const title = escapeText(drawing.title);
  const writer = new Writer(prefix);
  const stamps = Object.entries(drawing.stamps).map(
    ([name, ops]) => `<g id="${escapeText(prefix + name)}">${writer.all(ops)}</g>`,
  );
  const body = writer.all(drawing.ops);
  const defs = [...stamps, ...writer.clips].join("");
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${n(drawing.width)} ${n(drawing.height)}"`,
    ` role="img" aria-label="${title}" font-family="'Alegreya Sans', sans-serif"`,
    ` style="font-feature-settings:'lnum'" fill="none" stroke-linejoin="miter">`,
    `<title>${title}</title>`,
    defs ? `<defs>${defs}</defs>` : "",
    body,
    "</svg>",
  ].join("");
}

class Writer {
  readonly clips: string[] = [];
  private readonly prefix: string;

  constructor(prefix: string) {
    this.prefix = prefix;
  }

  all(ops: readonly Op[]): string {
    return ops.map((op) => this.one(op)).join("");
  }

  private one(op: Op): string {
    switch (op.op) {
      case "path":
        return `<path d="${pathOf(op.points, op.closed)}"${fillOf(op.fill)}${strokeOf(op.stroke)}${idOf(op.id)}/>`;
      case "strokes":
        return `<path d="${op.segments.map((s) => pathOf(s, false)).join("")}"${strokeOf(op.stroke)}/>`;
      case "circle":
        return `<circle cx="${n(op.at.x)}" cy="${n(op.at.y)}" r="${n(op.radius)}"${fillOf(op.fill)}${strokeOf(op.stroke)}${idOf(op.id)}/>`;
      case "text":
        return textOf(op);
      case "image":
        return this.imageOf(op);
      case "group": {
        const clip = op.clip ? ` clip-path="url(#${this.clip(op.clip)})"` : "";
        return `<g${clip}${idOf(op.id)}>${this.all(op.ops)}</g>`;
      }
      case "use":
        return `<use href="#${escapeText(this.prefix + op.of)}" transform="matrix(${op.matrix.map((x, i) => decimals(x, i < 4 ? 9 : 3)).join(" ")})"${idOf(op.id)}/>`;
    }
  }

  private clip(points: readonly Point[]): string {
    const id = `${escapeText(this.prefix)}clip-${this.clips.length + 1}`;
    this.clips.push(`<clipPath id="${id}"><path d="${pathOf(points, true)}"/></clipPath>`);
    return id;
  }

  private imageOf(op: Extract<Op, { op: "image" }>): string {
    const size = `width="${n(op.width)}" height="${n(op.height)}" preserveAspectRatio="none"`;
    // The tile's origin is the lower left corner of the photo, as in the fabric's frame.
    const tiles = op.tiles.map(
      (m) =>
        `<image href="${escapeText(op.data)}" y="${n(-op.height)}" ${size} transform="matrix(${m.map((x, i) => decimals(x, i < 4 ? 9 : 3)).join(" ")})"/>`,
    );
    return `<g clip-path="url(#${this.clip(op.clip)})">${tiles.join("")}</g>`;
  }
}

const decimals = (x: number, places: number): string => {
  const text = x.toFixed(places);
  const trimmed = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return trimmed === "-0" ? "0" : trimmed;
};
const n = (x: number): string => decimals(x, 3);

const pathOf = (points: readonly Point[], closed: boolean): string =>
  `M${points.map((p) => `${n(p.x)} ${n(p.y)}`).join("L")}${closed ? "Z" : ""}`;

const fillOf = (fill: string | undefined): string =>
  fill === undefined
    ? ""
    : fill === "none"
      ? ` fill="none" pointer-events="all"`
      : ` fill="${fill}"`;

function strokeOf(stroke: Stroke | undefined): string {
  if (!stroke) return "";
  const dash = stroke.dash ? ` stroke-dasharray="${stroke.dash.map(n).join(" ")}"` : "";
  const cap = stroke.round ? ` stroke-linecap="round"` : "";
  return ` stroke="${stroke.color}" stroke-width="${n(stroke.width)}"${dash}${cap}`;
}

const idOf = (id: string | undefined): string => (id ? ` data-id="${escapeText(id)}"` : "");

export const escapeText = (text: string): string =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");

function textOf(op: Extract<Op, { op: "text" }>): string {
  const turn =
    op.turn === 0 ? "" : ` transform="rotate(${n(op.turn)} ${n(op.at.x)} ${n(op.at.y)})"`;
  const halo = op.halo
    ? ` stroke="${op.halo.color}" stroke-width="${n(op.halo.width)}" stroke-linejoin="round" paint-order="stroke"`
    : "";
  const weight = op.bold ? ` font-weight="700"` : "";
  const anchor = op.anchor === "start" ? "" : ` text-anchor="${op.anchor}"`;
  return `<text x="${n(op.at.x)}" y="${n(op.at.y)}" font-size="${n(op.size)}"${weight}${anchor} fill="${op.color}"${halo}${turn}>${op.runs.map(runOf).join("")}</text>`;
}

/**
 * Number and fraction must not share one run: at U+2044 a browser forms a fraction by itself and
 * would swallow the whole number. A real space stays between them for anyone who copies the text.
 */
function runOf(run: Run): string {
  if (run.kind === "text") return escapeText(run.text);
  const settings = `style="font-feature-settings:'lnum','frac'"`;
  const fraction = `${run.above}${FRACTION_SLASH}${run.below}`;
  if (run.whole === "") return `<tspan ${settings}>${fraction}</tspan>`;
  // The space of the text face is 0.22 em wide.
  return `${run.whole} <tspan dx="${n(FRACTION_GAP - 0.22)}em" ${settings}>${fraction}</tspan>`;
}
