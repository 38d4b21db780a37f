import { allWords } from "../../src/core/answer/words/all-choices.ts";
import { canonicalText, readBrief } from "../../src/core/brief/index.ts";
import { baseOf, typed } from "./asked.ts";
import type { Broken } from "./laws.ts";
import type { Luck } from "./luck.ts";

export interface WordsCase {
  readonly base: number;
  /** Which word of the sentences, counted round them, and what is done with it. */
  readonly edits: readonly { readonly nth: number; readonly text: string; readonly by: 1 | -1 }[];
}

const AMOUNTS = [
  ..."4 1/2|7 mm|12|0|-3|99999|1/0|2 by 3|3 x 8|0 by 0|100 by 100|9999 by 9999|none|throw 48 by 64".split(
    "|",
  ),
  ..."from A to C|8 wedges round the center|#a33b2e|red|rgb(1,2,3)|strip-1/2|blunt:1/4|flat:3/8".split(
    "|",
  ),
];

/** Words of the sentences, typed into and stepped, one after another as a maker edits. */
export const words = (luck: Luck): WordsCase => ({
  base: luck.int(0, 3),
  edits: luck.some(
    5,
    () => ({
      nth: luck.int(0, 199),
      text: luck.once(3) ? typed(luck) : luck.pick(AMOUNTS),
      by: luck.pick([1, -1] as const),
    }),
    1,
  ),
});

/** What holds of every edit: it is refused with a sentence, or what it leaves is a design that reads back. */
export function ofWords(c: WordsCase): Broken[] {
  const found: Broken[] = [];
  let brief = baseOf(c.base);
  for (const { nth, text, by } of c.edits) {
    const all = allWords.wordsOf(brief);
    const { id } = all[nth % all.length];
    const no = (law: string, detail = ""): void =>
      void found.push({
        law,
        detail: `${id} typed ${JSON.stringify(text.slice(0, 80))}: ${detail}`,
      });
    const before = canonicalText(brief);
    const steps = allWords.stepped(brief, id, by);
    const typing = allWords.typed(brief, id, text);
    if (canonicalText(brief) !== before) no("an edit leaves what was there before as it was");
    for (const [how, after] of [
      ["stepped", steps],
      ...(typing.ok ? [["typed", typing.brief] as const] : []),
      ...allWords.choicesFor(brief, id).map((x) => [x.label, x.brief] as const),
    ] as const) {
      const read = readBrief(canonicalText(after));
      if (!read.ok)
        no("a word that is taken leaves a design", `${how}: ${JSON.stringify(read.refusals[0])}`);
    }
    if (!typing.ok && !/^.{8,400}$/s.test(typing.error.problem))
      no("a word that is refused says why", typing.error.problem);
    brief = typing.ok ? typing.brief : steps;
  }
  return found.slice(0, 3);
}
