import load from "highs";
import program from "highs/runtime?url";
import { answerBrief } from "../../core/answer/index.ts";
import type { Brief } from "../../core/brief/index.ts";
import { type BoltPlanner, type FabricLayout, planKnown } from "../../core/layout/index.ts";
import type { Told } from "./planner.ts";

addEventListener("message", ({ data }: MessageEvent<Brief>) => {
  // A promise that fails in a worker is heard by nobody outside it; a reported error is.
  search(data).catch(reportError);
});

/**
 * Looks for the least fabric for one brief, and tells the whole answer again at every better plan, so
 * that whoever ends this worker keeps the best there was. A worker is used once.
 */
async function search(brief: Brief): Promise<void> {
  const solver = await load({ locateFile: () => program });
  const known: FabricLayout[] = [];
  const bolt = rememberFirst(known);
  const tell = (told: Told): void => postMessage(told);
  const onProgress = (better: FabricLayout): void => {
    known.push(better);
    tell({ answer: answerBrief(brief, { bolt }), last: false });
  };
  tell({ answer: answerBrief(brief, { solver, onProgress }), last: true });
}

/** The best known plan or the first one; nothing is planned twice while nothing is better known. */
function rememberFirst(known: readonly FabricLayout[]): BoltPlanner {
  const made = new Map<string, FabricLayout>();
  return (demands, stock) => {
    const better = known.filter((l) => l.fabricId === stock.fabricId && l.width === stock.width);
    const key = JSON.stringify([better.length, stock, demands]);
    const layout = made.get(key) ?? planKnown(better)(demands, stock);
    made.set(key, layout);
    return layout;
  };
}
