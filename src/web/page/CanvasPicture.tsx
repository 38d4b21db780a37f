import { useEffect, useMemo, useRef } from "react";
import { spoken } from "../../core/answer/say/spoken.ts";
import type { Length } from "../../core/measure/unit.ts";
import type { Picture } from "../../core/picture/marks.ts";
import type { Swatches } from "../../core/picture/swatch.ts";
import { Painter } from "./quilt/Painter.ts";
import { useTheme } from "./useTheme.ts";
import { useWidth } from "./useWidth.ts";

interface CanvasPictureProps {
  readonly picture: Picture;
  readonly swatches: Swatches;
  readonly reach: Length;
  /** Most CSS pixels high. */
  readonly high: number;
  /** Exactly so many CSS pixels to the unit, so that pictures side by side share one scale. */
  readonly scale?: number;
}

/** A picture with many stamps, painted rather than built: a small quilt among choices. */
export function CanvasPicture({ picture, swatches, reach, high, scale }: CanvasPictureProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const theme = useTheme();
  const at = useMemo(() => {
    const own = scale ?? Math.min(width / picture.width, high / picture.height);
    return { scale: own, wide: picture.width * own, tall: picture.height * own };
  }, [picture, width, high, scale]);
  useEffect(() => {
    const el = canvas.current;
    if (!el || width === 0) return;
    const hidpi = Math.min(3, devicePixelRatio || 1);
    el.width = Math.ceil(at.wide * hidpi);
    el.height = Math.ceil(at.tall * hidpi);
    el.style.setProperty("width", `${at.wide}px`);
    el.style.setProperty("height", `${at.tall}px`);
    const stand = {
      x: picture.left + picture.width / 2,
      y: picture.bottom + picture.height / 2,
      scale: at.scale,
    };
    let shown = true;
    const painter = new Painter(el, () => requestAnimationFrame(frame));
    const frame = (): void => {
      const w = { left: 0, top: 0, right: at.wide, bottom: at.tall };
      if (shown) painter.paint(stand, w, hidpi, false);
    };
    painter.show([{ picture, reach }], theme, swatches);
    frame();
    return () => {
      shown = false;
    };
  }, [picture, swatches, reach, theme, width, at]);
  return (
    <div ref={ref} className="picture">
      <canvas ref={canvas} role="img" aria-label={spoken(picture.title)} />
    </div>
  );
}
