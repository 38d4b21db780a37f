import { useEffect, useMemo, useState } from "react";
import { seenBrief } from "../../../../core/answer/look/seen.ts";
import type { Brief } from "../../../../core/brief/index.ts";
import type { Sight } from "../../../../core/fabric/index.ts";
import type { SeenAsk, SeenReply } from "./seen.worker.ts";

/** Pictures as other eyes see them, by sight and data address; worked out once. */
const known = new Map<string, Map<string, string>>();

/** The brief as an eye sees it; pictures follow when their colors have been worked out. */
export function useSeen(brief: Brief, sight: Sight): Brief {
  const [, come] = useState(0);
  const photos = useMemo(
    () => brief.fabrics.flatMap((f) => (f.kind === "print" && f.photo ? [f.photo.data] : [])),
    [brief],
  );
  const there = known.get(sight);
  const count = photos.filter((p) => there?.has(p)).length;
  useEffect(() => {
    const wanted = photos.filter((p) => !known.get(sight)?.has(p));
    if (sight === "full" || wanted.length === 0) return;
    const worker = new Worker(new URL("./seen.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<SeenReply>) => {
      const made = known.get(data.sight) ?? new Map<string, string>();
      known.set(data.sight, made.set(data.data, data.seen ?? data.data));
      come((n) => n + 1);
    };
    for (const data of wanted) worker.postMessage({ data, sight } satisfies SeenAsk);
    return () => worker.terminate();
  }, [photos, sight]);
  // A picture that has come makes another brief of it: pictures are drawn anew.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  return useMemo(() => seenBrief(brief, sight, known.get(sight)), [brief, sight, count]);
}
