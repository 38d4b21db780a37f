import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { canonicalText } from "../src/core/brief/index.ts";
import { trialBrief } from "../src/web/keep/trial.testing.ts";
import type {} from "./fixtures/bare.ts";
import {
  bareTab,
  edit,
  giveFile,
  onDisk,
  openBrowser,
  openOnDisk,
  type Profile,
  serveLayers,
  tab,
} from "./harness.ts";

let site: Awaited<ReturnType<typeof serveLayers>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;
let profile: Profile;

beforeAll(async () => {
  [site, browser] = await Promise.all([serveLayers(), openBrowser()]);
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

const stateOf = (page: Page) => page.evaluate(() => layers.keep.state.getState());
const rowsOf = async (page: Page) => (await stateOf(page)).open?.brief.quilt.rows;
const rowsAre = (page: Page, rows: number) =>
  page.waitForFunction(
    (rows) => layers.keep.state.getState().open?.brief.quilt.rows === rows,
    rows,
  );

describe("in one tab", () => {
  test("undo lives on after the page is loaded again", async () => {
    const page = await bareTab(profile, site.bare);
    for (const rows of [4, 6]) expect((await edit(page, rows)).kind).toBe("browser");
    await page.reload();
    await rowsAre(page, 6);
    await page.evaluate(() => layers.keep.act.undo());
    expect(await rowsOf(page)).toBe(4);
    expect((await stateOf(page)).open?.redoWords).toBe("make it 6 rows");
  });

  test("a full storage is said; with room again the work is saved", async () => {
    const page = await tab(profile, site.crash);
    const client = await page.context().newCDPSession(page);
    const origin = new URL(site.address).origin;
    await client.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 300_000 });
    await page.goto(site.bare);
    await rowsAre(page, 3);
    const { kept } = await page.evaluate(() => {
      const { keep, until } = layers;
      keep.act.edit("add a photo", (brief) => {
        const data = `data:image/png;base64,${"Q".repeat(4_000_000)}`;
        const photo = { data, width: "9", height: "7" };
        brief.fabrics.push({ ...brief.fabrics[0], kind: "print", id: "tide", photo } as never);
      });
      return until(keep, (s) => !("reason" in s.kept) || s.kept.reason !== "writing");
    });
    expect(kept).toMatchObject({ kind: "not-saved", reason: "storage-full" });
    await client.send("Storage.overrideQuotaForOrigin", { origin });
    await page.evaluate(() => layers.keep.act.saveAgain());
    expect((await stateOf(page)).kept.kind).toBe("browser");
    await page.reload();
    await page.waitForFunction(() => layers.keep.state.getState().open?.brief.fabrics.length === 3);
  });

  test("a database lost between two visits comes back from second copies, in its last state", async () => {
    const page = await bareTab(profile, site.bare);
    for (const rows of [5, 7]) expect((await edit(page, rows)).kind).toBe("browser");
    await page.evaluate(() => layers.keep.act.newDesign({ ...layers.trialBrief(), title: "Gone" }));
    const gone = (await stateOf(page)).open?.id as string;
    await page.evaluate((id) => layers.keep.act.remove(id), gone);
    // Closing copies what still waits.
    await page.evaluate(() => layers.keep.act.close());
    await page.goto(site.crash);
    const client = await page.context().newCDPSession(page);
    const origin = new URL(site.address).origin;
    await client.send("Storage.clearDataForOrigin", { origin, storageTypes: "indexeddb" });
    await page.goto(site.bare);
    await rowsAre(page, 7);
    await page.waitForFunction(() => layers.keep.state.getState().ready);
    const { designs, notices } = await stateOf(page);
    expect(designs.map((d) => d.title)).toEqual([trialBrief().title]);
    expect(notices).toContainEqual({ kind: "from-copies", titles: [trialBrief().title] });
  });

  test("a storage cleared by the browser is written back from the tab", async () => {
    const page = await bareTab(profile, site.bare);
    await edit(page, 5);
    const client = await page.context().newCDPSession(page);
    const origin = new URL(site.address).origin;
    await client.send("Storage.clearDataForOrigin", { origin, storageTypes: "indexeddb" });
    await page.waitForFunction(() => {
      const { notices, kept } = layers.keep.state.getState();
      return notices.some((n) => n.kind === "written-back") && kept.kind === "browser";
    });
    await page.reload();
    await rowsAre(page, 5);
    await page.evaluate(() => layers.keep.act.undo());
    expect(await rowsOf(page)).toBe(3);
  });

  test("a tab killed right after an edit was confirmed has lost nothing", async () => {
    const page = await bareTab(profile, site.bare);
    await edit(page, 8);
    const crashed = page.waitForEvent("crash");
    await page.goto("chrome://crash").catch(() => {});
    await crashed;
    const again = await bareTab(profile, site.bare);
    expect(await rowsOf(again)).toBe(8);
  });
});

