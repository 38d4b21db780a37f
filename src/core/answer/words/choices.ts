import { type Brief, CONTROL } from "../../brief/index.ts";
import { clausesOf, fabricClausesOf } from "./sentence.ts";
import {
  type Change,
  type Choice,
  type Clause,
  changed,
  type Edited,
  MOST_CHOICES,
  type Word,
  type WordSpec,
} from "./word.ts";

/** The two large sentences; all of them are in all-choices.ts. */
export const baseClauses = (b: Brief): Clause => [...clausesOf(b), ...fabricClausesOf(b)];

/** All that can be done with the words of some sentences; composed once for a brief. */
export function speaking(clauses: (b: Brief) => Clause) {
  const known = new WeakMap<Brief, readonly WordSpec[]>();

  /** Every word of all sentences with all it can do; composed once for a brief. */
  function specsOf(b: Brief): readonly WordSpec[] {
    const there = known.get(b);
    if (there) return there;
    const made = clauses(b).filter((part) => typeof part !== "string");
    known.set(b, made);
    return made;
  }

  function specOf(b: Brief, wordId: string): WordSpec {
    const spec = specsOf(b).find((w) => w.id === wordId);
    if (!spec) throw new RangeError(`no word ${JSON.stringify(wordId)} in this sentence`);
    return spec;
  }

  /** Every word that can be changed, in reading order. */
  const wordsOf = (b: Brief): Word[] =>
    specsOf(b).map(({ id, role, kind, path, text, decides }) => ({
      id,
      role,
      kind,
      path,
      text,
      decides,
    }));

  /** May a text be typed for this word? */
  const takesTyping = (b: Brief, wordId: string): boolean => specOf(b, wordId).read !== undefined;

  /** At most four ways this word could read, each as the brief it would make. */
  function choicesFor(b: Brief, wordId: string): Choice[] {
    const spec = specOf(b, wordId);
    return spec
      .options()
      .slice(0, MOST_CHOICES)
      .map(({ label, change, picture, typed }) => {
        const now = typed === undefined && label === spec.text;
        const brief = now ? b : changed(b, change);
        return {
          label,
          brief,
          change: now ? () => {} : change,
          pictureKind: picture,
          now,
          ...(typed === undefined ? {} : { typed }),
        };
      });
  }

  /** The brief with this word typed; the text is kept exactly as typed, save the space round it. */
  function typed(b: Brief, wordId: string, text: string): Edited {
    const { read, options } = specOf(b, wordId);
    if (/[\t\n\r]/.test(text.trim()) || CONTROL.test(text))
      return { ok: false, error: { problem: "Type letters that are seen, on one line." } };
    const label = options().find((o) => o.label.toLowerCase() === text.trim().toLowerCase());
    if (label && label.typed === undefined) return taken(b, label.change);
    if (!read) return { ok: false, error: { problem: "Choose one of those shown." } };
    const change = read(text);
    return typeof change === "function" ? taken(b, change) : { ok: false, error: change };
  }

  /** The change that moves this word one step of the ruler (or one in number); nothing at the end. */
  function stepping(b: Brief, wordId: string, by: 1 | -1): Change | undefined {
    const spec = specOf(b, wordId);
    if (spec.step) return spec.step(by);
    const options = spec.options();
    const next = options[options.findIndex((o) => o.label === spec.text) + by];
    return next && next.typed === undefined ? next.change : undefined;
  }

  /** The brief with this word one step up or down; itself at the end. */
  function stepped(b: Brief, wordId: string, by: 1 | -1): Brief {
    const change = stepping(b, wordId, by);
    return change ? changed(b, change) : b;
  }

  /** The word a patch of this role answers to: its fabric's word comes last, its size's first. */
  function wordOfRole(b: Brief, role: string, block?: string): string | undefined {
    const fits = (w: WordSpec): boolean =>
      w.decides.some((d) => d.role === role && (d.block === undefined || d.block === block));
    const specs = specsOf(b).filter(fits);
    const size = specs.find((w) => w.kind === "length") ?? specs[0];
    return size?.id;
  }

  /** Words that decide these roles, for lighting: both the size's and the fabric's. */
  const wordsOfRole = (b: Brief, role: string, block?: string): string[] =>
    specsOf(b)
      .filter((w) =>
        w.decides.some((d) => d.role === role && (d.block === undefined || d.block === block)),
      )
      .map((w) => w.id);

  return {
    wordsOf,
    takesTyping,
    choicesFor,
    typed,
    stepping,
    stepped,
    wordOfRole,
    wordsOfRole,
  };
}

const taken = (b: Brief, change: Change): Edited => ({
  ok: true,
  brief: changed(b, change),
  change,
});

export const {
  wordsOf,
  takesTyping,
  choicesFor,
  typed,
  stepping,
  stepped,
  wordOfRole,
  wordsOfRole,
} = speaking(baseClauses);

export type Speaking = ReturnType<typeof speaking>;
