import type { LivingView } from "../core/sheet/living.ts";

type Row = { readonly key: string; readonly cells: readonly string[] };

const rowsOf: Readonly<Record<string, (v: LivingView) => readonly Row[]>> = {
  sizes: (v) => v.sizes.map((r) => ({ key: r.id, cells: [r.what, r.finished, r.unfinished] })),
  supplies: (v) =>
    v.supplies.map((r) => ({
      key: r.id,
      cells: [
        r.name,
        r.buy,
        r.proven ? "proved least" : "first plan: enough, perhaps not the least",
      ],
    })),
  cuts: (v) =>
    v.cuts.map((r) => ({
      key: `${r.letter} ${r.fabricId}`,
      cells: [`${r.letter} ${r.name}`, r.fabric, String(r.count), r.cut, r.cover.text],
    })),
  stops: (v) =>
    v.stops.flatMap((s) =>
      s.rows.map((r, i) => ({
        key: `${s.block} ${i}`,
        cells: [`${s.block}: ${r.name}`, r.unfinished, r.finished],
      })),
    ),
};

const HEADS: Readonly<Record<string, readonly string[]>> = {
  sizes: ["", "finished", "unfinished"],
  supplies: ["fabric", "buy", "how sure"],
  cuts: ["piece", "fabric", "how many", "cut", "cover"],
  stops: ["at this stop", "unfinished", "finished"],
};

/** Puts a view on the page; rows that differ from the original's are marked. Returns how many. */
export function fill(view: LivingView, original: LivingView, compare: boolean): number {
  let marked = 0;
  text("sentence", view.sentence);
  const doubts = document.getElementById("doubts") as HTMLElement;
  doubts.replaceChildren(
    ...view.doubts.map((d) => {
      const li = document.createElement("li");
      li.append(...set(d));
      return li;
    }),
  );
  (document.getElementById("doubtful") as HTMLElement).hidden = view.doubts.length === 0;
  text("verdict", view.blocked ? "Do not cut yet" : "Not proved");
  (document.getElementById("pictures") as HTMLElement).innerHTML = view.pictures.join("");
  for (const [id, of] of Object.entries(rowsOf)) {
    const before = new Map(of(original).map((r) => [r.key, r.cells]));
    const table = document.getElementById(id) as HTMLTableElement;
    const body = document.createElement("tbody");
    for (const row of of(view)) {
      const was = before.get(row.key);
      const changed = compare && (was === undefined || was.some((c, i) => c !== row.cells[i]));
      if (changed) marked++;
      body.append(line(row, HEADS[id], changed, was));
    }
    table.querySelector("tbody")?.remove();
    table.append(body);
    (table.closest("section") as HTMLElement).hidden = body.childElementCount === 0;
  }
  return marked;
}

function text(id: string, words: string): void {
  (document.getElementById(id) as HTMLElement).replaceChildren(...set(words));
}

/** Text with its fractions set as fractions; read aloud and copied it stays "1/2". */
function set(words: string): Node[] {
  return words.split(/(\d+\/\d+)/).map((part, i) => {
    if (i % 2 === 0) return document.createTextNode(part);
    const span = document.createElement("span");
    span.className = "fraction";
    span.textContent = part;
    return span;
  });
}

function line(
  row: Row,
  heads: readonly string[],
  changed: boolean,
  was: readonly string[] | undefined,
): HTMLTableRowElement {
  const tr = document.createElement("tr");
  if (changed) tr.className = "changed";
  row.cells.forEach((cell, i) => {
    const td = document.createElement(i === 0 ? "th" : "td");
    if (i === 0) td.setAttribute("scope", "row");
    td.dataset.head = heads[i];
    const differs = changed && was !== undefined && was[i] !== cell;
    if (differs && i > 0) {
      const now = document.createElement("b");
      now.append(...set(cell));
      const old = document.createElement("span");
      old.className = "was";
      old.append(...set(was[i] === "" ? "" : ` was ${was[i]}`));
      td.append(now, old);
    } else td.append(...set(cell));
    tr.append(td);
  });
  if (changed && was === undefined) {
    const mark = document.createElement("span");
    mark.className = "was";
    mark.textContent = " new";
    tr.firstElementChild?.append(mark);
  }
  return tr;
}
