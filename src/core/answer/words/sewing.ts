import type { Brief } from "../../brief/index.ts";
import { type Change, choiceWord, lengthWord, shownLength, type WordSpec } from "./word.ts";

/** "1/4 in": the seam everything is sewn with. */
export function seamWord(b: Brief): WordSpec {
  const common = b.unit === "in" ? ["1/4", "3/8", "7 mm"] : ["6", "7", "1/4 in"];
  const same = (text: string): boolean => shownLength(text, b.unit) === shownLength(b.seam, b.unit);
  const list = common.some(same)
    ? common.map((text) => (same(text) ? b.seam : text))
    : [b.seam, ...common.slice(0, 2)];
  const write =
    (text: string): Change =>
    (d) => {
      d.seam = text;
    };
  return lengthWord(b, {
    id: "seam",
    role: "Seam allowance",
    path: "seam",
    value: b.seam,
    write: (d, text) => write(text)(d),
    picture: "cover",
    offers: list.map((text) => ({
      label: shownLength(text, b.unit),
      change: write(text),
      picture: "cover",
    })),
  });
}

/** "to the 1/8 in": the marks of the maker's ruler. */
export function stepWord(b: Brief): WordSpec {
  const common = b.unit === "in" ? ["1/4", "1/8", "1/16", "1/32"] : ["1", "2", "2.5", "5"];
  const show = (step: string): string => shownLength(step, b.unit);
  const there = common.some((step) => show(step) === show(b.step));
  const list = there ? common : [b.step, ...common.slice(1)];
  return choiceWord({
    id: "step",
    role: "Marks of the ruler",
    path: "step",
    text: show(b.step),
    options: list.map((step) => ({
      label: show(step),
      change: (d) => {
        d.step = step;
      },
      picture: "none",
    })),
  });
}
