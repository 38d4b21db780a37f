import type { Brief } from "../../brief/index.ts";
import { type Figure, PARTS_FROM_LIGHTNESS } from "../../fabric/index.ts";
import { type Finding, say } from "../../findings/index.ts";
import { printWithUnit, type Step } from "../../measure/index.ts";
import { narrowestRing } from "../look/rounds.ts";
import type { Question } from "../types/answer.ts";
import type { BlockSight, WedgeRound } from "../types/look.ts";
import { listed } from "../words/fabric.ts";
import { sayPlace, sayPrint, wayWords } from "../words/place-words.ts";
import { inWords } from "../words/word.ts";

interface LookFacts {
  readonly brief: Brief;
  readonly step: Step;
  readonly sights: readonly BlockSight[];
  /** What the look itself is in doubt about. */
  readonly findings: readonly Finding[];
}

/**
 * "What will my fabric look like?": a line for each stripe, strip set or print the wedges are cut
 * from, then the figure that is seen first. Nothing when there is nothing to say.
 */
export function lookQuestion(f: LookFacts): Question | undefined {
  const lines = [...new Set([...roundLines(f), ...figureLines(f)])];
  if (lines.length === 0) return undefined;
  const worst = f.findings.find((x) => x.severity !== "advice");
  const ring = narrowestRing(f.sights.flatMap((s) => s.rounds));
  const [strongest] = f.sights.flatMap((s) => (s.reads ? [{ reads: s.reads }] : []));
  return {
    id: "look",
    heading: "What will my fabric look like?",
    trade: "the fabric in the block",
    line: lines.join(" "),
    doubt: worst !== undefined,
    ...(worst && { because: say(worst, { step: f.step }) }),
    margin: ring
      ? {
          number: {
            value: ring.width,
            unit: f.brief.unit,
            text: printWithUnit(ring.width, f.step),
            status: "exact",
            from: [ring.fabricId],
          },
          caption: `narrowest ring, ${nameOf(f.brief, ring.fabricId)}`,
        }
      : { caption: strongest ? `${FIGURES[strongest.reads]} first` : "no figure stands out" },
    from: [
      ...new Set(
        f.sights.flatMap((s) =>
          s.rounds.length > 0 ? s.rounds.map((r) => r.fabricId) : [s.block],
        ),
      ),
    ],
  };
}

const nameOf = (b: Brief, id: string): string => b.fabrics.find((x) => x.id === id)?.name ?? id;

const blockName = (b: Brief, id: string): string => b.blocks.find((x) => x.id === id)?.name ?? id;

/** "Shore set in lantern: mixed, four up and four down in each of 12 rounds." Blocks alike are one. */
function roundLines(f: LookFacts): string[] {
  const told = new Map<string, { fabric: string; text: string; blocks: string[] }>();
  for (const s of f.sights)
    for (const r of s.rounds) {
      const text = sayRound(f, s, r);
      const key = `${r.fabricId} ${text}`;
      const there = told.get(key) ?? { fabric: nameOf(f.brief, r.fabricId), text, blocks: [] };
      told.set(key, { ...there, blocks: [...there.blocks, blockName(f.brief, s.block)] });
    }
  return [...told.values()].map(({ fabric, text, blocks }) => {
    const where = f.sights.length > 1 ? ` in ${listed(blocks)}` : "";
    const each = blocks.length > 1 ? " of each" : "";
    return `${fabric}${where}: ${text}${each}.`;
  });
}

/** Rounds of other blocks may take what lies in the gaps of these. */
const aloneInQuilt = (f: LookFacts, r: WedgeRound): boolean =>
  f.sights.flatMap((s) => s.rounds).filter((x) => x.fabricId === r.fabricId).length === 1;

function sayRound(f: LookFacts, s: BlockSight, r: WedgeRound): string {
  const b = f.brief;
  const print = sayPrint(b, r, s.count);
  if (print) return print;
  const whole = r.blocksUp + r.blocksDown;
  const rounds = (n: number): string => `${n} ${n === 1 ? "round" : "rounds"}`;
  const each = `${inWords(r.up)} up and ${inWords(r.down)} down`;
  if (r.round === "matched") {
    const alike = `matched, all ${wayWords(b, r.fabricId, r.way)}, ${rounds(s.count)} alike${sayPlace(b, r)}`;
    const spare = aloneInQuilt(f, r) ? Math.floor(r.spare / r.wedges) : 0;
    return spare > 0
      ? `${alike}; the gaps hold as many the other way, ${rounds(spare)} of the other kind`
      : alike;
  }
  if (r.round === "mixed") return `mixed, ${each} in each of ${rounds(s.count)}${sayPlace(b, r)}`;
  if (r.round === "by-place") return `placed wedge by wedge, ${each} in each of ${rounds(s.count)}`;
  if (whole === 0) return `free, as the wedges fall, up and down in each of ${rounds(s.count)}`;
  return `free, as the wedges fall, ${r.blocksUp} all up, ${r.blocksDown} all down and ${r.blocksMixed} of both`;
}

const FIGURES: Readonly<Record<Figure, string>> = {
  star: "the star",
  octagon: "the octagon",
  pinwheel: "the pinwheel",
  rings: "the rings",
};

/** One sentence for all blocks that read alike. */
function figureLines(f: LookFacts): string[] {
  const told = new Map<string, string[]>();
  for (const s of f.sights) {
    const text = figureText(s);
    if (text) told.set(text, [...(told.get(text) ?? []), blockName(f.brief, s.block)]);
  }
  const alone = told.size === 1;
  return [...told].map(([text, blocks]) => {
    const sentence = alone ? text : `in ${listed(blocks)} ${text}`;
    return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
  });
}

function figureText(s: BlockSight): string | undefined {
  if (s.figures.length === 0) return undefined;
  if (!s.reads)
    return s.gaps.length === 0
      ? undefined
      : `no figure is seen: no two neighbors lie ${PARTS_FROM_LIGHTNESS} steps of lightness apart`;
  const rest = s.beside.map((x) => FIGURES[x]);
  const beside = rest.length > 0 ? `, ${rest.join(" and ")} nearly as strong` : "";
  return `${FIGURES[s.reads]} ${s.reads === "rings" ? "are" : "is"} seen first${beside}`;
}
