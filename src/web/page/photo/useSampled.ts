import { useEffect, useState } from "react";
import type { Found } from "./messages.ts";

/** The picture's mean color between two distances above its middle, square to its bands. */
export type Sampled = (from: number, to: number) => string;

/** Columns that the picture is drawn into: enough to even out weave and specks. */
const WIDE = 64;

/** Reads colors off the picture as it lies with its bands level; null until it is decoded. */
export function useSampled(found: Found): Sampled | null {
  const [sampled, setSampled] = useState<Sampled | null>(null);
  useEffect(() => {
    const image = new Image();
    image.onload = () => setSampled(() => sampler(image, found));
    image.src = found.data;
    return () => {
      image.onload = null;
      setSampled(null);
    };
  }, [found]);
  return sampled;
}

function sampler(image: HTMLImageElement, { width, height, tilt }: Found): Sampled {
  const high = Math.abs(tilt) > 45 ? width : height;
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [WIDE, high];
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) return () => "#888888";
  context.translate(WIDE / 2, high / 2);
  context.rotate((tilt * Math.PI) / 180);
  context.drawImage(image, -width / 2, -height / 2, width, height);
  return (from, to) => {
    // The middle half of the band: its edges may be blurred.
    const [low, up] = [from + (to - from) / 4, to - (to - from) / 4];
    const top = Math.max(0, Math.min(high - 1, Math.round(high / 2 - up)));
    const rows = Math.max(1, Math.min(high - top, Math.round(up - low)));
    return meanColor(context.getImageData(WIDE / 4, top, WIDE / 2, rows).data);
  };
}

function meanColor(data: Uint8ClampedArray): string {
  const sums = [0, 0, 0];
  for (let i = 0; i < data.length; i += 4) for (let k = 0; k < 3; k++) sums[k] += data[i + k];
  const hex = sums.map((s) =>
    Math.round((4 * s) / data.length)
      .toString(16)
      .padStart(2, "0"),
  );
  return `#${hex.join("")}`;
}
