import { leftWhole } from "../../block/index.ts";
import { type Block, type Brief, seamOf } from "../../brief/index.ts";
import { bestStarts, lookOf, type RoundWord, type WedgeCut } from "../../fabric/index.ts";
import { knownLength, type Length, liesOnStep, printLength, stepOf } from "../../measure/index.ts";
import { halfAcross, pastCenter, rulerOf } from "../../recipe/index.ts";
import {
  idOf,
  NARROWER,
  nameIn,
  type PlaceUse,
  pathOf,
  placeUseOf,
  placing,
  shown,
} from "./place-use.ts";
import { wayWords } from "./place-words.ts";
import { atWord } from "./print.ts";
import {
  type Change,
  type Clause,
  choiceWord,
  inWords,
  lengthWord,
  type Option,
  type WordSpec,
} from "./word.ts";

/**
 * Where on its fabric a role is cut, in words that follow the fabric's name: "matched, lower edge
 * out, begun 1 1/4 in into the repeat, bands straight". Nothing for a plain fabric.
 */
export function placeClause(b: Brief, index: number, key: string): Clause {
  const u = placeUseOf(b, index, key);
  if (!u) return [];
  const { fabric } = u;
  const fixed = u.placed.round !== "free";
  const words = [
    roundWord(b, u),
    ...(fixed && fabric.kind !== "print" ? [wayWord(b, u)] : []),
    ...(fixed && fabric.kind === "stripe" ? [startWord(b, u)] : []),
    ...(fixed && fabric.kind === "print" ? [atWord(b, u)] : []),
    ...(fabric.kind === "print" ? [] : [tiltWord(u)]),
  ];
  return words.flatMap((w) => [", ", w]);
}

/** How many patches of one block the role has; nothing where only the answer knows. */
function patchesOf(u: PlaceUse): number | undefined {
  if (u.block.kind !== "wedges" || !u.key.startsWith("wedge")) return undefined;
  if (u.block.setting === "sectors" || u.block.setting === "framed") return undefined;
  const whole = leftWhole(u.block);
  const parity = ["wedge-even", "wedge-odd"].indexOf(u.key);
  const sectors = Array.from({ length: u.block.n }, (_, i) => i);
  return sectors.filter((i) => !whole.includes(i) && (parity < 0 || i % 2 === parity)).length;
}

function roundWord(b: Brief, u: PlaceUse): WordSpec {
  const n = patchesOf(u);
  const half = n === undefined || n % 2 === 1 ? undefined : inWords(n / 2);
  const labels: Readonly<Record<RoundWord, string>> = {
    matched: "matched",
    mixed: half ? `mixed ${half} up and ${half} down` : "mixed by turns up and down",
    free: "free as they fall",
  };
  return choiceWord({
    id: idOf(u, "round"),
    role: `How ${nameIn(b, u)} is matched`,
    path: pathOf(u, "round"),
    text: labels[u.placed.round],
    options: (["matched", "mixed", "free"] as const).map((round) => ({
      label: labels[round],
      change: placing(u, { round }),
      picture: "block",
    })),
    decides: [u.key, ...(NARROWER[u.key] ?? [])].map((role) => ({ block: u.block.id, role })),
  });
}

function wayWord(b: Brief, u: PlaceUse): WordSpec {
  const label = (way: "up" | "down"): string => wayWords(b, u.fabric.id, way);
  return choiceWord({
    id: idOf(u, "way"),
    role: `Which way up ${nameIn(b, u)} is cut`,
    path: pathOf(u, "way"),
    text: label(u.placed.way),
    options: (["up", "down"] as const).map((way) => ({
      label: label(way),
      change: placing(u, { way }),
      picture: "block",
    })),
  });
}

/** Where in the repeat each strip begins; offers where up and down meet, and where they miss most. */
function startWord(b: Brief, u: PlaceUse): WordSpec {
  const value = u.placed.start ?? "0";
  const set = (shown: string): string => `begun ${shown} into the repeat`;
  const offers = new Map<string, Option>();
  for (const text of [value, "0", ...startsWorth(b, u)]) {
    const label = set(`${text} ${b.unit}`);
    const same = text === value;
    const key = String(knownLength(text, b.unit));
    if (offers.has(key) || offers.size === 3) continue;
    offers.set(key, {
      label: same ? set(shown(value, b)) : label,
      change: placing(u, { start: text }),
      picture: "block",
    });
  }
  return lengthWord(b, {
    id: idOf(u, "start"),
    role: `Where in its repeat each strip of ${nameIn(b, u)} begins`,
    path: pathOf(u, "start"),
    value,
    write: (d, text) => placing(u, { start: text })(d),
    set,
    picture: "block",
    offers: [...offers.values()],
    zeroAllowed: true,
  });
}

/** Starts at which up and down wedges meet, and miss by most, as texts on fine marks. */
function startsWorth(b: Brief, u: PlaceUse): string[] {
  const cut = wedgeCut(b, u.block);
  const { look } = lookOf(u.fabric, b.fabrics, b.unit, seamOf(b));
  if (look.kind !== "bands" || look.period === undefined) return [];
  const fine = stepOf(b.unit === "in" ? "1/64" : "0.1", b.unit);
  const text = (x: Length): string =>
    printLength(
      liesOnStep(x, fine) ? x : Math.round(x / fine.size.valueOf()) * fine.size.valueOf(),
      fine,
    );
  const best = cut ? bestStarts(look, cut) : {};
  const found = [best.meet?.start, best.miss?.start].filter((x) => x !== undefined);
  return [...found, look.period / 2].map(text);
}

function wedgeCut(b: Brief, block: Block): WedgeCut | undefined {
  if (block.kind !== "wedges") return undefined;
  const ruler = rulerOf(b.ruler, block.n, b.unit);
  const seam = seamOf(b);
  const a = halfAcross(ruler, knownLength(block.strip, b.unit), seam);
  return a > 0 ? { a, seam, past: pastCenter(ruler, seam) } : undefined;
}

const MOST_TILT = 45;

function tiltWord(u: PlaceUse): WordSpec {
  const own = u.fabric.kind === "stripe" ? u.fabric.tilt : 0;
  const now = u.placed.tilt ?? own;
  const say = (t: number): string =>
    t === 0 ? "bands straight" : `bands tilted ${t} ${Math.abs(t) === 1 ? "degree" : "degrees"}`;
  const write = (tilt: number): Change => placing(u, { tilt });
  const near = [...new Set([now, 0, 15, 45])].slice(0, 3);
  return {
    ...choiceWord({
      id: idOf(u, "tilt"),
      role: `How the bands of ${u.fabric.name} lie against the strip`,
      path: pathOf(u, "tilt"),
      text: say(now),
      options: [
        ...near.map((t) => ({ label: say(t), change: write(t), picture: "block" as const })),
        { label: "an angle you type", change: () => {}, picture: "block", typed: String(now) },
      ],
    }),
    read: (text) => {
      const t = Number(text.trim().replace(/\s*(degrees?|°)$/i, ""));
      if (text.trim() === "" || !Number.isFinite(t))
        return { problem: "Type an angle in degrees, such as 15 or -7.5." };
      return Math.abs(t) <= MOST_TILT
        ? write(t)
        : { problem: `The most is ${MOST_TILT} degrees either way.` };
    },
    step: (by) => (Math.abs(now + by) <= MOST_TILT ? write(now + by) : undefined),
  };
}
