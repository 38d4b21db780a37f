import type { Brief } from "../../brief/index.ts";
import type { QuiltGeometry } from "../../quilt/types.ts";
import { shapeWords } from "../look/meetings.ts";
import type { Question } from "../types/answer.ts";
import type { MeetingShape } from "../types/meeting.ts";
import { inWords } from "../words/word.ts";

interface MeetingFacts {
  readonly brief: Brief;
  readonly quilt?: QuiltGeometry;
  readonly meetings: readonly MeetingShape[];
}

/** "What appears where blocks meet?": the figures no block has by itself. Nothing where none can meet. */
export function meetingQuestion(f: MeetingFacts): Question | undefined {
  const { quilt, brief, meetings } = f;
  const { sashing, arrangement } = brief.quilt;
  if (!quilt || quilt.rows * quilt.columns < 2 || sashing || arrangement === "hexagon-rows")
    return undefined;
  const said = [...new Set(meetings.map((s) => shapeWords(s, brief)))];
  const n = said.length;
  const many = n === 0 ? "No figure" : `${capital(inWords(n))} ${n === 1 ? "figure" : "figures"}`;
  const line =
    n === 0
      ? "No figure of its own: nothing in one block runs on as one shape into the next."
      : `${many}: ${said.join("; ")}.`;
  return {
    id: "meeting",
    heading: "What appears where blocks meet?",
    trade: "figures across blocks",
    line,
    doubt: false,
    margin: { caption: "by value alone" },
    from: ["quilt"],
  };
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
