import { type Brief, brief as schema } from "./schema.ts";

/** The smallest complete brief: what a test or a new design starts from. */
export function smallBrief(change: Partial<Record<keyof Brief, unknown>> = {}): Brief {
  return schema.parse({
    format: "eighthwise-brief",
    version: 1,
    title: "Small",
    unit: "in",
    seam: "1/4",
    step: "1/8",
    ruler: { point: "sharp" },
    fabrics: [
      { kind: "plain", id: "red", name: "Red", usable: "40", narrower: "38", color: "#A33B2E" },
      { kind: "plain", id: "sand", name: "Sand", usable: "40", narrower: "38", color: "#DCCFB4" },
    ],
    blocks: [
      {
        kind: "wedges",
        id: "star",
        setting: "kites",
        strip: "4 1/2",
        fabric: { wedge: "red", kite: "sand" },
      },
    ],
    quilt: { rows: 2, columns: 3, plan: [["star"]] },
    ...change,
  });
}
export type { Brief };
