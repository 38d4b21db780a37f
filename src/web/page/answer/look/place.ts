import { onPicture } from "../../../../core/answer/words/place-words.ts";
import { printAs, shownLength, stepOfBrief } from "../../../../core/answer/words/word.ts";
import type { Brief } from "../../../../core/brief/index.ts";
import type { AlikePlace, PhotoLook } from "../../../../core/fabric/index.ts";
import { phase } from "../../../../core/fabric/index.ts";
import { knownLength } from "../../../../core/measure/index.ts";

/** A place on a print as it is typed and kept. */
export interface PlaceText {
  readonly x: string;
  readonly y: string;
  readonly turn: number;
}

export const placeOfText = (b: Brief, at: PlaceText): AlikePlace => ({
  x: knownLength(at.x, b.unit),
  y: knownLength(at.y, b.unit),
  turn: at.turn,
});

/** Within the first repeat, or within the picture, on the mark of the maker's ruler that is nearest. */
export function onMarks(b: Brief, look: PhotoLook, at: AlikePlace): PlaceText {
  const step = stepOfBrief(b);
  const size = step.size.valueOf();
  const text = (x: number, repeat: number | undefined, most: number): string => {
    const within = repeat ? phase(x, repeat) : Math.min(most, Math.max(0, x));
    const steps = Math.round(within / size);
    const last = Math.floor((repeat ?? most) / size + 1e-9);
    return printAs("", Math.min(steps, last) * size, step);
  };
  return {
    x: text(at.x, look.repeat?.across, look.width),
    y: text(at.y, look.repeat?.along, look.height),
    turn: at.turn,
  };
}

export const placeWords = ({ unit }: Pick<Brief, "unit">, at: PlaceText): string =>
  onPicture(shownLength(at.x, unit), shownLength(at.y, unit), at.turn);
