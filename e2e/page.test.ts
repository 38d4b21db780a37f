import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { canonicalText } from "../src/core/brief/index.ts";
import { trialBrief } from "../src/web/keep/trial.testing.ts";
import { giveFile, onDisk, openBrowser, type Profile, servePage, tab } from "./harness.ts";

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;
let profile: Profile;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});
beforeEach(async () => {
  profile = await browser.profile();
});
afterEach(async () => {
  expect(profile.complaints).toEqual([]);
  await profile.close();
});

const kept = (page: Page) => page.getByText("Kept in this browser, read back and equal").waitFor();
const openPage = async (from = profile) => {
  const page = await tab(from, site.address);
  await kept(page);
  return page;
};
const takeBack = (page: Page) => page.getByRole("button", { name: /^Take back/ });
const word = (page: Page, id: string) => page.locator(`[data-word="${id}"]`).first();

/** Every word of both sentences, in reading order. */
const wordsOf = (page: Page) =>
  page
    .locator("[data-word]")
    .evaluateAll((all) => [...new Set(all.map((w) => (w as HTMLElement).dataset.word ?? ""))]);

/** Whether the sentences read as this text, or no longer do. */
const reads = ({ text, as }: { text: string; as: boolean }) =>
  ([...document.querySelectorAll("[data-word]")].map((w) => w.textContent).join(" | ") === text) ===
  as;
const reading = (page: Page) =>
  page.locator("[data-word]").evaluateAll((all) => all.map((w) => w.textContent).join(" | "));

/** Makes the design four rows by eight with the mouse. */
async function makeFourRows(page: Page): Promise<void> {
  await word(page, "grid").click();
  await page.getByRole("radio", { name: "4 by 8" }).click();
  await page.getByRole("button", { name: "Take it" }).click();
  await page.getByRole("button", { name: "How many blocks: 32 blocks" }).waitFor();
}

describe("first start", () => {
  test("a sample stands there, answered and kept", async () => {
    const page = await openPage();
    await page.getByRole("heading", { name: "Tidepool runner" }).waitFor();
    for (const heading of ["How big is it?", "Does it cover?", "Is there enough?"])
      expect(await page.getByRole("heading", { name: heading }).count()).toBe(1);
    expect((await wordsOf(page)).length).toBeGreaterThan(12);
  });

  test("takes at most 250 kB of script, compressed, the worker's too", async () => {
    const page = await profile.context.newPage();
    await page.addInitScript(() => {
      new MutationObserver((_, watching) => {
        if (!document.querySelector("h2")) return;
        performance.mark("answered");
        watching.disconnect();
      }).observe(document, { childList: true, subtree: true });
    });
    await page.goto(site.address);
    await page.getByRole("heading", { name: "How big is it?" }).waitFor();
    // What is asked for after the questions stand there is no part of the first view.
    const scripts = await page.evaluate(() => {
      const [{ startTime: answered }] = performance.getEntriesByName("answered");
      const asked = performance.getEntriesByType("resource").filter((r) => r.startTime < answered);
      // What page and worker share comes once.
      return [...new Set(asked.map((r) => r.name))].filter((name) => name.endsWith(".js"));
    });
    expect(scripts.some((name) => name.includes("answer.worker"))).toBe(true);
    const sizes = await Promise.all(
      scripts.map(async (name) => {
        const text = await (await fetch(name)).arrayBuffer();
        return gzipSync(Buffer.from(text), { level: 9 }).length;
      }),
    );
    expect(sizes.reduce((a, b) => a + b)).toBeLessThanOrEqual(250_000);
  });
});

