import type { Brief, ShopText } from "../../../core/brief/index.ts";
import {
  boltsFor,
  readMoney,
  rulesOf,
  type Shelf,
  USUAL_WEIGHT,
} from "../../../core/shop/index.ts";
import type { KeepStore } from "../../keep/index.ts";
import { Field, Pick } from "./parts.tsx";

interface Props {
  readonly brief: Brief;
  readonly keep: KeepStore;
  readonly shelf: Shelf;
  /** Fabrics the kit takes, in order. */
  readonly fabrics: readonly {
    readonly fabricId: string;
    readonly name: string;
    readonly letter: string;
  }[];
}

/** Changes what the shop decides of this design, as one step that can be taken back. */
export const decide = (keep: KeepStore, words: string, change: Partial<ShopText>): void =>
  keep.act.edit(words, (b) => {
    const next = { ...b.shop, ...change };
    b.shop = Object.fromEntries(
      Object.entries(next).filter(([, v]) => v !== undefined),
    ) as unknown as ShopText;
  });

const numberProblem = (least: number, most: number) => (text: string) => {
  if (text === "") return undefined;
  const n = Number(text.replace(",", "."));
  return n >= least && n <= most ? undefined : `a number from ${least} to ${most}`;
};
const wholeProblem = (text: string): string | undefined =>
  text === "" || (/^\d{1,3}$/.test(text) && Number(text) > 0)
    ? undefined
    : "a whole number up to 999";
const moneyProblem = (text: string): string | undefined =>
  text === "" || /^\d{1,7}([.,]\d{1,2})?$/.test(text) ? undefined : "money, such as 12.95";

/** What is decided about kits, said as a sentence whose words can be changed. */
export function KitDecisions({ brief, keep, shelf, fabrics }: Props) {
  const rules = rulesOf(brief);
  const s = brief.shop;
  const number = (t: string): number | undefined =>
    t === "" ? undefined : Number(t.replace(",", "."));
  return (
    <>
      <p className="shop-sentence">
        Cut{" "}
        <Field
          label="How many kits are wanted"
          value={s?.kits === undefined ? "" : String(s.kits)}
          hint="the most"
          problem={wholeProblem}
          onTake={(t) => decide(keep, "how many kits", { kits: number(t) })}
        />{" "}
        kits, each fabric{" "}
        <Pick
          label="How long each fabric is cut"
          value={rules.basis}
          options={[
            ["yards", "as the pattern says to buy"],
            ["trimmed", "as long as its pieces and margin take"],
          ]}
          onPick={(v) => decide(keep, "how kits are cut", { basis: v as ShopText["basis"] })}
        />
        ,{" "}
        <Pick
          label="Room for one wrong strip"
          value={rules.wrongStrip ? "with" : "without"}
          options={[
            ["with", "with room for one wrong strip"],
            ["without", "without room for a wrong strip"],
          ]}
          onPick={(v) => decide(keep, "room for a wrong strip", { wrongStrip: v === "with" })}
        />
        . An hour of work costs{" "}
        <Field
          label="Cost of an hour of work"
          value={s?.hour ?? ""}
          hint="nothing"
          problem={moneyProblem}
          onTake={(t) => decide(keep, "the cost of an hour", { hour: t || undefined })}
        />
        , the pattern and the bag{" "}
        <Field
          label="Cost of pattern and bag"
          value={s?.extras?.[0]?.cost ?? ""}
          hint="nothing"
          problem={moneyProblem}
          onTake={(t) =>
            decide(keep, "the cost of pattern and bag", {
              extras:
                t === "" || readMoney(t) === undefined
                  ? undefined
                  : [{ name: "pattern and bag", cost: t }, ...(s?.extras?.slice(1) ?? [])],
            })
          }
        />
        ; the margin is{" "}
        <Field
          label="Margin, per cent of the price"
          value={String(rules.margin / 100)}
          problem={numberProblem(0, 95)}
          onTake={(t) => decide(keep, "the margin", { margin: number(t) })}
        />{" "}
        % of the price, up to the next{" "}
        <Field
          label="Prices go up to a multiple of"
          value={s?.roundTo ?? ""}
          hint="cent"
          problem={moneyProblem}
          onTake={(t) => decide(keep, "how prices are rounded", { roundTo: t || undefined })}
        />
        . The fabric weighs{" "}
        <Field
          label="Grams to the square meter"
          value={String(s?.weight ?? USUAL_WEIGHT)}
          problem={numberProblem(10, 2000)}
          onTake={(t) => decide(keep, "the weight of the fabric", { weight: number(t) })}
        />{" "}
        g to the square meter.
      </p>
      <ul className="shop-from">
        {fabrics.map((f) => {
          const own = boltsFor(f, shelf, rules);
          const value = rules.leaveOut.includes(f.fabricId)
            ? "-"
            : own.length > 0
              ? own[0].name
              : "";
          const names = [...new Set(shelf.bolts.map((b) => b.name))];
          return (
            <li key={f.fabricId}>
              <b>{f.letter}</b> {f.name}, from{" "}
              <Pick
                label={`Bolt for ${f.name}`}
                value={value}
                options={[
                  ["", "no bolt yet"],
                  ...names.map((n): [string, string] => [n, n]),
                  ["-", "not in the kit"],
                ]}
                onPick={(v) => {
                  const from = { ...(s?.from ?? {}) };
                  const leaveOut = rules.leaveOut.filter((id) => id !== f.fabricId);
                  if (v === "-") leaveOut.push(f.fabricId);
                  else if (v === "") delete from[f.fabricId];
                  else from[f.fabricId] = [v];
                  decide(keep, `the bolt for ${f.name}`, {
                    from: Object.keys(from).length > 0 ? from : undefined,
                    leaveOut: leaveOut.length > 0 ? leaveOut : undefined,
                  });
                }}
              />
            </li>
          );
        })}
      </ul>
    </>
  );
}
