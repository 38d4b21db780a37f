import { defineConfig } from "vitest/config";
import { LongestFirst } from "./scripts/longest-first.ts";

// Two projects: "unit" is everything that needs no browser, "page" drives Debian's Chromium.
export default defineConfig({
  test: {
    // As many as a small machine has cores: one would be kept idle otherwise.
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: "unit",
          include: [
            "src/**/*.test.ts",
            "src/**/*.test.tsx",
            "scripts/**/*.test.ts",
            "examples/**/*.test.ts",
          ],
          exclude: ["e2e/**", "node_modules/**"],
          // Loading the core anew for every file would take as long as many of the tests.
          isolate: false,
          setupFiles: "scripts/native-builtins.mjs",
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "page",
          include: ["e2e/**/*.test.ts"],
          // What drives the browser is loaded once for each worker, not for each file.
          isolate: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // A page on a busy machine answers late; a second, the default, is no fault of it.
          expect: { poll: { timeout: 20_000 } },
          globalSetup: "e2e/global.ts",
          // A browser waits as much as it works.
          maxWorkers: 3,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
