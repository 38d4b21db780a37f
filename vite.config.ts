import { resolve } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { livingAsset } from "./scripts/build-living.mjs";
import { noNode } from "./scripts/no-node.ts";
import { strictPolicy, worksOffline } from "./scripts/offline-plugin.ts";
import { sharedWorkers } from "./scripts/shared-workers.ts";

const web = resolve(import.meta.dirname, "src/web");

// The page, and beside it the crash page, which shares no code with it. Every address is relative,
// so that the build works from any static host and any path.
export default defineConfig({
  root: web,
  base: "./",
  plugins: [
    noNode(),
    react(),
    sharedWorkers(),
    livingAsset(),
    strictPolicy(),
    worksOffline(resolve(web, "sw/sw.ts"), resolve(web, "public")),
  ],
  worker: { format: "es" },
  build: {
    outDir: resolve(import.meta.dirname, "dist/web"),
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    // What writes PDF is one large library, loaded when sheets are first made.
    chunkSizeWarningLimit: 600,
    modulePreload: {
      polyfill: false,
      // Only the page's own head asks for files ahead: a worker has no head to put the wish in.
      resolveDependencies: (_name, files, { hostType }) =>
        hostType === "html" ? files : files.filter((file) => file.endsWith(".css")),
    },
    rolldownOptions: {
      input: { index: resolve(web, "index.html"), crash: resolve(web, "crash.html") },
    },
  },
});
