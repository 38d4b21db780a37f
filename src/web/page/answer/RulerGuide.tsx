import { sayReading, sayWay } from "../../../core/answer/cut/wedge-guide.ts";
import { circlesOf, rulersApart } from "../../../core/answer/otherwise/ask.ts";
import { printWithUnit, stepOf } from "../../../core/measure/index.ts";
import type { Answered } from "../answers.ts";
import { Said } from "../said.tsx";

/** The wedge by any ruler, or none, and how to read the ruler there is: folded until asked for. */
export function RulerGuide({ shown }: { shown: Answered }) {
  const { brief, answer } = shown;
  const step = stepOf(brief.step, brief.unit);
  const circles = circlesOf(brief, answer);
  return answer.wedges.map((guide, i) => (
    <details key={guide.blockId} className="tree-list guide">
      <summary className="touch tall">
        The <Said text={printWithUnit(guide.strip, step)} /> wedge by any ruler, or none
      </summary>
      <ul>
        {guide.ways.map((way) => {
          const { how, slip } = sayWay(way, step);
          return (
            <li key={way.kind}>
              <Said text={`${how} ${slip}`} />
            </li>
          );
        })}
      </ul>
      <h3>How to read your ruler</h3>
      <ul>
        {sayReading(guide.reading, step).map((line) => (
          <li key={line}>
            <Said text={line} />
          </li>
        ))}
      </ul>
      <h3>Two rulers, the same number</h3>
      <ul>
        {rulersApart(brief, circles[i]).map((line) => (
          <li key={line}>
            <Said text={line} />
          </li>
        ))}
      </ul>
    </details>
  ));
}
