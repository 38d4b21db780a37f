import { chmodSync } from "node:fs";
import { resolve } from "node:path";
import { defineConfig } from "vite";

const outDir = resolve(import.meta.dirname, "dist/cli");

// The command line as one Node module with the libraries it always needs, of which only what is used:
// finding and reading their files took longer than the answer. What is large and seldom needed stays
// in node_modules and is loaded when it is.
export default defineConfig({
  publicDir: false,
  plugins: [
    {
      name: "runnable",
      // Where it was really written: tests build it elsewhere.
      writeBundle: ({ dir = outDir }) => chmodSync(resolve(dir, "eighthwise.js"), 0o755),
    },
  ],
  ssr: { noExternal: true, external: ["pdfkit", "highs"] },
  build: {
    ssr: resolve(import.meta.dirname, "src/cli/main.ts"),
    outDir,
    emptyOutDir: true,
    target: "node20",
    rolldownOptions: {
      output: { entryFileNames: "eighthwise.js", banner: "#!/usr/bin/env node" },
    },
  },
});
