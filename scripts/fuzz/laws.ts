import { readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { answerText } from "../../src/cli/text.ts";
import {
  type Answer,
  answerBrief,
  choicesFor,
  looksOf,
  measuresOf,
} from "../../src/core/answer/index.ts";
import { type Brief, canonicalText, readBrief } from "../../src/core/brief/index.ts";
import { say } from "../../src/core/findings/index.ts";
import { area, isConvex, type Polygon } from "../../src/core/geometry/index.ts";
import { replay, replaySheets } from "../../src/core/layout/index.ts";
import {
  listFiles,
  makeSheet,
  pictureFiles,
  sheetJob,
  sheetNames,
} from "../../src/core/sheet/index.ts";

/** A law that an accepted brief's answer does not keep, and where. */
export interface Broken {
  readonly law: string;
  readonly detail: string;
}

export type Law = (brief: Brief, answer: Answer) => readonly string[];

const CLOSE = 1e-6;
const nearly = (a: number, b: number): boolean =>
  Math.abs(a - b) <= CLOSE * Math.max(1, Math.abs(a));

let validate: ReturnType<Ajv["compile"]> | undefined;

/** What every answer keeps, whatever the brief: each law names what breaks it. */
const LAWS: Readonly<Record<string, Law>> = {
  "every number is finite": (_, answer) => infinite(answer, "answer"),

  "patches fill their block and are convex": (_, { blocks }) =>
    blocks.flatMap((b) => {
      const sum = b.patches.reduce((s, p) => s + area(p.polygon), 0);
      return [
        ...(nearly(sum, area(b.outline)) ? [] : [`${b.id}: ${sum} of ${area(b.outline)}`]),
        ...b.patches.filter((p) => !isConvex(p.polygon, 1e-9)).map((p) => p.id),
      ];
    }),

  "blocks and what lies between them sum to the top": (_, { quilt, blocks }) => {
    if (!quilt) return [];
    const counted = Object.entries(quilt.counts).filter(([, n]) => n > 0);
    const missing = counted.filter(([id]) => !blocks.some((b) => b.id === id));
    if (missing.length > 0) return [];
    const sum =
      blocks.reduce((s, b) => s + b.count * area(b.outline), 0) +
      quilt.extras.reduce((s, e) => s + e.count * area(e.polygon), 0);
    // A hexagon may be a top by itself.
    const [only] = blocks;
    const alone = blocks.length === 1 && only.count === 1 && only.outline.length !== 4;
    const top = alone ? area(only.outline) : quilt.width * quilt.height;
    return nearly(sum, top) ? [] : [`${sum} of ${top}`];
  },

  "every patch is a piece, counted": (_, { quilt, blocks, pieces }) => {
    if (!quilt) return [];
    const patches =
      blocks.reduce((s, b) => s + b.count * b.patches.length, 0) +
      quilt.extras.reduce((s, e) => s + e.count, 0);
    const cut = pieces.reduce((s, p) => s + p.count, 0);
    return cut === patches ? [] : [`${cut} pieces for ${patches} patches`];
  },

  "a proved recipe covers, measured again": (brief, { recipes }) => {
    const { seam } = measuresOf(brief);
    return recipes.flatMap((r) => {
      const least = leastAllowance(r.patch, r.polygon);
      const proved = least >= seam - CLOSE;
      if (!(area(r.polygon) > 0) && r.verdict !== "blocked")
        return [`${r.pieceId}: nothing is cut`];
      if (r.verdict === "proved" && !proved) return [`${r.pieceId}: ${least} of ${seam}`];
      if (r.verdict === "blocked" && proved && r.reach >= 0)
        return [`${r.pieceId}: blocked at ${least}`];
      return [];
    });
  },

  "plans meet their demands, between bound and handbook": replayed,

  "every finding has its place and its sentence": (brief, { findings }) => {
    const { step } = measuresOf(brief);
    return findings.flatMap((f) => {
      const text = say(f, { step });
      const sound = f.place !== "" && text.length > 15 && !slips(text, brief);
      return sound ? [] : [`${f.code} at "${f.place}": ${text}`];
    });
  },

  "the answer follows its schema": (_, answer) => {
    validate ??= new Ajv({ strict: false }).compile(
      JSON.parse(readFileSync("docs/schema/answer.schema.json", "utf8")),
    );
    validate(JSON.parse(JSON.stringify(answer)));
    return (validate.errors ?? []).map((e) => `${e.instancePath}: ${e.message}`);
  },

  "a brief reads back as it was written": (brief) => {
    const again = readBrief(canonicalText(brief));
    return again.ok && canonicalText(again.brief) === canonicalText(brief) ? [] : ["it differs"];
  },

  "its text and its lists say numbers": (brief, answer) => {
    const said = [answerText(brief, answer), ...listFiles(brief, answer).map(([, text]) => text)];
    return said.flatMap((t) => t.split("\n").filter((line) => slips(line, brief)));
  },
};

/** Dearer: asked of some answers only. */
const DEAR: Readonly<Record<string, Law>> = {
  "equal briefs give equal answers": (brief, answer) =>
    canonicalText(answerBrief(structuredClone(brief))) === canonicalText(answer)
      ? []
      : ["they differ"],

  "every word of the sentence can be touched": (brief, answer) =>
    answer.sentence.flatMap(({ word }) => {
      if (word === undefined) return [];
      const choices = choicesFor(brief, word);
      return choices.some((c) => /undefined|NaN/.test(c.label)) ? [word] : [];
    }),

  "its pictures can be drawn": (brief, answer) =>
    pictureFiles(brief, answer, looksOf(brief, answer)).flatMap(([name, svg]) =>
      /undefined|NaN|Infinity|<script/i.test(svg) ? [name] : [],
    ),

  "its sheets can be set": (brief, answer) => {
    const job = sheetJob(brief, answer, { version: "1", date: "November 25, 2026" });
    return sheetNames(job).flatMap((name) => infinite(makeSheet(job, name), name));
  },
};

/** Every law that the answer to this brief does not keep; `dear` asks the dearer ones too. */
export function broken(
  brief: Brief,
  dear: boolean,
  answer = answerBrief(brief),
  more: Readonly<Record<string, Law>> = {},
): Broken[] {
  const laws = { ...LAWS, ...(dear && DEAR), ...more };
  return Object.entries(laws).flatMap(([law, holds]) => {
    try {
      return holds(brief, answer)
        .slice(0, 3)
        .map((detail) => ({ law, detail }));
    } catch (e) {
      return [
        { law, detail: `it throws: ${(e as Error).stack?.split("\n").slice(0, 4).join(" ")}` },
      ];
    }
  });
}

/** Words that only a slip of ours can put into a text, unless the maker's own names hold them. */
export const slips = (text: string, brief: Brief): boolean =>
  [...text.matchAll(/\b(undefined|NaN|Infinity)\b|\[object/g)].some(
    ([word]) => !canonicalText(brief).includes(word),
  );

export function infinite(value: unknown, path: string): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (value === null || typeof value !== "object" || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([k, v]) => infinite(v, `${path}/${k}`));
}

/**
 * The least way from a seam's ends, square to the seam, out to the raw edge: by walking out of the
 * raw shape, sharing nothing with the proof's own program.
 */
function leastAllowance(patch: Polygon, raw: Polygon): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [p, q] of sides(patch)) {
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    const out = { x: (q.y - p.y) / length, y: (p.x - q.x) / length };
    for (const from of [p, q])
      for (const [a, b] of sides(raw)) {
        const n = { x: b.y - a.y, y: a.x - b.x };
        const toward = n.x * out.x + n.y * out.y;
        if (toward <= 1e-12) continue;
        least = Math.min(least, (n.x * (a.x - from.x) + n.y * (a.y - from.y)) / toward);
      }
  }
  return least;
}

