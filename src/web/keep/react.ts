import { useStore } from "zustand";
import type { KeepState, KeepStore } from "./types.ts";

/** Follows a part of the kept work's state from a component. */
export function useKeep<T>(keep: KeepStore, part: (state: KeepState) => T): T {
  return useStore(keep.state, part);
}
