import { Worked } from "./rpc.ts";
import type { services } from "./services.ts";

export { type Failure, type Outcome, Worked } from "./rpc.ts";

/** The worker that answers the page's questions. What the page shows goes before what it might. */
export function newAnswerer(): Worked<typeof services> {
  return new Worked(
    () => new Worker(new URL("./answer.worker.ts", import.meta.url), { type: "module" }),
    { first: "page" },
  );
}
