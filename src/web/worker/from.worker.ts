import { fromStock } from "../../core/turn/fromStock.ts";
import type { FromAsked, FromTold } from "./fromer.ts";

/** What the fabric that is here makes, told after each design. */
addEventListener("message", ({ data }: MessageEvent<FromAsked>) => {
  const search = fromStock(data.designs, data.stock);
  for (;;) {
    const { value, done } = search.next();
    postMessage({ here: value, last: done === true } satisfies FromTold);
    if (done) return;
  }
});
