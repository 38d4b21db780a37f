import { useMemo } from "react";
import { draw } from "../../core/picture/draw.ts";
import type { Picture } from "../../core/picture/marks.ts";
import type { Swatch as OneSwatch, Swatches } from "../../core/picture/swatch.ts";
import { SvgDrawing } from "./Drawing.tsx";
import { useTheme } from "./useTheme.ts";

const WIDE = 34;
const HIGH = 24;

/** A bit of the real fabric, as small as a stamp: its color, its bands, in gray its hatch. */
export function Swatch({
  swatch,
  swatches,
}: {
  swatch: OneSwatch | undefined;
  swatches: Swatches;
}) {
  const theme = useTheme();
  const drawing = useMemo(() => {
    if (!swatch) return null;
    const look = swatch.look;
    const tall = look.kind === "bands" ? (look.bands.at(-1)?.to ?? 1) : 1;
    const width = (tall * WIDE) / HIGH;
    const polygon = [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: tall },
      { x: 0, y: tall },
    ];
    const picture: Picture = {
      title: swatch.name,
      unit: "in",
      left: 0,
      bottom: 0,
      width,
      height: tall,
      stamps: {},
      marks: [
        {
          kind: "shape",
          polygon,
          fill: { kind: "fabric", fabricId: swatch.fabricId },
        },
        { kind: "shape", polygon, line: "hair" },
      ],
    };
    return draw(picture, { theme, swatches, scale: HIGH / tall });
  }, [swatch, swatches, theme]);
  if (!drawing) return null;
  return (
    <span className="swatch" aria-hidden="true">
      <SvgDrawing drawing={drawing} prefix={`sw-${swatch?.fabricId}-`} label="" />
    </span>
  );
}
