import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Page } from "playwright-core";
import type {} from "./fixtures/bare.ts";
import { CHROMIUM, serveLayers } from "./harness.ts";

/** A new profile after this many rounds, so that histories stay of a real length. */
const ROUNDS_A_PROFILE = 20;
/** In milliseconds: most lives end soon after the start, one in ten may see several second copies. */
const SHORT_LIFE = 450;
const LONG_LIFE = 4_000;
/** A life whose database is taken away is so long at least that a second copy is likely. */
const COPIED_LIFE = 1_500;

/** Numbers from 0 to 1 that follow from the seed alone (a 32-bit mix, good enough for moments). */
function drawn(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return ((z ^ (z >>> 16)) >>> 0) / 2 ** 32;
  };
}

interface Living {
  readonly page: Page;
  /** Ends every process of the browser at once. */
  kill(): Promise<void>;
}

async function live(profile: string, address: string): Promise<Living> {
  const child = spawn(
    CHROMIUM.executablePath,
    [
      ...CHROMIUM.args,
      "--headless",
      "--no-first-run",
      `--user-data-dir=${profile}`,
      "--remote-debugging-port=0",
      "about:blank",
    ],
    { detached: true, stdio: ["ignore", "ignore", "pipe"] },
  );
  // Whatever ends this script ends the browser too.
  const end = () => process.kill(-(child.pid as number), "SIGKILL");
  process.once("exit", end);
  const browser = await chromium.connectOverCDP(await debugAddress(child));
  const [context] = browser.contexts();
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(address);
  await page.waitForFunction(() => {
    const state = globalThis.layers?.keep.state.getState();
    return state?.ready && state.kept.kind === "browser";
  });
  return {
    page,
    async kill() {
      const ended = new Promise((done) => child.once("exit", done));
      process.off("exit", end);
      end();
      await ended;
      await browser.close().catch(() => {});
    },
  };
}

function debugAddress(child: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = "";
    child.stderr?.on("data", (part) => {
      said += part;
      const address = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (address) found(address);
    });
    child.once("exit", () => failed(new Error(`the browser ended by itself\n${said}`)));
  });
}

export interface Killed {
  readonly kills: number;
  /** Edits the page had called kept before a kill, as far as it was heard. */
  readonly confirmed: number;
  /** Kills while an edit was being written. */
  readonly inFlight: number;
  /** One line for each time an edit that was called kept was not there afterwards. */
  readonly lost: readonly string[];
  /** One line for each time the browser came back without its database and the second copy stood in. */
  readonly broughtBack: readonly string[];
  /** How often the database was taken away on purpose, and how often the second copy stood in. */
  readonly took: number;
  readonly taken: number;
}

/** What one life of a browser left behind, as far as it was heard. */
interface Life {
  /** The last count made, and the last count the page had called kept. */
  made: number;
  kept: number;
  /** How many edits were called kept. */
  confirmed: number;
  /** The count of the last second copy that was in its place. */
  copied: number | undefined;
  /** The database was taken away after the kill, as a browser does that finds it damaged. */
  taken: boolean;
}

/** The sums of a run, in words. */
export const sums = (of: Killed): string =>
  `${of.kills} kills: ${of.confirmed} edits confirmed, ${of.inFlight} kills with an edit under way, ` +
  `${of.lost.length} with a confirmed edit lost; whole databases brought back from the second copy: ` +
  `${of.broughtBack.length} thrown away by the browser, ${of.taken} of ${of.took} taken away on purpose`;

/**
 * Each round opens the same profile again, checks it, edits without pause, and kills every process
 * of the browser at once at a moment drawn from the seed. `takeEvery`: after every so many kills the
 * database is taken out of the profile, and the second copy must stand in for it.
 */
export async function killInMidEdit(
  rounds: number,
  seed: number,
  { takeEvery = 25, tell }: { takeEvery?: number; tell?: (round: number) => void } = {},
): Promise<Killed> {
  const draw = drawn(seed);
  const site = await serveLayers();
  const sum = { confirmed: 0, inFlight: 0, took: 0, taken: 0 };
  const lost: string[] = [];
  const broughtBack: string[] = [];
  let profile = "";
  let life = newLife(0);

  /** Opens the profile and compares what is stored with what was confirmed; can it go on? */
  async function check(round: number): Promise<{ living: Living; ends: boolean }> {
    const living = await live(profile, site.bare);
    const found = await living.page.evaluate(() => layers.counted());
    const told = `round ${round}: kept ${life.kept}, found ${found.count} of ${found.steps} steps`;
    if (life.made > life.kept) sum.inFlight++;
    if (life.taken) {
      sum.took++;
      if (found.fromCopy && found.count >= (life.copied ?? 0)) sum.taken++;
      else lost.push(`${told}; the database was taken away, copied ${life.copied}`);
    } else if (found.fromCopy) broughtBack.push(`${told}, copied ${life.copied}`);
    else if (found.count < life.kept || !found.whole) {
      const designs = await living.page.evaluate(() => layers.keep.state.getState().designs);
      const there = designs.map((d) => `${d.id} (${d.revision}${d.unreadable ?? ""})`).join(", ");
      lost.push(`${told}; designs: ${there}`);
    }
    life = newLife(found.count, life.copied);
    // A design from a second copy has no history to be counted by.
    return { living, ends: found.fromCopy };
  }

  for (let round = 0; round < rounds; ) {
    profile = mkdtempSync(join(tmpdir(), "killed-"));
    life = newLife(0);
    for (let lives = 0; lives <= ROUNDS_A_PROFILE; lives++) {
      const { living, ends } = await check(round);
      if (ends || lives === ROUNDS_A_PROFILE || round === rounds) {
        await living.kill();
        break;
      }
      const take = ++round % takeEvery === 0;
      listen(living.page, life);
      await living.page.evaluate(() => layers.tellCopies());
      await living.page.evaluate(() => layers.countWithoutPause());
      const longest = take || draw() < 0.1 ? LONG_LIFE : SHORT_LIFE;
      const least = take ? COPIED_LIFE : 0;
      await new Promise((done) => setTimeout(done, least + draw() * longest));
      await living.kill();
      sum.confirmed += life.confirmed;
      if (take && life.copied !== undefined) life.taken = takeDatabase(profile);
      tell?.(round);
    }
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
  await site.close();
  return { kills: rounds, ...sum, lost, broughtBack };
}

const newLife = (count: number, copied?: number): Life => ({
  made: count,
  kept: count,
  confirmed: 0,
  copied,
  taken: false,
});

/** The page says every count it makes, every count it calls kept, and every count that is copied. */
function listen(page: Page, life: Life): void {
  page.on("console", (message) => {
    const [word, number] = message.text().split(" ");
    if (word === "made") life.made = Math.max(life.made, Number(number));
    if (word === "copied") life.copied = Math.max(life.copied ?? 0, Number(number));
    if (word !== "kept") return;
    life.kept = Math.max(life.kept, Number(number));
    life.confirmed++;
  });
}

/** Takes the database out of a profile whose browser is dead. */
function takeDatabase(profile: string): boolean {
  const folder = join(profile, "Default", "IndexedDB");
  const there = existsSync(folder);
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  return there;
}