describe("in several tabs", () => {
  test("the other tab follows; edits at once leave one of them to choose", async () => {
    const a = await bareTab(profile, site.bare);
    const b = await bareTab(profile, site.bare);
    await edit(a, 4);
    await rowsAre(b, 4);
    const soon = Date.now() + 500;
    const [one, other] = await Promise.all([edit(a, 6, soon), edit(b, 9, soon)]);
    const stale = one.kind === "not-saved" ? a : b;
    const fresh = stale === a ? b : a;
    expect([one.kind, other.kind].sort()).toEqual(["browser", "not-saved"]);
    const theirs = await rowsOf(fresh);
    expect((await stateOf(stale)).stale?.newer?.brief.quilt.rows).toBe(theirs);
    await stale.evaluate(() => layers.keep.act.keepMineAsCopy());
    await fresh.reload();
    await rowsAre(fresh, theirs as number);
    await fresh.waitForFunction(() => layers.keep.state.getState().designs.length === 2);
  });

  test("five tabs at first start share one design", async () => {
    const tabs = await Promise.all(Array.from({ length: 5 }, () => bareTab(profile, site.bare)));
    const ids = await Promise.all(tabs.map(async (page) => (await stateOf(page)).open?.id));
    expect(new Set(ids).size).toBe(1);
    await edit(tabs[3], 11);
    await Promise.all(tabs.map((page) => rowsAre(page, 11)));
  });

  test("a tab brought back from the browser's memory follows before it writes", async () => {
    const a = await bareTab(profile, site.bare);
    await a.goto(site.crash);
    const b = await bareTab(profile, site.bare);
    await edit(b, 6);
    await a.goBack();
    await rowsAre(a, 6);
    expect((await edit(a, 7)).kind).toBe("browser");
    await rowsAre(b, 7);
  });
});

