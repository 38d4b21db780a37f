import { useCallback, useEffect, useRef, useState } from "react";
import type { Finding } from "../../../core/findings/index.ts";
import type { Ask, Box, Found, Opened, Reply } from "./messages.ts";

export interface PhotoState {
  /** Share done, 0 to 1, while something is worked on. */
  readonly busy: number | null;
  readonly opened: Opened | null;
  readonly found: Found | null;
  readonly refused: Finding | null;
  readonly failed: string | null;
}

const NOTHING: PhotoState = {
  busy: null,
  opened: null,
  found: null,
  refused: null,
  failed: null,
};

/** One picture at a time, held by a worker of its own; stopping ends that worker. */
export function usePhoto() {
  const [state, setState] = useState<PhotoState>(NOTHING);
  const worker = useRef<Worker | null>(null);
  const drop = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
  }, []);
  useEffect(() => drop, [drop]);

  const ask = useCallback((what: Ask) => {
    setState((s) => ({ ...s, busy: 0, found: null, refused: null, failed: null }));
    worker.current ??= listening(setState);
    worker.current.postMessage(what);
  }, []);

  const open = useCallback(
    (file: Blob, fabric: string) => {
      drop();
      setState(NOTHING);
      ask({ ask: "open", file, fabric });
    },
    [ask, drop],
  );
  const find = useCallback((angle: number, crop: Box) => ask({ ask: "find", angle, crop }), [ask]);
  const stop = useCallback(() => {
    drop();
    setState(NOTHING);
  }, [drop]);
  return { state, open, find, stop };
}

function listening(setState: (change: (s: PhotoState) => PhotoState) => void): Worker {
  const worker = new Worker(new URL("./photo.worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<Reply>) =>
    setState((s) => {
      switch (data.reply) {
        case "progress":
          return { ...s, busy: data.done };
        case "opened":
          return { ...s, busy: null, opened: data.opened };
        case "found":
          return { ...s, busy: null, found: data.found };
        case "refused":
          return { ...NOTHING, refused: data.finding };
        case "failed":
          return { ...s, busy: null, failed: data.message };
      }
    });
  worker.onerror = (e) => setState(() => ({ ...NOTHING, failed: e.message || "it was too much" }));
  return worker;
}
