import { sayFrom, sayHands, sayStep, sayWaste } from "../../../core/answer/say/plan-words.ts";
import { stepOf } from "../../../core/measure/index.ts";
import { Said } from "../said.tsx";
import type { BodyProps } from "./body.ts";

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** Every cut of one fabric in its order, then its hands and the wedges that fall off. */
export function Cuts({ shown, fabricId }: { shown: BodyProps["shown"]; fabricId: string }) {
  const { brief, answer } = shown;
  const cutting = answer.cutting.find((c) => c.fabricId === fabricId);
  if (!cutting) return null;
  const step = stepOf(brief.step, brief.unit);
  const also = [...sayHands(cutting, answer), ...sayWaste(cutting, answer, step)];
  return (
    <details className="cuts">
      <summary className="touch">Cut by cut</summary>
      {cutting.orders.map((order) => (
        <section key={order.from}>
          <p>
            <Said text={`${capital(sayFrom(order, cutting, step))}, ${order.cuts} cuts`} />
          </p>
          <ol>
            {order.steps.map((s) => (
              <li key={s.number}>
                <Said text={capital(sayStep(s, answer, step))} />
              </li>
            ))}
          </ol>
        </section>
      ))}
      {also.map((line) => (
        <p key={line}>
          <Said text={`${line}.`} />
        </p>
      ))}
    </details>
  );
}
