import { useEffect, useRef, useState } from "react";
import type { Page, Sheet } from "../../../core/sheet/model.ts";
import { choose, useChoices } from "./choices.ts";
import { PageDrawing } from "./PageDrawing.tsx";
import { Structure } from "./Structure.tsx";

/** Every page of a sheet: to be seen, and to be read aloud as headings, tables and text. */
export function Pages({ sheet, busy }: { sheet: Sheet; busy: boolean }) {
  const { large } = useChoices();
  const count = sheet.pages.length;
  return (
    <div className="preview" aria-busy={busy}>
      <fieldset className="picks">
        <legend className="soft">{count === 1 ? "One page" : `${count} pages`}, shown</legend>
        {[false, true].map((l) => (
          <label key={String(l)} className="pick">
            <input
              type="radio"
              name="page-size"
              checked={l === large}
              onChange={() => choose({ large: l })}
            />
            <span>{l ? "large, one below the other" : "beside each other"}</span>
          </label>
        ))}
      </fieldset>
      <ol
        className={`pages ${large ? "large" : ""}`}
        aria-label={sheet.title}
        // Wider than a phone, it is moved by keys.
        tabIndex={large ? 0 : undefined}
      >
        {sheet.pages.map((page, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a page is known by its place
          <li key={i} aria-label={`Page ${i + 1} of ${count}`}>
            <Seen page={page} number={i} />
            <Structure page={page} />
          </li>
        ))}
      </ol>
    </div>
  );
}

/** Draws a page once it comes near the screen, and keeps it. */
function Seen({ page, number }: { page: Page; number: number }) {
  const ref = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState(number < 2);
  useEffect(() => {
    const box = ref.current;
    if (near || !box) return;
    const watch = new IntersectionObserver(
      (seen) => seen.some((s) => s.isIntersecting) && setNear(true),
      { rootMargin: "100%" },
    );
    watch.observe(box);
    return () => watch.disconnect();
  }, [near]);
  return (
    <div
      ref={ref}
      className="paper"
      aria-hidden="true"
      style={{ aspectRatio: `${page.width} / ${page.height}` }}
    >
      {near && <PageDrawing page={page} prefix={`page${number}`} />}
    </div>
  );
}
