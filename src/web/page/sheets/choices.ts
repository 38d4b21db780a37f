import { useMemo } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Brief } from "../../../core/brief/index.ts";
import type { PaperName } from "../../../core/sheet/grid.ts";
import { OPENED, type Opened, printedDate } from "../../../core/sheet/options.ts";
import { lastVersion } from "../../../core/shop/ripple/edition.ts";
import type { Answered } from "../answers.ts";
import { useView } from "../view.ts";
import type { Printing } from "./services.ts";

/** What the maker chose for printing; nothing of it is part of a design. */
export interface Choices {
  readonly sheet: string;
  /** Letter or A4; as the design's unit has it until chosen. */
  readonly paper?: PaperName;
  /** Until it is typed, the version that left the design last. */
  readonly edition?: string;
  readonly day: string;
  /** One page as wide as the column, instead of two beside each other. */
  readonly large: boolean;
}

/** The day on this maker's clock, as `2026-11-25`. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export const choices = createStore<Choices>(() => ({
  sheet: "pattern",
  day: today(),
  large: false,
}));

export const useChoices = (): Choices => useStore(choices);
export const choose = (change: Partial<Choices>): void => choices.setState(change);

/** Which questions stand open on the page and therefore print at length. */
export function useOpened({ answer }: Answered): readonly Opened[] {
  const byHand = useView((v) => v.questions);
  const open = OPENED.filter((id) => {
    const question = answer.questions.find((q) => q.id === id);
    return question && (byHand[id] ?? question.doubt);
  });
  const key = open.join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: equal lists are one list
  return useMemo(() => open, [key]);
}

/** The version and date that everything printed from this design carries. */
export function editionOf(brief: Brief): { version: string; day: string; date: string } {
  const { edition, day } = choices.getState();
  return { version: versionOf(brief, edition), day, date: printedDate(day) ?? "" };
}

export const versionOf = (brief: Brief, edition: string | undefined): string =>
  edition === undefined ? lastVersion(brief) : edition.trim();

/** All that the sheets are made from, the same object while nothing of it changes. */
export function usePrinting(shown: Answered): Printing {
  const { paper, edition, day } = useChoices();
  const leftHanded = useView((v) => v.leftHanded);
  const opened = useOpened(shown);
  return useMemo(
    () => ({
      brief: shown.brief,
      answer: shown.answer,
      day,
      options: {
        ...(paper && { paper }),
        leftHanded,
        opened,
        version: versionOf(shown.brief, edition),
        date: printedDate(day) ?? "",
      },
    }),
    [shown, paper, edition, day, leftHanded, opened],
  );
}
