import type { Made } from "../../core/answer/make-it.ts";
import type { Answer } from "../../core/answer/types/answer.ts";
import type { Brief } from "../../core/brief/index.ts";
import { newAnswerer } from "../worker/index.ts";

/** Nobody waits for this answer any more. */
export class Superseded extends Error {}

const MOST_KEPT = 24;

/**
 * Answers from the worker, remembered for a while: what is on the page in one lane, each choice of an
 * open word in its own, so that a newer question takes the place of the older one of its lane.
 */
export class Asking {
  readonly worker = newAnswerer();
  private readonly kept = new Map<string, Answer>();
  private readonly longTexts = new Map<string, number>();

  forPage = (brief: Brief): Promise<Answer> => this.ask("page", brief);

  forChoice = (place: number, brief: Brief): Promise<Answer> => this.ask(`choice ${place}`, brief);

  /** The ways to make a quilt a size, each answered in full. */
  async waysToMake(brief: Brief, width: number, length: number): Promise<Made[]> {
    const outcome = await this.worker.ask("make it", "makeIt", brief, width, length);
    if (outcome.kind === "superseded") throw new Superseded();
    if (outcome.kind === "failed") throw new Error(outcome.failure.message);
    return outcome.value;
  }

  private async ask(lane: string, brief: Brief): Promise<Answer> {
    const key = this.keyOf(brief);
    const known = this.kept.get(key);
    if (known) return known;
    const outcome = await this.worker.ask(lane, "answer", brief);
    if (outcome.kind === "superseded") throw new Superseded();
    if (outcome.kind === "failed") throw new Error(outcome.failure.message);
    this.keep(key, outcome.value);
    return outcome.value;
  }

  /** A better answer to a brief than the one that was given, for when it is asked again. */
  remember(brief: Brief, answer: Answer): void {
    this.keep(this.keyOf(brief), answer);
  }

  private keep(key: string, answer: Answer): void {
    this.kept.set(key, answer);
    for (const old of this.kept.keys()) {
      if (this.kept.size <= MOST_KEPT) break;
      this.kept.delete(old);
    }
  }

  /**
   * Briefs that decide the same have equal keys, whatever was done and measured meanwhile; long texts
   * (photos) stand as a number of their own.
   */
  private keyOf(brief: Brief): string {
    return JSON.stringify({ ...brief, record: undefined }, (_key, value) => {
      if (typeof value !== "string" || value.length < 500) return value;
      const n = this.longTexts.get(value) ?? this.longTexts.size;
      this.longTexts.set(value, n);
      return `long text ${n}`;
    });
  }
}
