import type { Tap } from "../../../core/fabric/index.ts";
import { type Mark, Marks } from "./Marks.tsx";
import type { Box, Opened } from "./messages.ts";
import { useAddress } from "./useAddress.ts";

interface ShapingProps {
  readonly opened: Opened;
  readonly taps: readonly Tap[];
  readonly onTaps: (taps: readonly Tap[]) => void;
  readonly crop: Box;
  readonly onCrop: (crop: Box) => void;
}

/** Least that may be left between two sides of the crop, in pixels. */
const LEAST = 24;
const SIDES = ["left", "right", "top", "bottom"] as const;

/** The picture with two rings on a known length and four lines that crop it: dragged, or by arrows. */
export function Shaping({ opened, taps, onTaps, crop, onCrop }: ShapingProps) {
  const { width, height, picture } = opened;
  const address = useAddress(picture);
  const tap = (at: Tap): void => onTaps(taps.length === 1 ? [taps[0], at] : [at]);
  /** Without a pointer the rings begin near the picture's sides. */
  const start = (): void =>
    onTaps([
      { x: crop.left + (crop.right - crop.left) * 0.1, y: height / 2 },
      { x: crop.left + (crop.right - crop.left) * 0.9, y: height / 2 },
    ]);
  const rings = taps.map(
    (at, i): Mark => ({
      id: `ring-${i}`,
      kind: "ring",
      at,
      label: `${i === 0 ? "First" : "Second"} ring, ${Math.round(at.x)} across, ${Math.round(at.y)} down; arrows move it`,
    }),
  );
  const lines = SIDES.map((side): Mark => {
    const upright = side === "left" || side === "right";
    return {
      id: side,
      kind: upright ? "upright" : "level",
      at: crop[side],
      label: `Crop, ${side} side`,
      says: `${Math.round(crop[side])} of ${upright ? width : height} pixels`,
    };
  });
  const move = (id: string, to: Tap): void => {
    const ring = /^ring-(\d)$/.exec(id);
    if (ring) onTaps(taps.map((t, i) => (i === Number(ring[1]) ? to : t)));
    else onCrop(cropMoved(crop, id as (typeof SIDES)[number], to));
  };
  const { left, top, right, bottom } = crop;
  return (
    <>
      <p className="small">
        Tap both ends of a length you know, such as a ruler laid on the fabric. Drag the lines in
        from the sides to crop.{" "}
        <button type="button" className="touch tall" onClick={start}>
          Set the rings for the arrow keys
        </button>
      </p>
      <Marks
        box={{ x: 0, y: 0, width, height }}
        label="The picture of the fabric"
        marks={[...lines, ...rings]}
        onMove={move}
        onTap={tap}
      >
        <image href={address} width={width} height={height} />
        <path
          className="veil"
          fillRule="evenodd"
          d={`M0 0H${width}V${height}H0ZM${left} ${top}V${bottom}H${right}V${top}Z`}
        />
        {taps.length === 2 && <line x1={taps[0].x} y1={taps[0].y} x2={taps[1].x} y2={taps[1].y} />}
      </Marks>
    </>
  );
}

/** One side moved, never nearer to its opposite than is worth looking at. */
export function cropMoved(crop: Box, side: (typeof SIDES)[number], to: Tap): Box {
  const at = { left: to.x, right: to.x, top: to.y, bottom: to.y }[side];
  switch (side) {
    case "left":
      return { ...crop, left: Math.min(at, crop.right - LEAST) };
    case "right":
      return { ...crop, right: Math.max(at, crop.left + LEAST) };
    case "top":
      return { ...crop, top: Math.min(at, crop.bottom - LEAST) };
    case "bottom":
      return { ...crop, bottom: Math.max(at, crop.top + LEAST) };
  }
}
