import type { Browser, Page } from "playwright-core";
import { drawnPrint, openBrief, printBrief } from "../e2e/prints.ts";

/** A design has at most so many kinds of block. */
export const MOST_KINDS = 100;

type Design = ReturnType<typeof printBrief> & {
  blocks: Record<string, unknown>[];
  quilt: Record<string, unknown>;
};

/** 20 by 20 blocks of photographed fabric of so many kinds, each cut from a place of its own. */
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

/** A page with such a quilt opened from a file, answered, and its photo drawn. */
export async function photographed(
  browser: Browser,
  address: string,
  kinds: number,
): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
  // The runner of this script names functions by a helper that the page does not have.
  await page.addInitScript("globalThis.__name = (f) => f");
  await page.goto(address);
  await page.getByText("Kept in this browser").waitFor();
  const data = await drawnPrint(page, "image/jpeg");
  await openBrief(page, quiltOf(data, kinds));
  const slow = { timeout: 120_000 };
  await page.getByRole("button", { name: "How many blocks: 400 blocks" }).waitFor(slow);
  await page.locator('.status[aria-busy="false"]').waitFor(slow);
  await page.waitForTimeout(1500);
  return page;
}
