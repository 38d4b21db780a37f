import type { ElementHandle, Page } from "playwright-core";

/** What a teacher holds. */
export const TABLET = {
  viewport: { width: 1112, height: 834 },
  hasTouch: true,
  isMobile: true,
  reducedMotion: "reduce",
} as const;

/** A step of a tour, as its page says it. */
export type Step =
  | { readonly kind: "press" | "read" | "find"; readonly words: string }
  | { readonly kind: "type"; readonly words: string; readonly at: string }
  | { readonly kind: "picture"; readonly file: string };

const PRESS = /\b[Pp]ress (\*\*[^*]+\*\*(?:, (?:then )?\*\*[^*]+\*\*)*)/;
const TYPE = /\b[Tt]ype \*\*([^*]+)\*\* at \*\*([^*]+)\*\*/;
const READ = /\b[Rr]eads? (\*[^*]+\*(?: and \*[^*]+\*)*)/;
const FIND = /\b[Ff]ind \*([^*]+)\* among your downloads/;
const PICTURE = /<img src="pictures\/([\w./-]+)"/;
const STEP = new RegExp([PRESS, TYPE, READ, FIND, PICTURE].map((r) => r.source).join("|"), "g");

const inStars = (text: string): string[] => text.split(/\*+/).filter((_, i) => i % 2 === 1);

/**
 * The steps under the numbered headings of a tour: "press **A**", "type **V** at **L**", "read *T*",
 * "find *F* among your downloads", and its pictures. Words in stars that belong to no step are an
 * error, so that none goes untried by a slip of the pen.
 */
export function stepsOf(tour: string): Step[] {
  const numbered = tour.split(/^## /m).filter((part) => /^\d/.test(part));
  const prose = numbered.join(" ").replace(/\s+/g, " ");
  const left = /.{0,40}\*.{0,40}/.exec(prose.replace(STEP, ""));
  if (left) throw new RangeError(`words that belong to no step: ${left[0]}`);
  return [...prose.matchAll(STEP)].flatMap(([, press, type, at, read, find, file]): Step[] => {
    if (press) return inStars(press).map((words) => ({ kind: "press", words }));
    if (type) return [{ kind: "type", words: type, at }];
    if (read) return inStars(read).map((words) => ({ kind: "read", words }));
    return [find ? { kind: "find", words: find } : { kind: "picture", file }];
  });
}

const PRESSED = [
  ".opening [role=radio]",
  ".opening button",
  "button",
  "[data-word]",
  "a",
  "summary",
  "label",
  "[role=radio]",
];

declare global {
  /** What of an element stands before the eyes, fractions as they are typed. */
  var seen: (element: HTMLElement) => string;
}

/** Has the page tell what is seen of it: without what is only spoken, so that sentences stay whole. */
const openEyes = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(".said { display: none !important; }");
    document.adoptedStyleSheets.push(sheet);
    Object.assign(globalThis, {
      // biome-ignore lint/performance/useDomNodeTextContent: what is hidden is not seen
      seen({ innerText }: HTMLElement) {
        return innerText
          .replace(/\u2044/g, "/")
          .replace(/\s+/g, " ")
          .trim();
      },
    });
  });

/** The first thing that can be pressed and reads so. */
async function toPress(page: Page, words: string, timeout: number): Promise<ElementHandle> {
  const found = await page.waitForFunction(
    ({ words, kinds }) =>
      kinds
        .flatMap((kind) => [...document.querySelectorAll<HTMLElement>(kind)])
        .find((e) => seen(e) === words),
    { words, kinds: PRESSED },
    { timeout },
  );
  return found.asElement() as ElementHandle;
}

const toType = (page: Page, name: string) => page.getByRole("textbox", { name }).first();

/** The last and least part of the page that reads so. */
async function toRead(page: Page, words: string, timeout: number): Promise<ElementHandle> {
  const found = await page.waitForFunction(
    (words) => {
      let part: Element | undefined;
      let next: Element | undefined = document.body;
      while (next && seen(next as HTMLElement).includes(words)) {
        part = next;
        next = [...part.children].findLast(
          (e) => "innerText" in e && seen(e as HTMLElement).includes(words),
        );
      }
      return part;
    },
    words,
    { timeout },
  );
  return found.asElement() as ElementHandle;
}

export interface Walk {
  /** Is given each picture the tour shows, when the page looks so, with what the step before was about. */
  readonly picture?: (file: string, about: ElementHandle) => Promise<void>;
  /** How long each step may take, ms. */
  readonly patience?: number;
}

/** Does the steps on the page, by touch. Rejects with the step that could not be done. */
export async function walk(page: Page, steps: readonly Step[], how: Walk = {}): Promise<void> {
  const { patience: timeout = 20_000 } = how;
  const files: string[] = [];
  page.on("download", (file) => files.push(file.suggestedFilename()));
  await openEyes(page);
  let about = (await page.$("body")) as ElementHandle;
  const take = async (step: Step): Promise<void> => {
    switch (step.kind) {
      case "press":
        about = await toPress(page, step.words, timeout);
        return about.tap({ timeout });
      case "type":
        await toType(page, step.at).fill(step.words, { timeout });
        return toType(page, step.at).press("Enter");
      case "read":
        about = await toRead(page, step.words, timeout);
        return;
      case "find":
        if (files.length === 0) await page.waitForEvent("download", { timeout });
        if (files.includes(step.words)) return;
        throw new RangeError(`the downloads are: ${files.join(", ")}`);
      case "picture":
        return how.picture?.(step.file, about);
    }
  };
  for (const step of steps)
    await take(step).catch((cause: unknown) => {
      throw new Error(`the tour stops at ${JSON.stringify(step)}`, { cause });
    });
}
