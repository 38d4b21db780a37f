import { turnedLayout } from "../answer/index.ts";
import type { FabricLayout, Yardage } from "../layout/types.ts";
import type { Drawing } from "../picture/index.ts";
import { layoutPicture } from "../picture/index.ts";
import { type Block, Column, paginate, withFeet } from "./column.ts";
import { footWords } from "./foot.ts";
import { MEASURE, STYLES } from "./grid.ts";
import { drawn, fabricLetter, fabricName, type SheetJob, say, smallAt, trueScale } from "./job.ts";
import { boughtWords, whyWords, yardageFor } from "./layout-words.ts";
import type { Sheet } from "./model.ts";
import { fabricsInUse } from "./supplies.ts";
import { setLine } from "./text.ts";

/** Every fabric's cutting layout to scale, with its running totals and its proved bound. */
export function layoutSheet(job: SheetJob): Sheet {
  return {
    title: `${job.brief.title}: cutting layouts`,
    name: "layouts",
    language: "en-US",
    pages: withFeet(
      paginate(layoutBlocks(job), job.paper, 12),
      job.paper,
      footWords(job),
      (i, of) => `Cutting layouts, ${i + 1} of ${of}`,
    ),
  };
}

export function layoutBlocks(job: SheetJob): Block[] {
  const ids = fabricsInUse(job);
  return ids.flatMap((id, i): Block[] => {
    const layout = job.answer.layouts.find((l) => l.fabricId === id);
    return layout ? [fabricBlock(job, layout, i === 0)] : [];
  });
}

function fabricBlock(job: SheetJob, layout: FabricLayout, first: boolean): Block {
  const c = new Column();
  if (first) {
    c.question("Is there enough?", "cutting layouts, each to one scale", "H1");
    c.paragraph(
      "**Key.** Line: cut. Hatched: left over or lost. Heavy line: the proved least. Figures at the right run from the bought end.",
      STYLES.soft,
    );
    c.gap(4);
  } else c.rule();
  const yardage = yardageFor(job, layout);
  const letter = setLine(fabricLetter(job, layout.fabricId), STYLES.letter, 0, c.y + 14);
  const name = setLine(
    `**${fabricName(job, layout.fabricId)}**${`${yardage ? ", " : "; "}${boughtWords(job, layout)}`}`,
    STYLES.text,
    letter.width + 8,
    c.y + 14,
  );
  c.add({ kind: "text", role: "H2", glyphs: [...letter.glyphs, ...name.glyphs] });
  c.gap(18);
  const room = job.paper.bottom - job.paper.top - c.y - 34;
  c.figure(layoutDrawing(job, layout, yardage, room));
  c.gap(3);
  c.paragraph(whyWords(job, layout));
  return c.block();
}

/** As large as the sheet allows; long runs of the same strip are drawn once. */
export function layoutDrawing(
  job: SheetJob,
  layout: FabricLayout,
  yardage: Yardage | undefined,
  room: number,
): Drawing {
  const fabric = job.brief.fabrics.find((f) => f.id === layout.fabricId);
  const make = (scale: number, mostAlike: number): Drawing =>
    drawn(
      job,
      layoutPicture(layout, {
        unit: job.brief.unit,
        demands: job.answer.demands,
        pieces: job.answer.pieces,
        recipes: job.answer.recipes,
        ...(yardage ? { yardage } : {}),
        say: (x) => say(job, x),
        small: smallAt(scale),
        mostAlike,
        ...(job.leftHanded ? turnedLayout(job.answer, layout.fabricId) : {}),
        ...(fabric ? { folds: fabric.folds } : {}),
      }),
      scale,
      "color",
    );
  // The labels beside it take 13 lines of small print.
  const widest = (MEASURE - 13 * 9) / layout.width;
  const least = Math.min(widest, (trueScale(job) * 7) / 72);
  // Half a sheet while an inch keeps 7 points; else a whole one; then long runs are drawn once.
  for (const [mostAlike, high] of [
    [6, room * 0.46],
    [6, room],
    [1, room * 0.46],
    [1, room],
  ] as const) {
    const drawing = make(widest, mostAlike);
    if (drawing.height <= high) return drawing;
    const scale = (widest * high) / drawing.height;
    if (scale >= least) return make(scale * 0.98, mostAlike);
  }
  return make((widest * room * 0.98) / make(widest, 1).height, 1);
}
