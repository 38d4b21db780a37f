import { createContext, useContext } from "react";
import type { KeepStore } from "../keep/index.ts";

export const KeepContext = createContext<KeepStore | null>(null);

/** The kept work; there is always one under the page. */
export function useKeepStore(): KeepStore {
  const keep = useContext(KeepContext);
  if (!keep) throw new Error("the page stands on a keep");
  return keep;
}
