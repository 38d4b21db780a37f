import {
  type Look,
  layMotion,
  sewnWedge,
  shownIn,
  stripOf,
  type WedgeCut,
} from "../fabric/index.ts";
import { type Polygon, point } from "../geometry/index.ts";
import { type Degree, type Length, toRadians, type Unit } from "../measure/index.ts";
import { all, leftHanded, picture } from "./compose.ts";
import type { Fill, Mark, Picture } from "./marks.ts";

export interface StripPictureOptions {
  readonly unit: Unit;
  readonly fabricId: string;
  readonly look: Look;
  readonly wedge: WedgeCut;
  /** Of the wedge. */
  readonly angle: Degree;
  /** Where in the repeat the strip's lower edge lies. */
  readonly start: Length;
  /** Instead of the fabric's own. */
  readonly tilt?: Degree;
  /** Wedges drawn, up and down by turns, an up one first. */
  readonly count?: number;
  /** What stands under an up and a down wedge. */
  readonly words: { readonly up: string; readonly down: string };
  readonly title: string;
  readonly small: Length;
  readonly leftHanded?: boolean;
}

/**
 * A strip as it lies on the table, wedges up and down by turns cut from it: solid where it is cut,
 * dashed where it is sewn; what will be seen stands clear, the rest is veiled.
 */
export function stripPicture(o: StripPictureOptions): Picture {
  const { wedge, small } = o;
  const slope = Math.tan(toRadians(o.angle) / 2);
  const height = stripOf(wedge);
  // The cut wedge's legs run out at its full point, `missing` above the strip.
  const missing = wedge.seam / Math.sin(toRadians(o.angle) / 2) - wedge.past;
  const [base, tip] = [slope * (height + missing), slope * missing];
  const pitch = base + tip;
  const count = o.count ?? 4;
  const end = base + (count - 1) * pitch + base;
  const strip = rectangle(-small * 0.6, end + small * 0.6, height);
  const sewn = sewnWedge(wedge.a, wedge.seam, o.angle);
  const marks: Mark[] = [
    { kind: "shape", polygon: strip, fill: fabricIn(strip, o, true), line: "cut" },
  ];
  for (let i = 0; i < count; i++) {
    const up = i % 2 === 0;
    const x = base + i * pitch;
    const laid = (p: Polygon): Polygon =>
      p.map((v) => (up ? point(x + v.x, v.y) : point(x - v.x, height - v.y)));
    const cut = laid([
      point(-base, 0),
      point(base, 0),
      point(tip, height),
      ...(tip > 1e-9 ? [point(-tip, height)] : []),
    ]);
    const seen = laid(sewn);
    marks.push(
      { kind: "shape", polygon: seen, fill: fabricIn(seen, o, false), line: "seam" },
      { kind: "shape", polygon: cut, line: "cut" },
      {
        kind: "text",
        at: point(x, up ? -1.3 * small : height + 0.5 * small),
        text: up ? o.words.up : o.words.down,
        size: 1,
        anchor: "middle",
        ...(i < 2 ? {} : { tone: "soft" as const }),
      },
    );
  }
  const made = picture({
    title: o.title,
    unit: o.unit,
    box: { left: strip[0].x, right: strip[1].x, bottom: 0, top: height },
    marks,
    small,
    edges: { ...all(small * 0.3), top: small * 1.8, bottom: small * 1.8 },
  });
  return o.leftHanded ? leftHanded(made) : made;
}

const rectangle = (left: Length, right: Length, height: Length): Polygon => [
  point(left, 0),
  point(right, 0),
  point(right, height),
  point(left, height),
];

/** What of the fabric lies in a polygon of the strip. */
function fabricIn(polygon: Polygon, o: StripPictureOptions, faint: boolean): Fill {
  const own = o.look.kind === "bands" ? o.look.tilt : 0;
  const motion = layMotion(
    {
      way: "up",
      start: o.start,
      strip: stripOf(o.wedge),
      ...(o.tilt !== undefined && { tilt: o.tilt }),
    },
    own,
  );
  return {
    kind: "fabric",
    fabricId: o.fabricId,
    shown: shownIn(polygon, o.look, motion),
    ...(faint ? { faint } : {}),
  };
}
