import type { Browser, Page } from "playwright-core";

const FRAMES = 60;

/** The sample grown to so many rows and columns, as a maker would: the word touched, the number typed. */
export async function grown(browser: Browser, address: string, rows: number): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
  // The runner of this script names functions by a helper that the page does not have.
  await page.addInitScript("globalThis.__name = (f) => f");
  await page.goto(address);
  await page.locator('[data-word="grid"]').first().click();
  await page.getByRole("textbox", { name: "Rows by columns, typed" }).fill(`${rows} by ${rows}`);
  await page.keyboard.press("Enter");
  await page
    .getByRole("button", {
      name: `How many blocks: ${rows * rows} ${rows === 1 ? "block" : "blocks"}`,
    })
    .waitFor();
  await page.locator('.status[aria-busy="false"]').waitFor();
  return page;
}

export type Moving = "nothing" | "zoom" | "pan";

/** Times between frames, in milliseconds, while the quilt is moved in every frame, or not at all. */
export const frames = (page: Page, moving: Moving): Promise<number[]> =>
  page.evaluate(
    ([count, moving]) =>
      new Promise<number[]>((done) => {
        const canvas = document.querySelector("canvas") as HTMLCanvasElement;
        const box = canvas.getBoundingClientRect();
        const middle = { x: box.left + box.width / 2, y: box.top + box.height / 2 };
        const said = { bubbles: true, cancelable: true };
        const wheel = (deltaY: number, clientX: number): void => {
          const at = { clientX, clientY: middle.y };
          canvas.dispatchEvent(new WheelEvent("wheel", { ...said, ...at, ctrlKey: true, deltaY }));
        };
        const fingers = (what: string, dx: number): void => {
          for (const [pointerId, side] of [
            [1, -40],
            [2, 40],
          ]) {
            const at = { clientX: middle.x + side + dx, clientY: middle.y + dx / 3 };
            const touch = { ...said, ...at, pointerId, pointerType: "touch" };
            canvas.dispatchEvent(new PointerEvent(what, touch));
          }
        };
        if (moving === "pan") {
          for (let i = 0; i < 20; i++) wheel(-14, middle.x);
          fingers("pointerdown", 0);
        }
        const times: number[] = [];
        let last = performance.now();
        const frame = (now: number): void => {
          times.push(now - last);
          last = now;
          if (times.length > count) {
            if (moving === "pan") {
              fingers("pointerup", 0);
              for (let i = 0; i < 20; i++) wheel(14, middle.x);
            }
            done(times.slice(1));
            return;
          }
          const n = times.length;
          if (moving === "zoom")
            wheel(n < count / 2 ? -14 : 14, box.left + box.width * (0.3 + 0.004 * n));
          if (moving === "pan") fingers("pointermove", 120 * Math.sin(n / 8));
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
      }),
    [FRAMES, moving] as const,
  );
