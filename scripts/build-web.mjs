import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { resolve } from "node:path";

const root = resolve(import.meta.dirname, "..");
export const built = resolve(root, "dist/web");

/** Everything the built page is made from. */
const SOURCES = ["src", "scripts", "vite.config.ts", "package-lock.json"];

function newest(path) {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, newest(resolve(path, name))),
    0,
  );
}

/** Is the built page missing, or older than what it is made from? */
export function needsBuild() {
  const page = resolve(built, "sw.js");
  if (!existsSync(page)) return true;
  const made = statSync(page).mtimeMs;
  return SOURCES.some((source) => newest(resolve(root, source)) > made);
}

/** Builds the page if it needs it. Throws with the builder's own words when that fails. */
export function buildIfNeeded() {
  if (!needsBuild()) return;
  const vite = resolve(root, "node_modules/vite/bin/vite.js");
  if (!existsSync(vite)) throw new Error("the builder is not installed; run `npm ci` first");
  const run = spawnSync(process.execPath, [vite, "build", "--logLevel", "warn"], {
    cwd: root,
    encoding: "utf8",
  });
  if (run.status !== 0) throw new Error(`the page could not be built\n${run.stdout}${run.stderr}`);
}
