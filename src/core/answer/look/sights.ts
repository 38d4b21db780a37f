import { type Brief, type Fabric, seamOf } from "../../brief/index.ts";
import {
  type BandLook,
  blockLook,
  cutsThatMeet,
  cutsThatMiss,
  eyeFindings,
  leastSetMiss,
  lookOf,
  MISS_ON_PURPOSE_INCHES,
  type NeighborGap,
  neighborGaps,
  oddWedges,
  piecesInRun,
  readingOf,
  ringFindingsOfRound,
  stripSetFindings,
  type WedgeCut,
} from "../../fabric/index.ts";
import type { Finding } from "../../findings/index.ts";
import {
  inchToLength,
  knownLength,
  type Length,
  printWithUnit,
  type Step,
  tolerances,
} from "../../measure/index.ts";
import type { BlockSight, FabricGap } from "../types/look.ts";
import { stepOfBrief } from "../words/word.ts";
import { type Cut, lookInputs } from "./looks.ts";
import { type RoundSeen, roundPlain, roundsOf } from "./rounds.ts";

export interface Sights {
  readonly sights: readonly BlockSight[];
  readonly findings: readonly Finding[];
}

/** A plain fabric of this color has not been given one: nothing is said of how it looks. */
const NO_COLOR = "#DDDDDD";

/** What will be seen in every kind of block of the quilt, and what is doubtful about it. */
export function sightsOf(brief: Brief, answer: Cut): Sights {
  const step = stepOfBrief(brief);
  const input = lookInputs(brief, answer);
  const slack = tolerances(brief.unit).join;
  const sights: BlockSight[] = [];
  const findings: Finding[] = [...missingPhotos(brief, answer)];
  for (const block of answer.blocks) {
    if (block.id.includes("~") || block.count === 0) continue;
    const given = input(block);
    const shown = blockLook(given);
    const gaps = neighborGaps(block, shown, slack).filter((g) => g.fabrics.every(colored(brief)));
    const rounds = given.wedge
      ? roundsOf(brief, block, { ...given, wedge: given.wedge }, shown, answer)
      : [];
    const { figures, reads, beside } = readingOf(block, shown, gaps);
    sights.push({
      block: block.id,
      count: block.count,
      rounds: rounds.map(roundPlain),
      gaps: fabricGaps(gaps),
      figures,
      ...(reads && { reads }),
      beside,
    });
    findings.push(...named(brief, eyeFindings(block.id, gaps)), ...withoutRepeat(brief, rounds));
    const { wedge } = given;
    if (!wedge || !block.radial) continue;
    const halfAngle = Math.PI / block.radial.n;
    for (const r of rounds) findings.push(...roundFindings(brief, r, wedge, halfAngle, step));
    findings.push(...oddOnes(brief, answer, rounds, block.radial.n));
  }
  return { sights, findings };
}

const colored =
  (brief: Brief) =>
  (id: string): boolean => {
    const f = brief.fabrics.find((x) => x.id === id);
    return f !== undefined && (f.kind !== "plain" || f.color.toUpperCase() !== NO_COLOR);
  };

/** Prints that are used, themselves or in a strip set, and whose picture is not in the file. */
function missingPhotos(brief: Brief, answer: Cut): Finding[] {
  const seam = seamOf(brief);
  const used = new Set(answer.pieces.map((p) => p.fabricId));
  return brief.fabrics
    .filter((f) => used.has(f.id))
    .flatMap((f) => lookOf(f, brief.fabrics, brief.unit, seam).findings)
    .map((f) => ({ ...f, words: { place: nameOf(brief, f.place), ...f.words } }));
}

const nameOf = (brief: Brief, id: string): string =>
  brief.fabrics.find((f) => f.id === id)?.name ?? id;

/** Pieces that are to be alike, from a print whose repeat is not said: what that takes is not known. */
function withoutRepeat(brief: Brief, rounds: readonly RoundSeen[]): Finding[] {
  return rounds.flatMap((r) => {
    const f = brief.fabrics.find((x) => x.id === r.fabricId);
    if (f?.kind !== "print" || f.repeat || r.round === "free") return [];
    const words = { place: f.name };
    return [{ code: "repeat-not-said", severity: "draft", place: f.id, words } as const];
  });
}

