/**
 * How much a block of one's own with 16 wedges and 60 patches costs beside the plain eight-wedge
 * block. Run: npx tsx bench/blocks.ts. Prints medians; the most it may be is 10 times.
 */

import { layOutBlock } from "../src/core/block/index.ts";
import type { Block, OwnBlock } from "../src/core/brief/schema.ts";
import { distance } from "../src/core/geometry/index.ts";

const SEAM = 0.25;
const MOST = 10;

const plain: Block = {
  kind: "wedges",
  id: "plain",
  n: 8,
  outline: "square",
  strip: "4 1/2",
  setting: "plain",
  fabric: {},
};

/** 16 wedges round the center, most cut across at a third and again at two thirds: 60 patches. */
function sixtyPatches(): OwnBlock {
  const round: OwnBlock = {
    kind: "own",
    id: "sixty",
    fabric: {},
    outline: { width: "18", height: "18" },
    seams: ["16 wedges round the center"],
  };
  const { geometry, points = [] } = layOutBlock(round, "in", SEAM, undefined);
  const nameAt = (x: number, y: number) =>
    points.find((p) => distance(p.at, { x, y }) < 1e-9)?.name ?? "?";
  const across = geometry!.patches.flatMap(({ polygon }) => {
    const center = nameAt(polygon[0].x, polygon[0].y);
    const ends = [polygon[1], polygon[polygon.length - 1]].map((v) => nameAt(v.x, v.y));
    return ["3/10", "5/10", "7/10"].map(
      (k) => `from ${k} of ${center}${ends[0]} to ${k} of ${center}${ends[1]}`,
    );
  });
  return { ...round, seams: [...round.seams, ...across.slice(0, 44)] };
}

function medianMs(work: () => void, times: number): number {
  for (let i = 0; i < times; i++) work();
  const each = Array.from({ length: times }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return each.sort((a, b) => a - b)[Math.floor(times / 2)];
}

const sixty = sixtyPatches();
const laid = layOutBlock(sixty, "in", SEAM, undefined);
const blocked = laid.findings.filter((f) => f.severity === "blocks");
if (blocked.length > 0 || laid.geometry?.patches.length !== 60)
  throw new Error(`60 patches expected, got ${laid.geometry?.patches.length}`);

const plainMs = medianMs(() => layOutBlock(plain, "in", SEAM, 3.6), 400);
const ownMs = medianMs(() => layOutBlock(sixty, "in", SEAM, undefined), 100);
const ratio = ownMs / plainMs;
console.log(`plain block, 8 wedges:          ${plainMs.toFixed(3)} ms`);
console.log(`own block, 16 wedges, 60 parts: ${ownMs.toFixed(3)} ms`);
console.log(`ratio ${ratio.toFixed(1)} (at most ${MOST})${ratio > MOST ? ": TOO MUCH" : ""}`);
