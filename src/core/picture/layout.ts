import { moving, type Polygon, point } from "../geometry/index.ts";
import type { Demand, FabricLayout, Placement, Strip, Yardage } from "../layout/types.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Piece } from "../piece/types.ts";
import type { Recipe } from "../recipe/types.ts";
import { type Copies, cellMarks } from "./cells.ts";
import { leftHanded, picture, rectangle, roughWidth, shapesOnly, wordsOnly } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";
import { fineStep, type Say, sayLength } from "./words.ts";

export interface LayoutPictureOptions extends Copies {
  readonly unit: Unit;
  readonly demands: readonly Demand[];
  readonly pieces: readonly Piece[];
  readonly recipes: readonly Recipe[];
  /** With it, what is cut to straighten and the named margins are drawn too. */
  readonly yardage?: Yardage;
  /** A piece in hand: its whole length, which no bound stands over. */
  readonly room?: Length;
  readonly say?: Say;
  readonly small?: Length;
  /** Cut folded: the fold is drawn even where no strip is cut double. */
  readonly folds?: 0 | 1;
  /** More identical strips than this are drawn once, with their number; default 6. */
  readonly mostAlike?: number;
  readonly leftHanded?: boolean;
}

interface Row {
  readonly strip: Strip;
  /** How many strips this row stands for. */
  readonly stands: number;
  /** Where it is drawn, and where it truly lies, from the bought end. */
  readonly drawn: Length;
  readonly truly: Length;
  readonly layer: number;
}

/**
 * A cutting layout to scale: the fabric lies as bought, its straightened end at the top; running
 * totals at the right count from there. Line: cut. Hatched: left over or lost. Heavy line: no plan
 * can end above it.
 */
export function layoutPicture(layout: FabricLayout, options: LayoutPictureOptions): Picture {
  const say = options.say ?? sayLength(fineStep(options.unit));
  const small = options.small ?? layout.width / 40;
  const straighten = options.yardage?.straighten ?? 0;
  const rows = rowsOf(layout, straighten, options.mostAlike ?? 6);
  const { width } = layout;
  const last = rows[rows.length - 1];
  const end = last ? last.drawn + last.strip.height : straighten;
  const trueEnd = layout.length + straighten;
  const over = (options.yardage?.buy ?? options.room ?? trueEnd) - trueEnd;
  const bottom = end + Math.max(0, over);
  const marks: Mark[] = [
    { kind: "shape", polygon: rectangle(0, -bottom, width, bottom), fill: { kind: "lost" } },
  ];
  const cut = rows.flatMap((row) => rowMarks(row, layout, options, small));
  marks.push(...shapesOnly(cut));
  marks.push({ kind: "shape", polygon: rectangle(0, -bottom, width, bottom), line: "hair" });
  if (options.folds === 1 || layout.strips.some((s) => s.layers === 2))
    marks.push({
      kind: "line",
      line: "fold",
      points: [point(width / 2, 0), point(width / 2, -end)],
    });
  marks.push(...totals(layout, rows, options, { small, say, end, bottom, straighten }));
  // Over the line of the bound, which would strike them out.
  marks.push(...wordsOnly(cut));
  const made = picture({
    title: `Cutting layout of ${layout.fabricId}, ${say(layout.length)} ${options.unit} in strips`,
    unit: options.unit,
    box: { left: 0, right: width, bottom: -bottom, top: 0 },
    marks,
    small,
    edges: { left: small, right: small * 12, top: small * 0.6, bottom: small * 0.9 },
  });
  return options.leftHanded ? leftHanded(made) : made;
}

/** Strips one below the other; a long run of identical ones is drawn once. */
function rowsOf(layout: FabricLayout, straighten: Length, mostAlike: number): Row[] {
  const rows: Row[] = [];
  let drawn = straighten;
  let before = 0;
  for (const strip of [...layout.strips].sort((a, b) => a.from - b.from)) {
    drawn += strip.from - before;
    const once = strip.times > mostAlike;
    for (let i = 0; i < (once ? 1 : strip.times); i++) {
      const truly = straighten + strip.from + i * strip.height;
      rows.push({ strip, stands: once ? strip.times : 1, drawn, truly, layer: i });
      drawn += strip.height;
    }
    before = strip.from + strip.times * strip.height;
  }
  return rows;
}

function rowMarks(
  row: Row,
  layout: FabricLayout,
  options: LayoutPictureOptions,
  small: Length,
): Mark[] {
  const { strip } = row;
  const low = -(row.drawn + strip.height);
  const marks: Mark[] = [];
  for (const run of strip.runs) {
    const demand = options.demands.find((d) => d.id === run.demandId);
    const at = { ...moving(run.x, low + run.y), mirrored: false };
    marks.push({
      kind: "group",
      at,
      marks: runMarks(run, demand, layout.fabricId, options, small),
    });
    if (strip.layers === 2) marks.push(secondLayer(run, demand, layout, options, small, low));
  }
  marks.push({
    kind: "line",
    line: "cut",
    points: [point(0, low), point(layout.width, low)],
  });
  marks.push({
    kind: "line",
    line: "cut",
    points: [point(0, low + strip.height), point(layout.width, low + strip.height)],
  });
  return marks;
}

/** Cut double: the other half of the strip shows the same run turned over at the fold. */
function secondLayer(
  run: Placement,
  demand: Demand | undefined,
  layout: FabricLayout,
  options: LayoutPictureOptions,
  small: Length,
  low: Length,
): Mark {
  const other = options.demands.find((d) => d.id === run.mirrorId) ?? demand;
  return {
    kind: "group",
    at: { turn: 0, x: layout.width - run.x, y: low + run.y, mirrored: true },
    marks: runMarks(run, other, layout.fabricId, options, small, true),
  };
}

