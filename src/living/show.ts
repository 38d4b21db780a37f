import type { Brief } from "../core/brief/index.ts";
import type { LivingView } from "../core/sheet/living.ts";
import { type LivingLayout, withPhotos } from "../core/sheet/living-pictures.ts";

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

/** The file's policy runs no style but its own sheet: what a picture says of its figures stands there. */
const drawn = (brief: Brief, svg: string): string =>
  withPhotos(brief, svg)
    .replaceAll(` style="font-feature-settings:'lnum'"`, "")
    .replaceAll(` style="font-feature-settings:'lnum','frac'"`, ` class="fraction"`);

/** Puts a view on the page; rows that differ from the original's are marked. Returns how many. */
export function fill(
  brief: Brief,
  view: LivingView,
  original: LivingView,
  compare: boolean,
): number {
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
  const put = (id: string, svg: string): void => {
    (document.getElementById(id) as HTMLElement).innerHTML = drawn(brief, svg);
  };
  put("quilt", view.quilt);
  put("pictures", view.pictures.join(""));
  const figures = view.layouts.map((l) => {
    const was = original.layouts.find((o) => o.id === l.id);
    const changed = compare && (was === undefined || !alike(l, was));
    if (changed) marked++;
    return figure(brief, l, changed ? was : undefined, changed);
  });
  const layouts = document.getElementById("layouts") as HTMLElement;
  layouts.replaceChildren(...figures);
  (layouts.closest("section") as HTMLElement).hidden = figures.length === 0;
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

const alike = (a: LivingLayout, b: LivingLayout): boolean =>
  a.bought === b.bought && a.why === b.why && a.picture === b.picture;

/** The cutting layout of one fabric; a changed one says what the original was. */
function figure(
  brief: Brief,
  layout: LivingLayout,
  was: LivingLayout | undefined,
  changed: boolean,
): HTMLElement {
  const out = document.createElement("figure");
  if (changed) out.className = "changed";
  const head = document.createElement("h3");
  head.append(...set(layout.name));
  const bought = document.createElement("p");
  const now = document.createElement(changed ? "b" : "span");
  now.append(...set(layout.bought));
  bought.append(now);
  if (changed) {
    const old = document.createElement("span");
    old.className = "was";
    old.append(...set(was ? ` was ${was.bought}` : " new"));
    bought.append(old);
  }
  const drawing = document.createElement("div");
  drawing.innerHTML = drawn(brief, layout.picture);
  const why = document.createElement("figcaption");
  layout.why.split("**").forEach((part, i) => {
    const words = document.createElement(i % 2 === 1 ? "b" : "span");
    words.append(...set(part));
    why.append(words);
  });
  out.append(head, bought, drawing, why);
  return out;
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
