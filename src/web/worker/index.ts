import { Worked } from "./rpc.ts";
import type { services } from "./services.ts";

export { type Failure, type Outcome, Worked } from "./rpc.ts";
export type { Weighed } from "./services.ts";

/** The worker that answers the page's questions. Lanes: one for what is, one for what would be. */
export function newAnswerer(): Worked<typeof services> {
  return new Worked(
    () => new Worker(new URL("./answer.worker.ts", import.meta.url), { type: "module" }),
  );
}
