import type { BlockGeometry } from "../../block/types.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Demand, FabricLayout, Yardage } from "../../layout/types.ts";
import type { Length, Tolerances, Unit } from "../../measure/index.ts";
import type { Piece } from "../../piece/types.ts";
import type { FinishingFacts } from "../../quilt/finishing.ts";
import type { SizePlan, Wanted } from "../../quilt/sizes.ts";
import type { QuiltGeometry } from "../../quilt/types.ts";
import type { Recipe } from "../../recipe/types.ts";
import type { RowPressing } from "../../sewing/rowPressing.ts";
import type { SewnUnit } from "../../sewing/types.ts";
import type { FabricCutting } from "./cutting.ts";
import type { WedgeGuide } from "./guide.ts";
import type { BlockSight } from "./look.ts";
import type { MeetingShape } from "./meeting.ts";

/** A number with what it rests on. `text` is to the maker's step, up where a cut must cover. */
export interface ResultNumber {
  readonly value: Length;
  readonly unit: Unit | "yd" | "m" | "count";
  readonly text: string;
  readonly status: "exact" | "bounded" | "assumed";
  readonly bound?: Length;
  readonly from: readonly string[];
}

export type QuestionId =
  | "size"
  | "cover"
  | "look"
  | "meeting"
  | "enough"
  | "order"
  | "measure"
  | "make-size"
  | "why"
  | "finish"
  | "hand-out";

/** A question of the page with its one-line answer. Worded once, for page, command line and sheet. */
export interface Question {
  readonly id: QuestionId;
  readonly heading: string;
  /** The trade's name for the section, for printed sheets. */
  readonly trade: string;
  readonly line: string;
  /** In doubt: opens by itself and says why. */
  readonly doubt: boolean;
  readonly because?: string;
  /** The margin beside it, in inches or mm, with its caption. */
  readonly margin?: { readonly number?: ResultNumber; readonly caption: string };
  /** Ids this line speaks of: lighting it lights these. */
  readonly from: readonly string[];
}

export interface AnswerBlock extends BlockGeometry {
  readonly count: number;
  readonly name: string;
  /** Fabric of every patch. */
  readonly fabricOf: Readonly<Record<string, string>>;
  /** Piece of every patch. */
  readonly pieceOf: Readonly<Record<string, string>>;
}

/** Everything that follows from a brief. Plain data; equal briefs give equal bytes. */
export interface Answer {
  readonly format: "eighthwise-answer";
  readonly version: 1;
  /** Of the brief without its record, which decides nothing. */
  readonly briefHash: string;
  readonly unit: Unit;
  readonly tolerances: Tolerances;
  readonly sentence: readonly SentencePart[];
  readonly questions: readonly Question[];
  /** Missing when a finding that blocks says why. */
  readonly quilt?: QuiltGeometry;
  /** Binding, backing, batting; absent with the quilt. */
  readonly finishing?: FinishingFacts;
  readonly blocks: readonly AnswerBlock[];
  readonly pieces: readonly Piece[];
  readonly recipes: readonly Recipe[];
  /** The wedges by any ruler, or none. */
  readonly wedges: readonly WedgeGuide[];
  readonly demands: readonly Demand[];
  /** What each fabric's bolt must give; a strip set's strips are sets to sew. */
  readonly layouts: readonly FabricLayout[];
  /** For each layout: order of cutting, pieces in hand, hands and ways, usable waste. */
  readonly cutting: readonly FabricCutting[];
  readonly yardages: readonly Yardage[];
  readonly units: readonly SewnUnit[];
  /** How the seams between blocks are pressed; absent with a single block, or no quilt. */
  readonly rows?: RowPressing;
  /** What will be seen: the fabric in the wedges, and which figure stands out. */
  readonly sights: readonly BlockSight[];
  /** Figures that appear only where blocks meet. */
  readonly meetings: readonly MeetingShape[];
  /** One design in every size of the brief; absent when it has none, or no quilt. */
  readonly sizes?: readonly SizeAnswer[];
  readonly findings: readonly Finding[];
}

/** One size of the brief's list, planned in full. */
export interface SizeAnswer {
  readonly name: string;
  /** As asked for: finished top. */
  readonly wanted: Wanted;
  /** The nearest by blocks alone, and by each length that is free in this design. */
  readonly ways: readonly SizePlan[];
  /** The one of them that is planned here: it adds no sashing or border to the design. */
  readonly plan: SizePlan;
  /** Whole blocks. */
  readonly blocks: number;
  /** Finished, from the full answer; absent where a finding blocks it. */
  readonly width?: Length;
  readonly height?: Length;
  readonly yardages: readonly Yardage[];
  readonly finishing?: FinishingFacts;
}

/**
 * The sentence that is the whole job, in order. A part with a `word` can be touched: `path` says
 * where in the brief it lives. Joining words have only text.
 */
export interface SentencePart {
  readonly text: string;
  readonly word?: string;
  readonly path?: string;
  /** Not proved: dotted. */
  readonly doubt?: boolean;
}
