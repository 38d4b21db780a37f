import { useCallback } from "react";
import { sayRipple } from "../../../core/shop/index.ts";
import type { Answered } from "../answers.ts";
import { shopWorker, useAsked } from "./asking.ts";

/** A quiet note on the page when something that was handed out is now wrong. */
export function RippleNote({ now: { brief, answer } }: { now: Answered }) {
  const asked = useAsked(
    useCallback(() => shopWorker.ask("note", "ripple", brief, answer), [brief, answer]),
  );
  if (!asked.value || asked.value.length === 0) return null;
  return (
    <p className="soft ripple-note" role="status">
      {sayRipple(asked.value)}{" "}
      <a className="touch" href="#shop">
        See which, and print a correction
      </a>
    </p>
  );
}
