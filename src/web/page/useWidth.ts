import { type RefObject, useLayoutEffect, useRef, useState } from "react";

/** Width of an element in whole CSS pixels, followed as it changes; 0 before it is known. */
export function useWidth<T extends HTMLElement>(): [RefObject<T | null>, number] {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const el = ref.current;
    if (!el) return;
    // At once, for a page that is opened to be printed; then as it changes.
    setWidth(Math.round(el.getBoundingClientRect().width));
    const seen = new ResizeObserver(([entry]) => setWidth(Math.round(entry.contentRect.width)));
    seen.observe(el);
    return () => seen.disconnect();
  }, []);
  return [ref, width];
}
