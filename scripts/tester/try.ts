import { after, before, near, numberIn, numbersIn, sidesIn } from "./numbers.ts";
import type { CutLine, Fabric, Reading, Step } from "./parse.ts";

/** A place where a stranger who has only the printed words would be stuck, or would go wrong. */
export interface Stuck {
  readonly where: string;
  readonly why: string;
}

/**
 * Makes the quilt from the printed words alone: buys, cuts only what the list gives, joins only what
 * a step says, measures at every stop. Everything found, in the order a maker would meet it.
 */
export function tried(r: Reading): Stuck[] {
  return [
    ...reads(r),
    ...sizes(r),
    ...buys(r),
    ...cuts(r),
    ...hands(r),
    ...sews(r),
    ...finishes(r),
  ];
}

const stuck = (where: string, why: string | false | undefined): Stuck[] =>
  why ? [{ where, why }] : [];

/** Is anything missing that every pattern must say? */
function reads(r: Reading): Stuck[] {
  const versions = new Set(r.feet.map((f) => f.match(/Version .*?\./)?.[0]));
  return [
    ...stuck("sentence", r.seam === undefined && "the seam is not stated"),
    ...stuck("How big is it?", r.top === undefined && "the finished size is not stated"),
    ...stuck("How big is it?", r.block === undefined && "the block's size is not stated"),
    ...stuck(
      "Is there enough?",
      r.usable.length === 0 &&
        r.fabrics.some((f) => f.usable === undefined) &&
        "no usable width is stated",
    ),
    ...stuck("Is there enough?", r.fabrics.length === 0 && "no fabrics are listed"),
    ...stuck("What do I cut?", r.cuts.length === 0 && "nothing is cut"),
    ...stuck("In what order?", r.steps.length === 0 && "no step is given"),
    ...stuck("foot", versions.size !== 1 && `sides carry ${versions.size} versions`),
    ...stuck(
      "foot",
      r.seam !== undefined &&
        r.feet.some((f) => !near(after(f, "Sewn with an?") ?? -1, r.seam ?? 0)) &&
        "the foot and the sentence name different seams",
    ),
  ];
}

/** The numbers of the head must agree with each other. */
function sizes(r: Reading): Stuck[] {
  const { seam = 0, block, blocks, grid } = r;
  const inSentence = before(r.sentence, "blocks?");
  const tall = /(\d+) by (\d+) in/.exec(r.sentence);
  const kinds = r.kinds.reduce((sum, k) => sum + k.count, 0);
  const slack = r.unit === "in" ? 0.02 : 0.6;
  return [
    ...stuck(
      "How big is it?",
      block &&
        !near(block.raw, block.finished + 2 * seam, slack) &&
        `a ${block.finished} block is not ${block.raw} unfinished with a ${seam} seam`,
    ),
    ...stuck(
      "How big is it?",
      blocks !== undefined &&
        inSentence !== undefined &&
        blocks !== inSentence &&
        `${inSentence} blocks in the sentence, ${blocks} in the sizes`,
    ),
    ...stuck(
      "How big is it?",
      grid &&
        blocks !== undefined &&
        plainRows(r) &&
        grid[0] * grid[1] !== blocks &&
        `${grid[0]} rows of ${grid[1]} are not ${blocks} blocks`,
    ),
    ...stuck(
      "sentence",
      tall !== null &&
        grid !== undefined &&
        (Number(tall[1]) !== grid[0] || Number(tall[2]) !== grid[1]) &&
        "the sentence has another number of rows",
    ),
    ...staleSizes(r),
    ...stuck("How big is it?", fullTop(r)),
    ...stuck(
      "In what order?",
      blocks !== undefined &&
        r.kinds.length > 0 &&
        plainRows(r) &&
        kinds !== blocks &&
        `steps make ${kinds} blocks, ${blocks} are wanted`,
    ),
  ];
}