/** Findings speak of fabrics by name. */
const named = (brief: Brief, findings: readonly Finding[]): Finding[] =>
  findings.map((f) => {
    const { a = "", b = "" } = f.words ?? {};
    const block = brief.blocks.find((x) => x.id === f.place);
    return {
      ...f,
      words: {
        ...f.words,
        a: nameOf(brief, a),
        b: nameOf(brief, b),
        place: block?.name ?? f.place,
      },
    };
  });

/** Each two fabrics once, where they part least. */
function fabricGaps(gaps: readonly NeighborGap[]): FabricGap[] {
  const least = new Map<string, FabricGap>();
  for (const g of gaps) {
    const [a, b] = [...g.fabrics].sort();
    if (a === b) continue;
    const key = `${a} ${b}`;
    const old = least.get(key);
    if (old && old.lightness <= g.lightness) continue;
    least.set(key, { a, b, lightness: g.lightness, difference: g.difference, eye: g.eye });
  }
  return [...least.keys()].sort().flatMap((k) => least.get(k) ?? []);
}

function roundFindings(
  brief: Brief,
  r: RoundSeen,
  wedge: WedgeCut,
  halfAngle: number,
  step: Step,
): Finding[] {
  const fabric = brief.fabrics.find((f) => f.id === r.fabricId);
  if (!fabric || r.look.kind !== "bands") return [];
  const ways = (["up", "down"] as const).filter((w) => (w === "up" ? r.up : r.down) > 0);
  const ofSet =
    fabric.kind === "strip-set" ? stripSetFindings(fabric, wedge, ways, halfAngle, step) : [];
  const misses =
    r.round === "by-place"
      ? []
      : ringFindingsOfRound(fabric.id, r.plan, r.look as BandLook, wedge, step);
  return [...ofSet, ...misses.map((f) => withSetWidths(f, fabric, wedge.seam, step))].map((f) => ({
    ...f,
    words: { ...f.words, place: fabric.name },
  }));
}

/** A strip set has no repeat to slide along: what works is other widths of its strips. */
function withSetWidths(f: Finding, fabric: Fabric, seam: Length, step: Step): Finding {
  if (fabric.kind !== "strip-set") return f;
  const cuts = fabric.strips.map((s) => knownLength(s.cut, step.unit));
  const say = (widths: readonly Length[]): string =>
    widths.map((w) => printWithUnit(w, step)).join(", ");
  const missing = cutsThatMiss(cuts, seam, step, inchToLength(MISS_ON_PURPOSE_INCHES, step.unit));
  const parts = [`Their seams meet when the strips are cut ${say(cutsThatMeet(cuts))}.`];
  if (missing)
    parts.push(
      `They miss by ${printWithUnit(leastSetMiss(missing, seam) ?? 0, step)} or more when they are cut ${say(missing)}.`,
    );
  return { ...f, words: { ...f.words, works: parts.join(" ") } };
}

/** Wedges of whole strips flipped along each, where the rounds are free to be sorted. */
function oddOnes(
  brief: Brief,
  answer: Cut,
  rounds: readonly RoundSeen[],
  wedges: number,
): Finding[] {
  return rounds.flatMap((r) => {
    if (r.round !== "free" || r.look.kind !== "bands" || r.wedges !== wedges) return [];
    const layout = answer.layouts.find((l) => l.fabricId === r.fabricId);
    const demand = answer.demands.find(
      (d) => d.fabricId === r.fabricId && d.shape.kind === "nested",
    );
    if (!layout || !demand) return [];
    const runs = layout.strips.flatMap((s) => s.runs.filter((x) => x.demandId === demand.id));
    if (runs.length === 0) return [];
    const single = layout.strips.every((s) => s.layers === 1);
    const { first, pitch } = demand.shape;
    const whole = single ? piecesInRun(layout.width, first, pitch) : 0;
    const perStrip = Math.max(whole, ...runs.map((x) => x.copies));
    return oddWedges(r.fabricId, r.plan.strips, perStrip, wedges).findings.map((f) => ({
      ...f,
      words: { ...f.words, place: nameOf(brief, r.fabricId) },
    }));
  });
}