describe("files", () => {
  /** A file as a person might have typed it: other spacing, a foreign key, a mark at its start. */
  const TYPED = `\uFEFF${JSON.stringify({ ...trialBrief("Peat & Foam"), "x-own": { b: 1, a: [2] } }, null, 5)}\r\n`;

  const bytes = (text: string) => Array.from(new TextEncoder().encode(text));

  test("opened and saved without an edit, a file is equal to the byte", async () => {
    const page = await bareTab(profile, site.bare);
    await giveFile(page, "peat.json", TYPED);
    await page.evaluate(() => layers.keep.act.openFile());
    expect(await stateOf(page)).toMatchObject({
      kept: { kind: "file", name: "peat.json" },
      open: { title: "Peat & Foam" },
    });
    await page.evaluate(() => layers.keep.act.saveFile());
    expect(await onDisk(page, "peat.json")).toEqual(bytes(TYPED));
    await edit(page, 9);
    await page.evaluate(() => layers.keep.act.undo());
    await page.evaluate(() => layers.keep.act.saveFile());
    expect(await onDisk(page, "peat.json")).toEqual(bytes(TYPED));
  });

  test("edited and saved, it holds the edit, and other programs' keys stand", async () => {
    const page = await bareTab(profile, site.bare);
    await giveFile(page, "peat.json", TYPED);
    await page.evaluate(() => layers.keep.act.openFile());
    await edit(page, 9);
    expect((await stateOf(page)).kept.kind).toBe("browser");
    await page.evaluate(() => layers.keep.act.saveFile());
    const brief = trialBrief("Peat & Foam");
    brief.quilt.rows = 9;
    const expected = canonicalText({ ...brief, "x-own": { b: 1, a: [2] } });
    expect(await onDisk(page, "peat.json")).toEqual(bytes(expected));
    expect((await stateOf(page)).kept).toMatchObject({ kind: "file", name: "peat.json" });
  });

  test("a file another program changed is noticed, not written over, and can be taken", async () => {
    const page = await bareTab(profile, site.bare);
    await giveFile(page, "peat.json", TYPED);
    await page.evaluate(() => layers.keep.act.openFile());
    await edit(page, 9);
    const theirs = canonicalText({ ...trialBrief("Peat & Foam"), notes: "from elsewhere" });
    await giveFile(page, "peat.json", theirs);
    await page.evaluate(() => layers.keep.act.saveFile());
    expect(await onDisk(page, "peat.json")).toEqual(bytes(theirs));
    const { open, notices } = await stateOf(page);
    expect(open?.file).toEqual({ name: "peat.json", changedOnDisk: true });
    expect(notices.at(-1)).toEqual({ kind: "file-changed", name: "peat.json" });
    await page.evaluate(() => layers.keep.act.takeFromFile());
    expect((await stateOf(page)).open).toMatchObject({
      brief: { notes: "from elsewhere", quilt: { rows: 3 } },
      file: { changedOnDisk: false },
    });
    await page.evaluate(() => layers.keep.act.undo());
    expect(await rowsOf(page)).toBe(9);
  });

  test("the same file opened again is the same design, also after a reload", async () => {
    const page = await bareTab(profile, site.bare);
    await giveFile(page, "peat.json", TYPED);
    await page.evaluate(() => layers.keep.act.openFile());
    const { open } = await stateOf(page);
    await edit(page, 9);
    await page.reload();
    await rowsAre(page, 9);
    await giveFile(page, "peat.json", TYPED);
    await page.evaluate(() => layers.keep.act.openFile());
    expect((await stateOf(page)).open?.id).toBe(open?.id);
    expect(await rowsOf(page)).toBe(9);
  });

  test.each([
    ["not UTF-8", [0xff, 0xfe, 0x00], "it is not text in UTF-8"],
    ["not JSON", bytes("{"), "this is not JSON"],
    ["no brief", bytes('{"format":"other"}'), 'format: expected "eighthwise-brief"'],
  ])("a dropped file that is %s is refused with its reason", async (_, content, why) => {
    const page = await bareTab(profile, site.bare);
    await page.evaluate((content) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(content)], "odd.json"));
      dispatchEvent(new DragEvent("drop", { dataTransfer: transfer, cancelable: true }));
    }, content);
    await page.waitForFunction(() => layers.keep.state.getState().notices.length > 0);
    const { notices, open } = await stateOf(page);
    expect(notices[0]).toMatchObject({ kind: "refused", name: "odd.json" });
    expect(notices[0].kind === "refused" && notices[0].why[0]).toContain(why);
    expect(open?.title).toBe("Reed runner");
  });

  test("where the page may not write files, the text is handed over as a download", async () => {
    const page = await bareTab(profile, site.bare);
    await page.evaluate(() => {
      Object.assign(globalThis, { showSaveFilePicker: undefined });
    });
    const coming = page.waitForEvent("download");
    await page.evaluate(() => layers.keep.act.saveFile());
    const download = await coming;
    expect(download.suggestedFilename()).toBe("reed-runner.json");
    expect(readFileSync(await download.path(), "utf8")).toBe(canonicalText(trialBrief()));
    expect((await stateOf(page)).notices).toEqual([
      { kind: "handed-over", name: "reed-runner.json" },
    ]);
    expect((await stateOf(page)).kept.kind).toBe("browser");
  });
});

