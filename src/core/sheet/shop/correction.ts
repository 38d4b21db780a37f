import { sayLeftThing, sayRipple, type Wrong } from "../../shop/index.ts";
import { type Block, Column, stacked } from "../column.ts";
import { STYLES } from "../grid.ts";
import type { SheetJob } from "../job.ts";
import type { Sheet } from "../model.ts";
import { type TableColumn, tableBlocks } from "../table.ts";
import { sheetOf } from "./parts.ts";

const COLUMNS: readonly TableColumn[] = [
  { head: "where", at: 0, width: 216 },
  { head: "it says", at: 230, width: 140 },
  { head: "read instead", at: 384, width: 144, style: STYLES.strong },
];

/**
 * The slip that goes after what is out and wrong: which printing, where in it, what it says and what
 * to read instead. One slip for each thing, so that they can be cut apart.
 */
export function correctionSheet(job: SheetJob, wrong: readonly Wrong[]): Sheet {
  const head = new Column();
  head.gap(4);
  head.question("What has to be read differently?", `${job.brief.title}: correction`, "H1");
  head.gap(2);
  head.paragraph(sayRipple(wrong), STYLES.soft);
  const slips = wrong.flatMap(({ left, changes }): Block[] => {
    const c = new Column();
    c.question(job.brief.title, `correction of ${job.date}`);
    c.gap(1);
    c.paragraph(`${sayLeftThing(left)}.`, STYLES.name);
    const [heads, ...rows] = tableBlocks(
      COLUMNS,
      changes.map((x) => ({
        cells: [x.where, x.was ?? "nothing", x.is ?? "strike it out"],
      })),
    );
    const [first, ...others] = rows;
    const start = stacked([c.block(), heads, ...(first ? [first] : [])], 2);
    return [{ ...start, before: 22 }, ...others];
  });
  return sheetOf(job, "correction", "correction slip", [head.block(), ...slips]);
}
