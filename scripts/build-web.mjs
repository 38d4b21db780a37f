import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { resolve } from "node:path";

const root = resolve(import.meta.dirname, "..");

/** The page, as it is served. */
export const PAGE = { config: "vite.config.ts", out: resolve(root, "dist/web") };

/** Everything a built site is made from; tests are no part of it. */
const SOURCES = ["src", "scripts", "vite.config.ts", "package-lock.json"];

function newest(path) {
  if (/\.test\.tsx?$/.test(path)) return 0;
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return readdirSync(path).reduce((t, name) => Math.max(t, newest(resolve(path, name))), 0);
}

/** Is the site missing, or older than what it is made from? `more`: further sources of it. */
export function needsBuild({ config, out }, more = []) {
  if (!existsSync(out)) return true;
  const made = statSync(out).mtimeMs;
  return [...SOURCES, config, ...more].some((source) => newest(resolve(root, source)) > made);
}

/** Builds a site if it needs it. Throws with the builder's own words when that fails. */
export function buildIfNeeded(site, more = []) {
  if (!needsBuild(site, more)) return;
  const vite = resolve(root, "node_modules/vite/bin/vite.js");
  if (!existsSync(vite)) throw new Error("the builder is not installed; run `npm ci` first");
  const run = spawnSync(
    process.execPath,
    [vite, "build", "--config", site.config, "--outDir", site.out, "--logLevel", "warn"],
    // Whoever asks (a test, say) may live in another mode; what is served is always the product.
    { cwd: root, encoding: "utf8", env: { ...process.env, NODE_ENV: "production" } },
  );
  if (run.status !== 0) throw new Error(`the page could not be built\n${run.stdout}${run.stderr}`);
}
