import type { Ticks } from "./ticks.ts";

/** A bolt: its length, and what is lost once when anything is cut from it (its end straightened). */
export interface Room {
  readonly id: string;
  readonly length: Ticks;
  readonly loss: Ticks;
}

/** A fabric of the kit may be cut from a bolt: so much each, and once so much before the first. */
export interface Use {
  readonly fabricId: string;
  readonly boltId: string;
  readonly each: Ticks;
  readonly setup: Ticks;
}

/** Whole numbers throughout. Each kit takes one cut of every fabric, whole from one bolt. */
export interface KitProblem {
  readonly fabricIds: readonly string[];
  readonly bolts: readonly Room[];
  readonly uses: readonly Use[];
}

/** So many cuts of a fabric from a bolt. */
export interface Taken {
  readonly boltId: string;
  readonly fabricId: string;
  readonly cuts: number;
}

/** Fabrics that share bolts, directly or through others: they are counted together. */
export interface Group {
  readonly fabricIds: readonly string[];
  readonly boltIds: readonly string[];
  readonly kits: number;
  /** False when the search was cut short: `kits` can be cut, `atMost` cannot be exceeded. */
  readonly proven: boolean;
  readonly atMost: number;
}

export interface Most {
  readonly kits: number;
  readonly proven: boolean;
  readonly atMost: number;
  readonly groups: readonly Group[];
}

/** Nobody cuts more kits in one run. */
export const MOST_KITS = 999;
/** States looked at for one group and one number of kits. */
const BUDGET = 100_000;

/** The largest number of kits, up to `cap`, and how many each group of fabrics would give alone. */
export function mostKits(problem: KitProblem, cap = MOST_KITS): Most {
  const groups = groupsOf(problem).map((g) => mostOf(problem, g, cap));
  const kits = Math.min(cap, ...groups.map((g) => g.kits));
  const atMost = Math.min(cap, ...groups.map((g) => g.atMost));
  return { kits, atMost, proven: kits === atMost, groups };
}

/** Which cuts come from which bolt for so many kits; undefined when they cannot be cut. */
export function cutsFor(problem: KitProblem, kits: number): Taken[] | undefined {
  const all: Taken[] = [];
  for (const g of groupsOf(problem)) {
    const found = share(problem, g, kits);
    if (!found.taken) return undefined;
    all.push(...found.taken);
  }
  return all;
}

type Members = Pick<Group, "fabricIds" | "boltIds">;

/** Fabrics and bolts that hang together. A fabric without a bolt is a group of its own. */
export function groupsOf(problem: KitProblem): Members[] {
  const left = new Set(problem.fabricIds);
  const out: Members[] = [];
  for (const first of problem.fabricIds) {
    if (!left.delete(first)) continue;
    const fabricIds = [first];
    const boltIds: string[] = [];
    for (const fabric of fabricIds)
      for (const use of problem.uses.filter((u) => u.fabricId === fabric)) {
        if (boltIds.includes(use.boltId)) continue;
        boltIds.push(use.boltId);
        for (const other of problem.uses)
          if (other.boltId === use.boltId && left.delete(other.fabricId))
            fabricIds.push(other.fabricId);
      }
    out.push({ fabricIds, boltIds });
  }
  return out;
}

/** Cuts of one use that a bolt gives when nothing else is cut from it. */
export function alone(room: Room, use: Use): number {
  return Math.max(0, Math.floor((room.length - room.loss - use.setup) / use.each));
}

function mostOf(problem: KitProblem, g: Members, cap: number): Group {
  const bound = Math.min(
    cap,
    ...g.fabricIds.map((fabricId) =>
      problem.uses
        .filter((u) => u.fabricId === fabricId)
        .reduce((n, u) => n + alone(roomOf(problem, u.boltId), u), 0),
    ),
  );
  let [low, high, atMost] = [0, bound, bound];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    const { taken, whole } = share(problem, g, middle);
    if (taken) low = middle;
    else {
      high = middle - 1;
      if (whole) atMost = Math.min(atMost, high);
    }
  }
  return { ...g, kits: low, atMost, proven: low === atMost };
}

const roomOf = (problem: KitProblem, id: string): Room => {
  const room = problem.bolts.find((b) => b.id === id);
  if (!room) throw new RangeError(`a bolt of the shelf expected, got "${id}"`);
  return room;
};

interface Shared {
  readonly taken?: Taken[];
  /** Every way was looked at. */
  readonly whole: boolean;
}

/** Cuts for `kits` kits of one group. */
function share(problem: KitProblem, g: Members, kits: number): Shared {
  if (kits === 0) return { taken: [], whole: true };
  const [only, ...others] = g.fabricIds;
  if (others.length === 0) return { taken: fromFewest(problem, only, kits), whole: true };
  return together(problem, g, kits);
}

