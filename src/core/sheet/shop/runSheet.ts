import { say as sayFinding } from "../../findings/index.ts";
import {
  type BoltRun,
  bagWeight,
  sayBolt,
  sayCut,
  sayLeft,
  sayPlan,
  sayTicks,
  sayWeight,
} from "../../shop/index.ts";
import { type Block, Column } from "../column.ts";
import { STYLES } from "../grid.ts";
import { fabricLetter, fabricName } from "../job.ts";
import type { Sheet } from "../model.ts";
import { type TableColumn, type TableRow, tableBlocks } from "../table.ts";
import type { KitJob } from "./kitJob.ts";
import { headOf, lines, section, sheetOf, withBox } from "./parts.ts";

const CUTS: readonly TableColumn[] = [
  { head: "cut", at: 30, align: "end", style: STYLES.strong },
  { head: "kit", at: 72, align: "end" },
  { head: "fabric", at: 92, width: 150 },
  { head: "length", at: 290, align: "number" },
  { head: "so far", at: 390, align: "number" },
  { head: "left on the bolt", at: 490, align: "number" },
];

/** The run sheet: every cut in order with a box to tick, its running total and what the bolt then holds. */
export function runSheet(kit: KitJob): Sheet {
  const { job, plan } = kit;
  return sheetOf(job, "run-sheet", "run sheet for kits", [
    headOf(job, "How many kits, and in what order?", "run sheet"),
    summary(kit),
    ...plan.runs.flatMap((run) => runBlocks(kit, run)),
    bags(kit),
  ]);
}

function summary({ job, plan }: KitJob): Block {
  const c = new Column();
  lines(c, sayPlan(plan, job.brief));
  for (const f of plan.fabrics) {
    const cut = f.bolts[0]?.cut ?? f.cut;
    if (cut)
      c.paragraph(`**${f.letter} ${f.name}**, ${sayCut(cut, job.brief)} in each kit: ${f.uses}.`);
  }
  c.gap(2);
  for (const f of plan.findings) c.paragraph(sayFinding(f, { step: job.step }), STYLES.soft);
  c.paragraph(
    "Close the cutter after every cut and cut away from yourself; the maker's own instructions come first.",
    STYLES.small,
  );
  return { ...c.block(), before: 6 };
}

function runBlocks({ job }: KitJob, run: BoltRun): Block[] {
  const say = (t: number): string => sayTicks(t, job.brief).replace(/ (in|mm)$/, "");
  const fabrics = [...new Set(run.cuts.map((c) => c.fabricId))];
  const head = section(
    sayBolt(run),
    `bolt of ${sayTicks(run.length, job.brief)} for ${fabrics.map((f) => fabricLetter(job, f)).join(", ")}; ${sayLeft(run.left, job.brief)} left after ${run.cuts.length} cuts`,
    () => {},
  );
  const start: TableRow = {
    cells: [
      "",
      "",
      "straighten the end",
      say(run.straighten),
      say(run.straighten),
      say(run.length - run.straighten),
    ],
  };
  const cuts = run.cuts.flatMap((cut, i): TableRow[] => {
    const lost = cut.loss === 0 ? "" : `, after ${sayTicks(cut.loss, job.brief)} lost`;
    return [
      {
        cells: [
          String(i + 1),
          String(cut.kit),
          `${fabricLetter(job, cut.fabricId)} ${fabricName(job, cut.fabricId)}${lost}`,
          say(cut.length),
          say(cut.soFar),
          say(cut.left),
        ],
      },
    ];
  });
  const [heads, ...rows] = tableBlocks(CUTS, [start, ...cuts]);
  return [head, { ...heads, before: 2 }, ...rows.map((r) => withBox(r))];
}

/** One box for each bag, and what it should weigh. */
function bags({ plan, rules }: KitJob): Block {
  return section("Is every bag whole?", "bagging", (c) => {
    c.paragraph(sayWeight(bagWeight(plan, rules), rules));
    c.gap(6);
    const each = 44;
    const across = Math.floor((c.width + 8) / each);
    for (let i = 0; i < plan.kits; i++) {
      const x = (i % across) * each;
      const y = c.y + Math.floor(i / across) * 18;
      c.add({ kind: "box", x, y, width: 10, height: 10, line: 0.6 });
      const number = String(i + 1);
      const text = new Column(20);
      text.paragraph(number, STYLES.small);
      for (const item of text.block().items)
        if (item.kind === "text")
          c.add({
            ...item,
            glyphs: item.glyphs.map((g) => ({ ...g, x: g.x + x + 14, y: g.y + y })),
          });
    }
    c.y += Math.ceil(plan.kits / across) * 18;
  });
}
