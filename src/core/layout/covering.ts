/**
 * The least cost of covering needs by columns, each taken any (also a broken) number of times, when
 * the columns are too many to list: the revised simplex method, growing by the column that pricing
 * finds (column generation). Rows are few, so the inverse of the basis is kept dense.
 */
export interface CoverColumn<T> {
  readonly cost: number;
  /** What it gives of each need. */
  readonly makes: readonly number[];
  /** The limited supply that one column draws on, if any. */
  readonly draws?: number;
  readonly what?: T;
}

export interface Cover<T> {
  /** No covering costs less, whatever the columns: safe against an early stop and rounding. */
  readonly bound: number;
  /** What one more of each need would cost. */
  readonly prices: readonly number[];
  readonly taken: readonly { readonly column: CoverColumn<T>; readonly times: number }[];
}

export interface Offer<T> {
  readonly column: CoverColumn<T>;
  /** Cost less what the column is worth at these prices: negative when it pays. */
  readonly reduced: number;
  /** The most any column is worth for what it costs. */
  readonly ratio: number;
}

export interface CoverQuestion<T> {
  readonly needs: readonly number[];
  /** Limited supplies: no more columns drawing on each than this. */
  readonly limits?: readonly number[];
  /** A column for each need that gives that need only; the method starts from them. */
  readonly start: readonly CoverColumn<T>[];
  /** Best column at these prices (supply prices are zero or less). Undefined when there is none. */
  readonly price: (prices: readonly number[], supply: readonly number[]) => Offer<T> | undefined;
  readonly rounds?: number;
}

const TINY = 1e-9;
const ROUNDS = 5000;

export function leastCover<T>(question: CoverQuestion<T>): Cover<T> {
  const table = new Table(question);
  const limits = question.limits ?? [];
  let bound = 0;
  let prices: readonly number[] = question.needs.map(() => 0);
  for (let round = 0; round < (question.rounds ?? ROUNDS); round++) {
    const duals = table.prices();
    prices = duals.needs;
    const spare = table.spareColumn(duals);
    if (spare) {
      if (!table.enter(spare)) break;
      continue;
    }
    const offer = question.price(duals.needs, duals.supply);
    // Prices scaled until no column is worth more than it costs bound every covering (Farley 1990).
    const ratio = Math.max(1, offer?.ratio ?? 1);
    bound = Math.max(bound, dot(duals.needs, question.needs) / ratio + dot(duals.supply, limits));
    if (!offer || offer.reduced > -TINY * Math.max(1, offer.column.cost)) break;
    if (!table.enter(offer.column)) break;
  }
  return { bound, prices, taken: table.taken() };
}

interface Duals {
  readonly needs: number[];
  readonly supply: number[];
}

/** The basis, its inverse and what is taken of each of its columns. */
class Table<T> {
  private readonly needs: readonly number[];
  private readonly rows: readonly number[];
  private readonly supplies: number;
  private readonly basis: CoverColumn<T>[];
  private readonly inverse: number[][];
  private readonly amounts: number[];

  constructor({ needs, limits = [], start }: CoverQuestion<T>) {
    this.needs = needs;
    this.rows = needs.flatMap((n, i) => (n > 0 ? [i] : []));
    this.supplies = limits.length;
    const slack = limits.map((_, s): CoverColumn<T> => ({ cost: 0, makes: [], draws: s }));
    this.basis = [...this.rows.map((i) => start[i]), ...slack];
    const diagonal = [...this.rows.map((i) => start[i].makes[i]), ...limits.map(() => 1)];
    this.inverse = diagonal.map((d, r) => diagonal.map((_, c) => (r === c ? 1 / d : 0)));
    this.amounts = [...this.rows.map((i) => needs[i] / start[i].makes[i]), ...limits];
  }

  prices(): Duals {
    const duals: Duals = {
      needs: this.needs.map(() => 0),
      supply: Array.from({ length: this.supplies }, () => 0),
    };
    this.basis.forEach((column, r) => {
      if (column.cost === 0) return;
      this.rows.forEach((i, c) => {
        duals.needs[i] += column.cost * this.inverse[r][c];
      });
      for (let s = 0; s < this.supplies; s++)
        duals.supply[s] += column.cost * this.inverse[r][this.rows.length + s];
    });
    return duals;
  }

  /** Making too much of a need, or leaving a supply, when that pays. */
  spareColumn(duals: Duals): CoverColumn<T> | undefined {
    let worst = -TINY;
    let column: CoverColumn<T> | undefined;
    for (const i of this.rows)
      if (duals.needs[i] < worst) {
        worst = duals.needs[i];
        column = { cost: 0, makes: this.needs.map((_, j) => (j === i ? -1 : 0)) };
      }
    duals.supply.forEach((price, s) => {
      if (-price < worst) {
        worst = -price;
        column = { cost: 0, makes: [], draws: s };
      }
    });
    return column;
  }

  /** Brings a column into the basis; false when nothing can leave it. */
  enter(column: CoverColumn<T>): boolean {
    const entry = [
      ...this.rows.map((i) => column.makes[i] ?? 0),
      ...Array.from({ length: this.supplies }, (_, s) => (column.draws === s ? 1 : 0)),
    ];
    const direction = this.inverse.map((row) => dot(row, entry));
    const leaving = this.leaving(direction);
    if (leaving < 0) return false;
    const step = this.amounts[leaving] / direction[leaving];
    const pivot = this.inverse[leaving].map((x) => x / direction[leaving]);
    this.inverse[leaving] = pivot;
    direction.forEach((d, r) => {
      if (r === leaving || d === 0) return;
      const row = this.inverse[r];
      for (let c = 0; c < row.length; c++) row[c] -= d * pivot[c];
      this.amounts[r] = Math.max(0, this.amounts[r] - d * step);
    });
    this.amounts[leaving] = step;
    this.basis[leaving] = column;
    return true;
  }

  private leaving(direction: readonly number[]): number {
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    direction.forEach((d, r) => {
      if (d <= TINY) return;
      const ratio = this.amounts[r] / d;
      const tie = Math.abs(ratio - least) <= TINY;
      if (leaving < 0 || (tie ? d > direction[leaving] : ratio < least)) {
        least = ratio;
        leaving = r;
      }
    });
    return leaving;
  }

  taken(): Cover<T>["taken"] {
    return this.basis.flatMap((column, r) =>
      column.what !== undefined && this.amounts[r] > TINY
        ? [{ column, times: this.amounts[r] }]
        : [],
    );
  }
}

export const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((t, x, i) => t + x * b[i], 0);
