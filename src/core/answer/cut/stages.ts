import { type BlockGeometry, halveBlock, layOutBlock } from "../../block/index.ts";
import { type Block, type Brief, blockIn, checkNames, seamOf } from "../../brief/index.ts";
import type { Finding } from "../../findings/index.ts";
import {
  inchToLength,
  knownLength,
  type Length,
  type Step,
  stepOf,
  tolerances,
  type Unit,
} from "../../measure/index.ts";
import { type Piece, piecesOf } from "../../piece/index.ts";
import {
  type FinishingFacts,
  finishingOf,
  type LaidOutQuilt,
  layOutQuilt,
  type QuiltGeometry,
} from "../../quilt/index.ts";
import {
  halfAcross,
  type Recipes,
  type Ruler,
  recipesOf,
  rulerOf,
  stripFor,
} from "../../recipe/index.ts";
import {
  keyOf,
  pressFor,
  pressingFindings,
  type RowPressing,
  rowPressingOf,
  type SewnUnit,
  unitsOf,
} from "../../sewing/index.ts";
import type { AnswerBlock } from "../types/answer.ts";
import { borderDemands } from "./borders.ts";
import { fabricLetters, fabricsOf } from "./fabrics.ts";

/** The brief's lengths as numbers of its own unit, read once. */
export interface Measures {
  readonly seam: Length;
  readonly step: Step;
  readonly straighten: Length;
  readonly extra: Length;
  readonly wrongStrip: boolean;
}

export function measuresOf(brief: Brief): Measures {
  const { unit, margin } = brief;
  return {
    seam: seamOf(brief),
    step: stepOf(brief.step, unit),
    straighten: knownLength(margin?.straighten ?? (unit === "in" ? "1" : "25"), unit),
    extra: margin?.extra === undefined ? 0 : knownLength(margin.extra, unit),
    wrongStrip: margin?.wrongStrip ?? true,
  };
}

export interface Blocks {
  readonly blocks: readonly { readonly brief: Block; readonly geometry: BlockGeometry }[];
  readonly findings: readonly Finding[];
}

/** Each kind of block as exact geometry: the ruler and the strip give half the width across flats. */
export function blocksOf(brief: Brief, m: Measures): Blocks {
  const results = brief.blocks.map((block) => {
    const a = block.kind === "wedges" ? halfAcrossOf(brief, block, m) : undefined;
    const gone = block.kind === "wedges" ? goneInSeams(brief, block, m) : [];
    if (gone.length > 0) return { block, geometry: undefined, findings: gone };
    const { geometry, findings } = layOutBlock(block, brief.unit, m.seam, a);
    return { block, geometry, findings };
  });
  return {
    blocks: results.flatMap((r) => (r.geometry ? [{ brief: r.block, geometry: r.geometry }] : [])),
    findings: results.flatMap((r) => r.findings),
  };
}

export const rulerFor = (brief: Brief, n: number): Ruler => rulerOf(brief.ruler, n, brief.unit);

function halfAcrossOf(
  brief: Brief,
  block: Extract<Block, { kind: "wedges" }>,
  m: Measures,
): Length {
  return halfAcross(rulerFor(brief, block.n), knownLength(block.strip, brief.unit), m.seam);
}

/** Wedges finished shorter than this, in inches, are no wedges: their strip is all seam. */
const LEAST_WEDGE = 1 / 16;

function goneInSeams(
  brief: Brief,
  block: Extract<Block, { kind: "wedges" }>,
  m: Measures,
): Finding[] {
  const { unit } = brief;
  const found = knownLength(block.strip, unit);
  const needed = stripFor(rulerFor(brief, block.n), inchToLength(LEAST_WEDGE, unit), m.seam);
  if (found >= needed) return [];
  return [{ code: "strip-all-seam", severity: "blocks", place: block.id, needed, found, unit }];
}

/** Names checked first: nothing is computed from a brief that names what it does not define. */
export const namesOf = (brief: Brief): readonly Finding[] => checkNames(brief);

export const quiltOf = (brief: Brief, blocks: Blocks): LaidOutQuilt =>
  layOutQuilt(
    brief,
    blocks.blocks.map((b) => b.geometry),
  );

/** One block of the plan, finished: all of a quilt's blocks are of one size. */
export function finishedBlock(brief: Brief, blocks: Blocks): BlockGeometry | undefined {
  const named = new Set(brief.quilt.plan.flat().map(blockIn));
  return blocks.blocks.find((b) => named.has(b.geometry.id))?.geometry;
}

/** Binding, backing and batting, from the raw edges of the top; the backing at another width if asked. */
export const finishingIn = (
  brief: Brief,
  m: Measures,
  quilt: QuiltGeometry | undefined,
  backingWidth?: Length,
): FinishingFacts => {
  if (!quilt) return {};
  const top = { width: quilt.width + 2 * m.seam, height: quilt.height + 2 * m.seam };
  return finishingOf(brief, top, m.step, backingWidth);
};

/** Whole blocks and, where the quilt has them, the halves and quarters of its edges. */
function withHalves(blocks: Blocks, quilt: QuiltGeometry | undefined, unit: Unit) {
  const { join } = tolerances(unit);
  const halves = (quilt?.halves ?? []).flatMap((half) => {
    const whole = blocks.blocks.find((b) => b.geometry.id === half.of);
    if (!whole) return [];
    let { geometry } = whole;
    const cut: string[] = [];
    for (const keep of half.keep) {
      const made = halveBlock(geometry, keep, half.id, join);
      geometry = made.geometry;
      cut.push(...made.cutPatches);
    }
    return [{ brief: whole.brief, geometry, cut }];
  });
  return [...blocks.blocks.map((b) => ({ ...b, cut: [] as string[] })), ...halves];
}

