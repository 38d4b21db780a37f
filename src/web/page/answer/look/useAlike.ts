import { useCallback, useEffect, useRef, useState } from "react";
import type { AlikeOctagon } from "../../../../core/fabric/index.ts";
import type { AlikeAsk, AlikeReply } from "./alike.worker.ts";

export interface AlikeState {
  /** Share done, 0 to 1, while the print is searched. */
  readonly busy: number | null;
  readonly octagons: readonly AlikeOctagon[] | null;
  readonly failed: string | null;
}

const NOTHING: AlikeState = { busy: null, octagons: null, failed: null };

/** Searches a print in a worker of its own; stopping ends that worker. */
export function useAlike() {
  const [state, setState] = useState<AlikeState>(NOTHING);
  const worker = useRef<Worker | null>(null);
  const stop = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
    setState(NOTHING);
  }, []);
  useEffect(() => () => worker.current?.terminate(), []);
  const search = useCallback((ask: AlikeAsk) => {
    worker.current?.terminate();
    const w = new Worker(new URL("./alike.worker.ts", import.meta.url), { type: "module" });
    worker.current = w;
    setState({ ...NOTHING, busy: 0 });
    const end = (s: Partial<AlikeState>): void => {
      w.terminate();
      if (worker.current === w) setState({ ...NOTHING, ...s });
    };
    w.onmessage = ({ data }: MessageEvent<AlikeReply>) => {
      if (data.reply === "progress") setState({ ...NOTHING, busy: data.done });
      else if (data.reply === "found") end({ octagons: data.octagons });
      else end({ failed: data.message });
    };
    w.onerror = (e) => end({ failed: e.message || "it was too much" });
    w.postMessage(ask);
  }, []);
  return { state, search, stop };
}