describe("every word can be changed and taken back", () => {
  type Way = (page: Page, id: string) => Promise<void>;

  /**
   * Changes the words in the way given; looks that each changed, was kept, and comes back. Every word
   * is tried in one way, and the three ways take turns: trying all by all takes minutes.
   */
  async function everyWord(
    page: Page,
    change: Way,
    undo: (page: Page) => Promise<void>,
    which: (nth: number) => boolean = () => true,
  ) {
    // The small sentences come after the large ones.
    await word(page, "unit").waitFor();
    const before = await reading(page);
    const ids = await wordsOf(page);
    for (const id of ids.filter((_, i) => which(i))) {
      await change(page, id);
      await page.waitForFunction(reads, { text: before, as: false });
      await undo(page);
      await page.waitForFunction(reads, { text: before, as: true });
    }
    await kept(page);
  }

  test("by mouse", async () => {
    const page = await openPage();
    const change: Way = async (page, id) => {
      await word(page, id).click();
      await page.locator('.opening [role="radio"][aria-checked="false"]').first().click();
      await page.getByRole("button", { name: "Take it" }).click();
    };
    await everyWord(
      page,
      change,
      (page) => takeBack(page).click(),
      (i) => i % 2 === 0,
    );
  });

  test("by touch, on a tablet", async () => {
    const tablet = await browser.profile({
      viewport: { width: 834, height: 1112 },
      hasTouch: true,
      isMobile: true,
    });
    const page = await openPage(tablet);
    const change: Way = async (page, id) => {
      await word(page, id).tap();
      await page.locator('.opening [role="radio"][aria-checked="false"]').first().tap();
      await page.getByRole("button", { name: "Take it" }).tap();
    };
    // Every other word by mouse; of the rest, half by touch and half by keys.
    await everyWord(
      page,
      change,
      (page) => takeBack(page).tap(),
      (i) => i % 4 === 1,
    );
    expect(tablet.complaints).toEqual([]);
    await tablet.close();
  });

  test("by keys alone", async () => {
    const page = await openPage();
    const focused = () =>
      page.evaluate(() => {
        const at = document.activeElement as HTMLElement | null;
        return { word: at?.dataset.word, tag: at?.tagName, role: at?.getAttribute("role") };
      });
    /** Right arrows walk through a sentence; tabs lead to it and to the other one. */
    const walkTo = async (id: string) => {
      for (let tries = 0; tries < 60; tries++) {
        const at = await focused();
        if (at.word === id) return;
        await page.keyboard.press(at.word === undefined ? "Tab" : "ArrowRight");
        if ((await focused()).word === at.word && at.word) await page.keyboard.press("Tab");
      }
      throw new Error(`no way by keys to the word ${id}`);
    };
    const change: Way = async (page, id) => {
      await walkTo(id);
      await page.keyboard.press("Enter");
      await page.waitForFunction(() => document.activeElement?.closest(".opening"));
      await page.keyboard.press("ArrowRight");
      if ((await focused()).tag === "INPUT") await page.keyboard.press("ArrowUp");
      await page.keyboard.press("Enter");
      await page.waitForFunction(
        (id) => (document.activeElement as HTMLElement).dataset.word === id,
        id,
      );
    };
    await everyWord(
      page,
      change,
      (page) => page.keyboard.press("Control+z"),
      (i) => i % 4 === 3,
    );
  });

  test("by typing a number as people write them", async () => {
    const page = await openPage();
    await word(page, "seam").click();
    const field = page.getByRole("textbox", { name: "Seam allowance, typed" });
    await field.fill("5/16");
    await field.press("Enter");
    await page.getByRole("button", { name: /^Seam allowance: five sixteenths/ }).waitFor();
    await word(page, "seam").click();
    await field.fill("a thumb");
    await page.getByRole("alert").waitFor();
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: /^Seam allowance: five sixteenths/ }).waitFor();
  });
});

describe("the work is safe", () => {
  test("undo lives on after a reload", async () => {
    const page = await openPage();
    await makeFourRows(page);
    await kept(page);
    await page.reload();
    await page.getByRole("button", { name: "How many blocks: 32 blocks" }).waitFor();
    await takeBack(page).click();
    await page.getByRole("button", { name: "How many blocks: 24 blocks" }).waitFor();
    await page.getByRole("button", { name: /^Do again/ }).waitFor();
  });

  test("a second tab follows the first", async () => {
    const one = await openPage();
    const two = await openPage();
    await makeFourRows(one);
    await two.getByText(/^Changed in another tab/).waitFor();
    await two.getByRole("button", { name: "How many blocks: 32 blocks" }).waitFor();
  });

  test("a full storage is said in full; with room again the work is saved", async () => {
    const page = await tab(profile, `${site.address}crash.html`);
    const client = await page.context().newCDPSession(page);
    const origin = new URL(site.address).origin;
    await client.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
    await page.goto(site.address);
    await page.getByText("Not saved: the browser's storage is full").waitFor();
    await page.getByRole("heading", { name: "How big is it?" }).waitFor();
    await page.getByRole("button", { name: "Save again" }).waitFor();
    // With room again it is saved without being asked, within the time of a retry.
    await client.send("Storage.overrideQuotaForOrigin", { origin });
    await kept(page);
  });

  test("a tab killed with a word open has lost no edit that was kept", async () => {
    const page = await openPage();
    await makeFourRows(page);
    await kept(page);
    await word(page, "seam").click();
    await page.getByRole("radio", { name: "three eighths of an inch" }).click();
    const crashed = page.waitForEvent("crash");
    await page.goto("chrome://crash").catch(() => {});
    await crashed;
    const again = await openPage();
    await again.getByRole("button", { name: "How many blocks: 32 blocks" }).waitFor();
    await again.getByRole("button", { name: "Seam allowance: one quarter of an inch" }).waitFor();
  });

  test("a file goes out as it came in, to the byte", async () => {
    const page = await openPage();
    const typed = `${JSON.stringify(trialBrief("Peat throw"), null, 3)}\r\n`;
    await giveFile(page, "peat.json", typed);
    await page.getByRole("link", { name: "All designs" }).click();
    await page.getByRole("button", { name: "Open a file" }).click();
    await page.getByRole("heading", { name: "Peat throw" }).waitFor();
    await page.getByText("Kept in the file peat.json").waitFor();
    await word(page, "seam").click();
    await page.getByRole("radio", { name: "three eighths of an inch" }).click();
    await page.getByRole("button", { name: "Take it" }).click();
    await page.getByText("not yet in peat.json").waitFor();
    await page.getByRole("button", { name: "Save a file" }).click();
    await page.getByText("Kept in the file peat.json").waitFor();
    const edited = canonicalText({ ...trialBrief("Peat throw"), seam: "3/8" });
    expect(Buffer.from(await onDisk(page, "peat.json")).toString()).toBe(edited);
    await takeBack(page).click();
    await page.getByRole("button", { name: "Save a file" }).click();
    await page.getByText("Kept in the file peat.json").waitFor();
    const back = canonicalText(trialBrief("Peat throw"));
    expect(Buffer.from(await onDisk(page, "peat.json")).toString()).toBe(back);
  });

  test("designs can be duplicated, renamed, deleted and brought back", async () => {
    const page = await openPage();
    await page.getByRole("link", { name: "All designs" }).click();
    await page.getByRole("button", { name: "Duplicate Tidepool runner" }).click();
    await page.getByRole("button", { name: "Rename Copy of Tidepool runner" }).click();
    await page.getByRole("textbox", { name: /^New name of/ }).fill("Marsh runner");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Delete Marsh runner" }).click();
    await page.getByText("Marsh runner was deleted.").waitFor();
    await page.getByRole("button", { name: "Bring back Marsh runner" }).click();
    await page.getByRole("button", { name: "Delete Marsh runner" }).waitFor();
  });
});

