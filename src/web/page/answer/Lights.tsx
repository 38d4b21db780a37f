import type { ReactNode } from "react";
import { view } from "../view.ts";

/** A row that lights what it speaks of in the quilt. */
export function Lights({
  ids,
  className = "",
  children,
}: {
  ids: readonly string[];
  className?: string;
  children: ReactNode;
}) {
  const light = (on: boolean): void => view.setState({ lines: on ? ids : [] });
  return (
    <tr
      className={className}
      onPointerEnter={(e) => e.pointerType === "mouse" && light(true)}
      onPointerLeave={() => light(false)}
      onFocus={() => light(true)}
      onBlur={() => light(false)}
    >
      {children}
    </tr>
  );
}
