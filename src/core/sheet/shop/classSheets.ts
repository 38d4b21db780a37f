import {
  type ClassPlan,
  STOP_AT_HOME,
  type StudentPlan,
  sayMinutes,
  saySeam,
  sayTime,
} from "../../shop/index.ts";
import { type Block, Column, stacked } from "../column.ts";
import { STYLES } from "../grid.ts";
import { type SheetJob, sayUnit } from "../job.ts";
import type { Sheet } from "../model.ts";
import { type TableColumn, tableBlocks } from "../table.ts";
import { headOf, lines, section, sheetOf, withBox } from "./parts.ts";

const INDENT = 18;
const LISTED: readonly TableColumn[] = [
  { head: "", at: INDENT, width: 16, style: STYLES.strong },
  { head: "fabric", at: INDENT + 20, width: 150 },
  { head: "bring", at: 240, align: "number" },
  { head: "for", at: 320, width: 208 },
];
const CUT: readonly TableColumn[] = [
  { head: "", at: INDENT, width: 16, style: STYLES.strong },
  { head: "fabric", at: INDENT + 20, width: 150 },
  { head: "cut across the fabric", at: 210, width: 318 },
];

const before = (blocks: readonly Block[], gap: number): Block[] =>
  blocks.map((b, i) => (i === 0 ? { ...b, before: gap } : b));
const ticked = ([head, ...rows]: readonly Block[]): Block[] => [
  head,
  ...rows.map((r) => withBox(r)),
];

/** What one student brings and cuts at home: her own numbers, and where to stop. */
export function studentSheet(job: SheetJob, s: StudentPlan): Sheet {
  const who = s.name === "everyone" ? "for everyone" : `for ${s.name}`;
  const own = s.own.length > 0 ? `Worked out for ${s.own.join(", ")}.` : "";
  return sheetOf(job, `class-${slugOf(s.name)}`, `class list ${who}`, [
    headOf({ ...job, brief: s.brief, answer: s.answer }, "What do I bring?", `supply list ${who}`),
    section(s.size, "finished", (c) => {
      if (own) c.paragraph(own);
      if (s.findings.length > 0)
        c.paragraph(
          "Some numbers of this version are not proved: ask before you cut.",
          STYLES.strong,
        );
    }),
    ...before(
      ticked(
        tableBlocks(
          LISTED,
          s.supplies.map((x) => ({ cells: [x.letter, x.name, x.buy, x.uses] })),
        ),
      ),
      4,
    ),
    ...toolBlocks(s),
    section("Is my ruler the ruler?", "measure before cutting", (c) =>
      lines(c, s.rulerCheck.length > 0 ? s.rulerCheck : ["Any straight ruler will do."]),
    ),
    section("What do I cut at home?", "homework, and where to stop", () => {}),
    ...ticked(
      tableBlocks(
        CUT,
        s.homework.map((h) => ({ cells: [h.letter, h.name, h.cuts.join("; ")] })),
      ),
    ),
    stopBlock(),
  ]);
}

/** Tools as a list to tick. */
function toolBlocks(s: StudentPlan): Block[] {
  const head = section("And what to work with?", "tools", () => {});
  const items = s.tools.map((text): Block => {
    const c = new Column();
    c.paragraph(text, STYLES.text, { x: INDENT });
    c.gap(4);
    return { ...withBox(c.block()), before: 0 };
  });
  return [head, ...items];
}

function stopBlock(): Block {
  const c = new Column();
  c.gap(4);
  c.paragraph(STOP_AT_HOME, STYLES.strong);
  c.gap(3);
  c.paragraph(
    "Close the cutter after every cut, cut away from yourself, keep fingers off the ruler's edge; the makers' own instructions come first.",
    STYLES.small,
  );
  return { ...c.block(), before: 2 };
}

const slugOf = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40) || "student";

const MINUTES: readonly TableColumn[] = [
  { head: "stage", at: 0, width: 230 },
  { head: "seams", at: 280, align: "end" },
  { head: "sewing", at: 336, align: "end" },
  { head: "pressing", at: 396, align: "end" },
  { head: "one student", at: 462, align: "end", style: STYLES.strong },
  { head: "in class", at: 528, align: "end", style: STYLES.strong },
];
const SAMPLES: readonly TableColumn[] = [
  { head: "stopped at", at: INDENT, width: 170 },
  { head: "pieces", at: 200, width: 150 },
  { head: "measures", at: 360, width: 168 },
];

/** The teacher's own sheet: samples to prepare, minutes by stage, the whole table of seam tests. */
export function teacherSheet(job: SheetJob, plan: ClassPlan): Sheet {
  const minutes = (m: number): string => (m === 0 ? "" : m < 0.5 ? "under 1 min" : sayMinutes(m));
  return sheetOf(job, "class-teacher", "class plan for the teacher", [
    headOf(job, "How long will it take?", "class plan"),
    section(sayMinutes(plan.minutes), "estimated", (c) => lines(c, sayTime(plan))),
    ...before(
      tableBlocks(
        MINUTES,
        plan.stages.map((s) => ({
          cells: [
            s.queue ? `${s.name}, **the iron is waited for**` : s.name,
            s.seams === 0 ? "" : String(s.seams),
            minutes(s.sewing),
            minutes(s.pressing),
            minutes(s.own),
            minutes(s.inClass),
          ],
        })),
      ),
      4,
    ),
    section("Which samples do I sew?", "step-outs, each stopped at one stage", () => {}),
    ...ticked(
      tableBlocks(
        SAMPLES,
        plan.stepOuts.samples.map((s) => ({
          cells: [
            `${s.block}: ${s.name}`,
            s.pieces.map((p) => `${p.count} ${p.letter}`).join(", "),
            s.measure,
          ],
        })),
      ),
    ),
    section(
      "And from how much fabric?",
      "all samples together, each end straightened before",
      (c) =>
        lines(
          c,
          plan.stepOuts.fabric.map((f) => `**${f.letter} ${f.name}**, ${sayUnit(job, f.length)}`),
        ),
    ),
    ...seamBlocks(job, plan),
  ]);
}

/** Every student's seam test: what was found, or a line to write it on. */
function seamBlocks(job: SheetJob, plan: ClassPlan): Block[] {
  const head = section("Is every seam right?", "seam test first", (c) =>
    c.paragraph(
      "Three strips of one width, sewn side by side, pressed, measured across all three.",
      STYLES.soft,
    ),
  );
  const names =
    plan.students.length > 0 ? plan.students : Array.from({ length: 8 }, () => undefined);
  const rows = names.map((s): Block => {
    const c = new Column();
    c.rule();
    c.gap(3);
    c.paragraph(s?.name ?? " ", STYLES.strong, { width: 120 });
    if (s?.seam) {
      c.y -= STYLES.strong.lead;
      for (const text of saySeam(s.seam, s.brief)) c.paragraph(text, STYLES.text, { x: 130 });
    } else {
      c.y -= STYLES.strong.lead;
      const y = c.y;
      for (const [i, text] of ["measures", "needle moved", "tested again"].entries()) {
        c.y = y;
        c.paragraph(text, STYLES.soft, { x: 130 + i * 134 });
      }
      c.gap(6);
    }
    c.gap(4);
    return { ...c.block(), before: 0 };
  });
  // The question never stands at the foot of a page without its first answer.
  const [first, ...others] = rows;
  const start = first ? { ...stacked([head, first], 2), before: 16 } : head;
  return job.answer.blocks.length === 0 ? [] : [start, ...others];
}
