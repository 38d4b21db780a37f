import { type Line, linesOf, type Print } from "./read.ts";
import type { AfterStep, Proof, Reading, Step } from "./reading.ts";
import { joined, near95, orderOf, sectionPrint } from "./sections.ts";

/** Text of equal columns, one after the other, each read downward; a new page begins anew. */
export function columnText(print: readonly Print[], pitch: number): string {
  if (print.length === 0) return "";
  const left = Math.min(...print.map((p) => p.x));
  const words = print.filter((p) => p.size < 12);
  const columns = new Map<number, Print[]>();
  for (const p of words) {
    const k = Math.floor((p.x - left + 1) / pitch);
    columns.set(k, [...(columns.get(k) ?? []), p]);
  }
  return [...columns.entries()]
    .sort((a, b) => a[0] - b[0])
    .map(([, own]) => joined(linesOf(own, 200)))
    .join(" ");
}

/** Pictures with their words in four columns; then, across the sheet, what is cut square. */
export function proofsIn(print: readonly Print[]): Proof[] {
  const plain = print.filter((p) => /^(Squares and rectangles|With more to trim)/.test(p.text));
  const from = Math.min(...plain.map(orderOf), Number.POSITIVE_INFINITY) - 2;
  const text = columnText(
    print.filter((p) => orderOf(p) < from),
    135,
  );
  const at = [...text.matchAll(/\b([A-Z]+\d+) [a-z ]+\./g)];
  const square = joined(
    linesOf(
      print.filter((p) => orderOf(p) >= from),
      200,
    ),
  );
  return [
    ...at.map((m, i) => ({ letter: m[1], text: text.slice(m.index, at[i + 1]?.index) })),
    ...[...square.matchAll(/\b([A-Z]+\d+) [a-z ]+, each ([^;:]*?) (?:in|mm)\b/g)].map((m) => ({
      letter: m[1],
      text: `From a ${m[2]}`,
    })),
  ];
}

/** "lark block, 24 of them"; "left half of lark, 3 of them". */
const KIND = /^(.* block|.*(?:half|quarter) of .*), (\d+) of them/;
const kindIn = (l: Line): string => KIND.exec(l.text)?.[1].replace(/ block$/, "") ?? "";

export function stepsIn(
  body: readonly Print[],
  lines: readonly Line[],
): Pick<Reading, "steps" | "kinds"> {
  const own = sectionPrint(body, lines, "In what order?");
  const ownLines = linesOf(own);
  const kindLines = ownLines.filter((l) => KIND.test(l.text));
  const kinds = kindLines.map((l) => ({
    name: kindIn(l),
    count: Number(KIND.exec(l.text)?.[2]),
  }));
  const marks = own.filter((p) => p.size > 16 && /^\d+$/.test(p.text.trim()));
  marks.sort((a, b) => orderOf(a) - orderOf(b) || a.x - b.x);
  const rows = [...new Set(marks.map((m) => orderOf(m).toFixed(0)))].map(Number);
  const starts = [...rows, ...kindLines.map((l) => orderOf(l) - 10)].sort((a, b) => a - b);
  const steps = marks.map((m): Step => {
    const rowEnd = starts.find((s) => s > orderOf(m) + 3) ?? Number.POSITIVE_INFINITY;
    const right = Math.min(
      ...marks
        .filter((o) => Math.abs(orderOf(o) - orderOf(m)) < 2 && o.x > m.x + 5)
        .map((o) => o.x),
      Number.POSITIVE_INFINITY,
    );
    const cell = own.filter(
      (p) =>
        orderOf(p) > orderOf(m) - 3 && orderOf(p) < rowEnd - 6 && p.x >= m.x - 1 && p.x < right - 1,
    );
    const text = cell.filter((p) => p !== m);
    const name = joined(
      linesOf(
        text.filter((p) => Math.abs(p.y - m.y) < 2),
        200,
      ),
    );
    const words = linesOf(
      text.filter((p) => p.y > m.y + 3 && (near95(p.size) || p.size > 12)),
      200,
    );
    const stopAt = words.findIndex((l) => /Should measure/.test(l.text));
    const kind = [...kindLines].reverse().find((k) => orderOf(k) < orderOf(m));
    return {
      number: Number(m.text),
      name,
      kind: kind ? kindIn(kind) : "",
      words: joined(stopAt < 0 ? words : words.slice(0, stopAt)),
      stop: stopAt < 0 ? "" : joined(words.slice(stopAt)).replace("Should measure", "").trim(),
    };
  });
  return { steps, kinds };
}

export function afterIn(
  body: readonly Print[],
  lines: readonly Line[],
): Pick<Reading, "after" | "map" | "mapWords"> {
  const own = sectionPrint(body, lines, "And then?");
  const map = new Map<string, number>();
  for (const p of own) {
    const t = p.text.trim();
    if (/^([A-Z]|\d)$/.test(t) && Math.abs(p.size - 9.5) > 0.2 && p.size < 12)
      map.set(t, (map.get(t) ?? 0) + 1);
  }
  const words = own.filter((p) => near95(p.size) || p.size > 12);
  const starts = words.filter((p) => /^\d+ [A-Z]/.test(p.text));
  const steps = starts
    .map((s): AfterStep => {
      const below = starts
        .filter((o) => Math.abs(o.x - s.x) < 3 && orderOf(o) > orderOf(s) + 2)
        .map(orderOf);
      const right = starts.filter((o) => o.x > s.x + 10).map((o) => o.x);
      const end = Math.min(...below, orderOf(s) + 600);
      const care = words.find((p) => /Take care/.test(p.text));
      const text = words.filter(
        (p) =>
          orderOf(p) >= orderOf(s) - 1 &&
          orderOf(p) < Math.min(end, care ? orderOf(care) : end) - 1 &&
          p.x >= s.x - 1 &&
          p.x < Math.min(...right, s.x + 400) - 2,
      );
      return { number: Number(s.text.split(" ")[0]), words: joined(linesOf(text, 200)) };
    })
    .sort((a, b) => a.number - b.number);
  const legend = linesOf(own, 200).find((l) => /block is turned|follow the picture/.test(l.text));
  return { after: steps, map, mapWords: legend?.text ?? "" };
}
