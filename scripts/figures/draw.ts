import { centroid, type Point, type Polygon } from "../../src/core/geometry/index.ts";

/** The accent of page and sheets (docs/words.md): here the seam that a picture is about. */
const ACCENT = "#A3195B";
const FACE = `font-family="'Alegreya Sans', sans-serif"`;

/** Where a block's frame lies on the figure: `at` is its origin, `scale` figure units to one unit. */
export interface Place {
  readonly at: Point;
  readonly scale: number;
}

const f = (x: number): string => String(Number(x.toFixed(2)));

/** Block frame (y up) to figure (y down). */
export const onFigure = (p: Point, place: Place): Point => ({
  x: place.at.x + p.x * place.scale,
  y: place.at.y - p.y * place.scale,
});

const list = (p: Polygon, place: Place): string =>
  p
    .map((v) => onFigure(v, place))
    .map((v) => `${f(v.x)},${f(v.y)}`)
    .join(" ");

export const shape = (p: Polygon, place: Place, fill = "#fff"): string =>
  `<polygon points="${list(p, place)}" fill="${fill}" stroke="#111" stroke-width="0.9" stroke-linejoin="round"/>`;

export function line(a: Point, b: Point, place: Place, accent = false): string {
  const [p, q] = [onFigure(a, place), onFigure(b, place)];
  const look = accent
    ? `stroke="${ACCENT}" stroke-width="2.6"`
    : `stroke="#111" stroke-width="0.9"`;
  return `<line x1="${f(p.x)}" y1="${f(p.y)}" x2="${f(q.x)}" y2="${f(q.y)}" ${look} stroke-linecap="round"/>`;
}

export function label(text: string, at: Point, size = 11, more = ""): string {
  return `<text x="${f(at.x)}" y="${f(at.y + size * 0.34)}" font-size="${size}" text-anchor="middle" ${FACE} ${more}>${text}</text>`;
}

export const patchLabel = (text: string, p: Polygon, place: Place, size = 11): string =>
  label(text, onFigure(centroid(p), place), size);

export const accentLabel = (text: string, at: Point, size = 11): string =>
  label(text, at, size, `fill="${ACCENT}" font-weight="700"`);

export function dot(p: Point, place: Place): string {
  const at = onFigure(p, place);
  return `<circle cx="${f(at.x)}" cy="${f(at.y)}" r="2.2" fill="#111"/>`;
}

/** The figure's file: white ground, a title for screen readers. */
export function figure(
  width: number,
  height: number,
  title: string,
  parts: readonly string[],
): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-label="${title}">`,
    `<title>${title}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...parts,
    "</svg>",
    "",
  ].join("\n");
}
