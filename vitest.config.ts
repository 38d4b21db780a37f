import { defineConfig } from "vitest/config";

// Two projects: "unit" is everything that needs no browser, "page" drives Debian's Chromium.
export default defineConfig({
  test: {
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
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "page",
          include: ["e2e/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
