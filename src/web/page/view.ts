import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { MeetingShape } from "../../core/answer/types/meeting.ts";

/** A patch where it lies: block `r1c5` of kind `star`, patch `star/s1/whole`. */
export interface Spot {
  readonly placed: string;
  readonly block: string;
  readonly patch: string;
}

export const sameSpot = (a: Spot | null, b: Spot | null): boolean =>
  a?.placed === b?.placed && a?.patch === b?.patch;

export type Theme = "system" | "light" | "dark" | "gray";

/** What the page shows of the answer; nothing of it is part of a design. */
export interface View {
  /** The word that stands open. */
  readonly word: string | null;
  /** The patch under the finger, or last touched. */
  readonly spot: Spot | null;
  readonly under: Spot | null;
  /** Ids an answer's line under the pointer or focus speaks of. */
  readonly lines: readonly string[];
  /** A figure that appears where blocks meet, lit wherever it lies. */
  readonly figure: MeetingShape | null;
  /** Questions opened or shut by hand; the others stand as their doubt has it. */
  readonly questions: Readonly<Record<string, boolean>>;
  readonly theme: Theme;
  readonly leftHanded: boolean;
  /** Being printed: in gray, every question open. */
  readonly printing: boolean;
  /** What was last said aloud. */
  readonly saying: string;
}

const KEY = "eighthwise-view";

function remembered(): Pick<View, "theme" | "leftHanded"> {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    const theme = ["light", "dark", "gray"].includes(kept.theme) ? kept.theme : "system";
    return { theme, leftHanded: kept.leftHanded === true };
  } catch {
    return { theme: "system", leftHanded: false };
  }
}

export const view = createStore<View>(() => ({
  word: null,
  spot: null,
  under: null,
  lines: [],
  figure: null,
  questions: {},
  printing: false,
  saying: "",
  ...remembered(),
}));

view.subscribe(({ theme, leftHanded }, before) => {
  if (theme === before.theme && leftHanded === before.leftHanded) return;
  try {
    localStorage.setItem(KEY, JSON.stringify({ theme, leftHanded }));
  } catch {
    // Preferences are only kept where the browser lets them be.
  }
});

export const useView = <T>(part: (v: View) => T): T => useStore(view, part);

/** Says a sentence in the live region; the same sentence twice is said twice. */
export function sayAloud(text: string): void {
  view.setState(({ saying }) => ({ saying: saying === text ? `${text}\u00a0` : text }));
}

/** Opens a question, or goes to another part of the page, and sets the keyboard there. */
export function goTo(part: string): void {
  const question = document.querySelector<HTMLElement>(`[data-question="${part}"]`);
  if (question) view.setState((v) => ({ questions: { ...v.questions, [part]: true } }));
  const place = question ?? document.querySelector<HTMLElement>(`[data-part="${part}"]`);
  if (!place) return;
  const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  place.scrollIntoView({ block: "start", behavior: calm ? "auto" : "smooth" });
  place.querySelector<HTMLElement>("button, a, input")?.focus({ preventScroll: true });
}
