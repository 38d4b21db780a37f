import { useCallback, useEffect, useRef, useState } from "react";
import type { SizeStudy } from "../../../../core/answer/sewing/make-size.ts";
import type { MakeSizeAnswer } from "../../../../core/sewing/makeSize.ts";
import type { SizeReply } from "./size.worker.ts";

export interface StudyState {
  /** Share sewn, 0 to 1, while it runs. */
  readonly busy: number | null;
  readonly result: { readonly study: SizeStudy; readonly answer: MakeSizeAnswer } | null;
  readonly failed: string | null;
}

const NOTHING: StudyState = { busy: null, result: null, failed: null };

/** Sews the study in a worker of its own; a new study, or leaving, ends the one before. */
export function useStudy(study: SizeStudy) {
  const [state, setState] = useState<StudyState>(NOTHING);
  const worker = useRef<Worker | null>(null);
  const end = useCallback((next: Partial<StudyState>) => {
    worker.current?.terminate();
    worker.current = null;
    setState({ ...NOTHING, ...next });
  }, []);
  const begin = useCallback(() => {
    end({ busy: 0 });
    const w = new Worker(new URL("./size.worker.ts", import.meta.url), { type: "module" });
    worker.current = w;
    w.onmessage = ({ data }: MessageEvent<SizeReply>) => {
      if (worker.current !== w) return;
      if (data.reply === "progress") setState({ ...NOTHING, busy: data.done });
      else if (data.reply === "sewn") end({ result: { study, answer: data.answer } });
      else end({ failed: data.message });
    };
    w.onerror = (e) => end({ failed: e.message || "the worker stopped" });
    w.postMessage(study);
  }, [study, end]);
  useEffect(() => {
    begin();
    return () => worker.current?.terminate();
  }, [begin]);
  return { state, begin, stop: () => end({}) };
}
