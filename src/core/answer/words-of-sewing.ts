import type { Brief } from "../brief/index.ts";
import { type Change, choiceWord, lengthWord, type WordSpec } from "./words.ts";

/** "1/4 in": the seam everything is sewn with. */
export function seamWord(b: Brief): WordSpec {
  const common = b.unit === "in" ? ["1/4", "3/8", "7 mm"] : ["6", "7", "1/4 in"];
  const list = common.includes(b.seam) ? common : [b.seam, ...common.slice(0, 2)];
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
      label: /[a-z]/.test(text) ? text : `${text} ${b.unit}`,
      change: write(text),
      picture: "cover",
    })),
  });
}

/** "to the 1/8 in": the marks of the maker's ruler. */
export function stepWord(b: Brief): WordSpec {
  const common = b.unit === "in" ? ["1/4", "1/8", "1/16", "1/32"] : ["1", "2", "2.5", "5"];
  const list = common.includes(b.step) ? common : [b.step, ...common.slice(1)];
  return choiceWord({
    id: "step",
    role: "Marks of the ruler",
    path: "step",
    text: `${b.step} ${b.unit}`,
    options: list.map((step) => ({
      label: `${step} ${b.unit}`,
      change: (d) => {
        d.step = step;
      },
      picture: "none",
    })),
  });
}
