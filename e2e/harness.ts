import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import {
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { buildIfNeeded, PAGE } from "../scripts/build-web.mjs";
import { serve } from "../scripts/serve.mjs";

/** Debian's Chromium without its window: the same engine with a fifth less work around it. */
export const CHROMIUM = {
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium-headless-shell",
  args: ["--no-sandbox", "--disable-background-networking", "--disable-gpu"],
};

export const LAYERS = {
  config: "e2e/fixtures/vite.config.ts",
  out: resolve(import.meta.dirname, "../dist/layers"),
};

/** The page, built if needed and served, at the root or below a path. */
export function servePage(options: { port?: number; prefix?: string } = {}) {
  buildIfNeeded(PAGE);
  return serve(PAGE.out, options);
}

/** The layers under the page: keep, worker, crash page. */
export async function serveLayers() {
  buildIfNeeded(LAYERS, ["e2e/fixtures"]);
  const server = await serve(LAYERS.out);
  return {
    ...server,
    bare: `${server.address}e2e/fixtures/bare.html`,
    crash: `${server.address}src/web/crash.html`,
  };
}

export interface Profile {
  readonly context: BrowserContext;
  /** What went wrong in any page of it: uncaught errors, refused scripts, requests elsewhere. */
  readonly complaints: string[];
  close(): Promise<void>;
}

function watched(context: BrowserContext, close: () => Promise<void>): Profile {
  const complaints: string[] = [];
  context.on("weberror", (error) => complaints.push(String(error.error())));
  context.on("console", (message) => {
    if (/Content Security Policy|Refused to/.test(message.text())) complaints.push(message.text());
  });
  context.on("request", (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (protocol.startsWith("http") && hostname !== "127.0.0.1")
      complaints.push(`a request to ${request.url()}`);
  });
  return { context, complaints, close };
}

const WIDE = { viewport: { width: 1440, height: 900 } };

/**
 * One browser for a file of tests; each test takes a fresh profile of it, held in memory. The page's
 * service worker fetches every file for later, which takes as long as the first view: only what is
 * tried without a server lets it, by `serviceWorkers: "allow"`.
 */
export async function openBrowser() {
  const browser = await chromium.launch(CHROMIUM);
  return {
    async profile(options: BrowserContextOptions = {}): Promise<Profile> {
      const context = await browser.newContext({ ...WIDE, serviceWorkers: "block", ...options });
      return watched(context, () => context.close());
    },
    close: () => browser.close(),
  };
}

/** A browser of its own with a profile on disk, which lives on in `folder` when one is given. */
export async function openOnDisk(folder?: string): Promise<Profile> {
  const home = folder ?? mkdtempSync(join(tmpdir(), "profile-"));
  const context = await chromium.launchPersistentContext(home, { ...CHROMIUM, ...WIDE });
  return watched(context, async () => {
    await context.close();
    if (!folder) rmSync(home, { recursive: true, force: true, maxRetries: 3 });
  });
}

/** A new tab on an address. */
export async function tab(profile: Profile, address: string): Promise<Page> {
  const page = await profile.context.newPage();
  await page.goto(address);
  return page;
}

/** A new tab on the bare layers, its first design kept. */
export async function bareTab(profile: Profile, address: string): Promise<Page> {
  const page = await tab(profile, address);
  await page.waitForFunction(() => {
    const state = globalThis.layers?.keep.state.getState();
    return state?.ready && state.kept.kind === "browser";
  });
  return page;
}

/** Edits the rows of a quilt on the bare layers, at a moment of the clock when one is given, and waits until the state is kept or refused. */
export const edit = (page: Page, rows: number, at = 0) =>
  page.evaluate(
    async ([rows, at]) => {
      const { keep, until } = layers;
      while (Date.now() < at) await new Promise((next) => setTimeout(next));
      keep.act.edit(`make it ${rows} rows`, (brief) => {
        brief.quilt.rows = rows;
      });
      const { kept } = await until(
        keep,
        (s) => !("reason" in s.kept) || s.kept.reason !== "writing",
      );
      return kept;
    },
    [rows, at] as const,
  );

/** Gives the page a real file where it would ask the maker to choose one. */
export const giveFile = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(
    async ([name, text]) => {
      const folder = await navigator.storage.getDirectory();
      const handle = await folder.getFileHandle(name, { create: true });
      const stream = await handle.createWritable();
      await stream.write(text);
      await stream.close();
      Object.assign(globalThis, { showOpenFilePicker: async () => [handle] });
    },
    [name, text],
  );

/** The bytes such a file holds. */
export const onDisk = (page: Page, name: string): Promise<number[]> =>
  page.evaluate(async (name) => {
    const folder = await navigator.storage.getDirectory();
    const file = await (await folder.getFileHandle(name)).getFile();
    return Array.from(new Uint8Array(await file.arrayBuffer()));
  }, name);
