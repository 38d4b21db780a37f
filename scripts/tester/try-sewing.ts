import { after, before, near, numberIn, numbersIn, sidesIn } from "./numbers.ts";
import type { Reading, Step } from "./reading.ts";
import { bare, plainRows, plainTop, type Stuck, stuck } from "./stuck.ts";

/** On the table: cut pieces by letter, sewn units by the step that made them. */
interface Table {
  readonly pieces: Map<string, number>;
  readonly units: Map<number, number>;
}

export function sews(r: Reading): Stuck[] {
  const table: Table = { pieces: cutPieces(r), units: new Map() };
  const out: Stuck[] = [];
  const made = new Map<string, number>();
  r.steps.forEach((step, i) => {
    const where = `step ${step.number}`;
    const want = i === 0 ? 1 : r.steps[i - 1].number + 1;
    out.push(...stuck(where, step.number !== want && `step ${want} was to come`));
    out.push(...stuck(where, step.stop === "" && "there is nothing to measure"));
    out.push(...doStep(step, table));
    out.push(...measure(r, step));
    const blocks = before(step.words, "(?:half |quarter )?blocks?\\.");
    if (blocks !== undefined) made.set(step.kind, blocks);
  });
  for (const kind of r.kinds) {
    const n = made.get(kind.name);
    out.push(
      ...stuck(
        `${kind.name} block`,
        n !== undefined && n !== kind.count && `${n} are sewn, ${kind.count} are wanted`,
      ),
    );
  }
  const inBlocks = new Set(r.steps.flatMap((s) => lettersOf(s.words)));
  const afterwards = new Set(r.after.flatMap((s) => lettersOf(s.words)));
  for (const [letter, left] of table.pieces)
    if (plainTop(r) || (inBlocks.has(letter) && !afterwards.has(letter)))
      out.push(...stuck("after the last step", left > 0 && `${left} ${letter} are left over`));
  const last = new Set(
    r.kinds.map((k) => [...r.steps].reverse().find((s) => s.kind === k.name && doesSew(s))?.number),
  );
  for (const [number, left] of table.units)
    out.push(
      ...stuck(`step ${number}`, left > 0 && !last.has(number) && `${left} of it are never used`),
    );
  return out;
}

/** Trimming joins nothing; strip sets are sewn before anything is cut from them. */
const doesSew = (s: Step): boolean => !/^\s*Trim|Strip set/.test(s.words);

function cutPieces(r: Reading): Map<string, number> {
  const out = new Map<string, number>();
  const named = new Map(
    [...r.hands.matchAll(/(\d+) ([A-Z]+\d+)/g)].map((m) => [m[2], Number(m[1])]),
  );
  for (const c of r.cuts) {
    if (c.pieces === undefined) continue;
    for (const l of c.letters)
      out.set(l, (c.letters.length > 1 ? named.get(l) : c.pieces) ?? c.pieces / c.letters.length);
  }
  return out;
}

/** Takes from the table what the step's words join, and puts down what they make. */
function doStep(step: Step, table: Table): Stuck[] {
  if (!doesSew(step)) return [];
  const where = `step ${step.number}`;
  const head = /^(\d+) ([a-z ]+)\. (.*)$/.exec(step.words);
  if (!head) return stuck(where, "it does not say how many to make");
  const make = Number(head[1]);
  const joined = head[3].split(/(?:Press|All alike|Pin|Fan|Trim)/)[0];
  const out: Stuck[] = [];
  const take = (what: string, number: number): void => {
    out.push(...stuck(where, takeFrom(table, what, number)));
  };
  const times = /^(\d+) ([A-Z]+\d+), one by one/.exec(joined);
  if (times) {
    take(times[2], Number(times[1]) * make);
    take(`step ${step.number - 1}`, make);
  } else if (/^Two /.test(joined)) {
    take(
      joined
        .replace(/^Two (of )?/, "")
        .replace(/[.,].*$/, "")
        .trim(),
      2 * make,
    );
  } else {
    const parts = joined.replace(/\..*$/, "").split(/ and /i);
    if (parts.length !== 2)
      return stuck(where, `it does not say what is joined: "${joined.trim()}"`);
    for (const part of parts) take(part.replace(/^one of /i, "").trim(), make);
  }
  table.units.set(step.number, make);
  return out;
}

