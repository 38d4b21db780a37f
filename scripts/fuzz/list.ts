import type { Brief } from "../../src/core/brief/index.ts";
import { lengthProblem } from "../../src/core/brief/index.ts";
import { readStock } from "../../src/core/fabric/index.ts";
import { say } from "../../src/core/findings/index.ts";
import { stepOf } from "../../src/core/measure/index.ts";
import { csvText, readTable } from "../../src/core/table/index.ts";
import type { Broken } from "./laws.ts";
import type { Luck } from "./luck.ts";

const HEADINGS = [
  "fabric",
  "width",
  "length (yd)",
  "how many",
  "kind",
  "cost",
  "note",
  "size",
  "??",
];
const CELLS = [
  ..."Reef|Foam|40|42 1/2|2 1/4 yd|18 x 21|1,5 m|½|0|-3|1e9|999999|x3|12 pcs|bolt|scrap".split("|"),
  ..."=1+1|+49|@SUM(A1)|-2+3|＝1|'=x|1/0|4 1/2 ells|99999999999999999999999".split("|"),
  ...[
    "",
    " ",
    '"',
    '""',
    '"a',
    'b"c',
    "a\nb",
    "\t",
    "\u0000",
    "\u202e",
    "é",
    "😀",
    "x".repeat(400),
  ],
];

/** A list of bolts and scraps as a stranger's program might have saved it, or as noise. */
export function list(luck: Luck): string {
  const separator = luck.pick([",", ";", "\t", "|", " "]);
  const row = (from: readonly string[]): string =>
    luck.some(8, () => luck.pick(from)).join(separator);
  const rows = luck.some(luck.once(20) ? 300 : 12, () => row(CELLS));
  const head = luck.once(2) ? [row(HEADINGS)] : [];
  return [...head, ...rows].join(luck.pick(["\n", "\r\n", "\r", "\n\n"]));
}

const STEP = { in: stepOf("1/8", "in"), mm: stepOf("1", "mm") };

/** What holds for every list: no row is lost, every length can be used, every fault is said. */
export function ofList(text: string, unit: Brief["unit"]): Broken[] {
  const { pieces, findings, leftOut } = readStock(text, unit);
  const rows = readTable(text).rows.length;
  const told = pieces.length + leftOut.length;
  const out: Broken[] = [];
  const no = (law: string, detail: string): void => void out.push({ law, detail });
  if (told !== rows && told !== rows - 1)
    no("every row of a list is read or kept aside", `${told} of ${rows}`);
  for (const p of pieces) {
    for (const length of [p.length, p.width ?? "1"]) {
      const problem = length.length > 40 ? "too long" : lengthProblem(length, unit, false);
      if (problem) no("every length of a list can stand in a brief", problem);
    }
  }
  for (const f of findings)
    if (f.place === "" || /undefined|\[object/.test(say(f, { step: STEP[unit] })))
      no("every finding has its place and its sentence", f.code);
  const cells = readTable(text).rows.flatMap((r) => r.cells);
  for (const cell of cells) {
    const written = csvText([[cell]])
      .trimEnd()
      .replace(/^"/, "");
    if (/^\s*[=+@\-＝＋－＠]/.test(written) && !/^-\d+(\.\d+)?$/.test(written))
      no("no cell that is written is a formula", written.slice(0, 100));
  }
  return out.slice(0, 3);
}
