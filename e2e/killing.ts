import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Page } from "playwright-core";
import type {} from "./fixtures/bare.ts";
import { CHROMIUM, serveLayers } from "./harness.ts";

/** A new profile after this many rounds, so that histories stay of a real length. */
const ROUNDS_A_PROFILE = 20;
const LONGEST_LIFE = 450;

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
  /** One line for each confirmed edit that was not there afterwards. */
  readonly lost: readonly string[];
}

/**
 * Each round opens the same profile again, checks it, edits without pause, and kills every process
 * of the browser at once at a moment drawn from the seed.
 */
export async function killInMidEdit(
  rounds: number,
  seed: number,
  tell: (round: number) => void = () => {},
): Promise<Killed> {
  const draw = drawn(seed);
  const site = await serveLayers();
  const lost: string[] = [];
  let confirmed = 0;
  let inFlight = 0;
  let profile = "";
  let made = 0;
  let kept = 0;

  /** Opens the profile and compares what is stored with what was confirmed. */
  async function check(round: number): Promise<Living> {
    const living = await live(profile, site.bare);
    const { count, steps, whole } = await living.page.evaluate(() => layers.counted());
    // More than was heard of may be stored: the last words before the kill are lost on the way.
    if (count < kept || !whole) {
      const designs = await living.page.evaluate(() => layers.keep.state.getState().designs);
      const there = designs.map((d) => `${d.id} (${d.revision}${d.unreadable ?? ""})`).join(", ");
      lost.push(
        `round ${round}: kept ${kept}, found ${count} of ${steps} steps; designs: ${there}`,
      );
    }
    if (made > kept) inFlight++;
    made = kept = count;
    return living;
  }

  for (let round = 0; round < rounds; round++) {
    if (round % ROUNDS_A_PROFILE === 0) {
      if (profile) discard(profile);
      profile = mkdtempSync(join(tmpdir(), "killed-"));
      made = kept = 0;
    }
    const living = await check(round);
    living.page.on("console", (message) => {
      const [word, number] = message.text().split(" ");
      if (word === "made") made = Math.max(made, Number(number));
      if (word !== "kept") return;
      kept = Math.max(kept, Number(number));
      confirmed++;
    });
    await living.page.evaluate(() => layers.countWithoutPause());
    await new Promise((done) => setTimeout(done, draw() * LONGEST_LIFE));
    await living.kill();
    tell(round + 1);
  }
  await (await check(rounds)).kill();
  discard(profile);
  await site.close();
  return { kills: rounds, confirmed, inFlight, lost };
}

const discard = (profile: string): void =>
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