function runMarks(
  run: Placement,
  demand: Demand | undefined,
  fabricId: string,
  options: LayoutPictureOptions,
  small: Length,
  turnedOver = false,
): Mark[] {
  if (!demand || run.segment) return segmentMarks(run, demand, fabricId, options, small);
  return cellMarks({
    demand,
    copies: run.copies,
    turned: run.turned,
    height: run.height,
    width: run.width,
    fabricId,
    pieces: options.pieces,
    recipes: options.recipes,
    small,
    turnedOver,
    firstLettered: options.firstLettered,
  });
}

function segmentMarks(
  run: Placement,
  demand: Demand | undefined,
  fabricId: string,
  options: LayoutPictureOptions,
  small: Length,
): Mark[] {
  const polygon: Polygon = rectangle(0, 0, run.width, run.height);
  const piece = options.pieces.find((p) => demand?.pieceIds.includes(p.id));
  return [
    {
      kind: "shape",
      polygon,
      fill: { kind: "fabric", fabricId, faint: true },
      line: "cut",
      ...(demand ? { id: demand.id } : {}),
    },
    {
      kind: "text",
      at: point(run.width / 2, run.height / 2 - 0.35 * small),
      text: piece?.letter ?? demand?.id ?? "",
      size: 1,
      anchor: "middle",
      weight: "bold",
      tone: "on-fabric",
    },
  ];
}

interface Scale {
  readonly small: Length;
  readonly say: Say;
  readonly end: Length;
  readonly bottom: Length;
  readonly straighten: Length;
}

/** Running totals from the top, the bound at its place, and what the margins are called. */
function totals(
  layout: FabricLayout,
  rows: readonly Row[],
  options: LayoutPictureOptions,
  s: Scale,
): Mark[] {
  const { width } = layout;
  const { small, say } = s;
  const marks: Mark[] = [];
  const ticks: Tick[] = [];
  const tick = (y: Length, text: string, lit = false): void => {
    ticks.push({ y, text, lit });
  };
  const note = (y: Length, text: string): void => {
    marks.push({
      kind: "text",
      at: point(width / 2, y - 0.35 * small),
      text,
      size: 1,
      anchor: "middle",
      tone: "on-fabric",
    });
  };
  tick(0, "0");
  const { yardage } = options;
  if (yardage && s.straighten > 0) {
    tick(-s.straighten, `${say(s.straighten)} to straighten`);
  }
  const bound = s.straighten + layout.lowerBound;
  const bounded = options.room === undefined;
  const proved = bounded && layout.length - layout.lowerBound < 1e-6;
  rows.forEach((row, i) => {
    const y = -(row.drawn + row.strip.height);
    const total = row.truly + row.strip.height * row.stands;
    const isLast = i === rows.length - 1;
    if (row.stands > 1)
      ticks.push({
        y: y + row.strip.height / 2,
        text: `${row.stands} strips like this`,
        lit: false,
        bare: true,
      });
    tick(y, isLast && proved ? `${say(total)} proved least` : say(total), isLast && proved);
  });
  if (rows.length > 0 && bounded) {
    const y = proved ? -s.end : -drawnAt(rows, bound);
    marks.push({
      kind: "line",
      line: "lit",
      points: [point(-small * 0.9, y), point(width + small * 0.9, y)],
    });
    if (!proved) tick(y, `${say(bound)}: no plan ends above`, true);
  }
  if (options.room !== undefined && s.bottom - s.end > 0.4 * small)
    tick(-s.bottom, `${say(options.room)}, its end`);
  if (yardage && s.bottom - s.end > 0.4 * small) {
    const parts = [
      yardage.wrongStrip > 0 ? `room for one wrong strip, ${say(yardage.wrongStrip)}` : "",
      yardage.extra > 0 ? `${say(yardage.extra)} extra` : "",
    ].filter((t) => t !== "");
    const over = s.bottom - s.end - yardage.wrongStrip - yardage.extra;
    if (over > 1e-6) parts.push(`${say(over)} over`);
    const text = parts.join(", ");
    if (roughWidth(text, small) < width && s.bottom - s.end > 1.2 * small)
      note(-(s.end + s.bottom) / 2, text);
    tick(-s.bottom, `${say(yardage.buy)} bought`);
  }
  return [...marks, ...tickMarks(ticks, width, small)];
}

interface Tick {
  readonly y: Length;
  readonly text: string;
  readonly lit: boolean;
  /** Words beside a strip, which mark no place. */
  readonly bare?: boolean;
}

/** Ticks at their true heights; their words follow one another without touching. */
function tickMarks(ticks: readonly Tick[], width: Length, small: Length): Mark[] {
  let last = Number.POSITIVE_INFINITY;
  return [...ticks]
    .sort((a, b) => b.y - a.y)
    .flatMap(({ y, text, lit, bare }): Mark[] => {
      const place = Math.min(y - 0.32 * small, last - 1.15 * small);
      last = place;
      const tick: Mark = {
        kind: "line",
        line: "rule",
        points: [point(width, y), point(width + small * 0.8, y)],
      };
      return [
        ...(bare ? [] : [tick]),
        {
          kind: "text",
          at: point(width + small * 1.2, place),
          text,
          size: 1,
          anchor: "start",
          ...(lit ? { tone: "lit" as const, weight: "bold" as const } : {}),
        },
      ];
    });
}

/** Where a true distance from the bought end is drawn, strips drawn once being shorter. */
function drawnAt(rows: readonly Row[], at: Length): Length {
  for (const row of rows) {
    const height = row.strip.height * row.stands;
    if (at <= row.truly + height + 1e-9) {
      const share = Math.max(0, (at - row.truly) / height);
      return row.drawn + row.strip.height * Math.min(1, share);
    }
  }
  return at;
}
