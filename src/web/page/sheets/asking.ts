import { Worked } from "../../worker/index.ts";
import type { services } from "./services.ts";

/** A worker that sets and writes sheets; stopping it ends what it does. */
export const newSetter = (): Worked<typeof services> =>
  new Worked(() => new Worker(new URL("./sheets.worker.ts", import.meta.url), { type: "module" }), {
    limit: 120_000,
  });
