import type { Page } from "playwright-core";

/** The most a task on the main thread may take, in milliseconds: longer ones are felt. */
export const LONGEST = 50;

const STEPS = 6;

/** Waits until the page has answered what was just asked of it, if it asks anything. */
async function answered(page: Page): Promise<void> {
  await page
    .locator('.status[aria-busy="true"]')
    .waitFor({ timeout: 1000 })
    .catch(() => {});
  await page.locator('.status[aria-busy="false"]').waitFor({ timeout: 60_000 });
}

/** Edits as a maker would: the strip and the number of blocks stepped by keys, and three edits taken back. */
async function edit(page: Page): Promise<void> {
  for (const word of ["strip/", "grid"]) {
    await page.locator(`[data-word^="${word}"]`).first().focus();
    for (let i = 0; i < STEPS; i++) {
      await page.keyboard.press(i < STEPS / 2 ? "ArrowUp" : "ArrowDown");
      await answered(page);
    }
  }
  for (let i = 0; i < 3; i++) {
    await page.getByRole("button", { name: /^Take back/ }).click();
    await answered(page);
  }
}

export interface Tasks {
  /** The longest task on the main thread, in milliseconds by the clock. */
  readonly clock: number;
  /** The longest by the processor time the thread itself took: a busy machine does not lengthen it. */
  readonly thread: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/** The longest tasks on the page's main thread while it is edited, from the browser's own trace. */
export async function longestTasks(page: Page): Promise<Tasks> {
  const browser = page.context().browser();
  if (!browser) throw new Error("a page without a browser");
  const categories = [
    "toplevel",
    "__metadata",
    "devtools.timeline",
    "disabled-by-default-devtools.timeline",
  ];
  await browser.startTracing(page, { categories });
  await edit(page);
  const trace = await browser.stopTracing();
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: TraceEvent[] };
  const mains = new Set(
    traceEvents
      .filter((e) => e.name === "thread_name" && e.args.name === "CrRendererMain")
      .map((e) => `${e.pid} ${e.tid}`),
  );
  const tasks = traceEvents.filter(
    (e) => e.ph === "X" && /RunTask$/.test(e.name) && mains.has(`${e.pid} ${e.tid}`),
  );
  const most = (of: (e: TraceEvent) => number) =>
    tasks.reduce((m, e) => Math.max(m, of(e)), 0) / 1000;
  return { clock: most((e) => e.dur ?? 0), thread: most((e) => e.tdur ?? 0) };
}
