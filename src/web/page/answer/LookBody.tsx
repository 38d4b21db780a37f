import { lazy, Suspense } from "react";
import type { BodyProps } from "./body.ts";
import { BlockLook } from "./look/BlockLook.tsx";

const Look = lazy(() => import("./look/Look.tsx"));

/** What the fabric will look like; every kind of block at once, the rest when it has come. */
export function LookBody(p: BodyProps) {
  return (
    <Suspense fallback={<Plain {...p} />}>
      <Look {...p} />
    </Suspense>
  );
}

/** Every kind of block with the real fabric in each patch, side by side at one scale. */
function Plain({ shown }: BodyProps) {
  return (
    <ul className="blocks">
      {shown.answer.blocks.map((b) => (
        <li key={b.id}>
          <BlockLook block={b} shown={shown} />
          <p>
            <b>{b.name}</b>
          </p>
        </li>
      ))}
    </ul>
  );
}
