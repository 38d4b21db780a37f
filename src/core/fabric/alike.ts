import { applyTo, type Polygon, point, type Rigid } from "../geometry/index.ts";
import { type Degree, type Length, toRadians } from "../measure/index.ts";
import { colorDifference, type Lab, LIGHT, labOfLight, meanLab } from "./color/index.ts";
import { layOnPhoto } from "./motion.ts";
import { checkPixels, type Pixels, type Progress } from "./photo/index.ts";
import { phase, wholeRepeats } from "./repeat.ts";
import type { AlikePlace, PhotoLook } from "./types.ts";

export interface AlikeOctagon {
  readonly place: AlikePlace;
  /** How much goes on in it: mean color difference (CIEDE2000) of its cells from their mean. */
  readonly lively: number;
  /** Least color difference, cell by cell, from the octagons listed before it; none for the first. */
  readonly differs?: number;
  /** Colors of its cells, from the center outward, each ring from left leg to right. */
  readonly cells: readonly Lab[];
}

export const MOST_OCTAGONS = 4;
const RINGS = 5;
/** Cells across the ring at the outer edge; fewer toward the point. */
const ACROSS = 4;
/** Points looked at in each direction of a cell. */
const POINTS = 3;

/** Sample points of a sewn wedge, cell by cell: `center` its point, the outer edge from b to c. */
function cellsOf(wedge: Polygon): { x: number; y: number }[][] {
  const [center, b, c] = wedge;
  const cells: { x: number; y: number }[][] = [];
  for (let ring = 0; ring < RINGS; ring++) {
    const across = Math.max(1, Math.round((ACROSS * (ring + 1)) / RINGS));
    for (let part = 0; part < across; part++) {
      const points: { x: number; y: number }[] = [];
      for (let i = 0; i < POINTS; i++)
        for (let j = 0; j < POINTS; j++) {
          const out = (ring + (i + 0.5) / POINTS) / RINGS;
          const side = (part + (j + 0.5) / POINTS) / across;
          points.push({
            x: center.x + out * (b.x - center.x + side * (c.x - b.x)),
            y: center.y + out * (b.y - center.y + side * (c.y - b.y)),
          });
        }
      cells.push(points);
    }
  }
  return cells;
}

/** Color of the photo at a place on the fabric; beyond its edges it begins again at the repeat. */
function colorOn(p: Pixels, look: PhotoLook, at: { x: number; y: number }): Lab {
  const width = wholeRepeats(look.width, look.repeat?.across);
  const height = wholeRepeats(look.height, look.repeat?.along);
  const x = Math.min(p.width - 1, Math.floor((phase(at.x, width) / look.width) * p.width));
  const fromTop = look.height - phase(at.y, height);
  const y = Math.max(0, Math.min(p.height - 1, Math.floor((fromTop / look.height) * p.height)));
  const i = (y * p.width + x) * 4;
  return labOfLight(LIGHT[p.data[i]], LIGHT[p.data[i + 1]], LIGHT[p.data[i + 2]]);
}

/** What eight wedges cut from one place look like: every wedge shows the same cells. */
export function alikeCells(p: Pixels, look: PhotoLook, wedge: Polygon, place: AlikePlace): Lab[] {
  const motion: Rigid = layOnPhoto(wedge, place);
  return cellsOf(wedge).map((points) =>
    meanLab(points.map((q) => ({ lab: colorOn(p, look, applyTo(motion, q)), area: 1 }))),
  );
}

export function livelinessOf(cells: readonly Lab[]): number {
  const mean = meanLab(cells.map((lab) => ({ lab, area: 1 })));
  return cells.reduce((sum, c) => sum + colorDifference(c, mean), 0) / cells.length;
}

/** Mean color difference, cell by cell. */
export const unlike = (p: readonly Lab[], q: readonly Lab[]): number =>
  p.reduce((sum, c, i) => sum + colorDifference(c, q[i]), 0) / p.length;

