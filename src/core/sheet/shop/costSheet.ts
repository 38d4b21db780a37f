import { costsOf, sayCosts, sayMoney, sayTicks } from "../../shop/index.ts";
import { STYLES } from "../grid.ts";
import { fabricLetter } from "../job.ts";
import type { Sheet } from "../model.ts";
import { type TableColumn, tableBlocks } from "../table.ts";
import type { KitJob } from "./kitJob.ts";
import { headOf, lines, section, sheetOf } from "./parts.ts";

const COLUMNS: readonly TableColumn[] = [
  { head: "", at: 0, width: 20, style: STYLES.strong },
  { head: "in one kit", at: 24, width: 200 },
  { head: "taken from the bolts", at: 380, align: "end" },
  { head: "cost", at: 528, align: "end", style: STYLES.strong },
];

/** What one kit costs, line by line, and what it should be sold for. */
export function costSheet({ job, plan, shelf, rules }: KitJob): Sheet {
  const costs = costsOf(plan, shelf, rules);
  const head = headOf(job, "What does a kit cost?", "costs and price");
  if (!costs)
    return sheetOf(job, "kit-costs", "costs of a kit", [
      head,
      section("No kit can be cut", "", (c) => lines(c, ["So none has a cost yet."])),
    ]);
  const rows = costs.lines.map((l) => ({
    cells: [
      l.fabricId ? fabricLetter(job, l.fabricId) : "",
      l.name,
      l.taken === undefined ? "" : sayTicks(Math.ceil(l.taken / 200) * 200, job.brief),
      sayMoney(l.cents, rules.sign),
    ],
  }));
  return sheetOf(job, "kit-costs", "costs of a kit", [
    head,
    ...tableBlocks(COLUMNS, rows).map((b, i) => (i === 0 ? { ...b, before: 14 } : b)),
    section("And what is it sold for?", "price", (c) => {
      c.paragraph(sayMoney(costs.price, rules.sign), STYLES.size);
      c.gap(2);
      lines(
        c,
        sayCosts(costs, rules, job.brief)
          .slice(costs.lines.length)
          .map((t) => `${t}.`),
      );
      c.paragraph(
        `Every line is rounded up to a cent, for ${plan.kits} kits cut in one run; the minutes are estimates.`,
        STYLES.soft,
      );
    }),
  ]);
}
