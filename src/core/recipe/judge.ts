import type { Finding, Severity } from "../findings/index.ts";
import {
  type Degree,
  type Length,
  liesOnStep,
  printLength,
  roundNearest,
} from "../measure/index.ts";
import { grainWord } from "../piece/index.ts";
import type { Judged, RecipesInput } from "./input.ts";
import { flatTip } from "./ruler.ts";
import { sliceHeight } from "./sliced.ts";

type Context = Pick<RecipesInput, "unit" | "step" | "accepted" | "seam">;

/** Everything wrong with the recipes, or worth knowing, in the order of the pieces. */
export function findingsOf(judged: readonly Judged[], input: Context): Finding[] {
  const all = judged.flatMap((j) => [
    ...refusals(j, input),
    ...cover(j, input),
    ...offStep(j, input),
    ...rulerLimits(j, input),
    ...hands(j),
    ...leftovers(j, input),
    ...bias(j),
  ]);
  return once(all).map((f) => (isAccepted(f, input) ? { ...f, severity: "advice" as const } : f));
}

/** Findings about the ruler are the same for every wedge: said once. */
function once(list: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return list.filter((f) => {
    const key = `${f.code} ${f.place}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Only a doubt can be accepted; what blocks cutting cannot. */
const isAccepted = (f: Finding, { accepted = [] }: Context): boolean =>
  f.severity === "draft" && accepted.some((a) => a.place === f.place && a.code === f.code);

const at = (
  code: Finding["code"],
  severity: Severity,
  j: Judged,
  more: Partial<Finding>,
): Finding => ({
  code,
  severity,
  place: j.piece.id,
  ...more,
  words: { place: `${j.piece.letter} (${j.piece.name})`, ...more.words },
});

function refusals(j: Judged, { unit }: Context): Finding[] {
  const { kind, kinds = [], rule, size } = j.refused;
  const found: Finding[] = [];
  if (rule !== undefined) found.push(at("rule-not-understood", "draft", j, { words: { rule } }));
  if (kind !== undefined)
    found.push(at("way-does-not-fit", "draft", j, { words: { kind, kinds: kinds.join(", ") } }));
  if (size !== undefined)
    found.push(at("cut-not-free", "draft", j, { needed: j.recipe.size, found: size, unit }));
  return found;
}

function cover(j: Judged, { unit, step }: Context): Finding[] {
  const { recipe } = j;
  if (recipe.verdict === "proved") return [];
  const wanted = recipe.w - recipe.spare;
  const smallest =
    recipe.smallest === undefined
      ? ""
      : `The smallest that does: ${printLength(recipe.smallest, step)} ${unit}.`;
  const common = { needed: wanted, unit };
  if (recipe.verdict === "blocked")
    return [
      at("does-not-cover", "blocks", j, {
        ...common,
        found: Math.min(recipe.w, recipe.reach),
        words: { smallest },
      }),
    ];
  const over = Math.max(0, ...(recipe.thin ?? []).map((t) => t.over));
  return [
    at("thin-cover", "draft", j, {
      ...common,
      found: recipe.w,
      words: { smallest, over: `${printLength(over, step)} ${unit}` },
    }),
  ];
}

function offStep(j: Judged, { unit, step }: Context): Finding[] {
  const off = j.plan.setting.filter((x) => !liesOnStep(x, step));
  if (off.length === 0) return [];
  const [found] = off;
  const needed = roundNearest(found, step);
  const { neighbors } = j.recipe;
  const text = (x: Length) => `${printLength(x, step)} ${unit}`;
  if (!neighbors)
    return [
      at("cut-off-step", "draft", j, {
        needed,
        found,
        unit,
        words: { how: `Mark ${text(found)} by two marks, or cut by the template.` },
      }),
    ];
  const [below, above] = neighbors.map(
    (n) => `${text(n.strip)}, which makes ${text(n.across)} across`,
  );
  return [
    at("cut-neighbours", "draft", j, {
      needed,
      found,
      unit,
      words: {
        below: below ?? "",
        above: above ?? below ?? "",
        how: `To keep ${text(found)}, cut by two marks or by the template.`,
      },
    }),
  ];
}

function rulerLimits(j: Judged, { unit }: Context): Finding[] {
  const { ruler } = j.bench;
  if (!ruler) return [];
  const strip = j.plan.size;
  const found: Finding[] = [];
  const tip = flatTip(ruler);
  const line = ruler.shortest ?? strip;
  if (tip > line)
    found.push({
      code: "ruler-tip-too-wide",
      severity: "blocks",
      place: "ruler",
      needed: line,
      found: tip,
      unit,
    });
  if (ruler.longest !== undefined && strip > ruler.longest + 1e-9)
    found.push(at("ruler-too-short", "advice", j, { needed: strip, found: ruler.longest, unit }));
  if (ruler.shortest !== undefined && strip < ruler.shortest - 1e-9)
    found.push(at("ruler-too-long", "advice", j, { needed: strip, found: ruler.shortest, unit }));
  return found;
}

function hands(j: Judged): Finding[] {
  const both = j.piece.mirrorId !== undefined && j.piece.hand === "left";
  return both && j.plan.kind === "half-rectangle" ? [at("one-hand-only", "advice", j, {})] : [];
}

/** The true wedges a deep background leaves: sliced one seam inside the block's own, all round. */
function leftovers(j: Judged, { unit, seam }: Context): Finding[] {
  if (j.plan.kind !== "half-square-sliced") return [];
  const across = 2 * (sliceHeight(j.piece) - seam - seam / Math.sin(Math.PI / 8));
  if (across <= 0) return [];
  return [
    at("leftover-wedge", "advice", j, {
      found: across,
      unit,
      words: {
        count: String(j.piece.count),
        grain: "one on the straight grain and one on the bias",
      },
    }),
  ];
}

/** Worst outside edge on the bias, as the recipe lays it, and whether another cut would lay it better. */
function bias(j: Judged): Finding[] {
  const angles = j.recipe.grain.filter(
    (g, i) => j.piece.edges[i]?.outside && grainWord(g) === "bias",
  );
  if (angles.length === 0) return [];
  const worst = Math.max(...angles) as Degree;
  const byRule = j.piece.edges.some((e) => e.outside && e.grainWord === "bias");
  const avoid = byRule
    ? "No straight cut avoids it: sew or stay-stitch that edge early, and press without steam."
    : "It can be cut with that edge on the straight grain.";
  return [
    at("bias-outside", "advice", j, {
      found: +worst,
      unit: "degrees",
      words: { angle: `${Number(worst.toFixed(1))} degrees`, avoid },
    }),
  ];
}
