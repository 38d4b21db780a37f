import { resolve } from "node:path";
import { defineConfig } from "vite";
import { strictPolicy } from "../../scripts/offline-plugin.ts";

const root = resolve(import.meta.dirname, "../..");

// The sheets alone, under the page's own strict policy.
export default defineConfig({
  root,
  base: "./",
  publicDir: false,
  plugins: [strictPolicy()],
  build: {
    outDir: resolve(root, "dist/sheets"),
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { input: [resolve(root, "e2e/sheets/sheets.html")] },
  },
});
