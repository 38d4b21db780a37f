import { readStock, type StockList } from "../fabric/index.ts";
import type { Unit } from "../measure/index.ts";
import { csvText } from "../table/index.ts";
import { typedLength } from "./kits.ts";
import { sayMoney } from "./money.ts";
import { lengthOfTicks, ticksDown, ticksText } from "./ticks.ts";
import type { Bolt, KitPlan, Shelf } from "./types.ts";

export const emptyShelf = (unit: Unit): Shelf => ({
  format: "eighthwise-shelf",
  version: 1,
  unit,
  bolts: [],
});

/** Bolts a shelf may hold. */
export const MOST_BOLTS = 2000;

export interface ReadShelf {
  readonly shelf: Shelf;
  readonly list: StockList;
}

/** A list of bolts, typed, pasted or saved as CSV. Several of one kind become bolts of their own. */
export function readShelf(text: string, unit: Unit): ReadShelf {
  const list = readStock(text, unit);
  const bolts = list.pieces
    .flatMap((p) =>
      Array.from(
        { length: p.count },
        (): Omit<Bolt, "id"> => ({
          name: p.fabric,
          ...(p.width !== undefined && { width: withUnit(p.width, unit) }),
          length: withUnit(p.length, unit),
          ...(p.cost !== undefined && { price: sayMoney(Math.round(p.cost * 100)) }),
          ...(p.note !== undefined && { note: p.note }),
        }),
      ),
    )
    .slice(0, MOST_BOLTS)
    .map((b, i): Bolt => ({ id: `b${i + 1}`, ...b }));
  return { shelf: { ...emptyShelf(unit), bolts }, list };
}

/** A shelf says the unit of every length, so that a list of it cannot be misread elsewhere. */
export const withUnit = (text: string, unit: Unit): string =>
  /[a-z"″”]\.?\s*$/i.test(text) ? text.trim() : `${text.trim()} ${unit}`;

/** The shelf as CSV that `readShelf` reads again; cells that a spreadsheet would run are made inert. */
export const shelfCsv = (shelf: Shelf): string =>
  csvText([
    ["fabric", "kind", "width", "length", "cost", "note"],
    ...shelf.bolts.map((b) => [
      b.name,
      "bolt",
      b.width ?? "",
      b.length,
      b.price ?? "",
      b.note ?? "",
    ]),
  ]);

/** The shelf once the run is cut: each bolt shorter by what it gave; a bolt used up is gone. */
export function afterRun(shelf: Shelf, plan: KitPlan): Shelf {
  const bolts = shelf.bolts.map((b): Bolt => {
    const run = plan.runs.find((r) => r.boltId === b.id);
    if (!run) return b;
    const had = ticksDown(typedLength(b.length, shelf, plan.unit), plan.unit);
    const left = had - run.used;
    return { ...b, length: `${ticksText(left, plan.unit)} ${plan.unit}` };
  });
  return { ...shelf, bolts: bolts.filter((b) => lengthLeft(b, shelf) > 0) };
}

const lengthLeft = (b: Bolt, shelf: Shelf): number => typedLength(b.length, shelf, shelf.unit);

/** All that lies on the shelf, in its unit. */
export const lengthOnShelf = (shelf: Shelf): number =>
  shelf.bolts.reduce(
    (t, b) =>
      t +
      lengthOfTicks(ticksDown(typedLength(b.length, shelf, shelf.unit), shelf.unit), shelf.unit),
    0,
  );