/** Strips and squares named in the sentence are cut in the list. Centimeters are left to the reader. */
function staleSizes(r: Reading): Stuck[] {
  if (r.unit === "mm") return [];
  const strips = r.cuts.flatMap((c) => [
    c.wide,
    after(bare(c), "trimmed to"),
    after(bare(c), "strips?"),
  ]);
  const squares = r.cuts.map((c) => after(bare(c), "squares?"));
  const cut = (list: readonly (number | undefined)[], x: number): boolean =>
    list.some((y) => y !== undefined && near(x, y));
  const named = (words: string): number[] =>
    [...r.sentence.matchAll(new RegExp(`from (\\d[^a-z]*) in ${words}`, "g"))].flatMap((m) =>
      numbersIn(m[1]),
    );
  return [
    ...named("strips").flatMap((x) =>
      stuck("sentence", !cut(strips, x) && `strips of ${x} are named and never cut`),
    ),
    ...named("squares").flatMap((x) =>
      stuck("sentence", !cut(squares, x) && `squares of ${x} are named and never cut`),
    ),
  ];
}

/** Blocks edge to edge in straight rows, which is all a stranger can multiply out. */
const plainRows = (r: Reading): boolean =>
  /straight rows/.test(r.sentence) && !/in hexagons/.test(r.sentence);
const plainTop = (r: Reading): boolean =>
  plainRows(r) && /no sashing/.test(r.sentence) && /no border/.test(r.sentence);

function fullTop(r: Reading): string | undefined {
  const { top, block, grid } = r;
  if (!top || !block || !grid || !plainTop(r)) return undefined;
  const wide = grid[1] * block.finished;
  const high = grid[0] * block.finished;
  const slack = 0.002 * Math.max(wide, high);
  return near(top[0], wide, slack) && near(top[1], high, slack)
    ? undefined
    : `${grid[0]} rows of ${grid[1]} blocks of ${block.finished} are ${wide} × ${high}, not ${top[0]} × ${top[1]}`;
}

// --- buying --------------------------------------------------------------------------------------

/** Length of fabric in the document's unit that an amount on the list holds. */
const lengthOf = (amount: number, unit: "in" | "mm"): number =>
  amount * (unit === "in" ? 36 : 1000);

function buys(r: Reading): Stuck[] {
  return r.fabrics.flatMap((f) => {
    const own = r.cuts.filter((c) => c.fabric === f.letter);
    const strips = own.filter(
      (c) => c.strips !== undefined && c.wide !== undefined && !/^from the /.test(c.into),
    );
    const cut = strips.reduce((sum, c) => sum + (c.strips ?? 0) * (c.wide ?? 0), 0);
    const wrong = r.wrongStrip.get(f.letter) ?? 0;
    const needed = cut + (r.straighten ?? 0) + wrong + (r.toRepeat.get(f.letter) ?? 0);
    const sewn = /strip set/.test(f.text);
    const where = `fabric ${f.letter}`;
    const short =
      f.yards.length > 0 && f.yards[0] > 0 && lengthOf(f.yards[0], r.unit) < needed - 0.01;
    const much =
      f.yards.length > 0 &&
      f.yards[0] > 0 &&
      !turnedRepeats(f) &&
      lengthOf(f.yards[0], r.unit) > needed + lengthOf(r.unit === "in" ? 0.26 : 0.15, r.unit);
    return [
      ...stuck(
        where,
        own.length === 0 && !/binding|backing/.test(f.text) && "is bought and never cut",
      ),
      ...stuck(where, !sewn && f.yards.length < 1 && "has no amount"),
      ...stuck(
        where,
        short && `${f.yards[0]} bought hold ${lengthOf(f.yards[0], r.unit)}, ${needed} are needed`,
      ),
      ...stuck(
        where,
        much &&
          `${f.yards[0]} bought hold ${lengthOf(f.yards[0], r.unit)}, only ${needed} are needed`,
      ),
      ...stuck(
        where,
        f.yards.length > 1 &&
          f.yards[1] < f.yards[0] - 1e-9 &&
          "less is bought of the narrower fabric",
      ),
      ...usesAgree(r, f, where),
    ];
  });
}

