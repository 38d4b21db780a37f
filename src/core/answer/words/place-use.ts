import type { Block, Brief, Fabric, Placement } from "../../brief/index.ts";
import type { Change } from "./word.ts";

/** A role of a block whose fabric shows where it is cut from. */
export interface PlaceUse {
  readonly block: Block;
  readonly index: number;
  /** Role in the block's fabrics: wedge, wedge-odd, kite ... */
  readonly key: string;
  readonly fabric: Fabric;
  readonly placed: Placement;
}

export const NARROWER: Readonly<Record<string, readonly string[]>> = {
  wedge: ["wedge-even", "wedge-odd"],
  background: ["background-left", "background-right"],
};
const BROADER: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(NARROWER).flatMap(([broad, all]) => all.map((n) => [n, broad])),
);

export function placedNow(block: Block, key: string): Placement {
  const names = [key, BROADER[key] ?? "", ...(NARROWER[key] ?? [])];
  const name = names.find((n) => block.place && Object.hasOwn(block.place, n));
  const said: Placement = (name && block.place?.[name]) || { round: "free", way: "up" };
  // A place that is said leaves nothing free.
  return said.at && said.round === "free" ? { ...said, round: "matched" } : said;
}

/** What is said of a role holds for all of it: what was said of a part of it goes. */
export const placing =
  (u: PlaceUse, change: Partial<Placement>): Change =>
  (d) => {
    const block = d.blocks[u.index];
    const kept = Object.entries(block.place ?? {}).filter(
      ([k]) => !(NARROWER[u.key] ?? []).includes(k),
    );
    const { at, ...rest } = { ...u.placed, ...change };
    // What falls free lies at no place.
    const place = at && rest.round !== "free" ? { ...rest, at } : rest;
    block.place = { ...Object.fromEntries(kept), [u.key]: place };
  };

export const idOf = (u: PlaceUse, what: string): string => `place/${u.block.id}/${u.key}/${what}`;
export const pathOf = (u: PlaceUse, what: string): string =>
  `blocks/${u.index}/place/${u.key}/${what}`;

export const nameIn = (b: Brief, u: PlaceUse): string =>
  b.blocks.length > 1 ? `${u.fabric.name} in ${u.block.name ?? u.block.id}` : u.fabric.name;

export const shown = (text: string, b: Brief): string =>
  /[a-z"]$/i.test(text) ? text : `${text} ${b.unit}`;

/** Nothing for a role of a plain fabric, or of none. */
export function placeUseOf(b: Brief, index: number, key: string): PlaceUse | undefined {
  const block = b.blocks[index];
  const fabric = b.fabrics.find((f) => f.id === block.fabric[key]);
  if (!fabric || fabric.kind === "plain") return undefined;
  return { block, index, key, fabric, placed: placedNow(block, key) };
}
