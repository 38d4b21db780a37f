import { type Brief, readBrief, readDocument } from "../../core/brief/index.ts";
import { createKeep } from "./store.ts";
import type { KeepOptions, KeepState, KeepStore } from "./types.ts";

/** For tests of the keep: a small design, a keep on a database of its own, and waiting for a state. */
export function trialBrief(title = "Reed runner"): Brief {
  const read = readDocument({
    format: "eighthwise-brief",
    version: 1,
    title,
    unit: "in",
    seam: "1/4",
    step: "1/8",
    ruler: { point: "sharp" },
    fabrics: [
      { kind: "plain", id: "reed", name: "Reed", usable: "40", color: "#8B9A82" },
      { kind: "plain", id: "foam", name: "Foam", usable: "41", color: "#DFE4DB" },
    ],
    blocks: [
      {
        kind: "wedges",
        id: "star",
        strip: "4 1/2",
        setting: "kites",
        fabric: { wedge: "reed", kite: "foam" },
      },
    ],
    quilt: { rows: 3, columns: 5, plan: [["star"]] },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.refusals));
  return read.brief;
}

export const trialReader = { text: readBrief, document: readDocument };

export function trialKeep(database: string, more: Partial<KeepOptions> = {}): KeepStore {
  return createKeep({ reader: trialReader, sample: () => trialBrief(), database, ...more });
}

/** Waits until the state is so. */
export function until(keep: KeepStore, so: (state: KeepState) => boolean): Promise<KeepState> {
  return new Promise((resolve) => {
    const look = (state: KeepState) => {
      if (!so(state)) return;
      stop();
      resolve(state);
    };
    const stop = keep.state.subscribe(look);
    look(keep.state.getState());
  });
}

export const isKept = (s: KeepState): boolean => s.ready && s.kept.kind === "browser";