/** A repeat to be matched costs fabric that no cutting list shows. */
const turnedRepeats = (f: Fabric): boolean => /repeat/.test(f.text);

function usesAgree(r: Reading, f: Fabric, where: string): Stuck[] {
  const cut = new Map<string, number>();
  for (const c of r.cuts)
    if (c.fabric === f.letter && c.pieces !== undefined)
      cut.set(c.name, (cut.get(c.name) ?? 0) + c.pieces);
  return [...f.uses].flatMap(([name, n]) =>
    stuck(
      where,
      (cut.get(name) ?? 0) !== n && `${n} ${name} are named, the list cuts ${cut.get(name) ?? 0}`,
    ),
  );
}

// --- cutting -------------------------------------------------------------------------------------

function cuts(r: Reading): Stuck[] {
  const letters = new Set(r.fabrics.map((f) => f.letter));
  const byPiece = new Map<string, CutLine[]>();
  for (const c of r.cuts)
    if (c.letters.length > 0)
      byPiece.set(c.letters.join(), [...(byPiece.get(c.letters.join()) ?? []), c]);
  const lines = r.cuts.flatMap((c) => {
    const where = `cutting ${c.letters.join(" and ")}`;
    return [
      ...stuck(where, !letters.has(c.fabric) && `fabric ${c.fabric} is not on the list`),
      ...stuck(
        where,
        c.letters.some((l) => l.replace(/\d+$/, "") !== c.fabric) &&
          `the piece's letter is not of fabric ${c.fabric}`,
      ),
      ...stuck(
        where,
        c.letters.length === 0 && !/^(set|binding|backing)/.test(c.name) && "no piece is named",
      ),
      ...stuck(where, fitsStrip(r, c)),
      ...stuck(where, agreesWithProof(r, c)),
    ];
  });
  const counts = [...byPiece].flatMap(([key, own]) => {
    const wantedLine = own.find((c) => c.pieces !== undefined);
    const wanted = wantedLine?.pieces;
    const given = own.map(piecesFrom);
    const where = `cutting ${key}`;
    if (wanted === undefined) return stuck(where, "no number of pieces is given");
    if (given.some((g) => g === undefined)) return [];
    const sum = given.reduce<number>((a, b) => a + (b ?? 0), 0);
    return stuck(where, sum < wanted && `${sum} come out, ${wanted} are wanted`);
  });
  return [...lines, ...counts, ...stripsFit(r)];
}

/** A strip is as wide as something cut from it; a wider one would be a number left over. */
function stripsFit(r: Reading): Stuck[] {
  const groups: CutLine[][] = [];
  for (const c of r.cuts) {
    if (c.strips !== undefined || groups.length === 0) groups.push([c]);
    else groups[groups.length - 1].push(c);
  }
  return groups.flatMap((group) => {
    const wide = group[0].wide ?? 0;
    const sizes = group.flatMap((c) => {
      const words = bare(c);
      const cells = after(words, "(?:squares?|rectangles?)");
      return sidesIn(words) ?? (cells === undefined ? [] : [cells]);
    });
    const onlyCells = group.every((c) => before(bare(c), "(?:squares?|rectangles?)") !== undefined);
    const odd =
      onlyCells && sizes.length > 0 && !sizes.some((x) => near(x, wide, 0.002 * wide + 0.13));
    return stuck(
      `cutting ${group[0].letters.join(" and ")}`,
      odd && `strips of ${wide} are cut, nothing of them is ${wide} wide`,
    );
  });
}

/** What a line says after where it is cut from. */
const bare = (c: CutLine): string =>
  c.into
    .replace(/^from the (leftover|piece in hand)[^:]*: /, "")
    .replace(/^and from the same: /, "");

