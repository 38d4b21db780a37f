import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from "react";
import { draw } from "../../../../core/picture/draw.ts";
import { ON_FABRIC, type PlacePicture as Placed } from "../../../../core/picture/place.ts";
import type { Swatches } from "../../../../core/picture/swatch.ts";
import { SvgDrawing } from "../../Drawing.tsx";
import { useTheme } from "../../useTheme.ts";
import { useWidth } from "../../useWidth.ts";

interface PlacePictureProps {
  readonly make: (small: number) => Placed;
  readonly swatches: Swatches;
  /** Most CSS pixels to the unit. */
  readonly most: number;
  /** The handle's name: what it is and where it lies. */
  readonly label: string;
  /** The middle of the piece moved to this place of the photo. */
  readonly onMove: (x: number, y: number) => void;
  /** An arrow: steps to the right and up; `far` with shift. */
  readonly onStep: (right: number, up: number, far: boolean) => void;
}

const SMALL = 17;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Four lives whose piece is moved over its fabric: dragged, put down by a tap, or by arrows. */
export function PlacePicture({ make, swatches, most, label, onMove, onStep }: PlacePictureProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const theme = useTheme();
  const drag = useRef<{ readonly dx: number; readonly dy: number } | null>(null);
  const shown = useMemo(() => {
    if (width === 0) return null;
    const scaleOf = (p: Placed): number => Math.min(most, width / p.picture.width);
    let placed = make(SMALL / most);
    for (let i = 0; i < 3; i++) placed = make(SMALL / scaleOf(placed));
    const scale = scaleOf(placed);
    const drawing = draw(placed.picture, { theme, swatches, scale, small: SMALL });
    return { placed, scale, drawing };
  }, [make, swatches, theme, width, most]);

  /** A pointer's place on the photo, in real units. */
  const onPhoto = (e: PointerEvent): { x: number; y: number } | null => {
    const box = ref.current?.querySelector("svg")?.getBoundingClientRect();
    if (!box || !shown) return null;
    const { picture, origin } = shown.placed;
    const x = picture.left + (e.clientX - box.left) / shown.scale;
    const y = picture.bottom + picture.height - (e.clientY - box.top) / shown.scale;
    return { x: x - origin.x, y: y - origin.y };
  };
  const down = (e: PointerEvent<HTMLDivElement>): void => {
    const at = onPhoto(e);
    const taken = (e.target as Element).closest(`[data-id="${ON_FABRIC}"], .grip`);
    if (!at || !taken || !shown) return;
    const { middle, origin } = shown.placed;
    drag.current = { dx: middle.x - origin.x - at.x, dy: middle.y - origin.y - at.y };
    e.currentTarget.setPointerCapture(e.pointerId);
  };
  const move = (e: PointerEvent<HTMLDivElement>): void => {
    const at = drag.current && onPhoto(e);
    if (at && drag.current) onMove(at.x + drag.current.dx, at.y + drag.current.dy);
  };
  const up = (): void => {
    drag.current = null;
  };
  const tap = (e: PointerEvent<HTMLDivElement>): void => {
    const at = onPhoto(e);
    const dragged = drag.current !== null;
    up();
    if (!at || !shown || dragged) return;
    const { window: w, origin } = shown.placed;
    const [x, y] = [at.x + origin.x, at.y + origin.y];
    if (x > w.left && x < w.right && y > w.bottom && y < w.top) onMove(at.x, at.y);
  };
  const keys = (e: KeyboardEvent): void => {
    const by = ARROWS[e.key];
    if (!by) return;
    e.preventDefault();
    onStep(by[0], by[1], e.shiftKey);
  };
  return (
    <div
      ref={ref}
      className="picture placing"
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={tap}
      onPointerCancel={up}
    >
      {shown && (
        <>
          <SvgDrawing drawing={shown.drawing} prefix="place-" label={shown.drawing.title} />
          <button
            type="button"
            className="grip"
            aria-label={label}
            onKeyDown={keys}
            style={{
              left: (shown.placed.middle.x - shown.placed.picture.left) * shown.scale,
              top:
                (shown.placed.picture.bottom +
                  shown.placed.picture.height -
                  shown.placed.middle.y) *
                shown.scale,
            }}
          />
        </>
      )}
    </div>
  );
}