function takeFrom(table: Table, what: string, number: number): string | undefined {
  const step = /^step (\d+)$/i.exec(what);
  if (step) {
    const n = Number(step[1]);
    const there = table.units.get(n);
    if (there === undefined) return `it wants step ${n}, which is not sewn yet`;
    table.units.set(n, there - number);
    return there < number ? `it wants ${number} of step ${n}, there are ${there}` : undefined;
  }
  const there = table.pieces.get(what);
  if (there === undefined) return `it wants ${what}, which is never cut`;
  table.pieces.set(what, there - number);
  return there < number ? `it wants ${number} ${what}, ${there} are left` : undefined;
}

/** At a stop: a whole block must measure what the head says; a trim, half of it from the center. */
function measure(r: Reading, step: Step): Stuck[] {
  const { block, seam = 0 } = r;
  const where = `step ${step.number}`;
  if (!block || step.stop === "") return [];
  const number = numberIn(step.stop);
  const slack = r.unit === "in" ? 0.02 : 0.6;
  const whole = /^\d+ blocks?\./.test(step.words) || /square$|wide and high$/.test(step.stop);
  const center = before(step.words, "(?:in|mm) marks on it");
  const pair = pairStop(r, step);
  return [
    ...stuck(where, number === undefined && "the stop has no number"),
    ...stuck(
      where,
      whole &&
        number !== undefined &&
        !near(number, block.raw, slack) &&
        `a block should measure ${block.raw}, not ${number}`,
    ),
    ...stuck(
      where,
      center !== undefined &&
        !near(center, block.finished / 2 + seam, slack) &&
        `half of ${block.raw} from the center is not ${center}`,
    ),
    ...stuck(where, pair),
  ];
}

/**
 * A round of wedges before anything is set round it: across flats it is twice the strip, less the
 * point past the center and the seam at the outer edge, with a seam on either side again.
 */
function pairStop(r: Reading, step: Step): string | undefined {
  if (!/^\d+ octagons?\./.test(step.words) || !/raw edge to raw edge/.test(step.stop))
    return undefined;
  const strip = after(r.sentence, "from");
  const { seam = 0 } = r;
  const sharp = (at: number): number => at / Math.sin(Math.PI / 8);
  const blunt = before(r.sentence, "(?:in|mm) past the center");
  // The tip that is cut off stays the same; another seam moves the center.
  const madeFor = after(r.sentence, "past the center at an?") ?? seam;
  const past = /sharp point/.test(r.sentence)
    ? sharp(seam)
    : blunt === undefined
      ? undefined
      : blunt + sharp(seam) - sharp(madeFor);
  const number = numberIn(step.stop);
  if (strip === undefined || past === undefined || number === undefined || r.unit === "mm")
    return undefined;
  const across = 2 * (strip - past);
  return near(number, across, 0.02)
    ? undefined
    : `wedges of ${strip} make ${across.toFixed(3)} across, not ${number}`;
}

export function finishes(r: Reading): Stuck[] {
  const { top, seam = 0 } = r;
  const last = r.steps[r.steps.length - 1]?.number ?? 0;
  const slack = r.unit === "in" ? 0.02 : 0.6;
  const out: Stuck[] = [];
  r.after.forEach((s, i) => {
    out.push(
      ...stuck(`step ${s.number}`, s.number !== last + 1 + i && `step ${last + 1 + i} was to come`),
    );
  });
  const rows = r.after.find((s) => /Rows\./.test(s.words));
  const finish = r.after.find((s) => /Finish\./.test(s.words));
  out.push(...stuck("And then?", !rows && "nothing says how the blocks are joined"));
  out.push(...stuck("And then?", !finish && "nothing says how it is finished"));
  const [laid, bound] = [rows, finish].map(
    (s) => s && sidesIn(s.words.split("Should measure")[1] ?? ""),
  );
  if (top && bound)
    out.push(
      ...stuck(
        "And then?",
        !(near(top[0], bound[0], slack) && near(top[1], bound[1], slack)) &&
          `the top is ${top[0]} × ${top[1]}, bound it is said to be ${bound[0]} × ${bound[1]}`,
      ),
    );
  if (top && laid && plainTop(r))
    out.push(
      ...stuck(
        "And then?",
        !(near(top[0] + 2 * seam, laid[0], slack) && near(top[1] + 2 * seam, laid[1], slack)) &&
          `unfinished it should be ${top[0] + 2 * seam} × ${top[1] + 2 * seam}, not ${laid[0]} × ${laid[1]}`,
      ),
    );
  if (rows && r.grid && plainRows(r) && !/the whole top/.test(rows.words)) {
    const [a, b] = numbersIn(rows.words.replace(/^\d+ Rows\./, ""));
    out.push(
      ...stuck(
        "And then?",
        (a !== r.grid[0] || b !== r.grid[1]) &&
          `rows are laid ${a} of ${b}, the sizes say ${r.grid[0]} of ${r.grid[1]}`,
      ),
    );
  }
  out.push(...mapAgrees(r), ...borders(r), ...named(r));
  return out;
}

