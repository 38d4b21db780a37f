import type { Brief, ShopText } from "../brief/index.ts";
import { knownLength, type Length } from "../measure/index.ts";
import { type Cents, readMoney } from "../measure/money.ts";

/** The shop's decisions as numbers, what was not decided filled in. */
export interface KitRules {
  readonly wanted?: number;
  readonly basis: "yards" | "trimmed";
  readonly straighten: Length;
  readonly between: Length;
  readonly wrongStrip: boolean;
  readonly repeats: boolean;
  readonly from: Readonly<Record<string, readonly string[]>>;
  readonly leaveOut: readonly string[];
  readonly sign: string;
  readonly hour: Cents;
  /** Whole seconds. */
  readonly seconds: { readonly bolt: number; readonly cut: number; readonly kit: number };
  readonly extras: readonly { readonly name: string; readonly cost: Cents }[];
  /** Hundredths of a per cent of the price. */
  readonly margin: number;
  readonly roundTo: Cents;
  readonly weight: number;
  readonly scale: number;
}

/** Grams to the square meter of a quilting cotton: an estimate (common practice, no source). */
export const USUAL_WEIGHT = 145;
/** Minutes at the cutting table: estimates to be replaced by the shop's own (no source). */
export const USUAL_MINUTES = { bolt: 3, cut: 1.5, kit: 3 } as const;

export function rulesOf(brief: Pick<Brief, "shop" | "unit">): KitRules {
  const s: Partial<ShopText> = brief.shop ?? {};
  const length = (text: string | undefined, inches: number): Length =>
    text === undefined ? inches * (brief.unit === "in" ? 1 : 25) : knownLength(text, brief.unit);
  const cents = (text: string | undefined): Cents => (text ? (readMoney(text) ?? 0) : 0);
  const seconds = (m: number): number => Math.round(m * 60);
  return {
    ...(s.kits !== undefined && { wanted: s.kits }),
    basis: s.basis ?? "yards",
    straighten: length(s.straighten, 1),
    between: length(s.between, 0),
    wrongStrip: s.wrongStrip ?? true,
    repeats: s.repeats ?? true,
    from: s.from ?? {},
    leaveOut: s.leaveOut ?? [],
    sign: s.sign ?? "$",
    hour: cents(s.hour),
    seconds: {
      bolt: seconds(s.minutes?.bolt ?? USUAL_MINUTES.bolt),
      cut: seconds(s.minutes?.cut ?? USUAL_MINUTES.cut),
      kit: seconds(s.minutes?.kit ?? USUAL_MINUTES.kit),
    },
    extras: (s.extras ?? []).map((e) => ({ name: e.name, cost: cents(e.cost) })),
    margin: Math.round((s.margin ?? 0) * 100),
    roundTo: Math.max(1, cents(s.roundTo)),
    weight: s.weight ?? USUAL_WEIGHT,
    scale: s.scale ?? 1,
  };
}
