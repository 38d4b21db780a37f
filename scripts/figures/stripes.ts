import { layOutBlock } from "../../src/core/block/index.ts";
import type { WedgeBlock } from "../../src/core/brief/schema.ts";
import {
  bandsIn,
  blockLook,
  type Lay,
  type Look,
  stripOf,
  unrolled,
  type Way,
  type WedgeCut,
} from "../../src/core/fabric/index.ts";
import { type Polygon, point } from "../../src/core/geometry/index.ts";
import { figure, label, type Place, shape } from "./draw.ts";

const SEAM = 0.25;
const SIN = Math.sin(Math.PI / 8);
const TAN = Math.tan(Math.PI / 8);
/** 4 1/2 in strip, sharp point. */
const CUT: WedgeCut = { a: 4.5 - SEAM - SEAM / SIN, seam: SEAM, past: SEAM / SIN };
/** An uneven stripe in grays, so that the figure stands in a gray print. */
const GRAYS = ["#555555", "#f4f4f4", "#b5b5b5", "#222222", "#dddddd"];
const WIDTHS = [1.25, 0.5, 1.1, 0.4, 1.25];

const LOOK: Look & { kind: "bands" } = {
  kind: "bands",
  fabricId: "stripe",
  period: WIDTHS.reduce((a, b) => a + b, 0),
  tilt: 0,
  bands: WIDTHS.map((w, i) => {
    const from = WIDTHS.slice(0, i).reduce((a, b) => a + b, 0);
    return { from, to: from + w, color: GRAYS[i], fabricId: "stripe" };
  }),
};

const outline = (p: Polygon, place: Place): string => shape(p, place, "none");

/** The strip with an up and a down wedge, raw and sewn. */
function strip(place: Place): string[] {
  const height = stripOf(CUT);
  const ground = unrolled(LOOK, 0, height).map((b) =>
    shape(
      [point(-2.4, b.from), point(6.2, b.from), point(6.2, b.to), point(-2.4, b.to)],
      place,
      b.color,
    ),
  );
  const raw = (x: number, down: boolean): Polygon => {
    const base = height * TAN;
    const up = [point(x, height), point(x - base, 0), point(x + base, 0)];
    return down ? up.map((p) => point(p.x, height - p.y)) : up;
  };
  const sewn = (x: number, down: boolean): Polygon => {
    const up = [point(x, CUT.a + SEAM), point(x - CUT.a * TAN, SEAM), point(x + CUT.a * TAN, SEAM)];
    return down ? up.map((p) => point(p.x, height - p.y)) : up;
  };
  const one = height * TAN;
  return [
    ...ground,
    ...[0, 2 * one].flatMap((x) => [outline(raw(x, false), place), outline(sewn(x, false), place)]),
    outline(raw(one, true), place),
    outline(sewn(one, true), place),
    label("up", point(place.at.x, place.at.y + 14), 13),
    label(
      "down",
      point(place.at.x + one * place.scale, place.at.y - height * place.scale - 12),
      13,
    ),
  ];
}

function octagon(
  way: Way,
  place: Place,
  name: string,
  round: "matched" | "mixed" = "matched",
): string[] {
  const block: WedgeBlock = {
    kind: "wedges",
    id: "b",
    n: 8,
    outline: "square",
    strip: "4 1/2",
    setting: "plain",
    fabric: {},
    place: { wedge: { round, way } },
  };
  const { geometry } = layOutBlock(block, "in", SEAM, CUT.a);
  if (!geometry) throw new Error("the block cannot be laid out");
  const fabricOf = Object.fromEntries(
    geometry.patches.map((p) => [p.id, p.role.startsWith("wedge") ? "stripe" : "plain"]),
  );
  const looks: Record<string, Look> = {
    stripe: LOOK,
    plain: { kind: "plain", fabricId: "plain", color: "#ffffff" },
  };
  const shown = blockLook({
    block,
    geometry,
    fabricOf,
    looks,
    pieceOf: {},
    wedge: CUT,
    unit: "in",
  });
  return [
    ...shown.flatMap((p) => p.shown.map((s) => shape(s.polygon, place, s.color))),
    ...geometry.patches.map((p) => outline(p.polygon, place)),
    label(name, point(place.at.x, place.at.y + CUT.a * place.scale + 16), 13),
  ];
}

/** One wedge with the bands slanted in its strip. */
function tilted(place: Place): string[] {
  const wedge = [point(0, CUT.a + SEAM), point(-CUT.a * TAN, SEAM), point(CUT.a * TAN, SEAM)];
  const lay: Lay = { way: "up", start: 0.4, tilt: 20, strip: stripOf(CUT) };
  return [
    ...bandsIn(wedge, LOOK, lay).map((s) => shape(s.polygon, place, s.color)),
    outline(wedge, place),
    label("bands tilted 20 degrees", point(place.at.x, place.at.y + 14), 13),
  ];
}

/** Every figure of docs/geometry about stripes: file name -> SVG. */
export const stripeFigures = (): Record<string, string> => ({
  "stripes.svg": figure(880, 420, "One stripe, up and down wedges, and the octagons they make", [
    ...strip({ at: point(130, 180), scale: 34 }),
    ...tilted({ at: point(620, 180), scale: 34 }),
    ...octagon("up", { at: point(150, 310), scale: 22 }, "eight up"),
    ...octagon("down", { at: point(420, 310), scale: 22 }, "eight down"),
    ...octagon("up", { at: point(690, 310), scale: 22 }, "four up and four down", "mixed"),
  ]),
});
