import { useState } from "react";
import { livingPattern } from "../../../core/sheet/living.ts";
import type { Answered } from "../answers.ts";
import { editionOf } from "../sheets/choices.ts";
import { sayAloud } from "../view.ts";

/** The living pattern, made here and handed to the downloads. */
export function Living({ now }: { now: Answered }) {
  const [problem, setProblem] = useState<string | null>(null);
  const make = async (): Promise<void> => {
    setProblem(null);
    try {
      const got = await fetch("living-pattern.html");
      if (!got.ok) throw new Error(`its template could not be read (${got.status})`);
      const html = livingPattern(await got.text(), now.brief, now.answer, editionOf(now.brief));
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([html], { type: "text/html" }));
      link.download = `${nameOf(now.brief.title)}.html`;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
      sayAloud("The living pattern is handed to your downloads.");
    } catch (e) {
      setProblem((e as Error).message);
    }
  };
  return (
    <section className="question" aria-labelledby="living">
      <h2 id="living">For a student’s phone</h2>
      <p className="line">
        <b>One file that answers again.</b> A student types her own fabric width, seam, ruler and
        size; what changes is marked, and the original is one tap away. It needs no network.
        {problem && <span className="because"> It could not be made: {problem}.</span>}
      </p>
      <div className="margin">
        <button type="button" className="touch" onClick={() => void make()}>
          Save the living pattern
        </button>
      </div>
    </section>
  );
}

const nameOf = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "") || "pattern";