/** One fabric: from the one bolt that fits closest, else from the largest first. */
function fromFewest(problem: KitProblem, fabricId: string, kits: number): Taken[] | undefined {
  const uses = problem.uses
    .filter((u) => u.fabricId === fabricId)
    .map((u) => ({ u, most: alone(roomOf(problem, u.boltId), u) }))
    .sort((a, b) => a.most - b.most || (a.u.boltId < b.u.boltId ? -1 : 1));
  const taken: Taken[] = [];
  let left = kits;
  while (left > 0 && uses.length > 0) {
    const fits = uses.findIndex(({ most }) => most >= left);
    const [{ u, most }] = uses.splice(fits >= 0 ? fits : uses.length - 1, 1);
    const cuts = Math.min(left, most);
    if (cuts > 0) taken.push({ boltId: u.boltId, fabricId, cuts });
    left -= cuts;
  }
  return left === 0 ? taken : undefined;
}

interface State {
  /** Cuts so far, in the order of the group's fabrics; never more than wanted. */
  readonly got: readonly number[];
  readonly from?: {
    readonly state: State;
    readonly boltId: string;
    readonly cuts: readonly number[];
  };
}

/**
 * Fabrics that share bolts: bolt by bolt, all counts that can be reached, that are not beaten by
 * another in every fabric, and from which the bolts still to come could give enough. Exact while the
 * states stay within BUDGET; beyond that the evenest are kept, and what is found can still be cut.
 */
function together(problem: KitProblem, g: Members, kits: number): Shared {
  let states: State[] = [{ got: g.fabricIds.map(() => 0) }];
  let whole = true;
  for (const [k, boltId] of g.boltIds.entries()) {
    const ways = waysOf(problem, g, boltId, kits);
    const rest = toCome(problem, g, g.boltIds.slice(k + 1));
    if (states.length * ways.length > BUDGET) {
      states = evenest(states, Math.max(1, Math.floor(BUDGET / ways.length)));
      whole = false;
    }
    const next = states.flatMap((state) =>
      ways.flatMap((cuts): State[] => {
        const got = state.got.map((n, i) => Math.min(kits, n + cuts[i]));
        const hopeless = got.some((n, i) => n + rest[i] < kits);
        return hopeless ? [] : [{ got, from: { state, boltId, cuts } }];
      }),
    );
    states = unbeaten(next);
    const done = states.find((s) => s.got.every((n) => n >= kits));
    if (done) return { taken: takenIn(done, g, kits), whole };
  }
  return { whole };
}

/** The most each fabric could still have from these bolts, if each were its alone. */
const toCome = (problem: KitProblem, g: Members, boltIds: readonly string[]): number[] =>
  g.fabricIds.map((fabricId) =>
    problem.uses
      .filter((u) => u.fabricId === fabricId && boltIds.includes(u.boltId))
      .reduce((n, u) => n + alone(roomOf(problem, u.boltId), u), 0),
  );

/** Counts of cuts a bolt can give that cannot be raised in any fabric. */
function waysOf(problem: KitProblem, g: Members, boltId: string, kits: number): number[][] {
  const room = roomOf(problem, boltId);
  const uses = g.fabricIds.map((id) =>
    problem.uses.find((u) => u.fabricId === id && u.boltId === boltId),
  );
  const last = uses.findLastIndex((u) => u !== undefined);
  const out: number[][] = [];
  const fill = (i: number, cuts: readonly number[], left: Ticks): void => {
    if (i === uses.length) {
      out.push([...cuts]);
      return;
    }
    const use = uses[i];
    const most = use ? Math.min(kits, Math.floor((left - use.setup) / use.each)) : 0;
    if (!use || most <= 0) {
      fill(i + 1, [...cuts, 0], left);
      return;
    }
    for (let n = i === last ? most : 0; n <= most; n++)
      fill(i + 1, [...cuts, n], n === 0 ? left : left - use.setup - n * use.each);
  };
  fill(0, [], room.length - room.loss);
  return out;
}

const beats = (a: State, b: State): boolean => a.got.every((n, i) => n >= b.got[i]);
/** Comparing each with each is worth it up to so many. */
const COMPARED = 400;

/** Of states alike in all fabrics but the last, the one with most of that; of few, the unbeaten ones. */
function unbeaten(states: readonly State[]): State[] {
  const best = new Map<string, State>();
  for (const s of states) {
    const key = s.got.slice(0, -1).join();
    const had = best.get(key);
    if (!had || s.got[s.got.length - 1] > had.got[had.got.length - 1]) best.set(key, s);
  }
  const left = [...best.values()];
  if (left.length > COMPARED) return left;
  const sum = (s: State): number => s.got.reduce((x, y) => x + y, 0);
  const kept: State[] = [];
  for (const s of left.sort((a, b) => sum(b) - sum(a)))
    if (!kept.some((k) => beats(k, s))) kept.push(s);
  return kept;
}

const evenest = (states: readonly State[], most: number): State[] =>
  [...states].sort((a, b) => Math.min(...b.got) - Math.min(...a.got)).slice(0, most);

/** The way to a state, without the cuts beyond what is wanted. */
function takenIn(state: State, g: Members, kits: number): Taken[] {
  const left = g.fabricIds.map(() => kits);
  const out: Taken[] = [];
  for (let s: State | undefined = state; s?.from; s = s.from.state) {
    const { boltId, cuts } = s.from;
    g.fabricIds.forEach((fabricId, i) => {
      const n = Math.min(cuts[i], left[i]);
      left[i] -= n;
      if (n > 0) out.push({ boltId, fabricId, cuts: n });
    });
  }
  return out.reverse();
}
