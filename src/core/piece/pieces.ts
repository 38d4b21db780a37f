import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { handOf } from "../block/hand.ts";
import type { BlockGeometry, Hand, Patch, Role } from "../block/types.ts";
import type { Finding } from "../findings/index.ts";
import { area, depth, distance, halfPlanes, offset, type Polygon } from "../geometry/index.ts";
import { type Length, tolerances, type Unit } from "../measure/index.ts";
import type { QuiltPatch } from "../quilt/types.ts";
import { eitherWay, framed, isWedge } from "./frame.ts";
import { grainOf, grainWord } from "./grain.ts";
import { nameOf } from "./names.ts";
import { isSymmetric, rollTo, type Shape, turnedOver, withoutStraightCorners } from "./shape.ts";
import { trimsOf } from "./trim.ts";
import type { Piece } from "./types.ts";

/** What pieces need to know of a fabric. `letter` begins the letters of its pieces. */
export interface PieceFabric {
  readonly name: string;
  readonly letter: string;
  readonly directional: boolean;
  /** Both sides alike, so a left is a right turned over. */
  readonly reversible: boolean;
}

export interface PieceBlock {
  readonly geometry: BlockGeometry;
  /** How many of this block the quilt has. */
  readonly count: number;
  readonly fabricOf: Readonly<Record<string, string>>;
  /** Allowances of patches that differ from the seam: patch id -> one an edge. */
  readonly allowances?: Readonly<Record<string, readonly Length[]>>;
}

export interface PiecesInput {
  readonly unit: Unit;
  readonly seam: Length;
  readonly blocks: readonly PieceBlock[];
  readonly extras: readonly (QuiltPatch & { readonly count: number })[];
  readonly fabrics: Readonly<Record<string, PieceFabric>>;
}

export interface Pieces {
  readonly pieces: readonly Piece[];
  readonly pieceOf: Readonly<Record<string, string>>;
  readonly findings: readonly Finding[];
}

interface Member {
  readonly patchId: string;
  readonly role: Role;
  readonly hand: Hand;
  readonly fabricId: string;
  readonly shape: Shape;
  readonly blockId?: string;
  readonly count: number;
}

interface PieceClass {
  shape: Shape;
  readonly first: Member;
  readonly members: Member[];
  readonly hand: Hand;
  readonly eitherWay: boolean;
}

/**
 * The distinct pieces to cut: patches of one fabric whose shapes, allowances and grain agree, turned
 * but not turned over. Mirrored shapes are two pieces, a left and a right, unless the fabric is the
 * same on both sides: then they are one piece with no hand, cut either way (`eitherWay`), because a
 * left is a right turned over.
 * Letters: the fabric's letter and a number, large to small by cut area.
 * Throws RangeError when a fabric or an allowance list does not fit its patch.
 */
export function piecesOf(input: PiecesInput): Pieces {
  const slack = tolerances(input.unit).congruent;
  const classes: PieceClass[] = [];
  for (const m of membersOf(input, slack)) gather(classes, m, input, slack);
  const ids = classes.map(idOf);
  const letters = lettersOf(classes, input.fabrics);
  const pieces = classes.map((c, i) =>
    pieceOfClass(c, ids[i], letters[i], mirror(c, classes, ids, slack)),
  );
  const pieceOf: Record<string, string> = {};
  classes.forEach((c, i) => {
    for (const m of c.members) pieceOf[m.patchId] = ids[i];
  });
  return {
    pieces: [...pieces].sort((a, b) => (a.id < b.id ? -1 : 1)),
    pieceOf,
    findings: pieces.flatMap((p) => overlapping(p)),
  };
}

function membersOf(input: PiecesInput, slack: Length): Member[] {
  const lay = framer(slack);
  const inBlocks = input.blocks.flatMap((b) =>
    b.geometry.patches.map((patch) => blockMember(b, patch, input.seam, lay)),
  );
  return [...inBlocks, ...input.extras.map((e) => extraMember(e, input.seam, lay))];
}

type Lay = (s: Shape, role: Role) => Shape;

