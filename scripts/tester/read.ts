import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/**
 * A stretch of print as a reader sees it: where it stands (points, from the upper left corner) and
 * how tall its letters are. Nothing here knows how the page was made.
 */
export interface Print {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
  readonly text: string;
}

/** All print of a PDF file, in the order of the file. */
export async function printOf(pdf: Uint8Array): Promise<Print[]> {
  const document = await getDocument({
    data: new Uint8Array(pdf),
    useSystemFonts: false,
    verbosity: 0,
    isEvalSupported: false,
  }).promise;
  const out: Print[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [, , , height] = page.view;
    const content = await page.getTextContent();
    for (const item of content.items) {
      if (!("str" in item) || item.str.trim() === "") continue;
      const [, b, , d, x, y] = item.transform as number[];
      // Words along an edge stand in drawings and say nothing a stranger must count.
      if (Math.abs(b) > 0.01 * Math.abs(d || 1)) continue;
      out.push({
        page: number,
        x,
        y: height - y,
        width: item.width,
        size: Math.abs(d),
        text: item.str,
      });
    }
  }
  await document.destroy();
  return out;
}

/** A line of print: its pieces joined by the spaces that are seen between them. */
export interface Line {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly text: string;
  readonly parts: readonly Print[];
}

/** Print on one base line, from left to right; a gap wider than `gap` parts two lines. */
export function linesOf(print: readonly Print[], gap = 14): Line[] {
  const sorted = [...print].sort((a, b) => a.page - b.page || a.y - b.y || a.x - b.x);
  const rows: Print[][] = [];
  for (const p of sorted) {
    const row = rows.find((r) => r[0].page === p.page && Math.abs(r[0].y - p.y) < 1.2);
    if (row) row.push(p);
    else rows.push([p]);
  }
  return rows.flatMap((row) => {
    row.sort((a, b) => a.x - b.x);
    const lines: Print[][] = [[row[0]]];
    for (const p of row.slice(1)) {
      const line = lines[lines.length - 1];
      const last = line[line.length - 1];
      if (p.x - (last.x + last.width) > gap) lines.push([p]);
      else line.push(p);
    }
    return lines.map(lineOf);
  });
}

function lineOf(parts: readonly Print[]): Line {
  let text = "";
  parts.forEach((p, i) => {
    const before = parts[i - 1];
    const gap = before ? p.x - (before.x + before.width) : 0;
    // A fraction stands close to its whole number, but is a word of its own.
    const apart = gap > 0.8 || (/\d$/.test(text) && /^\d+\u2044/.test(p.text));
    text += (before && apart && !text.endsWith(" ") ? " " : "") + p.text;
  });
  const size = Math.max(...parts.map((p) => p.size));
  const { page, x, y } = parts[0];
  return { page, x, y, size, text: text.replace(/\s+/g, " ").trim(), parts };
}
