import type { ReactNode } from "react";

/** A table that may be wider than a phone: it can be scrolled by keys too, and says what it is. */
export function Scroll({ what, children }: { what: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
    <section className="scroll" aria-label={what} tabIndex={0}>
      {children}
    </section>
  );
}
