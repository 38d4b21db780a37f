import { useCallback, useMemo } from "react";
import * as base from "../../core/answer/words/choices.ts";
import { type Speaking, wordsOfRole } from "../../core/answer/words/choices.ts";
import { changed, type Word } from "../../core/answer/words/word.ts";
import type { KeepStore, Recipe } from "../keep/index.ts";
import type { Answered } from "./answers.ts";
import { later } from "./later.tsx";
import { roleOf } from "./quilt/spots.ts";
import { useView } from "./view.ts";

const Opening = later(() => import("./Opening.tsx").then((m) => m.Opening));

/** Hooks that both sentences share: what a step does, what stands between the lines. */
export function useEditing(now: Answered, keep: KeepStore, words: Speaking = base) {
  const word = useView((v) => v.word);
  const onPreview = useCallback((change: Recipe | null) => keep.act.preview(change), [keep]);
  const onTake = useCallback(
    (words: string, change: Recipe) => keep.act.edit(words, change),
    [keep],
  );
  const onStep = useCallback(
    (w: Word, by: 1 | -1) => {
      // The design as it is by now: quick steps come before their answers.
      const brief = keep.state.getState().open?.brief;
      if (!brief || !words.wordsOf(brief).some((x) => x.id === w.id)) return;
      const change = words.stepping(brief, w.id, by);
      if (!change) return;
      const next = words.wordsOf(changed(brief, change)).find((x) => x.id === w.id);
      keep.act.edit(`"${next?.text ?? w.text}"`, change);
    },
    [keep, words],
  );
  const opening = word && (
    <Opening key={word} word={word} now={now} onPreview={onPreview} onTake={onTake} />
  );
  return { opening, onStep };
}

/** Words that decide the patch under the finger take the accent's line. */
export function useLitWords(shown: Answered): readonly string[] {
  const spot = useView((v) => v.under ?? v.spot);
  return useMemo(() => {
    const role = spot && roleOf(shown, spot);
    if (!spot || !role) return [];
    return wordsOfRole(shown.brief, role, spot.block === "quilt" ? undefined : spot.block);
  }, [shown, spot]);
}
