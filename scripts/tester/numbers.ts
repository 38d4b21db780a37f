/** Reading numbers off a page: `4 1⁄2`, `1⁄4`, `0.152`, `64 1⁄2 × 24 1⁄2 in`. */
const NUMBER = "(?:\\d+ \\d+[\u2044/]\\d+|\\d+[\u2044/]\\d+|\\d+(?:\\.\\d+)?)";

export function numberIn(text: string): number | undefined {
  const m = new RegExp(NUMBER).exec(text);
  return m ? valueOfText(m[0]) : undefined;
}

export const numbersIn = (text: string): number[] =>
  [...text.matchAll(new RegExp(NUMBER, "g"))].map((m) => valueOfText(m[0]));

function valueOfText(text: string): number {
  const [whole, fraction] = text.includes(" ")
    ? text.split(" ")
    : /[\u2044/]/.test(text)
      ? ["0", text]
      : [text, "0/1"];
  const [above, below] = fraction.split(/[\u2044/]/).map(Number);
  return Number(whole) + above / below;
}

/** Both sides of `64 × 24 in`. */
export function sidesIn(text: string): [number, number] | undefined {
  const m = new RegExp(`(${NUMBER}) × (${NUMBER})`).exec(text);
  return m ? [valueOfText(m[1]), valueOfText(m[2])] : undefined;
}

/** The number right after some words. */
export function after(text: string, words: string): number | undefined {
  const m = new RegExp(`${words}\\s*(${NUMBER})`, "i").exec(text);
  return m ? valueOfText(m[1]) : undefined;
}

/** The number right before some words. */
export function before(text: string, words: string): number | undefined {
  const m = new RegExp(`(${NUMBER})\\s*${words}`, "i").exec(text);
  return m ? valueOfText(m[1]) : undefined;
}

export const near = (a: number, b: number, by = 0.005): boolean => Math.abs(a - b) <= by;
