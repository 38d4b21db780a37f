import { useEffect, useRef } from "react";
import { Boundary } from "../../crash/index.ts";
import { useKeep } from "../../keep/index.ts";
import { useAnswers } from "../answers.ts";
import { useKeepStore } from "../KeepContext.ts";
import { Notices } from "../Notices.tsx";
import { Said } from "../said.tsx";
import { ClassPart } from "./ClassPart.tsx";
import { KitsPart } from "./Kits.tsx";
import { OutPart } from "./Out.tsx";
import { RunsPart } from "./Runs.tsx";
import { ShelfPart } from "./Shelf.tsx";
import { useShop } from "./store.ts";
import "./shop.css";

/** Kits and class: the shelf of the shop, and what the open design asks of it and of a class. */
export function Shop() {
  const keep = useKeepStore();
  const { now, failed } = useAnswers();
  const undo = useKeep(keep, (s) => s.open?.undoWords);
  const ready = useShop((s) => s.ready);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <main className="page shop-page" aria-busy={!ready || !now}>
      <header className="head">
        <h1 ref={heading} tabIndex={-1}>
          Kits and class
        </h1>
        <p>
          <a className="touch tall" href="#page">
            Back to the design
          </a>
        </p>
      </header>
      <Notices keep={keep} failed={failed} />
      <Boundary what="the shelf" retryWhen={ready}>
        <ShelfPart unit={now?.brief.unit} />
      </Boundary>
      {now && now.answer.layouts.length > 0 ? (
        <>
          <Boundary what="the kits" retryWhen={now.answer}>
            <KitsPart now={now} keep={keep} />
          </Boundary>
          <Boundary what="the runs" retryWhen={ready}>
            <RunsPart keep={keep} />
          </Boundary>
          <Boundary what="the class" retryWhen={now.answer}>
            <ClassPart now={now} keep={keep} />
          </Boundary>
          <Boundary what="what is out" retryWhen={now.answer}>
            <OutPart now={now} keep={keep} />
          </Boundary>
          <p className="acts">
            <button
              type="button"
              className="touch tall"
              disabled={!undo}
              onClick={() => keep.act.undo()}
            >
              Take back {undo ? <Said text={undo} /> : "a decision of the design"}
            </button>
          </p>
        </>
      ) : (
        <p className="soft">
          {now
            ? "This design cannot be cut yet, so it has no kits and no class."
            : "Reading your design."}
        </p>
      )}
    </main>
  );
}
