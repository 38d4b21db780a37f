import { dirname, resolve } from "node:path";
import type { Plugin } from "vite";

const WORKER = /new URL\("(\.\.?\/[\w./-]+\.worker\.ts)", import\.meta\.url\)/g;

/**
 * Builds module workers in one graph with the page, so that what both use is one chunk: the worker
 * imports the page's file instead of carrying a copy. (Left to itself the builder makes each worker
 * a bundle of its own.)
 */
export function sharedWorkers(): Plugin {
  return {
    name: "shared-workers",
    apply: "build",
    enforce: "pre",
    transform(code, id) {
      if (!code.includes('.worker.ts"')) return null;
      return code.replace(WORKER, (_, path: string) => {
        const name = path.replace(/^.*\/|\.ts$/g, "");
        const file = this.emitFile({ type: "chunk", id: resolve(dirname(id), path), name });
        return `import.meta.ROLLUP_FILE_URL_${file}`;
      });
    },
  };
}