/** How many pieces a line of the list gives; undefined where its words do not say. */
function piecesFrom(c: CutLine): number | undefined {
  const words = bare(c);
  const cells = before(words, "(?:squares?|rectangles?)");
  if (cells !== undefined) {
    const each = /slice both halves/.test(words)
      ? 2
      : /each twice/.test(words)
        ? 4
        : /each once/.test(words)
          ? 2
          : 1;
    return cells * each;
  }
  const along = /along the length, (\d+) strips? .*: (\d+) a strip/.exec(words);
  if (along) return Number(along[1]) * Number(along[2]) * (c.strips ?? 1);
  const joined = /joined to (\d+) lengths?/.exec(words);
  if (joined) return Number(joined[1]);
  return fromStrips(words.replace(/^.*: /, ""), c.strips);
}

/** "17 a strip, 14 from the last"; "17, 17 and 14"; "17 from 5, 11 from 1". */
function fromStrips(words: string, strips: number | undefined): number | undefined {
  const parts = numbersIn(words);
  if (/\d+ from \d+/.test(words)) {
    const pairs = [...words.matchAll(/(\d+) from (\d+)/g)];
    return pairs.reduce((sum, m) => sum + Number(m[1]) * Number(m[2]), 0);
  }
  if (/a strip/.test(words) && strips === undefined) return undefined;
  if (/a strip, \d+ from the last/.test(words)) return parts[0] * ((strips ?? 1) - 1) + parts[1];
  if (/a strip/.test(words)) return parts[0] * (strips ?? 1);
  return parts.reduce((a, b) => a + b, 0);
}

/** Squares side by side, or wedges head to tail, must not run off the usable width. */
function fitsStrip(r: Reading, c: CutLine): string | undefined {
  const usable = r.fabrics.find((f) => f.letter === c.fabric)?.usable ?? r.usable[0];
  if (usable === undefined || c.strips === undefined || c.wide === undefined) return undefined;
  const words = bare(c);
  if (words !== c.into || /along the length|joined|left whole|backing/.test(`${words} ${c.name}`))
    return undefined;
  const cells = before(words, "(?:squares?|rectangles?)");
  if (cells !== undefined) {
    const size = after(words, "(?:squares?|rectangles?)");
    const [a, b] = sidesIn(words) ?? [size, size];
    if (a === undefined || b === undefined) return "the size of the pieces is not given";
    // Laid either way, as many rows of them as the strip is wide enough for.
    const laid = (across: number, high: number): number =>
      Math.floor(usable / across + 1e-6) * Math.floor((c.wide ?? 0) / high + 1e-6);
    const most = Math.max(laid(a, b), laid(b, a)) * c.strips;
    return cells > most ? `${cells} of ${a} × ${b} do not come from ${c.strips} strips` : undefined;
  }
  const proof = r.proofs.find((p) => p.letter === c.letters[0]);
  const base = proof && after(proof.text, "Outer edge");
  const each = numberIn(words.replace(/^.*: /, ""));
  if (base === undefined || each === undefined || !proof) return undefined;
  const point = /point sharp/.test(proof.text) ? 0 : (after(proof.text, "point") ?? 0);
  const pitch = /turned end for end/.test(words) ? (base + point) / 2 : base;
  const long = base + (each - 1) * pitch;
  return long > usable + 0.01 ? `${each} wedges take ${long.toFixed(2)} of ${usable}` : undefined;
}

