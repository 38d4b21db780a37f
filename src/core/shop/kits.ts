import type { Answer } from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import { parseLength } from "../measure/index.ts";
import { cutsFor, type KitProblem, type Most, mostKits, type Use } from "./most.ts";
import { type Need, needsOf } from "./needs.ts";
import { type KitRules, rulesOf } from "./rules.ts";
import { runsOf } from "./run.ts";
import { ticksDown, ticksUp } from "./ticks.ts";
import type { Bolt, KitCut, KitFabric, KitPlan, Limit, Shelf, Way } from "./types.ts";

/** What is to be cut from which bolts, before anything is counted. */
interface Setup {
  readonly rules: KitRules;
  readonly needs: readonly Need[];
  readonly bolts: readonly Bolt[];
  readonly problem: KitProblem;
  readonly cutOf: (fabricId: string, boltId: string) => KitCut | undefined;
  readonly findings: readonly Finding[];
}

/** Alternatives worked out beside the plan. */
const MOST_WAYS = 6;

/**
 * N kits from the bolts on the shelf: the largest N (exact), which fabric limits it and by how much,
 * what to swap, and every cut in order. Each kit has every fabric whole from one bolt.
 */
export function planKits(brief: Brief, answer: Answer, shelf: Shelf): KitPlan {
  const rules = rulesOf(brief);
  const setup = setUp(brief, answer, shelf, rules);
  const most = mostKits(setup.problem);
  const kits = rules.wanted === undefined ? most.kits : Math.min(rules.wanted, most.kits);
  const taken = cutsFor(setup.problem, kits) ?? [];
  const fabrics = setup.needs.map((need): KitFabric => {
    const cut = need.at(need.width);
    const group = most.groups.find((g) => g.fabricIds.includes(need.fabricId));
    return {
      fabricId: need.fabricId,
      name: need.name,
      letter: need.letter,
      uses: need.uses,
      ...(cut && { cut }),
      bolts: taken
        .filter((t) => t.fabricId === need.fabricId)
        .map((t) => ({
          boltId: t.boltId,
          cut: setup.cutOf(t.fabricId, t.boltId)!,
          cuts: t.cuts,
        })),
      most: group?.kits ?? 0,
    };
  });
  const limits = limitsOf(setup, most, rules.wanted ?? most.kits + 1);
  const runs = runsOf(setup, taken, kits);
  return {
    unit: brief.unit,
    title: brief.title,
    kits,
    ...(rules.wanted !== undefined && { wanted: rules.wanted }),
    most: most.kits,
    proven: most.proven,
    atMost: most.atMost,
    fabrics,
    limits,
    ways: waysOf(brief, answer, shelf, rules, setup, limits, most.kits),
    runs,
    findings: [...setup.findings, ...findingsOf(most, fabrics, rules)],
  };
}

const plainName = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, " ");

/** The bolts a fabric may be cut from: those the shop named for it, else those of its own name. */
export function boltsFor(
  need: Pick<Need, "fabricId" | "name">,
  shelf: Shelf,
  rules: KitRules,
): Bolt[] {
  const names = (rules.from[need.fabricId] ?? [need.name]).map(plainName);
  return shelf.bolts.filter((b) => names.includes(plainName(b.name)) || names.includes(b.id));
}

function setUp(brief: Brief, answer: Answer, shelf: Shelf, rules: KitRules): Setup {
  const { unit } = brief;
  const needs = needsOf(brief, answer, rules);
  const findings: Finding[] = [];
  const cuts = new Map<string, KitCut>();
  const uses: Use[] = [];
  const between = ticksUp(rules.between, unit);
  for (const need of needs) {
    const bolts = boltsFor(need, shelf, rules);
    if (bolts.length === 0)
      findings.push({
        code: "kit-no-bolt",
        severity: "draft",
        place: need.fabricId,
        words: { fabric: need.name },
      });
    for (const bolt of bolts) {
      const usable = widthOf(bolt, need, shelf, unit);
      const cut = need.at(usable);
      if (!cut) {
        findings.push({
          code: "kit-bolt-too-narrow",
          severity: "draft",
          place: bolt.id,
          found: usable,
          unit,
          words: { bolt: bolt.name, fabric: need.name },
        });
        continue;
      }
      cuts.set(`${need.fabricId} ${bolt.id}`, cut);
      uses.push({
        fabricId: need.fabricId,
        boltId: bolt.id,
        each: cut.length + between,
        setup: cut.repeats?.period ?? 0,
      });
    }
  }
  const used = shelf.bolts.filter((b) => uses.some((u) => u.boltId === b.id));
  const problem: KitProblem = {
    fabricIds: needs.map((n) => n.fabricId),
    bolts: used.map((b) => ({
      id: b.id,
      length: ticksDown(typedLength(b.length, shelf, unit), unit),
      loss: ticksUp(rules.straighten, unit),
    })),
    uses,
  };
  const cutOf = (fabricId: string, boltId: string): KitCut | undefined =>
    cuts.get(`${fabricId} ${boltId}`);
  return { rules, needs, bolts: used, problem, cutOf, findings };
}