/** What a half does to its patches: which are cut in two, or that the line runs on seams only. */
const halfFindings = (half: {
  readonly geometry: BlockGeometry;
  readonly cut: readonly string[];
}): Finding[] =>
  half.geometry.id.includes("~")
    ? [
        {
          code: "block-cut-in-two",
          severity: "advice",
          place: half.geometry.id,
          words: {
            what:
              half.cut.length === 0
                ? "its halving line runs on seams, so no patch is cut in two."
                : `its halving line cuts ${half.cut.length} of its patches in two; they are pieces of their own.`,
          },
        },
      ]
    : [];

/** What the stages need to know of each fabric, by its id. */
function fabricFacts(brief: Brief) {
  const letters = fabricLetters(brief);
  return Object.fromEntries(
    brief.fabrics.map((f) => [
      f.id,
      {
        name: f.name,
        letter: letters[f.id],
        directional: f.directional,
        reversible: f.reversible,
        striped: f.kind === "stripe" || f.kind === "strip-set",
      },
    ]),
  );
}

export interface CutPieces {
  readonly pieces: readonly Piece[];
  readonly blocks: readonly AnswerBlock[];
  readonly findings: readonly Finding[];
}

/** Pieces of every fabric, counted over the whole quilt by kinds of block. */
export function piecesIn(
  brief: Brief,
  m: Measures,
  blocks: Blocks,
  quilt: QuiltGeometry | undefined,
): CutPieces {
  const clothed = withHalves(blocks, quilt, brief.unit)
    .map(({ brief: b, geometry, cut }) => ({
      geometry,
      cut,
      name: nameOf(b, geometry.id),
      count: quilt?.counts[geometry.id] ?? 0,
      ...fabricsOf(b, geometry, brief),
    }))
    .filter((c) => c.count > 0 || !quilt);
  const { pieces, pieceOf, findings } = piecesOf({
    unit: brief.unit,
    seam: m.seam,
    blocks: clothed,
    extras: quilt?.extras ?? [],
    fabrics: fabricFacts(brief),
  });
  return {
    pieces,
    blocks: clothed.map(({ geometry, count, fabricOf, name }) => ({
      ...geometry,
      count,
      name,
      fabricOf,
      pieceOf: Object.fromEntries(geometry.patches.map((p) => [p.id, pieceOf[p.id]])),
    })),
    findings: [...findings, ...clothed.flatMap((c) => [...c.findings, ...halfFindings(c)])],
  };
}

/** "star", or "star, upper half". */
function nameOf(block: Block, id: string): string {
  const name = block.name ?? block.id;
  const [, part] = id.split("~");
  if (part === undefined) return name;
  return `${name}, ${part.endsWith("-quarter") ? part.replace("-quarter", " quarter") : `${part} half`}`;
}

/** How each piece is cut, with its proof. */
export function recipesIn(brief: Brief, m: Measures, cut: CutPieces): Recipes {
  const recipes = recipesOf({
    pieces: cut.pieces,
    ruler: brief.ruler,
    seam: m.seam,
    step: m.step,
    unit: brief.unit,
    fabrics: fabricFacts(brief),
    choices: Object.fromEntries(brief.blocks.flatMap((b) => (b.cut ? [[b.id, b.cut]] : []))),
    wedges: wedgeFacts(brief, cut.blocks),
    accepted: brief.accepted ?? [],
  });
  return { ...recipes, demands: borderDemands(brief, m.step, cut.pieces, recipes.demands) };
}

function wedgeFacts(brief: Brief, blocks: readonly AnswerBlock[]) {
  return Object.fromEntries(
    brief.blocks.flatMap((b) => {
      const radial = blocks.find((x) => x.id === b.id)?.radial;
      if (b.kind !== "wedges" || !radial) return [];
      return [[b.id, { strip: knownLength(b.strip, brief.unit), a: radial.a }]];
    }),
  );
}

/** Points this near are one crossing: far below a stitch. */
const NEAR_INCH = 1e-6;

export interface Sewing {
  readonly units: readonly SewnUnit[];
  readonly rows?: RowPressing;
  readonly findings: readonly Finding[];
}

/** Units of every kind of block in sewing order, lettered through, pressed for the whole quilt. */
export function sewingIn(
  brief: Brief,
  m: Measures,
  blocks: readonly AnswerBlock[],
  recipes: Recipes,
  wholes: Blocks,
): Sewing {
  const keys = new Map(blocks.flatMap((b) => b.patches.map((p) => [p.id, keyOf(b)(p.id)])));
  const near = inchToLength(NEAR_INCH, brief.unit);
  const pressing = pressFor(
    blocks,
    brief,
    (id) => keys.get(id) ?? id,
    near,
    "side",
    wholes.blocks.map((b) => b.geometry),
  );
  const { rows: down, columns } = brief.quilt;
  const together = down * columns > 1 || brief.quilt.arrangement === "on-point";
  const units: SewnUnit[] = [];
  for (const block of blocks)
    units.push(
      ...unitsOf(block, {
        seam: m.seam,
        recipes: recipes.recipes,
        pressed: pressing.bySeam,
        from: units.length + 1,
      }),
    );
  const rows = rowPressingOf(pressing);
  return { units, ...(together && { rows }), findings: pressingFindings(pressing) };
}
