import { type Turned, type Turning, turnRound } from "../../core/turn/index.ts";
import type { TurnTold } from "./turner.ts";

/** How often the page hears how far a search is, in milliseconds. */
const EVERY = 250;

/** Turns one question round, and tells the best so far whenever it is better, or a while has gone. */
addEventListener("message", ({ data }: MessageEvent<Turning>) => {
  const search = turnRound(data);
  let last = 0;
  let told: Turned["found"] = [];
  for (;;) {
    const { value, done } = search.next();
    const better = value.found.some((f, i) => f !== told[i]) || value.found.length !== told.length;
    const now = performance.now();
    if (done || better || now - last > EVERY) {
      // What has not changed is not sent again.
      const turned = better || done ? value : { ...value, found: null };
      postMessage({ turned, last: done === true } satisfies TurnTold);
      last = now;
      told = value.found;
    }
    if (done) return;
  }
});
