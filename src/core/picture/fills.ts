import {
  layMotion,
  movedShown,
  type Shown,
  shownIn,
  undone,
  wholeRepeats,
} from "../fabric/index.ts";
import {
  andThen,
  IDENTITY,
  type Point,
  type Polygon,
  point,
  type Rigid,
} from "../geometry/index.ts";
import { grayValue, mixed } from "./color.ts";
import { fabricHatch, hatchDots, lostHatch, type Segment } from "./hatch.ts";
import type { Fill } from "./marks.ts";
import { type Context, flipAll, matrixOf, type Op } from "./ops.ts";
import type { Swatch } from "./swatch.ts";

type FabricFill = Extract<Fill, { kind: "fabric" }>;

/** What fills a shape: paper, a color, the hatch of lost fabric, or a fabric as it lies there. */
export function drawFill(
  c: Context,
  fill: Fill,
  polygon: Polygon,
  points: Point[],
  at: Rigid,
): Op[] {
  switch (fill.kind) {
    case "paper":
      return [{ op: "path", points, closed: true, fill: c.theme.paper }];
    case "color":
      return [{ op: "path", points, closed: true, fill: fill.color }];
    case "lost":
      return lostOps(c, points);
    case "fabric": {
      const swatch = c.swatches[fill.fabricId];
      if (!swatch) return [{ op: "path", points, closed: true, fill: UNKNOWN }];
      return fabricOps(c, fill, swatch, polygon, at);
    }
  }
}

/** A fabric nobody described. */
const UNKNOWN = "#dddddd";

/** Output space has y down, so hatches are made there as if mirrored, and come out rising. */
const upsideDown = (points: readonly Point[]): Polygon => points.map((p) => point(p.x, -p.y));
const backUp = (s: Segment): Segment => [point(s[0].x, -s[0].y), point(s[1].x, -s[1].y)];

function lostOps(c: Context, points: readonly Point[]): Op[] {
  const segments = lostHatch(upsideDown(points), c.theme.hatch.gap * 1.1).map(backUp);
  const stroke = { color: c.theme.lost, width: c.theme.hatch.width * 1.1, dash: [3, 1.6] };
  return segments.length > 0 ? [{ op: "strokes", segments, stroke }] : [];
}

/** What shows of a fabric in a polygon: as told, or worked out from how the fabric lies. */
function shownParts(fill: FabricFill, swatch: Swatch, polygon: Polygon, at: Rigid): Shown[] {
  if (fill.shown) return movedShown(fill.shown, at);
  const { look } = swatch;
  const frame = andThen(fill.at ?? IDENTITY, at);
  const tilt = look.kind === "bands" ? look.tilt : 0;
  const flat = layMotion({ way: "up", start: 0, strip: 0 }, tilt);
  return shownIn(polygon, look, andThen(undone(frame), flat));
}

function fabricOps(
  c: Context,
  fill: FabricFill,
  swatch: Swatch,
  polygon: Polygon,
  at: Rigid,
): Op[] {
  const parts = shownParts(fill, swatch, polygon, at);
  const faint = fill.faint === true;
  if (c.fabrics !== "color") return grayOps(c, swatch, parts, polygon, faint);
  return parts.flatMap((part): Op[] => {
    const points = flipAll(c, part.polygon);
    const photo = part.photo && c.swatches[part.fabricId];
    if (part.photo && photo?.photo) return photoOps(c, photo, points, undone(part.photo), faint);
    const color = faint ? mixed(part.color, c.theme.paper, 0.6) : part.color;
    return [{ op: "path", points, closed: true, fill: color }];
  });
}

