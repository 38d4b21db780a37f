import { useStore } from "zustand";
import { createShop, type ShopState, type ShopStore } from "../../keep/shop.ts";

let one: ShopStore | undefined;

/** The shop's book of this tab, opened at first need. */
export const shopStore = (): ShopStore => {
  one ??= createShop();
  return one;
};

export function useShop<T>(part: (state: ShopState) => T): T {
  return useStore(shopStore().state, part);
}