export interface AlikeSearch {
  readonly pixels: Pixels;
  readonly look: PhotoLook;
  /** The sewn wedge in its strip frame, its point first. */
  readonly wedge: Polygon;
  /** Turns that may be cut: 0 and 180 keep the grain; a directional print may want one only. */
  readonly turns: readonly Degree[];
  /** Places tried across one repeat and along it. */
  readonly grid: number;
}

/**
 * Up to four of the most different octagons a print holds. Places on a grid over one repeat are
 * tried; the liveliest comes first, then whichever differs most from all before it. An octagon that
 * the eye would not tell from one listed (under 5 of CIEDE2000 on the mean) is not offered. Yields
 * its progress.
 */
export function* mostDifferent(s: AlikeSearch): Generator<Progress, AlikeOctagon[]> {
  checkPixels(s.pixels);
  const width = Math.min(s.look.repeat?.across ?? s.look.width, s.look.width);
  const height = Math.min(s.look.repeat?.along ?? s.look.height, s.look.height);
  const all: AlikeOctagon[] = [];
  for (let row = 0; row < s.grid; row++) {
    yield { done: row / s.grid };
    for (let column = 0; column < s.grid; column++)
      for (const turn of s.turns) {
        const place = {
          x: ((column + 0.5) * width) / s.grid,
          y: ((row + 0.5) * height) / s.grid,
          turn,
        };
        const cells = alikeCells(s.pixels, s.look, s.wedge, place);
        all.push({ place, lively: livelinessOf(cells), cells });
      }
  }
  return chosen(all);
}

const TOLD_APART = 5;

function chosen(all: readonly AlikeOctagon[]): AlikeOctagon[] {
  if (all.length === 0) return [];
  const out = [all.reduce((a, b) => (b.lively > a.lively ? b : a))];
  const nearest = all.map((o) => unlike(o.cells, out[0].cells));
  while (out.length < MOST_OCTAGONS) {
    const k = nearest.indexOf(Math.max(...nearest));
    if (nearest[k] < TOLD_APART) break;
    out.push({ ...all[k], differs: nearest[k] });
    all.forEach((o, i) => {
      nearest[i] = Math.min(nearest[i], unlike(o.cells, all[k].cells));
    });
  }
  return out;
}

export interface LayersNeed {
  /** Repeats from one layer's begin to the next's. */
  readonly everyNth: number;
  /** Length of one layer: a whole number of repeats. */
  readonly layer: Length;
  /** Layers of one stack times the stacks. */
  readonly layers: number;
  readonly stacks: number;
  /** Without what is lost in squaring up the ends. */
  readonly length: Length;
}

/**
 * Fabric for `count` rounds of `alike` identical pieces, cut from stacks of `alike` layers that lie
 * repeat on repeat. A stack gives `perStack` rounds (places side by side in its layer). `least`: what
 * must fit into one layer; a shorter repeat is taken every second, third ... time.
 */
export function layersNeeded(
  alike: number,
  repeat: Length,
  least: Length,
  count: number,
  perStack: number,
): LayersNeed {
  if (!(repeat > 0 && perStack >= 1))
    throw new RangeError(`a repeat and at least 1 a stack expected, got ${repeat} and ${perStack}`);
  const everyNth = Math.max(1, Math.ceil(least / repeat - 1e-9));
  const layer = everyNth * repeat;
  const stacks = Math.ceil(count / perStack);
  const layers = alike * stacks;
  return { everyNth, layer, layers, stacks, length: layers * layer };
}

/** A wedge in its strip frame: its point first, axis on x = 0, outer seam at y = `seam`. */
export function sewnWedge(a: Length, seam: Length, angle: Degree): Polygon {
  const half = a * Math.tan(toRadians(angle) / 2);
  return [point(0, a + seam), point(-half, seam), point(half, seam)];
}
