import { type RefObject, useCallback, useEffect, useRef, useState } from "react";
import type { Unit } from "../../../core/measure/unit.ts";
import type { Swatches } from "../../../core/picture/swatch.ts";
import type { Theme } from "../../../core/picture/theme.ts";
import { type Layer, Painter } from "./Painter.ts";
import { paintRulers, type Size } from "./rulers.ts";
import type { Stand, Window } from "./stand.ts";

/** What one frame shows, given where the quilt stands. */
export interface Scene {
  readonly window: Window;
  readonly width: number;
  /** Room under the window for the tape. */
  readonly foot: number;
  readonly layers: (stand: Stand) => readonly Layer[];
  readonly theme: Theme;
  readonly swatches: Swatches;
  readonly size: Size;
  readonly unit: Unit;
  readonly leftRuler: boolean;
  /** Told of every frame: what stands over the canvas moves with it. */
  readonly onFrame: (stand: Stand) => void;
}

const STILL_MS = 120;

/**
 * Paints in the frame after whatever changed, never in the change itself. `moved` also tells React,
 * once the quilt stands still again.
 */
export function usePainting(canvas: RefObject<HTMLCanvasElement | null>) {
  const scene = useRef<Scene | null>(null);
  const stand = useRef<Stand | null>(null);
  const painter = useRef<Painter | null>(null);
  const frame = useRef(0);
  const still = useRef<ReturnType<typeof setTimeout>>(undefined);
  const moving = useRef(false);
  const [, setStill] = useState(0);

  const paint = useCallback((): void => {
    cancelAnimationFrame(frame.current);
    frame.current = requestAnimationFrame(() => {
      const el = canvas.current;
      const s = scene.current;
      if (!el || !s || !stand.current || s.width === 0) return;
      painter.current ??= new Painter(el, paint);
      paintScene(el, painter.current, s, stand.current, moving.current);
    });
  }, [canvas]);

  const moved = useCallback((): void => {
    moving.current = true;
    paint();
    clearTimeout(still.current);
    still.current = setTimeout(() => {
      moving.current = false;
      paint();
      setStill((n) => n + 1);
    }, STILL_MS);
  }, [paint]);

  useEffect(() => {
    // The figures of the tapes wait for their face.
    void document.fonts?.ready.then(paint);
    return () => {
      cancelAnimationFrame(frame.current);
      clearTimeout(still.current);
    };
  }, [paint]);

  return { scene, stand, paint, moved };
}

function paintScene(
  el: HTMLCanvasElement,
  painter: Painter,
  s: Scene,
  stand: Stand,
  moving: boolean,
): void {
  const hidpi = Math.min(3, devicePixelRatio || 1);
  const tall = s.window.bottom + s.foot;
  if (el.width !== Math.round(s.width * hidpi) || el.height !== Math.round(tall * hidpi)) {
    el.width = Math.round(s.width * hidpi);
    el.height = Math.round(tall * hidpi);
  }
  painter.show(s.layers(stand), s.theme, s.swatches);
  if (!painter.paint(stand, s.window, hidpi, moving)) return;
  s.onFrame(stand);
  const ctx = el.getContext("2d");
  if (!ctx) return;
  ctx.setTransform(hidpi, 0, 0, hidpi, 0, 0);
  paintRulers(ctx, stand, s.window, s.size, s.unit, s.theme, { left: s.leftRuler });
}
