import { knownLength, type Length, parseLength, type Unit } from "../measure/index.ts";

/**
 * A rule of thumb as makers say it: `strip-1/2`, `2*strip-1`, `leg+7/8`, `across/2+1/2 in`.
 * Sums of terms; a term is a length, a word, or a word times or over a plain number. Words are
 * those of `RuleWords`. Undefined when it is not understood or comes to nothing.
 */
export function evaluateRule(text: string, words: RuleWords, unit: Unit): Length | undefined {
  const tokens = tokenize(text.toLowerCase(), unit);
  if (!tokens || tokens.length === 0) return undefined;
  let total = 0;
  let sign = 1;
  let i = 0;
  while (i < tokens.length) {
    const factor = lengthOf(tokens[i], words);
    if (factor === undefined) return undefined;
    let term = factor;
    i++;
    while (tokens[i]?.kind === "times" || tokens[i]?.kind === "over") {
      const by = lengthOf(tokens[i + 1], words);
      if (by === undefined) return undefined;
      term = tokens[i].kind === "times" ? term * by : term / by;
      i += 2;
    }
    total += sign * term;
    if (i === tokens.length) return Number.isFinite(total) && total > 0 ? total : undefined;
    const joint = tokens[i];
    if (joint.kind !== "plus" && joint.kind !== "minus") return undefined;
    sign = joint.kind === "plus" ? 1 : -1;
    i++;
  }
  return undefined;
}

/** What a rule may speak of, all in the document's unit. Words that mean nothing here are absent. */
export interface RuleWords {
  /** The strip the block's wedges are cut from. */
  readonly strip?: Length;
  /** Finished width of the octagon across flats. */
  readonly across?: Length;
  /** Finished short side, and long side, of a triangle. */
  readonly leg?: Length;
  readonly long?: Length;
  /** The finished size this piece's rule usually starts from. */
  readonly finished?: Length;
  readonly seam?: Length;
}

type Token =
  | { readonly kind: "plus" | "minus" | "times" | "over" }
  | { readonly kind: "length"; readonly value: Length }
  | { readonly kind: "word"; readonly word: string };

const TOKEN =
  /\s*(?:(\d+\s+\d+\/\d+|\d+\/\d+|\d*\.?\d+)\s*(in|mm|cm|")?(?![a-z])|([a-z]+)|([-+*/×]))/y;
const SIGNS: Readonly<Record<string, Token>> = {
  "+": { kind: "plus" },
  "-": { kind: "minus" },
  "*": { kind: "times" },
  "×": { kind: "times" },
  "/": { kind: "over" },
};

function tokenize(text: string, unit: Unit): Token[] | undefined {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.trimEnd().length) {
    const m = TOKEN.exec(text);
    if (!m) return undefined;
    const [, number, suffix, word, sign] = m;
    if (number !== undefined) {
      const typed = number + (suffix ?? "");
      if (!parseLength(typed, unit).ok) return undefined;
      tokens.push({ kind: "length", value: knownLength(typed, unit) });
    } else if (word === "x") tokens.push(SIGNS["*"]);
    else if (word !== undefined) tokens.push({ kind: "word", word });
    else tokens.push(SIGNS[sign]);
  }
  return tokens;
}

function lengthOf(token: Token | undefined, words: RuleWords): Length | undefined {
  if (token?.kind === "length") return token.value;
  if (token?.kind !== "word" || !Object.hasOwn(words, token.word)) return undefined;
  return words[token.word as keyof RuleWords];
}
