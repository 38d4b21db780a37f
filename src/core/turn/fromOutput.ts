import { contentHash } from "../brief/index.ts";
import type { StockList } from "../fabric/index.ts";
import { say } from "../findings/index.ts";
import { stepOf, type Unit } from "../measure/index.ts";
import { type CutOfHere, layoutsOfProject } from "./fromLayouts.ts";
import type { FromHere, Taken } from "./fromStock.ts";

/** What the fabric that is here makes, as data for other programs. */
export interface FromOutput {
  readonly format: "eighthwise-from";
  readonly version: 1;
  /** Most fabric used first. */
  readonly projects: readonly {
    readonly name: string;
    readonly briefHash: string;
    /** Of every length of this project. */
    readonly unit: Unit;
    readonly times: number;
    /** Part of all fabric that is here, by area: 0 to 1. */
    readonly uses: number;
    readonly taken: readonly (Taken & { readonly fabric: string })[];
    readonly layouts: readonly CutOfHere[];
  }[];
  readonly notMade: readonly { readonly name: string; readonly short: readonly string[] }[];
  /** Designs looked at, and all there are: fewer when it was stopped. */
  readonly done: number;
  readonly all: number;
  /** Rows of the list that could not be read, as they stood, and what was wrong with which row. */
  readonly leftOut: StockList["leftOut"];
  readonly findings: readonly {
    readonly code: string;
    readonly place: string;
    readonly text: string;
  }[];
}

/** Equal lists and designs give equal data. */
export function fromOutput(here: FromHere, list: StockList, unit: Unit): FromOutput {
  const step = stepOf(unit === "in" ? "1/8" : "1", unit);
  return {
    format: "eighthwise-from",
    version: 1,
    projects: here.projects.map((p) => {
      const { brief, name } = p.design;
      return {
        name,
        briefHash: contentHash(brief),
        unit: brief.unit,
        times: p.times,
        uses: p.uses,
        taken: p.taken.map((t) => ({
          ...t,
          fabric: brief.fabrics.find((f) => f.id === t.fabricId)?.name ?? t.fabricId,
        })),
        layouts: layoutsOfProject(p),
      };
    }),
    notMade: here.notMade.map((n) => ({ name: n.design.name, short: n.short })),
    done: here.done,
    all: here.all,
    leftOut: list.leftOut,
    findings: list.findings.map((f) => ({
      code: f.code,
      place: f.place,
      text: say(f, { step }),
    })),
  };
}
