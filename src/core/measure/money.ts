/** Money in whole cents (or the smallest coin of the shop's currency), never in float parts of it. */
export type Cents = number;

const MONEY = /^(\d{1,7})(?:[.,](\d{1,2}))?$/;

/** "12", "12.5", "12,95", "$12.95", "12.95 €": the currency's sign is left to the shop. Undefined when it is none. */
export function readMoney(text: string): Cents | undefined {
  const bare = text
    .trim()
    .replace(/^[\p{Sc}]\s*|\s*[\p{Sc}]$/gu, "")
    .trim();
  const m = MONEY.exec(bare);
  if (!m) return undefined;
  return Number(m[1]) * 100 + Number((m[2] ?? "").padEnd(2, "0"));
}

/** "12.95"; with the shop's sign, "$12.95". */
export function sayMoney(cents: Cents, sign = ""): string {
  const whole = Math.abs(cents);
  return `${cents < 0 ? "-" : ""}${sign}${Math.floor(whole / 100)}.${String(whole % 100).padStart(2, "0")}`;
}

/** The next whole number at or above a quotient of whole numbers, exactly. */
export function ceilDiv(above: number, below: number): number {
  const [a, b] = [BigInt(above), BigInt(below)];
  const q = a / b;
  return Number(a % b > 0n ? q + 1n : q);
}
