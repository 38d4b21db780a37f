import { useEffect, useId, useState } from "react";
import type { KeepStore } from "../keep/index.ts";

/** The maker's own notes: kept with the design, read by nothing. Other programs' notes stay as they are. */
export function Notes({ keep, notes }: { keep: KeepStore; notes: unknown }) {
  const id = useId();
  const kept = typeof notes === "string" ? notes : "";
  const [text, setText] = useState(kept);
  useEffect(() => setText(kept), [kept]);
  if (notes !== undefined && typeof notes !== "string") return null;
  const done = (): void => {
    if (text === kept) return;
    keep.act.edit("the notes", (d) => {
      if (text.trim() === "") delete d.notes;
      else d.notes = text;
    });
  };
  return (
    <section className="question notes">
      <h2>
        <label htmlFor={id}>Notes</label>
      </h2>
      <textarea
        id={id}
        value={text}
        rows={Math.min(12, Math.max(2, text.split("\n").length))}
        maxLength={20_000}
        onChange={(e) => setText(e.target.value)}
        onBlur={done}
      />
    </section>
  );
}
