import type { StockPiece } from "../../core/fabric/index.ts";
import type { FromHere, NamedDesign } from "../../core/turn/fromStock.ts";

export interface FromAsked {
  readonly designs: readonly NamedDesign[];
  readonly stock: readonly StockPiece[];
}

export interface FromTold {
  readonly here: FromHere;
  readonly last: boolean;
}

/** Looks what the fabric makes, in a worker of its own; what is returned ends it. */
export function beginFrom(
  asked: FromAsked,
  told: (t: FromTold) => void,
  failed: (message: string) => void,
): () => void {
  const worker = new Worker(new URL("./from.worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<FromTold>) => {
    if (data.last) worker.terminate();
    told(data);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    worker.terminate();
    failed(event.message || "the search stopped");
  };
  worker.postMessage(asked);
  return () => worker.terminate();
}