describe("the crash page", () => {
  test("lists every design, whole or damaged, and hands each out", async () => {
    const page = await bareTab(profile, site.bare);
    const photo = `data:image/png;base64,${"Q".repeat(9_000)}`;
    await page.evaluate((data) => {
      layers.keep.act.edit("add a photo", (brief) => {
        brief.fabrics.push({
          ...brief.fabrics[0],
          kind: "print",
          id: "tide",
          photo: { data, width: "9", height: "7" },
        } as never);
      });
    }, photo);
    const text = await page.evaluate(async () => {
      await layers.until(layers.keep, (s) => s.kept.kind === "browser");
      await layers.keep.act.newDesign(layers.trialBrief("<img src=x onerror=alert(1)>"));
      const id = layers.keep.state.getState().designs.find((d) => d.title === "Reed runner")?.id;
      await layers.keep.act.openDesign(id as string);
      const text = layers.keep.act.text();
      await layers.keep.act.close();
      const db = await new Promise<IDBDatabase>((done) => {
        const request = indexedDB.open("eighthwise");
        request.onsuccess = () => done(request.result);
      });
      const tx = db.transaction("designs", "readwrite");
      tx.objectStore("designs").put({ id: "torn", title: 7 });
      await new Promise((done) => {
        tx.oncomplete = done;
      });
      db.close();
      return text;
    });

    await page.goto(site.crash);
    await page.getByText("3 designs are kept.").waitFor();
    expect(await page.locator("img").count()).toBe(0);
    expect(await page.getByText("<img src=x onerror=alert(1)>").count()).toBe(1);
    const reed = page.locator("#designs li", { hasText: "Reed runner" });
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      reed.getByText("Download the design").click(),
    ]);
    const got = readFileSync(await download.path(), "utf8");
    expect(canonicalText(JSON.parse(got))).toBe(text);
    const torn = page.locator("#designs li").filter({ hasText: "an unknown time" });
    const [raw] = await Promise.all([
      page.waitForEvent("download"),
      torn.getByText("Download all that is stored").click(),
    ]);
    expect(JSON.parse(readFileSync(await raw.path(), "utf8")).design).toEqual({
      id: "torn",
      title: 7,
    });
  });

  test("makes no database where there is none", async () => {
    const page = await tab(profile, site.crash);
    await page.getByText("This browser keeps no designs.").waitFor();
    expect(await page.evaluate(async () => (await indexedDB.databases()).length)).toBe(0);
  });
});

describe("workers", () => {
  test("answer, refuse, crash, hang: each ends in an outcome and the next is heard", async () => {
    const page = await bareTab(profile, site.bare);
    const outcomes = await page.evaluate(async () => {
      const worked = layers.newStubborn();
      const ask = (name: "double" | "refuse" | "crash" | "hang") =>
        worked.ask("a", name, ...((name === "double" ? [21] : []) as never));
      return [
        await ask("double"),
        await ask("refuse"),
        await ask("double"),
        await ask("crash"),
        await ask("double"),
        await ask("hang"),
        await ask("double"),
      ];
    });
    const doubled = { kind: "done", value: 42 };
    const [first, refused, second, crashed, third, hung, fourth] = outcomes;
    expect([first, second, third, fourth]).toEqual([doubled, doubled, doubled, doubled]);
    expect(refused).toMatchObject({ failure: { message: "seven is odd", question: "cover" } });
    expect(crashed).toMatchObject({ kind: "failed", failure: { crashed: true } });
    expect(hung).toMatchObject({ failure: { message: "no answer within 2 s", crashed: true } });
    profile.complaints.length = 0;
  });

  test("the core answers in its worker, the newest brief only", async () => {
    const page = await bareTab(profile, site.bare);
    const outcomes = await page.evaluate(async () => {
      const worked = layers.newAnswerer();
      const brief = layers.trialBrief();
      const asks = [3, 4, 5, 6].map((rows) =>
        worked.ask("now", "answer", { ...brief, quilt: { ...brief.quilt, rows } }),
      );
      return (await Promise.all(asks)).map((o) =>
        o.kind === "done" ? o.value.blocks[0]?.count : o.kind,
      );
    });
    expect(outcomes).toEqual(["superseded", "superseded", "superseded", 30]);
  });
});

test("a browser closed and opened again still has the confirmed edit", async () => {
  const folder = mkdtempSync(join(tmpdir(), "profile-"));
  const first = await openOnDisk(folder);
  const page = await bareTab(first, site.bare);
  await edit(page, 13);
  await first.close();
  const second = await openOnDisk(folder);
  expect(await rowsOf(await bareTab(second, site.bare))).toBe(13);
  await second.close();
  rmSync(folder, { recursive: true, force: true });
});
