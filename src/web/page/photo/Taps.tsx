import { type KeyboardEvent, type PointerEvent, useEffect, useMemo } from "react";
import type { Tap } from "../../../core/fabric/index.ts";
import type { Opened } from "./messages.ts";

interface TapsProps {
  readonly opened: Opened;
  readonly taps: readonly Tap[];
  readonly onTaps: (taps: readonly Tap[]) => void;
}

/** The picture with two rings on a known length: tapped, and moved by arrows. */
export function Taps({ opened, taps, onTaps }: TapsProps) {
  const { width, height, picture } = opened;
  const address = useMemo(() => URL.createObjectURL(picture), [picture]);
  useEffect(() => () => URL.revokeObjectURL(address), [address]);
  const both: readonly Tap[] = taps.length === 2 ? taps : [];

  const tap = (e: PointerEvent<SVGSVGElement>): void => {
    const box = e.currentTarget.getBoundingClientRect();
    const at = {
      x: ((e.clientX - box.left) / box.width) * width,
      y: ((e.clientY - box.top) / box.height) * height,
    };
    onTaps(taps.length === 1 ? [taps[0], at] : [at]);
  };
  /** Without a pointer the rings begin at the picture's sides. */
  const start = (): void =>
    onTaps([
      { x: width * 0.1, y: height / 2 },
      { x: width * 0.9, y: height / 2 },
    ]);
  const move = (i: number) => (e: KeyboardEvent) => {
    const by = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[
      e.key
    ];
    if (!by) return;
    e.preventDefault();
    const step = e.shiftKey ? 10 : 1;
    const within = (v: number, most: number): number => Math.min(most, Math.max(0, v));
    onTaps(
      both.map((t, k) =>
        k === i
          ? { x: within(t.x + by[0] * step, width), y: within(t.y + by[1] * step, height) }
          : t,
      ),
    );
  };
  const ring = Math.max(width, height) / 60;
  return (
    <>
      <p className="small">
        Tap both ends of a length you know, such as a ruler laid on the fabric.{" "}
        <button type="button" className="touch tall" onClick={start}>
          Set the rings for the arrow keys
        </button>
      </p>
      <svg
        className="taps"
        viewBox={`0 0 ${width} ${height}`}
        aria-label="The picture of the fabric"
        onPointerDown={tap}
      >
        <image href={address} width={width} height={height} />
        {both.length === 2 && <line x1={both[0].x} y1={both[0].y} x2={both[1].x} y2={both[1].y} />}
        {taps.map((t, i) => (
          // biome-ignore lint/a11y/useSemanticElements: a ring on a picture
          <circle
            // biome-ignore lint/suspicious/noArrayIndexKey: the first and the second ring
            key={i}
            role="button"
            tabIndex={0}
            aria-label={`${i === 0 ? "First" : "Second"} ring, ${Math.round(t.x)} across, ${Math.round(t.y)} down; arrows move it`}
            cx={t.x}
            cy={t.y}
            r={ring}
            onKeyDown={move(i)}
          />
        ))}
      </svg>
    </>
  );
}
