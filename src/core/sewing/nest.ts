/**
 * Two-sided choices with wishes about pairs of them: the heart of pressing. Each variable is a seam
 * (false: toward its first part, true: toward its second); a wish says that two of them should
 * differ, or agree, and what that is worth. See docs/geometry/pressing.md.
 */
export interface Wish {
  readonly u: number;
  readonly v: number;
  readonly differ: boolean;
  readonly weight: number;
}

export interface Leaning {
  readonly u: number;
  readonly to: boolean;
  readonly weight: number;
}

/** A table over some variables: entry b holds the worth when bit i of b is the value of vars[i]. */
interface Table {
  readonly vars: readonly number[];
  readonly worth: Float64Array;
}

const WIDEST = 20;

/**
 * The assignment of greatest total worth, exactly, by eliminating one variable after another (each
 * time the one that touches fewest others). Seams meet in few places, so the tables stay small.
 * Throws RangeError when a table would need more than 2^20 entries.
 */
export function bestSides(
  count: number,
  wishes: readonly Wish[],
  leanings: readonly Leaning[],
): { sides: boolean[]; worth: number } {
  let tables: Table[] = [
    ...wishes.filter((w) => w.u !== w.v).map(tableOf),
    ...leanings.map(
      ({ u, to, weight }): Table => ({
        vars: [u],
        worth: Float64Array.of(to ? 0 : weight, to ? weight : 0),
      }),
    ),
  ];
  const fixed = wishes.filter((w) => w.u === w.v && !w.differ);
  let worth = fixed.reduce((sum, w) => sum + w.weight, 0);
  const left = new Set(Array.from({ length: count }, (_, i) => i));
  const eliminated: { variable: number; over: readonly number[]; best: Uint8Array }[] = [];
  while (left.size > 0) {
    const variable = leastTouching(left, tables);
    const mine = tables.filter((t) => t.vars.includes(variable));
    tables = tables.filter((t) => !t.vars.includes(variable));
    const over = [...new Set(mine.flatMap((t) => t.vars))].filter((v) => v !== variable);
    if (over.length > WIDEST)
      throw new RangeError(
        `bestSides: expected at most ${WIDEST} seams at once, got ${over.length}`,
      );
    const made = eliminate(variable, over, mine);
    eliminated.push({ variable, over, best: made.best });
    if (over.length === 0) worth += made.table.worth[0];
    else tables.push(made.table);
    left.delete(variable);
  }
  const sides: boolean[] = new Array(count).fill(false);
  for (const { variable, over, best } of eliminated.reverse())
    sides[variable] = best[over.reduce((bits, v, i) => bits | (sides[v] ? 1 << i : 0), 0)] === 1;
  return { sides, worth };
}

function tableOf(w: Wish): Table {
  const agree = w.differ ? 0 : w.weight;
  const differ = w.differ ? w.weight : 0;
  return { vars: [w.u, w.v], worth: Float64Array.of(agree, differ, differ, agree) };
}

function leastTouching(left: ReadonlySet<number>, tables: readonly Table[]): number {
  const touching = new Map<number, Set<number>>();
  for (const t of tables)
    for (const v of t.vars) {
      const seen = touching.get(v) ?? new Set();
      for (const o of t.vars) seen.add(o);
      touching.set(v, seen);
    }
  let best = -1;
  let fewest = Number.POSITIVE_INFINITY;
  for (const v of left) {
    const many = touching.get(v)?.size ?? 0;
    if (many < fewest) [best, fewest] = [v, many];
  }
  return best;
}

function eliminate(variable: number, over: readonly number[], mine: readonly Table[]) {
  const all = [...over, variable];
  const places = mine.map((t) => t.vars.map((v) => all.indexOf(v)));
  const worthOf = (bits: number): number =>
    mine.reduce((sum, t, k) => {
      const at = places[k].reduce((b, place, i) => b | (((bits >> place) & 1) << i), 0);
      return sum + t.worth[at];
    }, 0);
  const worth = new Float64Array(1 << over.length);
  const best = new Uint8Array(1 << over.length);
  for (let bits = 0; bits < worth.length; bits++) {
    const first = worthOf(bits);
    const second = worthOf(bits | (1 << over.length));
    best[bits] = second > first ? 1 : 0;
    worth[bits] = Math.max(first, second);
  }
  return { table: { vars: over, worth } satisfies Table, best };
}
