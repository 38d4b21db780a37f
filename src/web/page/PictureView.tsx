import { type PointerEvent, useCallback, useId } from "react";
import { spoken } from "../../core/answer/say/spoken.ts";
import { type Drawing, draw } from "../../core/picture/draw.ts";
import type { Picture } from "../../core/picture/marks.ts";
import type { Swatches } from "../../core/picture/swatch.ts";
import { SvgDrawing } from "./Drawing.tsx";
import { useInTurn } from "./inTurn.ts";
import { useTheme } from "./useTheme.ts";
import { useWidth } from "./useWidth.ts";
import { useView } from "./view.ts";

export interface PictureViewProps {
  /** Makes the picture with small print of this height, in its own unit. */
  readonly make: (small: number) => Picture;
  readonly swatches: Swatches;
  /** Small print in CSS pixels. */
  readonly small?: number;
  /** Most CSS pixels to one unit of the picture: 96 to the inch is life size. */
  readonly most?: number;
  /** Exactly so many CSS pixels to the unit, however wide the column. */
  readonly exactly?: number;
  readonly lit?: ReadonlySet<string>;
  readonly label?: string;
  /** Id of the part under the pointer, or null when it leaves. */
  readonly onPoint?: (id: string | null) => void;
  readonly className?: string;
}

const idAt = (e: PointerEvent): string | null =>
  (e.target as Element).closest<SVGElement>("[data-id]")?.dataset.id ?? null;

/** A picture of the core, to scale, as wide as its column lets it be. */
export function PictureView(p: PictureViewProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const theme = useTheme();
  const prefix = useId().replace(/[^a-z0-9]/gi, "");
  const { make, swatches, small = 17, most = 96, exactly, lit } = p;
  const printing = useView((v) => v.printing);
  const drawn = useCallback((): Drawing | null => {
    if (width === 0) return null;
    const scaleOf = (picture: Picture): number => exactly ?? Math.min(most, width / picture.width);
    const picture = fitted(make, small, exactly ?? most, scaleOf);
    const scale = scaleOf(picture);
    return draw(picture, { theme, swatches, scale, small, ...(lit ? { lit } : {}) });
  }, [make, swatches, theme, width, small, most, exactly, lit]);
  const drawing = useInTurn(drawn, printing);
  return (
    <div
      ref={ref}
      className={`picture ${p.className ?? ""}`}
      onPointerMove={p.onPoint && ((e) => p.onPoint?.(idAt(e)))}
      onPointerLeave={p.onPoint && (() => p.onPoint?.(null))}
    >
      {drawing && (
        <SvgDrawing drawing={drawing} prefix={prefix} label={spoken(p.label ?? drawing.title)} />
      )}
    </div>
  );
}

/** Labels take room of their own, so the scale is found by approaching it, three times at most. */
function fitted(
  make: PictureViewProps["make"],
  small: number,
  first: number,
  scaleOf: (picture: Picture) => number,
): Picture {
  let scale = first;
  let picture = make(small / scale);
  for (let i = 0; i < 3 && Math.abs(scaleOf(picture) / scale - 1) > 0.002; i++) {
    scale = scaleOf(picture);
    picture = make(small / scale);
  }
  return picture;
}
