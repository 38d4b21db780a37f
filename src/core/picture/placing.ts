import {
  angleOf,
  applyTo,
  applyToPolygon,
  distance,
  type Polygon,
  type Rigid,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/**
 * The motion that lays `from` exactly on `to`, or undefined when they are not congruent. Of several
 * the one not mirrored, then the one turned least.
 */
export function placing(from: Polygon, to: Polygon, slack: Length): Rigid | undefined {
  const fits = placings(from, to, slack);
  return fits.reduce<Rigid | undefined>(
    (best, t) => (best && rank(best) <= rank(t) + 1e-9 ? best : t),
    undefined,
  );
}

const rank = (t: Rigid): number => Math.abs(t.turn) + (t.mirrored ? 100 : 0);

function placings(from: Polygon, to: Polygon, slack: Length): Rigid[] {
  if (from.length !== to.length) return [];
  const out: Rigid[] = [];
  for (const mirrored of [false, true]) {
    const start = mirrored ? applyToPolygon({ turn: 0, x: 0, y: 0, mirrored }, from) : from;
    for (let shift = 0; shift < to.length; shift++) {
      const turn = normal(
        angleOf(subtract(to[(shift + 1) % to.length], to[shift])) -
          angleOf(subtract(start[1], start[0])),
      );
      const turned = applyTo({ turn, x: 0, y: 0, mirrored: false }, start[0]);
      const t = { turn, x: to[shift].x - turned.x, y: to[shift].y - turned.y, mirrored };
      const laid = start.map((p) => applyTo({ ...t, mirrored: false }, p));
      const fit = laid.every((p, i) => distance(p, to[(i + shift) % to.length]) <= slack);
      if (fit) out.push(t);
    }
  }
  return out;
}

/** Into (-pi, pi]. */
const normal = (a: number): number =>
  a - 2 * Math.PI * Math.ceil((a - Math.PI) / (2 * Math.PI) - 1e-12);