const sides = (p: Polygon) => p.map((a, i) => [a, p[(i + 1) % p.length]] as const);

function replayed(brief: Brief, answer: Answer): string[] {
  return answer.layouts.flatMap((layout, i) => {
    const { fabricId } = layout;
    const fabric = brief.fabrics.find((f) => f.id === fabricId);
    const own = answer.demands.filter((d) => d.fabricId === fabricId && d.count > 0);
    const { pieces, sheets = [] } = answer.cutting[i];
    const stock = { fabricId, width: layout.width, folds: fabric?.folds ?? 0 };
    const said = (faults: readonly { what: string; place: string }[]): string[] =>
      faults.map((f) => `${fabricId}: ${f.what} at ${f.place} ${JSON.stringify(f)}`);
    const order =
      layout.lowerBound <= layout.length + CLOSE && layout.length <= layout.handbook + CLOSE
        ? []
        : [`${fabricId}: ${layout.lowerBound} <= ${layout.length} <= ${layout.handbook}`];
    if (!pieces) return [...order, ...said(replay(layout, own, stock))];
    const left = new Map(pieces.unplaced.map((u) => [u.demandId, u.count]));
    const handed = own.filter((d) => !d.joinsAllowed && !d.register && d.shape.kind !== "along");
    const offcuts = pieces.sheets.some((s) => s.sheetId.startsWith("offcut-"));
    if (offcuts) return [...order, ...said(replaySheets(pieces, handed, sheets))];
    const rest = own.flatMap((d) => {
      const count = handed.includes(d) ? (left.get(d.id) ?? 0) : d.count;
      return count > 0 ? [{ ...d, count }] : [];
    });
    return [
      ...order,
      ...said(replaySheets(pieces, handed, sheets)),
      ...said(replay(layout, rest, stock)),
    ];
  });
}
