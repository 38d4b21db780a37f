import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef } from "react";
import type { Stand, Window } from "./stand.ts";

export interface Standing {
  /** Goes there in 160 ms, at once where motion is not wanted. */
  readonly goTo: (stand: Stand) => void;
  /** Nearer or farther by this factor, this point of the quilt coming to the middle. */
  readonly zoom: (by: number, to?: { readonly x: number; readonly y: number }) => void;
  readonly toFit: () => void;
}

const NEARING_MS = 160;

/** Where the quilt stands under its window, moved by wheel, pinch, keys and buttons. */
export function useStand(
  canvas: RefObject<HTMLCanvasElement | null>,
  window: Window,
  fit: Stand,
  nearest: number,
  stand: RefObject<Stand | null>,
  moved: () => void,
): Standing {
  const fitted = useRef(true);
  const moving = useRef(0);
  const latest = useRef({ window, fit, nearest, moved });
  latest.current = { window, fit, nearest, moved };

  const set = useCallback(
    (next: Stand): void => {
      const { fit, nearest, moved } = latest.current;
      const scale = Math.min(nearest, Math.max(fit.scale, next.scale));
      fitted.current = scale <= fit.scale * 1.001;
      stand.current = fitted.current ? fit : within({ ...next, scale }, latest.current);
      moved();
    },
    [stand],
  );

  const goTo = useCallback(
    (to: Stand): void => {
      cancelAnimationFrame(moving.current);
      if (matchMedia("(prefers-reduced-motion: reduce)").matches) {
        set(to);
        return;
      }
      const from = stand.current ?? to;
      const start = performance.now();
      const frame = (now: number): void => {
        const k = Math.min(1, (now - start) / NEARING_MS);
        const scale = from.scale * (to.scale / from.scale) ** k;
        // The point that stays fixed between the two stands makes the way straight.
        const share =
          to.scale === from.scale
            ? k
            : (1 / from.scale - 1 / scale) / (1 / from.scale - 1 / to.scale);
        set({ scale, x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
        if (k < 1) moving.current = requestAnimationFrame(frame);
      };
      moving.current = requestAnimationFrame(frame);
    },
    [set, stand],
  );

  const zoomed = useCallback(
    (by: number, at?: { x: number; y: number }): Stand => {
      const { window: w, fit, nearest } = latest.current;
      const s = stand.current ?? latest.current.fit;
      const scale = Math.min(nearest, Math.max(fit.scale, s.scale * by));
      const dx = at ? at.x - (w.left + w.right) / 2 : 0;
      const dy = at ? at.y - (w.top + w.bottom) / 2 : 0;
      return {
        scale,
        x: s.x + dx / s.scale - dx / scale,
        y: s.y - dy / s.scale + dy / scale,
      };
    },
    [stand],
  );

  const zoom = useCallback(
    (by: number, to?: { x: number; y: number }) => goTo({ ...zoomed(by), ...to }),
    [goTo, zoomed],
  );
  const toFit = useCallback(() => goTo(latest.current.fit), [goTo]);

  // A new size or another quilt: what stood whole stands whole again.
  useLayoutEffect(() => {
    if (fitted.current || !stand.current) stand.current = fit;
  }, [fit, stand]);

  useEffect(() => {
    const el = canvas.current;
    if (!el) return;
    const wheel = (e: WheelEvent): void => {
      if (!e.ctrlKey) return;
      e.preventDefault();
      set(zoomed(Math.exp(-e.deltaY / 240), { x: e.offsetX, y: e.offsetY }));
    };
    el.addEventListener("wheel", wheel, { passive: false });
    const stop = pinch(el, (by, at, dx, dy) => {
      const next = zoomed(by, at);
      set({ ...next, x: next.x - dx / next.scale, y: next.y + dy / next.scale });
    });
    return () => {
      el.removeEventListener("wheel", wheel);
      stop();
      cancelAnimationFrame(moving.current);
    };
  }, [canvas, set, zoomed]);

  return { goTo, zoom, toFit };
}

/** Never so far aside that the window shows nothing of the quilt's middle. */
function within(s: Stand, { window: w, fit }: { window: Window; fit: Stand }): Stand {
  const halfX = (w.right - w.left) / 2;
  const halfY = (w.bottom - w.top) / 2;
  const mostX = Math.max(0, halfX / fit.scale - halfX / s.scale);
  const mostY = Math.max(0, halfY / fit.scale - halfY / s.scale);
  const hold = (v: number, most: number): number => Math.max(-most, Math.min(most, v));
  return { ...s, x: hold(s.x, mostX), y: hold(s.y, mostY) };
}

type Pinch = (by: number, at: { x: number; y: number }, dx: number, dy: number) => void;

/** Two fingers: how much nearer, about which point, and how far it was carried. One finger scrolls. */
function pinch(el: HTMLElement, on: Pinch): () => void {
  const fingers = new Map<number, { x: number; y: number }>();
  const at = (e: PointerEvent) => {
    const box = el.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  };
  const down = (e: PointerEvent): void => {
    if (e.pointerType === "touch") fingers.set(e.pointerId, at(e));
  };
  const move = (e: PointerEvent): void => {
    const before = fingers.get(e.pointerId);
    if (!before) return;
    const now = at(e);
    const other = [...fingers].find(([id]) => id !== e.pointerId)?.[1];
    if (other) {
      const far = (p: { x: number; y: number }): number =>
        Math.max(1, Math.hypot(p.x - other.x, p.y - other.y));
      const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
      on(far(now) / far(before), middle, (now.x - before.x) / 2, (now.y - before.y) / 2);
    }
    fingers.set(e.pointerId, now);
  };
  const up = (e: PointerEvent): void => void fingers.delete(e.pointerId);
  // Two fingers belong to the picture; one scrolls the page.
  const hold = (e: TouchEvent): void => {
    if (e.touches.length > 1) e.preventDefault();
  };
  el.addEventListener("pointerdown", down);
  el.addEventListener("pointermove", move);
  el.addEventListener("pointerup", up);
  el.addEventListener("pointercancel", up);
  el.addEventListener("touchmove", hold, { passive: false });
  return () => {
    el.removeEventListener("pointerdown", down);
    el.removeEventListener("pointermove", move);
    el.removeEventListener("pointerup", up);
    el.removeEventListener("pointercancel", up);
    el.removeEventListener("touchmove", hold);
  };
}
