import { type Fabric, leftAfterWash } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import { moving } from "../geometry/index.ts";
import { knownLength, type Length, type Unit } from "../measure/index.ts";
import { merged, unrolled } from "./repeat.ts";
import { showing } from "./stripSet.ts";
import type { Band, Look } from "./types.ts";

export interface LookResult {
  readonly look: Look;
  readonly findings: readonly Finding[];
}

/**
 * The look of one fabric of a brief. `seam` is the brief's seam allowance (what the strips of a set
 * lose). A print without its photo, an unknown strip fabric and a set made of itself are findings;
 * they show as their plain color.
 */
export function lookOf(
  fabric: Fabric,
  all: readonly Fabric[],
  unit: Unit,
  seam: Length,
  within: readonly string[] = [],
): LookResult {
  const left = leftAfterWash(fabric);
  const length = (text: string, share = 1): Length => knownLength(text, unit) * share;
  switch (fabric.kind) {
    case "plain":
      return sure({ kind: "plain", fabricId: fabric.id, color: fabric.color });
    case "stripe": {
      const bands = stacked(
        fabric.bands.map((b) => ({
          width: length(b.width, fabric.runs === "across" ? left.along : left.across),
          color: b.color,
          fabricId: fabric.id,
        })),
      );
      const period = bands[bands.length - 1].to;
      return sure({ kind: "bands", fabricId: fabric.id, bands, period, tilt: fabric.tilt });
    }
    case "print": {
      if (!fabric.photo)
        return {
          look: { kind: "plain", fabricId: fabric.id, color: fabric.color },
          findings: [{ code: "photo-missing", severity: "draft", place: fabric.id }],
        };
      const { along, across } = fabric.repeat ?? {};
      return sure({
        kind: "photo",
        fabricId: fabric.id,
        color: fabric.color,
        width: length(fabric.photo.width, left.across),
        height: length(fabric.photo.height, left.along),
        ...(along && {
          repeat: {
            along: length(along, left.along),
            ...(across && { across: length(across, left.across) }),
          },
        }),
      });
    }
    case "strip-set":
      return stripSetLook(fabric, all, unit, seam, within);
  }
}

const sure = (look: Look): LookResult => ({ look, findings: [] });

type StripSetFabric = Extract<Fabric, { kind: "strip-set" }>;

function stripSetLook(
  set: StripSetFabric,
  all: readonly Fabric[],
  unit: Unit,
  seam: Length,
  within: readonly string[],
): LookResult {
  const findings: Finding[] = [];
  const cuts = set.strips.map((s) => knownLength(s.cut, unit));
  const shows = showing(cuts, seam);
  const bands = set.strips.flatMap((strip, i): Band[] => {
    const { from, to, rawFrom } = shows[i];
    if (to <= from) return [];
    const fabric = all.find((f) => f.id === strip.fabric);
    if (!fabric) {
      findings.push({
        code: "fabric-not-defined",
        severity: "blocks",
        place: set.id,
        words: { fabric: strip.fabric, known: all.map((f) => f.id).join(", ") },
      });
      return [{ from, to, color: set.color, fabricId: strip.fabric }];
    }
    if (fabric.id === set.id || within.includes(fabric.id)) {
      findings.push({ code: "strip-set-in-itself", severity: "blocks", place: set.id });
      return [{ from, to, color: fabric.color, fabricId: fabric.id }];
    }
    const inner = lookOf(fabric, all, unit, seam, [...within, set.id]);
    findings.push(...inner.findings);
    return stripBands(inner.look, from, to, rawFrom);
  });
  return {
    look: { kind: "bands", fabricId: set.id, bands: merged(bands), tilt: 0 },
    findings,
  };
}

/** What a strip of a set shows between its seams; its raw lower edge lies at the repeat's start. */
function stripBands(look: Look, from: Length, to: Length, rawFrom: Length): Band[] {
  if (look.kind === "bands")
    return unrolled(look, from - rawFrom, to - rawFrom).map((b) => ({
      ...b,
      from: b.from + rawFrom,
      to: b.to + rawFrom,
    }));
  const band = { from, to, color: look.color, fabricId: look.fabricId };
  return look.kind === "photo" ? [{ ...band, photo: moving(0, -rawFrom) }] : [band];
}

function stacked(
  strips: readonly { width: Length; color: string; fabricId: string }[],
): readonly Band[] {
  let at = 0;
  return merged(
    strips.map(({ width, color, fabricId }) => {
      const band = { from: at, to: at + width, color, fabricId };
      at = band.to;
      return band;
    }),
  );
}
