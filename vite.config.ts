import { resolve } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { strictPolicy, worksOffline } from "./scripts/offline-plugin.ts";

const web = resolve(import.meta.dirname, "src/web");

// The page, and beside it the crash page, which shares no code with it. Every address is relative,
// so that the build works from any static host and any path.
export default defineConfig({
  root: web,
  base: "./",
  plugins: [
    react(),
    strictPolicy(),
    worksOffline(resolve(web, "sw/sw.ts"), resolve(web, "public")),
  ],
  worker: { format: "es" },
  build: {
    outDir: resolve(import.meta.dirname, "dist/web"),
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: { index: resolve(web, "index.html"), crash: resolve(web, "crash.html") },
    },
  },
});
