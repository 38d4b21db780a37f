import { answerBrief } from "../core/answer/index.ts";
import {
  besideOriginal,
  type LivingData,
  type LivingView,
  livingView,
} from "../core/sheet/living.ts";
import { type Field, type Own, ownOf, problemsOf, withOwn } from "./own.ts";
import { fill } from "./show.ts";

const data = JSON.parse(document.getElementById("pattern")?.textContent ?? "") as LivingData;
const { brief, edition, original } = data;
const say = document.getElementById("say") as HTMLElement;
const form = document.getElementById("own") as HTMLFormElement;
const turn = document.getElementById("turn") as HTMLButtonElement;
const whose = document.getElementById("whose") as HTMLElement;

const WORDS: Readonly<Record<Field, [string, string]>> = {
  usable: ["My fabric's usable width", brief.unit],
  seam: ["My seam", brief.unit],
  point: ["My ruler's point", "sharp, blunt:1/4, flat:3/8"],
  longest: ["My ruler stops at", brief.unit],
  strip: ["Strips for the wedges", brief.unit],
  rows: ["Rows", ""],
  columns: ["Columns", ""],
};

const first = ownOf(brief);
let own: Own = first;
let mine: LivingView | null = null;
let showing: "original" | "mine" = "original";

/** Answers with the student's own fields; the original's own rows come back for its own fields. */
function answer(): void {
  const problems = problemsOf(brief, own);
  for (const f of Object.keys(WORDS) as Field[]) {
    const input = form.elements.namedItem(f) as HTMLInputElement | null;
    if (!input) continue;
    const problem = problems[f] ?? "";
    input.setAttribute("aria-invalid", String(problem !== ""));
    const told = document.getElementById(`${f}-problem`) as HTMLElement;
    told.textContent = problem;
  }
  if (Object.keys(problems).length > 0) {
    say.textContent = "A field cannot be read; the numbers below are from before it.";
    return;
  }
  const same = (Object.keys(own) as Field[]).every((f) => own[f].trim() === first[f].trim());
  const next = withOwn(brief, own);
  mine = same ? null : besideOriginal(livingView(next, answerBrief(next), edition), original);
  show(same ? "original" : "mine");
}

function show(which: "original" | "mine"): void {
  showing = mine ? which : "original";
  const view = showing === "mine" && mine ? mine : original;
  const marked = fill(brief, view, original, showing === "mine");
  whose.textContent = showing === "mine" ? ` Worked out for: ${differences()}.` : "";
  turn.hidden = mine === null;
  turn.textContent = showing === "mine" ? "Show the original" : "Show mine";
  document.body.dataset.showing = showing;
  say.textContent =
    showing === "mine"
      ? marked === 0
        ? "Worked out for you: every number stays."
        : `Worked out for you: ${marked} ${marked === 1 ? "place has" : "places have"} changed, each marked.`
      : mine
        ? "The original pattern."
        : "The pattern as it was printed. Type what is yours, and it answers again.";
}

/** "seam 3/16 in, rows 4": what is hers, for a printed copy. */
function differences(): string {
  return (Object.entries(WORDS) as [Field, [string, string]][])
    .filter(([f]) => own[f].trim() !== first[f].trim())
    .map(([f, [label, hint]]) => {
      const unit = hint === brief.unit && /\d$/.test(own[f].trim()) ? ` ${brief.unit}` : "";
      return `${label.replace(/^My /, "").toLowerCase()} ${own[f].trim()}${unit}`;
    })
    .join(", ");
}

for (const [field, [label, hint]] of Object.entries(WORDS) as [Field, [string, string]][]) {
  if (field === "strip" && first.strip === "") continue;
  const row = document.createElement("p");
  const name = document.createElement("label");
  const input = document.createElement("input");
  const told = document.createElement("span");
  name.htmlFor = input.id = input.name = field;
  name.textContent = hint === "" ? label : `${label} (${hint})`;
  input.value = first[field];
  input.autocomplete = "off";
  input.spellcheck = false;
  if (field === "rows" || field === "columns") input.inputMode = "numeric";
  told.id = `${field}-problem`;
  told.className = "problem";
  input.setAttribute("aria-describedby", told.id);
  let timer = 0;
  input.addEventListener("input", () => {
    own = { ...own, [field]: input.value };
    clearTimeout(timer);
    timer = window.setTimeout(answer, 350);
  });
  row.append(name, input, told);
  form.append(row);
}
form.addEventListener("submit", (e) => {
  e.preventDefault();
  answer();
});
turn.addEventListener("click", () => show(showing === "mine" ? "original" : "mine"));
(document.getElementById("title") as HTMLElement).textContent = brief.title;
(document.getElementById("edition") as HTMLElement).textContent =
  `Version ${edition.version}, ${edition.date}.`;
show("original");