/** Lays shapes on the fabric; a shape like one laid before is laid the same way, without thinking. */
function framer(slack: Length): Lay {
  const laid: { readonly shape: Shape; readonly wedge: boolean; readonly frame: Shape }[] = [];
  return (given, role) => {
    const shape = withoutStraightCorners(given, slack);
    const wedge = isWedge(role, shape);
    for (const known of laid) {
      if (known.wedge !== wedge) continue;
      const roll = rollTo(known.shape, shape, slack, true);
      if (roll !== undefined) return known.frame;
    }
    const frame = framed(shape, role, slack);
    laid.push({ shape, wedge, frame });
    return frame;
  };
}

function blockMember(b: PieceBlock, patch: Patch, seam: Length, lay: Lay): Member {
  const allowances = b.allowances?.[patch.id] ?? patch.polygon.map(() => seam);
  if (allowances.length !== patch.polygon.length)
    throw new RangeError(
      `${patch.id}: ${patch.polygon.length} allowances expected, got ${allowances.length}`,
    );
  const fabricId = b.fabricOf[patch.id];
  if (fabricId === undefined) throw new RangeError(`${patch.id}: a fabric expected, got none`);
  const shape = { finished: patch.polygon, allowances, outside: patch.outside };
  return {
    patchId: patch.id,
    role: patch.role,
    hand: patch.hand,
    fabricId,
    shape: lay(shape, patch.role),
    blockId: b.geometry.id,
    count: b.count,
  };
}

function extraMember(e: QuiltPatch & { count: number }, seam: Length, lay: Lay): Member {
  const shape = {
    finished: e.polygon,
    allowances: e.polygon.map(() => seam),
    outside: e.outside ?? outsideByRole(e.role, e.polygon),
  };
  return {
    patchId: e.id,
    role: e.role,
    hand: "none",
    fabricId: e.fabricId,
    shape: lay(shape, e.role),
    count: e.count,
  };
}

/** A setting triangle has its long side on the quilt's edge, a corner triangle its short sides. */
function outsideByRole(role: Role, p: Polygon): boolean[] {
  const lengths = p.map((v, i) => distance(v, p[(i + 1) % p.length]));
  const longest = lengths.indexOf(Math.max(...lengths));
  if (role === "setting-triangle") return p.map((_, i) => i === longest);
  if (role === "corner-triangle") return p.map((_, i) => i !== longest);
  return p.map(() => false);
}

function gather(classes: PieceClass[], m: Member, input: PiecesInput, slack: Length): void {
  const fabric = input.fabrics[m.fabricId];
  if (!fabric) throw new RangeError(`${m.patchId}: fabric ${m.fabricId} is not among the fabrics`);
  const noWrongSide = fabric.reversible && !isSymmetric(m.shape, slack);
  const shape = noWrongSide ? eitherWay(m.shape, slack) : m.shape;
  const same = classes.find(
    (c) => c.first.fabricId === m.fabricId && sameCut(c.shape, shape, slack),
  );
  if (same) join(same, m, shape);
  else {
    const hand = noWrongSide ? "none" : handOfMember(m, slack);
    classes.push({ shape, first: m, members: [m], hand, eitherWay: noWrongSide });
  }
}

/** A sash is cut square across and trimmed on the quilt, so which way its ends lean gives it no hand. */
function handOfMember(m: Member, slack: Length): Hand {
  if (m.role === "sash" || isSymmetric(m.shape, slack)) return "none";
  return m.hand === "none" ? handOf(m.shape.finished, slack) : m.hand;
}

function join(c: PieceClass, m: Member, shape: Shape): void {
  c.members.push(m);
  c.shape = { ...c.shape, outside: c.shape.outside.map((o, i) => o || shape.outside[i]) };
}

/** Same shape with the same edge along the strip. Both stand in their frames, edge 0 at the bottom. */
function sameCut(a: Shape, b: Shape, slack: Length): boolean {
  if (a.finished.length !== b.finished.length) return false;
  return (
    a.finished.every((v, i) => distance(v, b.finished[i]) <= slack) &&
    a.allowances.every((x, i) => Math.abs(x - b.allowances[i]) <= slack)
  );
}

function mirror(
  c: PieceClass,
  all: readonly PieceClass[],
  ids: readonly string[],
  slack: Length,
): string | undefined {
  if (c.hand === "none") return undefined;
  const over = turnedOver(c.shape);
  const at = all.findIndex(
    (d) =>
      d !== c &&
      d.hand !== "none" &&
      d.first.fabricId === c.first.fabricId &&
      rollTo(over, d.shape, slack) !== undefined,
  );
  return at < 0 ? undefined : ids[at];
}