/** A number without a unit is in the shelf's unit, whatever the design's is. */
export function typedLength(text: string, shelf: Pick<Shelf, "unit">, unit: Brief["unit"]): number {
  const read = parseLength(text, shelf.unit);
  if (!read.ok) return 0;
  const own = read.length.unit;
  return +read.length.value.valueOf() * (own === unit ? 1 : own === "in" ? 25.4 : 1 / 25.4);
}

/** Usable width of a bolt in the design's unit; its fabric's own where the shelf does not say. */
const widthOf = (bolt: Bolt, need: Need, shelf: Shelf, unit: Brief["unit"]): number =>
  bolt.width === undefined ? +need.width : typedLength(bolt.width, shelf, unit);

/** Groups that give fewer than `target`, with the least length that would mend each. */
function limitsOf({ problem }: Setup, most: Most, target: number): Limit[] {
  return most.groups
    .filter((g) => g.kits < target)
    .map((g): Limit => {
      const base = { fabricIds: g.fabricIds, kits: g.kits };
      const only = (p: KitProblem): KitProblem => ({ ...p, fabricIds: g.fabricIds });
      const longer = (boltId: string, by: number): KitProblem =>
        only({
          ...problem,
          bolts: problem.bolts.map((b) => (b.id === boltId ? { ...b, length: b.length + by } : b)),
        });
      const enough = (boltId: string, by: number): boolean =>
        cutsFor(longer(boltId, by), target) !== undefined;
      const options = g.boltIds.flatMap((boltId) => {
        const far = farthest(problem, g.fabricIds, boltId, target);
        if (!enough(boltId, far)) return [];
        let [low, high] = [0, far];
        while (low < high) {
          const middle = Math.floor((low + high) / 2);
          if (enough(boltId, middle)) high = middle;
          else low = middle + 1;
        }
        return [{ boltId, short: high }];
      });
      const [best] = options.sort((a, b) => a.short - b.short);
      return best ? { ...base, ...best } : { ...base, short: 0 };
    })
    .sort((a, b) => a.kits - b.kits);
}

/** A bolt longer by this much gives all the group wants, if it serves all its fabrics. */
const farthest = (
  p: KitProblem,
  fabricIds: readonly string[],
  boltId: string,
  target: number,
): number => {
  const bolt = p.bolts.find((b) => b.id === boltId);
  const uses = p.uses.filter((u) => u.boltId === boltId && fabricIds.includes(u.fabricId));
  return (bolt?.loss ?? 0) + uses.reduce((t, u) => t + u.setup + target * u.each, 0);
};

/** Every change of mind that gives more kits, most kits first. */
function waysOf(
  brief: Brief,
  answer: Answer,
  shelf: Shelf,
  rules: KitRules,
  setup: Setup,
  limits: readonly Limit[],
  now: number,
): Way[] {
  const kitsWith = (changed: Partial<KitRules>): number =>
    mostKits(setUp(brief, answer, shelf, { ...rules, ...changed }).problem).kits;
  const ways: Way[] = [];
  if (rules.basis === "yards") ways.push({ kind: "trimmed", kits: kitsWith({ basis: "trimmed" }) });
  if (rules.wrongStrip)
    ways.push({ kind: "no-wrong-strip", kits: kitsWith({ wrongStrip: false }) });
  const taken = new Set(setup.bolts.map((b) => b.id));
  const free = shelf.bolts.filter((b) => !taken.has(b.id));
  const first = limits[0];
  for (const fabricId of first && first.kits <= now ? first.fabricIds : []) {
    const need = setup.needs.find((n) => n.fabricId === fabricId);
    if (!need) continue;
    const own = boltsFor(need, shelf, rules).map((b) => b.id);
    const cut = need.at(need.width);
    for (const bolt of free) {
      // Another stripe or print has another repeat: its place in the wedge is not known.
      if (cut?.repeats) continue;
      const use = need.at(widthOf(bolt, need, shelf, brief.unit));
      if (!use) continue;
      const from = (ids: readonly string[]) => ({ from: { ...rules.from, [fabricId]: ids } });
      const instead = kitsWith(from([bolt.id]));
      ways.push({ kind: "instead", fabricId, boltId: bolt.id, kits: instead });
      const asWell = own.length > 0 ? kitsWith(from([...own, bolt.id])) : 0;
      if (asWell > instead) ways.push({ kind: "as-well", fabricId, boltId: bolt.id, kits: asWell });
    }
  }
  return ways
    .filter((w) => w.kits > now)
    .sort((a, b) => b.kits - a.kits)
    .slice(0, MOST_WAYS);
}

function findingsOf(most: Most, fabrics: readonly KitFabric[], rules: KitRules): Finding[] {
  const out: Finding[] = [];
  if (rules.wanted !== undefined && most.kits < rules.wanted)
    out.push({
      code: "kits-fewer",
      severity: "draft",
      place: "kits",
      needed: rules.wanted,
      found: most.kits,
      unit: "count",
    });
  if (!most.proven)
    out.push({
      code: "kits-not-proved",
      severity: "advice",
      place: "kits",
      needed: most.atMost,
      found: most.kits,
      unit: "count",
    });
  for (const f of fabrics.filter((x) => x.bolts.length > 1))
    out.push({
      code: "kit-several-bolts",
      severity: "advice",
      place: f.fabricId,
      found: f.bolts.length,
      unit: "count",
      words: { fabric: f.name },
    });
  return out;
}
