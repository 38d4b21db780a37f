import { useEffect, useRef, useState } from "react";
import type { StockPiece } from "../../../core/fabric/index.ts";
import type { FromHere, NamedDesign } from "../../../core/turn/fromStock.ts";
import { beginFrom } from "../../worker/fromer.ts";
import { sayAloud } from "../view.ts";

export interface Looking {
  readonly state: "idle" | "looking" | "stopped" | "done" | "failed";
  readonly here: FromHere | null;
  readonly message?: string;
}

/** The search for what the fabric that is here makes: begun, told, stopped. */
export function useFrom() {
  const [looking, setLooking] = useState<Looking>({ state: "idle", here: null });
  const end = useRef<() => void>(() => {});
  useEffect(() => () => end.current(), []);
  const look = (designs: readonly NamedDesign[], stock: readonly StockPiece[]): void => {
    end.current();
    setLooking({ state: "looking", here: null });
    end.current = beginFrom(
      { designs, stock },
      ({ here, last }) => {
        setLooking({ state: last ? "done" : "looking", here });
        const n = here.projects.length;
        if (last) sayAloud(`${n} of ${here.all} designs can be made.`);
      },
      (message) => setLooking((s) => ({ ...s, state: "failed", message })),
    );
  };
  const stop = (): void => {
    end.current();
    setLooking((s) => ({ ...s, state: "stopped" }));
  };
  return { looking, look, stop };
}