/** The numbers that stand after "Should measure". */
const stopOf = (words: string): [number, number] | undefined =>
  sidesIn(words.split("Should measure")[1] ?? "");

/** Each border makes the top wider by twice what shows of it, and is cut as long as its step plans. */
function borders(r: Reading): Stuck[] {
  const slack = r.unit === "in" ? 0.04 : 1.1;
  const { seam = 0 } = r;
  return r.after.flatMap((s, i): Stuck[] => {
    const where = `step ${s.number}`;
    if (!/^\d+ Border/.test(s.words)) return [];
    const wide = before(s.words, "(?:in|mm|cm) wide:");
    const [was, is] = [stopOf(r.after[i - 1]?.words ?? ""), stopOf(s.words)];
    const grown = was && is && (is[0] - was[0]) / 2;
    return [
      ...stuck(where, wide === undefined && "it does not say how wide the border is cut"),
      ...stuck(where, is === undefined && "nothing says what the top should measure"),
      ...stuck(
        where,
        r.unit === "in" &&
          wide !== undefined &&
          grown !== undefined &&
          !near(grown, wide - 2 * seam, slack) &&
          `a border cut ${wide} wide does not make the top ${2 * grown} wider`,
      ),
      ...(r.unit === "in" ? lettersOf(s.words) : []).flatMap((letter) =>
        stuck(where, plannedLength(r, letter, s.words)),
      ),
    ];
  });
}

const lettersOf = (words: string): string[] => [
  ...new Set(words.split("Should measure")[0].match(/\b[A-Z]{1,2}\d+\b/g) ?? []),
];

/**
 * A strip's length in the list is one of the numbers its step plans; where it is joined of several,
 * the list may round it up to the step, since it is cut to the top's mean afterwards.
 */
function plannedLength(r: Reading, letter: string, words: string): string | undefined {
  const line = r.cuts.find((c) => c.letters.includes(letter));
  if (line?.name !== "border") return undefined;
  const joined = after(line.into, "lengths? of");
  const long = joined ?? Math.max(0, ...(sidesIn(bare(line)) ?? []));
  const step = joined === undefined ? 0 : (after(r.sentence, "measured to the") ?? 0);
  return long === 0 || numbersIn(words).some((n) => long > n - 0.01 && long < n + step + 0.01)
    ? undefined
    : `${letter} is cut ${long} long, the step plans another length`;
}

/** Every piece that a later step names is cut; every piece cut is named in some step. */
function named(r: Reading): Stuck[] {
  const cut = new Set(r.cuts.flatMap((c) => c.letters));
  const sewn = new Set([...r.steps, ...r.after].flatMap((s) => lettersOf(s.words)));
  return [
    ...r.after.flatMap((s) =>
      lettersOf(s.words).flatMap((l) =>
        stuck(`step ${s.number}`, !cut.has(l) && `it wants ${l}, which is never cut`),
      ),
    ),
    ...[...cut].flatMap((l) =>
      stuck("after the last step", !sewn.has(l) && `${l} is cut and no step names it`),
    ),
  ];
}

/** The map shows as many of each letter as its legend and the steps say. */
function mapAgrees(r: Reading): Stuck[] {
  const legend = [...r.mapWords.matchAll(/([A-Z]|\d): ([^,;]+), (\d+)/g)];
  return legend.flatMap((m) => {
    const kind = r.kinds.find((k) => k.name === m[2]);
    const shown = r.map.get(m[1]);
    return [
      ...stuck(
        "map",
        shown !== undefined &&
          plainRows(r) &&
          shown !== Number(m[3]) &&
          `${shown} ${m[1]} are drawn, ${m[3]} are named`,
      ),
      ...stuck(
        "map",
        kind !== undefined &&
          kind.count !== Number(m[3]) &&
          `${m[2]}: ${m[3]} on the map, ${kind.count} in the steps`,
      ),
    ];
  });
}
