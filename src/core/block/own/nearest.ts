export type SayableKind = "point" | "line" | "seam";

/** Everything that can be said, as examples with the maker's own letters put in. */
const FORMS: Readonly<Record<SayableKind, readonly string[]>> = {
  point: [
    "corner A",
    "A",
    "the center",
    "the middle of AB",
    "a third of AB",
    "two thirds of AB",
    "3/4 of AB",
    "2 in from A along AB",
    "the crossing of AB and CD",
  ],
  line: ["AB"],
  seam: [
    "from A to B",
    "from corner A to the middle of AB",
    "from A to a third of AB",
    "from 2 in from A along AB to C",
    "from A to the crossing of AB and CD",
    "from A square to BC",
    "from A parallel to BC",
    "8 wedges round the center",
    "wedges of 45 round the center",
  ],
};

/**
 * A sentence with the form nearest to what was typed. Near: fewest letters to change, and the first
 * of equals. The letters of the text are put in where the form has some.
 */
export function nearestForm(typed: string, kind: SayableKind): string {
  const text = typed.trim().toLowerCase();
  const letters = [...typed.matchAll(/\b([A-Z]\d*)([A-Z]\d*)?\b/g)].flatMap((m) => m.slice(1));
  const filled = FORMS[kind].map((form) => fill(form, letters));
  let best = filled[0];
  let least = Number.POSITIVE_INFINITY;
  for (const form of filled) {
    const changes = changesBetween(text, form.toLowerCase());
    if (changes < least) {
      best = form;
      least = changes;
    }
  }
  const what = { point: "a point", line: "a line through two points", seam: "a seam" }[kind];
  return `The nearest way to say ${what} is "${best}".`;
}

/** The form's letters A, B, C, D become the first letters of the text, where it has as many. */
function fill(form: string, letters: readonly (string | undefined)[]): string {
  const own = [...new Set(form.match(/[A-D]/g) ?? [])];
  const said = [...new Set(letters.filter((x) => x !== undefined))];
  return said.length < own.length ? form : form.replace(/[A-D]/g, (x) => said[own.indexOf(x)]);
}

/** Letters to put in, take out or change (Levenshtein distance). */
function changesBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, row[j] + 1, next[j - 1] + 1));
    }
    row = next;
  }
  return row[b.length];
}
