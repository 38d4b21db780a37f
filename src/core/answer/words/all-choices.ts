import { baseClauses, speaking } from "./choices.ts";
import { detailClausesOf } from "./details.ts";
import { oneFabricClauses } from "./one-fabric.ts";

/** The words of every sentence, each fabric's own among them: these are asked for one by one. */
export const allWords = speaking((b) => [
  ...baseClauses(b),
  ...detailClausesOf(b),
  ...oneFabricClauses(b),
]);