test("names and notes of a design are text and nothing else", async () => {
  const page = await openPage();
  const trap = '<img src=x onerror="document.title=1"></script><svg onload=alert(1)>';
  const brief = trialBrief(trap);
  brief.notes = trap;
  brief.fabrics[0].name = trap;
  brief.blocks[0].name = trap;
  await giveFile(page, "trap.json", canonicalText(brief));
  await page.getByRole("link", { name: "All designs" }).click();
  await page.getByRole("button", { name: "Open a file" }).click();
  await page.getByRole("heading", { name: trap }).waitFor();
  const shut = page.locator('h2 button[aria-expanded="false"]');
  while ((await shut.count()) > 0) await shut.first().click();
  expect(await page.locator("img, [onload], [onerror]").count()).toBe(0);
  expect(await page.title()).not.toBe("1");
});

describe("without a server", () => {
  test("the page, below any path, works after two reloads and edits", async () => {
    const host = await servePage({ prefix: "/shop/eighthwise/" });
    const offline = await browser.profile({ serviceWorkers: "allow" });
    const page = await tab(offline, host.address);
    await kept(page);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await host.close();
    for (let time = 0; time < 2; time++) {
      await page.reload();
      await kept(page);
    }
    await makeFourRows(page);
    await kept(page);
    await page.goto(`${host.address}crash.html`);
    await page.getByText("One design is kept.").waitFor();
    expect(offline.complaints).toEqual([]);
    await offline.close();
  });
});

describe("when a part of the page fails", () => {
  test("every question by itself: the others live on, and the way to the designs is shown", async () => {
    const page = await profile.context.newPage();
    // The worker's answer is damaged on its way: the line of one question is no text.
    await page.addInitScript(() => {
      const plain = Object.getOwnPropertyDescriptor(Worker.prototype, "onmessage");
      Object.defineProperty(Worker.prototype, "onmessage", {
        ...plain,
        set(heard: (event: MessageEvent) => void) {
          plain?.set?.call(this, (event: MessageEvent) => {
            const { damaged } = globalThis as { damaged?: string };
            const questions = event.data.value?.questions ?? [];
            for (const q of questions) if (q.id === damaged) q.line = 7;
            heard.call(this, event);
          });
        },
      });
    });
    await page.goto(site.address);
    await kept(page);
    const asked = page.locator("[data-question]");
    await asked.last().waitFor();
    const ids = await asked.evaluateAll((all) =>
      all.map((q) => (q as HTMLElement).dataset.question ?? ""),
    );
    const headings = await asked.locator("h2").allTextContents();
    // The printed sheets are a question of the page's own; ten are the core's.
    const own = ids.flatMap((id, i) => (id === "print" ? [] : [[id, headings[i]] as const]));
    expect(own.length).toBeGreaterThan(8);
    for (const [id, heading] of own) {
      await page.evaluate((id) => void Object.assign(globalThis, { damaged: id }), id);
      // Always onward: an answer that was heard before is not asked for again.
      await word(page, "grid").focus();
      await page.keyboard.press("ArrowUp");
      await page.getByText(`Something in “${heading}” failed`).waitFor();
      expect(await page.getByRole("alert").count()).toBe(1);
      expect(await asked.count()).toBe(ids.length - 1);
    }
    await kept(page);
    await page.getByRole("link", { name: "See your designs as they are kept" }).click();
    await page.getByText("One design is kept.").waitFor();
  });
});
