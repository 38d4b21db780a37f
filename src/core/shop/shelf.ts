import { readStock, type StockList } from "../fabric/index.ts";
import type { Unit } from "../measure/index.ts";
import { ceilDiv, readMoney, sayMoney } from "../measure/money.ts";
import { csvText } from "../table/index.ts";
import type { Bolt, Shelf } from "./types.ts";

/**
 * The shelf typed in another unit from now on. Every length says its unit and stays as it is typed;
 * prices were for one yard or one meter and become those of the other, to the next cent up.
 */
export function shelfIn(shelf: Shelf, unit: Unit): Shelf {
  if (shelf.unit === unit) return shelf;
  const price = (text: string): string => {
    const cents = readMoney(text);
    if (cents === undefined) return text;
    return sayMoney(unit === "mm" ? ceilDiv(cents * 10_000, 9144) : ceilDiv(cents * 9144, 10_000));
  };
  const bolts = shelf.bolts.map((b) => ({
    ...b,
    ...(b.price !== undefined && { price: price(b.price) }),
  }));
  return { ...shelf, unit, bolts };
}

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
          ...(p.cost !== undefined && { price: sayMoney(p.cost) }),
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
