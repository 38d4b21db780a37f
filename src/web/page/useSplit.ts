import { type RefObject, useLayoutEffect, useState } from "react";

/**
 * Where the sentence parts when a word opens: the index of the first piece of text that stands on a
 * line below the word. Measured while the sentence is whole; `null` while no word is open. Pieces
 * carry `data-at`, words `data-word`.
 */
export function useSplit(
  sentence: RefObject<HTMLElement | null>,
  word: string | null,
  text: string,
): number | null {
  const [split, setSplit] = useState<number | null>(null);
  const [width, setWidth] = useState(0);

  useLayoutEffect(() => {
    const el = sentence.current;
    if (!el) return;
    const seen = new ResizeObserver(([entry]) => setWidth(Math.round(entry.contentRect.width)));
    seen.observe(el);
    return () => seen.disconnect();
  }, [sentence]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: width and text move the lines
  useLayoutEffect(() => {
    const el = sentence.current;
    if (!el || word === null) {
      setSplit(null);
      return;
    }
    setSplit(measure(el, word));
  }, [sentence, word, text, width]);

  return word === null ? null : split;
}

/** Measured with the opening out of the way, so that an open sentence splits where a whole one would. */
function measure(el: HTMLElement, word: string): number {
  el.classList.add("measuring");
  const pieces = [...el.querySelectorAll<HTMLElement>("[data-at]")];
  const own = pieces.filter((p) => p.closest(`[data-word="${CSS.escape(word)}"]`));
  const bottomOf = (p: HTMLElement): number => p.getClientRects()[0]?.bottom ?? 0;
  const lowest = Math.max(...own.map(bottomOf));
  const next = pieces.find((p) => bottomOf(p) > lowest + 4);
  el.classList.remove("measuring");
  return next ? Number(next.dataset.at) : pieces.length;
}
