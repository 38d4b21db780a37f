import { useCallback } from "react";
import type { Picture } from "../../../../core/picture/marks.ts";
import { readingPicture } from "../../../../core/picture/reading.ts";
import type { ReadingName } from "../../../../core/sewing/readings.ts";
import { PictureView } from "../../PictureView.tsx";

const NO_SWATCHES = {};

/** What to lay the ruler on, in the accent. */
export function ReadingPicture({ name, n }: { name: ReadingName; n: number }) {
  const make = useCallback((small: number): Picture => readingPicture(name, n, small), [name, n]);
  return <PictureView make={make} swatches={NO_SWATCHES} small={12} most={60} />;
}