/**
 * Content of the id: fabric, outline and allowances to a millionth of the unit. The grid is shifted
 * by a fraction no ruler has, so that no binary or decimal fraction lies between two grid cells.
 */
function idOf(c: PieceClass): string {
  const grid = (x: Length) => Math.floor(x * 1e6 + 0.318309886);
  const text = [
    c.first.fabricId,
    c.hand,
    ...c.shape.finished.map((v) => `${grid(v.x)},${grid(v.y)}`),
    ...c.shape.allowances.map(grid),
  ].join(" ");
  return `p-${bytesToHex(sha256(utf8ToBytes(text))).slice(0, 10)}`;
}

const cutOf = (s: Shape): Polygon => offset(s.finished, s.allowances);

function lettersOf(
  classes: readonly PieceClass[],
  fabrics: Readonly<Record<string, PieceFabric>>,
): string[] {
  const sizes = classes.map((c) => area(cutOf(c.shape)));
  const letters: string[] = new Array(classes.length);
  for (const fabricId of new Set(classes.map((c) => c.first.fabricId))) {
    classes
      .map((c, i) => ({ c, i }))
      .filter(({ c }) => c.first.fabricId === fabricId)
      .sort((a, b) => largeToSmall(sizes, a, b))
      .forEach(({ i }, k) => {
        letters[i] = `${fabrics[fabricId].letter}${k + 1}`;
      });
  }
  return letters;
}

/** Lefts before rights where they are equal in size, else in the order of the blocks. */
function largeToSmall(
  sizes: readonly number[],
  a: { c: PieceClass; i: number },
  b: { c: PieceClass; i: number },
): number {
  const gap = sizes[b.i] - sizes[a.i];
  if (Math.abs(gap) > 1e-9 * sizes[a.i]) return gap;
  if (a.c.hand !== b.c.hand) return a.c.hand < b.c.hand ? -1 : 1;
  return a.i - b.i;
}

function pieceOfClass(c: PieceClass, id: string, letter: string, mirrorId?: string): Piece {
  const cut = cutOf(c.shape);
  const grain = grainOf(c.shape.finished);
  const n = cut.length;
  const perBlock: Record<string, number> = {};
  for (const m of c.members)
    if (m.blockId !== undefined) perBlock[m.blockId] = (perBlock[m.blockId] ?? 0) + 1;
  return {
    id,
    letter,
    name: nameOf(c.first.role, n, c.hand),
    fabricId: c.first.fabricId,
    roles: [...new Set(c.members.map((m) => m.role))].sort(),
    hand: c.hand,
    eitherWay: c.eitherWay,
    ...(mirrorId === undefined ? {} : { mirrorId }),
    finished: c.shape.finished,
    cut,
    edges: c.shape.finished.map((v, i) => ({
      finished: distance(v, c.shape.finished[(i + 1) % n]),
      cut: distance(cut[i], cut[(i + 1) % n]),
      allowance: c.shape.allowances[i],
      grain: grain[i],
      grainWord: grainWord(grain[i]),
      outside: c.shape.outside[i],
    })),
    trims: trimsOf(c.shape.finished, c.shape.allowances),
    setsSize: c.members.some((m) => isWedge(m.role, m.shape)),
    count: c.members.reduce((sum, m) => sum + m.count, 0),
    perBlock,
    patchIds: c.members.map((m) => m.patchId),
  };
}

/** A piece narrower, when sewn, than the allowances that lie under it from two sides. */
function overlapping(p: Piece): Finding[] {
  const planes = halfPlanes(p.finished);
  let worst: { found: Length; needed: Length } | undefined;
  planes.forEach((h, i) => {
    const width = Math.max(...p.finished.map((v) => depth(h, v)));
    const needed = 2 * p.edges[i].allowance;
    if (width < needed - 1e-9 && (!worst || width < worst.found)) worst = { found: width, needed };
  });
  if (!worst) return [];
  const { found } = worst;
  return [
    { code: "allowances-overlap", severity: "advice", place: p.id, found, needed: found / 2 },
  ];
}
