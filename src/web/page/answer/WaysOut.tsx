import { useEffect, useMemo, useState } from "react";
import { type Consequence, consequences } from "../../../core/answer/say/consequences.ts";
import { choicesFor, typed } from "../../../core/answer/words/choices.ts";
import type { Change } from "../../../core/answer/words/word.ts";
import type { Brief } from "../../../core/brief/index.ts";
import { printWithUnit, stepOf } from "../../../core/measure/index.ts";
import { type Answered, asking } from "../answers.ts";
import { ChoicePicture } from "../ChoicePicture.tsx";
import { useKeepStore } from "../KeepContext.ts";
import { Said } from "../said.tsx";
import { useView } from "../view.ts";

interface Way {
  readonly word: string;
  readonly label: string;
  readonly brief: Brief;
  readonly change: Change;
}

interface Better {
  readonly way: Way;
  readonly a: Answered;
  readonly rows: readonly Consequence[];
}

const MOST_WAYS = 3;

/** Changes of one word that would prove what is in doubt, each with what it costs. */
export function WaysOut({ shown }: { shown: Answered }) {
  const keep = useKeepStore();
  const leftHanded = useView((v) => v.leftHanded);
  const ways = useMemo(() => waysFor(shown), [shown]);
  const [answered, setAnswered] = useState<ReadonlyMap<Brief, Answered>>(() => new Map());
  useEffect(() => {
    let live = true;
    ways.forEach((way, i) => {
      asking.forChoice(10 + i, way.brief).then(
        (answer) =>
          live && setAnswered((m) => new Map(m).set(way.brief, { brief: way.brief, answer })),
        () => {},
      );
    });
    return () => {
      live = false;
    };
  }, [ways]);
  const better = useMemo(() => betterOf(ways, answered, shown), [ways, answered, shown]);
  if (better.length === 0) return null;
  return (
    <div className="ways">
      <h3>{better.length === 1 ? "A change of one word:" : "Changes of one word:"}</h3>
      <ul>
        {better.map(({ way, a, rows }) => (
          <li key={way.label}>
            <ChoicePicture kind="cover" word={way.word} answered={a} leftHanded={leftHanded} />
            <button
              type="button"
              className="touch tall"
              onClick={() => keep.act.edit(`"${way.label}"`, way.change)}
            >
              <Said text={way.label} />
            </button>
            <span className="soft">
              {rows.map((r, i) => (
                <span key={r.id}>
                  {i > 0 && "; "}
                  <Said text={`${nameOf(a, r.label)} ${r.text}`} />
                </span>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

const doubts = (a: Answered): number =>
  a.answer.recipes.filter((r) => r.verdict !== "proved").length;

/** The ways that leave less in doubt. Two ways to the same end are one. */
function betterOf(
  ways: readonly Way[],
  answered: ReadonlyMap<Brief, Answered>,
  shown: Answered,
): Better[] {
  const told = new Set<string>();
  return ways
    .flatMap((way): Better[] => {
      const a = answered.get(way.brief);
      if (!a || doubts(a) >= doubts(shown)) return [];
      const rows = consequences(shown.answer, a.answer).filter((r) => r.changed);
      const same = rows.map((r) => `${r.id} ${r.text}`).join();
      if (told.has(same)) return [];
      told.add(same);
      return [{ way, a, rows }];
    })
    .slice(0, MOST_WAYS);
}

const nameOf = (a: Answered, label: string): string =>
  a.brief.fabrics.find((f) => f.id === label)?.name ?? label;

/** The smallest size that covers, then the choices of every word in doubt, then a sharp point. */
function waysFor({ brief, answer }: Answered): Way[] {
  const words = answer.sentence.flatMap((p) => (p.doubt && p.word ? [p.word] : []));
  const step = stepOf(brief.step, brief.unit);
  const sizes = words.flatMap((word): Way[] => {
    const [, block, role] = word.split("/");
    if (!word.startsWith("cut/")) return [];
    const recipe = answer.recipes.find((r) => {
      const p = answer.pieces.find((x) => x.id === r.pieceId);
      return (
        p?.roles.some((x) => x.startsWith(role)) &&
        p.patchIds.some((x) => x.startsWith(`${block}/`))
      );
    });
    if (recipe?.smallest === undefined) return [];
    const text = printWithUnit(recipe.smallest, step).replace(/ (in|mm)$/, "");
    const edited = typed(brief, word, text);
    return edited.ok ? [{ word, label: `${text} ${brief.unit} squares`, ...edited }] : [];
  });
  const choices = [...words, "point"].flatMap((word): Way[] =>
    choicesFor(brief, word)
      .filter((c) => !c.now && c.typed === undefined)
      .map((c) => ({ word, label: c.label, brief: c.brief, change: c.change })),
  );
  const seen = new Set<string>();
  return [...sizes, ...choices].filter((w) => !seen.has(w.label) && seen.add(w.label)).slice(0, 7);
}
