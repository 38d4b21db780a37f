/**
 * Chance that the squares of `df` independent standard normal errors sum to more than x. Exact but
 * for erfc: chi-square tails of two more degrees differ by one term (Abramowitz and Stegun 26.4.8).
 */
export function chanceOfMore(x: number, df: number): number {
  if (df <= 0) return 1;
  if (x <= 0) return 1;
  const odd = df % 2 === 1;
  let tail = odd ? erfc(Math.sqrt(x / 2)) : Math.exp(-x / 2);
  let term = odd ? Math.sqrt((2 * x) / Math.PI) * Math.exp(-x / 2) : (x / 2) * Math.exp(-x / 2);
  for (let k = odd ? 1 : 2; k < df; k += 2) {
    tail += term;
    term *= x / (k + 2);
  }
  return tail;
}

/** 1 - erf(x) for x >= 0, good to 1.5e-7 (Abramowitz and Stegun 7.1.26). */
function erfc(x: number): number {
  const t = 1 / (1 + 0.3275911 * x);
  const sum =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return sum * Math.exp(-x * x);
}
