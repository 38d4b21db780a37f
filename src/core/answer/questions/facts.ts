import type { Brief } from "../../brief/index.ts";
import type { FabricLayout, Yardage } from "../../layout/types.ts";
import type { Length, Step } from "../../measure/index.ts";
import type { Piece } from "../../piece/types.ts";
import type { FinishingFacts } from "../../quilt/finishing.ts";
import type { QuiltGeometry } from "../../quilt/types.ts";
import type { Recipe } from "../../recipe/types.ts";
import type { SewnUnit } from "../../sewing/types.ts";
import type { Sights } from "../look/sights.ts";
import type { AnswerBlock, SizeAnswer } from "../types/answer.ts";
import type { FabricCutting } from "../types/cutting.ts";
import type { MeetingShape } from "../types/meeting.ts";

/** What the questions are answered from: the stages' results, before they are one answer. */
export interface Facts {
  readonly brief: Brief;
  readonly step: Step;
  readonly seam: Length;
  readonly quilt?: QuiltGeometry;
  readonly blocks: readonly AnswerBlock[];
  readonly pieces: readonly Piece[];
  readonly recipes: readonly Recipe[];
  /** Ids of pieces whose thin cover the maker has accepted by name. */
  readonly accepted: ReadonlySet<string>;
  readonly layouts: readonly FabricLayout[];
  readonly cutting: readonly FabricCutting[];
  readonly yardages: readonly Yardage[];
  readonly units: readonly SewnUnit[];
  readonly look: Sights;
  readonly sizes: readonly SizeAnswer[];
  readonly meetings: readonly MeetingShape[];
  readonly finishing: FinishingFacts;
  /** Stages and questions that failed, with what they said. */
  readonly failed: ReadonlyMap<string, string>;
  /** A finding blocks cutting. */
  readonly blocked: boolean;
}
