// What a zoom about a moving point over 400 blocks of photographed fabric costs beside empty frames: one kind of
// block stamped 400 times, and as many kinds as a design may have, all different, over 400 blocks.
// `npx tsx bench/photo-pan.ts`
import { chromium, type Page } from "playwright-core";
import { CHROMIUM, servePage } from "../e2e/harness.ts";
import { drawnPrint, openBrief, printBrief } from "../e2e/prints.ts";

const RUNS = 5;
const FRAMES = 60;
/** A design has at most so many kinds of block. */
const MOST_KINDS = 100;

const server = await servePage();
const browser = await chromium.launch(CHROMIUM);

type Design = ReturnType<typeof printBrief> & {
  blocks: Record<string, unknown>[];
  quilt: Record<string, unknown>;
};

/** 20 by 20 blocks of so many kinds, each cut from a place of its own. */
function quiltOf(data: string, kinds: number): object {
  const brief = printBrief(data) as Design;
  const [block] = brief.blocks;
  const blocks = Array.from({ length: kinds }, (_, i) => ({
    ...block,
    id: `petal-${i + 1}`,
    name: `petal ${i + 1}`,
    place: {
      wedge: {
        round: "matched",
        at: { x: `${((i % 10) * 1.2).toFixed(1)}`, y: `${(Math.floor(i / 10) * 1.6).toFixed(1)}` },
      },
    },
  }));
  const plan = Array.from({ length: 20 }, (_, r) =>
    Array.from({ length: 20 }, (_, c) => `petal-${((r * 20 + c) % kinds) + 1}`),
  );
  return { ...brief, blocks, quilt: { rows: 20, columns: 20, plan } };
}

/** Times between frames, in milliseconds: with a zoom about a moving point in every frame, or with nothing. */
const frames = (page: Page, panning: boolean): Promise<number[]> =>
  page.evaluate(
    ([count, panning]) =>
      new Promise<number[]>((done) => {
        const canvas = document.querySelector("canvas") as HTMLCanvasElement;
        const box = canvas.getBoundingClientRect();
        const times: number[] = [];
        let last = performance.now();
        const frame = (now: number): void => {
          times.push(now - last);
          last = now;
          if (times.length > count) {
            done(times.slice(1));
            return;
          }
          if (panning)
            canvas.dispatchEvent(
              new WheelEvent("wheel", {
                ctrlKey: true,
                deltaY: times.length < count / 2 ? -14 : 14,
                clientX: box.left + box.width * (0.3 + 0.006 * times.length),
                clientY: box.top + box.height / 2,
                bubbles: true,
                cancelable: true,
              }),
            );
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
      }),
    [FRAMES, panning] as const,
  );

const median = (xs: number[]): number => xs.toSorted((a, b) => a - b)[Math.floor(xs.length / 2)];

for (const kinds of [1, MOST_KINDS]) {
  const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
  // The runner of this script names functions by a helper that the page does not have.
  await page.addInitScript("globalThis.__name = (f) => f");
  await page.goto(server.address);
  await page.getByText("Kept in this browser").waitFor();
  const data = await drawnPrint(page, "image/jpeg");
  const start = Date.now();
  await openBrief(page, quiltOf(data, kinds));
  await page
    .getByRole("button", { name: "How many blocks: 400 blocks" })
    .waitFor({ timeout: 120_000 });
  await page.locator('.status[aria-busy="false"]').waitFor({ timeout: 120_000 });
  const opened = Date.now() - start;
  await page.waitForTimeout(1500);
  await frames(page, true);
  const ratios: number[] = [];
  const worst: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const empty = await frames(page, false);
    const moved = await frames(page, true);
    ratios.push(median(moved) / median(empty));
    worst.push(Math.max(...moved) - median(empty));
  }
  console.log(
    `400 blocks with a photo, ${kinds} ${kinds === 1 ? "kind" : "kinds, all different"}: median frame ${median(ratios).toFixed(2)} times an empty one; worst frame ${median(worst).toFixed(0)} ms over it (median of ${RUNS} runs); opened and answered in ${(opened / 1000).toFixed(1)} s`,
  );
  await page.close();
}
await browser.close();
await server.close();
