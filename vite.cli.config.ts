import { chmodSync } from "node:fs";
import { resolve } from "node:path";
import { defineConfig } from "vite";

const outDir = resolve(import.meta.dirname, "dist/cli");

// The command line as one Node module; its dependencies stay in node_modules.
export default defineConfig({
  publicDir: false,
  plugins: [
    {
      name: "runnable",
      // Where it was really written: tests build it elsewhere.
      writeBundle: ({ dir = outDir }) => chmodSync(resolve(dir, "eighthwise.js"), 0o755),
    },
  ],
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
