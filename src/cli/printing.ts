import type { Brief } from "../core/brief/index.ts";
import type { Sheet, SheetOptions } from "../core/sheet/index.ts";
import { lastVersion } from "../core/shop/index.ts";
import { nodeFonts } from "../pdf/fonts.node.ts";
import { writePdf } from "../pdf/index.ts";
import type { Given, OptionWords } from "./command.ts";
import { Ending, EXIT } from "./exit.ts";

/** The options of every command that prints. */
export const PRINTING: Readonly<Record<string, OptionWords>> = {
  paper: {
    type: "string",
    value: "letter|a4",
    help: "letter, or a4 (which metric briefs take unless told)",
  },
  "left-handed": { type: "boolean", help: "cutting and pressing pictures turned over" },
  edition: {
    type: "string",
    value: "TEXT",
    help: "version printed on the sheets (the one that left the design last, or 1, unless told)",
  },
  date: {
    type: "string",
    value: "YYYY-MM-DD",
    help: "date printed on the sheets (today unless told)",
  },
};

export type Printing = SheetOptions & { readonly created: Date };

/** What is said on the command line about the printed sheets. */
export function printingOf(given: Given, command: string, brief: Pick<Brief, "record">): Printing {
  const paper = given.text("paper");
  if (paper !== undefined && paper !== "letter" && paper !== "a4")
    throw new Ending(EXIT.bad, `${command}: --paper is letter or a4, got "${paper}"`);
  const text = given.text("date");
  const created = text === undefined ? new Date() : new Date(`${text}T12:00:00Z`);
  if (Number.isNaN(created.getTime()))
    throw new Ending(EXIT.bad, `${command}: --date is said as 2026-11-25, got "${text}"`);
  const date = created.toLocaleDateString("en-US", {
    day: "numeric",
    month: "long",
    year: "numeric",
    timeZone: "UTC",
  });
  return {
    ...(paper && { paper }),
    leftHanded: given.flag("left-handed"),
    version: given.text("edition") ?? lastVersion(brief),
    date,
    created,
  };
}

export const pdfOf = (sheet: Sheet, { created, version }: Printing): Promise<Uint8Array> =>
  writePdf([sheet], { fonts: nodeFonts(), created, version });
