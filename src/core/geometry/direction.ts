import { type Point, point } from "./point.ts";

/**
 * Unit vector `k` / `parts` of a full turn anticlockwise from +x. Reduced to the first eighth before
 * any sine is taken, so that directions which mirror or quarter-turn into each other agree to the
 * last bit and those along an axis hold a true 0: shapes that should match then match exactly.
 */
export function direction(k: number, parts: number): Point {
  const eighths = 8 * (((k % parts) + parts) % parts);
  const eighth = Math.floor(eighths / parts);
  const rest = eighths - eighth * parts;
  const x = eighth % 2 === 0 ? firstEighth(rest, parts) : swapped(firstEighth(parts - rest, parts));
  let v = x;
  for (let quarter = 0; quarter < Math.floor(eighth / 2); quarter++) v = point(0 - v.y, v.x);
  return v;
}

/** At `rest` / `parts` of an eighth turn, 0 <= rest <= parts. */
function firstEighth(rest: number, parts: number): Point {
  if (rest === parts) return point(Math.SQRT1_2, Math.SQRT1_2);
  const angle = (rest / parts) * (Math.PI / 4);
  return point(Math.cos(angle), Math.sin(angle));
}

const swapped = (v: Point): Point => point(v.y, v.x);