/** Without color: bands keep their own grays; everything else is told by its hatch. */
function grayOps(
  c: Context,
  swatch: Swatch,
  parts: readonly Shown[],
  polygon: Polygon,
  faint: boolean,
): Op[] {
  const { theme } = c;
  const full = c.fabrics === "gray" && !faint;
  if (swatch.look.kind === "bands") {
    const stroke = { color: theme.fabricInk, width: theme.hatch.width * 0.8 };
    const tone = (color: string): string =>
      grayOf(full ? grayValue(color) : Math.min(1, 0.6 + 0.56 * grayValue(color)));
    return parts.map((part) => ({
      op: "path",
      points: flipAll(c, part.polygon),
      closed: true,
      fill: tone(part.color),
      stroke,
    }));
  }
  const points = flipAll(c, polygon);
  const value = grayValue(swatch.color);
  const color = faint ? theme.lost : full && value < 0.35 ? "#ffffff" : theme.fabricInk;
  const under = full ? grayOf(0.25 + 0.75 * value) : theme.paper;
  const ops: Op[] = [{ op: "path", points, closed: true, fill: under }];
  const up = upsideDown(points);
  const segments = fabricHatch(up, swatch.hatch, theme.hatch.gap).map(backUp);
  if (segments.length > 0)
    ops.push({ op: "strokes", segments, stroke: { color, width: theme.hatch.width } });
  if (swatch.hatch === "dots")
    for (const p of hatchDots(up, theme.hatch.gap))
      ops.push({ op: "circle", at: point(p.x, -p.y), radius: theme.hatch.width, fill: color });
  return ops;
}

const grayOf = (value: number): string => {
  const hex = Math.round(255 * value)
    .toString(16)
    .padStart(2, "0");
  return `#${hex}${hex}${hex}`;
};

/** The photo laid side by side over the patch, in the fabric's frame, print on print. */
function photoOps(c: Context, swatch: Swatch, points: Point[], frame: Rigid, faint: boolean): Op[] {
  const { look, photo } = swatch;
  if (!photo || look.kind !== "photo") return [];
  const [a, b, cc, d, e, f] = matrixOf(c, frame);
  const w = look.width * c.scale;
  const h = look.height * c.scale;
  const right = wholeRepeats(look.width, look.repeat?.across) * c.scale;
  const up = wholeRepeats(look.height, look.repeat?.along) * c.scale;
  const det = a * d - b * cc;
  const local = points.map((p) => {
    const x = p.x - e;
    const y = p.y - f;
    return point((d * x - cc * y) / det, (a * y - b * x) / det);
  });
  // Tile i covers from i * right to i * right + w; beyond the next tile's begin that one lies over it.
  const across = tilesOver(
    local.map((p) => p.x),
    right,
    w,
  );
  // A photo stands on its lower edge, and y is down here: tile j covers from j * up - h to j * up.
  const along = tilesOver(
    local.map((p) => -p.y),
    up,
    h,
  );
  const tiles = along.flatMap((j) =>
    across.map((i) => {
      const [x, y] = [i * right, -j * up];
      return [a, b, cc, d, e + a * x + cc * y, f + b * x + d * y];
    }),
  );
  // A hair over its size, under the tile that comes after it: no gap is seen between two tiles.
  const over = tiles.length > 1 ? OVERLAP : 0;
  const image: Op = {
    op: "image",
    data: photo,
    clip: points,
    tiles,
    width: w + over,
    height: h + over,
  };
  if (!faint) return [image];
  return [image, { op: "path", points, closed: true, fill: `${c.theme.paper}99` }];
}

/** Of a tile over its neighbor, in output units. */
const OVERLAP = 0.6;

/** Tiles, each `step` on from the one before and `size` long, that cover all these places. */
function tilesOver(at: readonly number[], step: number, size: number): number[] {
  const [least, most] = [Math.min(...at), Math.max(...at)];
  const first = Math.floor(least / step);
  // The last tile's own end may reach: one that begins nearer is not needed.
  let last = first;
  while (last * step + size < most - 1e-9 * size) last++;
  return Array.from({ length: last - first + 1 }, (_, k) => first + k);
}