/** The cutting list and the proof speak of one strip or square. */
function agreesWithProof(r: Reading, c: CutLine): string | undefined {
  if (c.letters.length === 0) return undefined;
  const proof = r.proofs.find((p) => p.letter === c.letters[0]);
  if (!proof) return "no proof says how it is cut";
  const words = bare(c);
  const size = after(proof.text, "From an?");
  const square = before(words, "squares?") !== undefined;
  if (size === undefined || sidesIn(proof.text) || sidesIn(words) || /joined/.test(words))
    return undefined;
  const said = square
    ? after(words, "squares?")
    : (after(words, "trimmed to") ??
      after(words, "along the length, \\d+ strips?") ??
      (c.strips === undefined ? undefined : c.wide));
  if (said === undefined) return undefined;
  return near(size, said, 0.002 * said + 0.001)
    ? undefined
    : `${said} in the list, ${size} in the proof`;
}

/** Lefts and rights as the note counts them, against the list. */
function hands(r: Reading): Stuck[] {
  const [left, right] = [/Lefts:(.*?)Rights:/, /Rights:(.*)$/].map(
    (m) => m.exec(r.hands)?.[1] ?? "",
  );
  const read = (text: string) =>
    [...text.matchAll(/(\d+) ([A-Z]+\d+)/g)].map((m) => ({ n: Number(m[1]), letter: m[2] }));
  const [lefts, rights] = [read(left), read(right)];
  const total = (list: readonly { n: number }[]): number => list.reduce((s, x) => s + x.n, 0);
  const both = r.cuts.filter((c) => c.letters.length > 1 && /both halves/.test(c.into));
  const pairs = both.flatMap((c) => {
    const named = [...lefts, ...rights].filter((x) => c.letters.includes(x.letter));
    return stuck(
      `cutting ${c.letters.join(" and ")}`,
      c.pieces !== undefined &&
        total(named) !== c.pieces &&
        `${total(named)} lefts and rights are named, ${c.pieces} are cut`,
    );
  });
  return [
    ...stuck("Lefts and rights", r.hands === "" && "nothing is said of lefts and rights"),
    ...stuck(
      "Lefts and rights",
      both.length > 0 &&
        total(lefts) !== total(rights) &&
        `${total(lefts)} lefts and ${total(rights)} rights from the same squares`,
    ),
    ...pairs,
  ];
}

// --- sewing --------------------------------------------------------------------------------------

/** On the table: cut pieces by letter, sewn units by the step that made them. */
interface Table {
  readonly pieces: Map<string, number>;
  readonly units: Map<number, number>;
}

function sews(r: Reading): Stuck[] {
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
    const blocks = before(step.words, "blocks?\\.");
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
  if (plainTop(r))
    for (const [letter, left] of table.pieces)
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
  const head = /^(\d+) ([a-z]+)\. (.*)$/.exec(step.words);
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
  const whole = /^\d+ blocks?\./.test(step.words) || /square$/.test(step.stop);
  const center = before(step.words, "(?:in|mm) marks on it");
  const pair = pairStop(r, step);
  return [
    ...stuck(where, number === undefined && "the stop has no number"),
    ...stuck(
      where,
      whole &&
        !sidesIn(step.stop) &&
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
  const past = /sharp point/.test(r.sentence)
    ? seam / Math.sin(Math.PI / 8)
    : before(r.sentence, "(?:in|mm) past the center");
  const number = numberIn(step.stop);
  if (strip === undefined || past === undefined || number === undefined || r.unit === "mm")
    return undefined;
  const across = 2 * (strip - past);
  return near(number, across, 0.02)
    ? undefined
    : `wedges of ${strip} make ${across.toFixed(3)} across, not ${number}`;
}

// --- finishing -----------------------------------------------------------------------------------

function finishes(r: Reading): Stuck[] {
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
  if (rows && r.grid && plainRows(r)) {
    const [a, b] = numbersIn(rows.words.replace(/^\d+ Rows\./, ""));
    out.push(
      ...stuck(
        "And then?",
        (a !== r.grid[0] || b !== r.grid[1]) &&
          `rows are laid ${a} of ${b}, the sizes say ${r.grid[0]} of ${r.grid[1]}`,
      ),
    );
  }
  out.push(...mapAgrees(r));
  return out;
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
