import { LABEL_SHEETS, type Label, type LabelSheet, labelsOf } from "../../shop/index.ts";
import { Column, moved } from "../column.ts";
import { paper, STYLES } from "../grid.ts";
import type { Item, Page, Sheet } from "../model.ts";
import type { Style } from "../text.ts";
import type { KitJob } from "./kitJob.ts";

/** Room between the edge of a label and its words, in points. */
const INSET = 8;

export interface LabelOptions {
  readonly sheet?: LabelSheet;
  /** The first label of the first sheet that is still there, from 1. */
  readonly first?: number;
}

/** A label for every piece of every kit and for every bag, on sheets of labels. */
export function kitLabels(
  kit: KitJob,
  { sheet = LABEL_SHEETS[0], first = 1 }: LabelOptions = {},
): Sheet {
  const labels = labelsOf(kit.plan, kit.job.brief);
  const per = sheet.rows * sheet.columns;
  const size = paper(sheet.paper);
  const pages: Item[][] = [];
  labels.forEach((label, i) => {
    const at = i + Math.min(per, Math.max(1, first)) - 1;
    const page = Math.floor(at / per);
    pages[page] ??= [];
    const place = at % per;
    const x = sheet.left + (place % sheet.columns) * sheet.across;
    const y = sheet.top + Math.floor(place / sheet.columns) * sheet.down;
    pages[page].push(...moved(labelBlock(kit, label, sheet), x + INSET, y + INSET * 0.8));
  });
  return {
    title: `${kit.job.brief.title}: labels, ${sheet.name}`,
    name: "kit-labels",
    language: "en-US",
    pages: pages.map((items): Page => ({ width: size.width, height: size.height, items })),
  };
}

/** Words of one label; what does not fit its height is left off from the end, sizes first kept. */
function labelBlock(kit: KitJob, label: Label, sheet: LabelSheet) {
  const c = new Column(sheet.width - 2 * INSET);
  const room = sheet.height - 1.6 * INSET;
  const wide = sheet.height > 90;
  const put = (text: string, style: Style): void => {
    const before = c.y;
    const trial = new Column(c.width);
    trial.paragraph(text, style);
    if (before + trial.y > room + 0.5) return;
    c.paragraph(text, style);
  };
  const kitWords = `Kit ${label.kit} of ${label.of}`;
  put(label.fabric ?? kitWords, wide ? STYLES.size : STYLES.name);
  put(label.what, wide ? STYLES.total : STYLES.strong);
  put(label.fabric ? `${kitWords}, ${label.title}` : label.title, STYLES.text);
  put(label.uses, STYLES.small);
  put(`version ${kit.job.version}, ${kit.job.date}`, STYLES.small);
  return c.block();
}
