import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { type Plugin, transformWithOxc } from "vite";
import { metaPolicy } from "./policy.mjs";

/** Writes the content security policy into every built page, before anything it governs. */
export function strictPolicy(): Plugin {
  return {
    name: "strict-policy",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler: () => [
        {
          tag: "meta",
          attrs: { "http-equiv": "Content-Security-Policy", content: metaPolicy },
          injectTo: "head-prepend",
        },
      ],
    },
  };
}

/**
 * Writes sw.js: the service worker with the list of every file of this build and a name for the
 * whole, so that the page works without a server. The public folder's files are copied beside the
 * build and belong to the list.
 */
export function worksOffline(worker: string, publicFolder: string): Plugin {
  const also = readdirSync(publicFolder);
  return {
    name: "works-offline",
    apply: "build",
    enforce: "post",
    generateBundle: {
      order: "post",
      async handler(_options, bundle) {
        const files = Object.values(bundle);
        const hash = createHash("sha256");
        for (const file of files.sort((a, b) => (a.fileName < b.fileName ? -1 : 1)))
          hash.update(file.fileName).update(file.type === "chunk" ? file.code : file.source);
        for (const file of also) hash.update(readFileSync(resolve(publicFolder, file)));
        const { code } = await transformWithOxc(readFileSync(worker, "utf8"), worker, {});
        const list = [...files.map((f) => f.fileName), ...also].sort();
        this.emitFile({
          type: "asset",
          fileName: "sw.js",
          // The last line makes the source a module to the type checker; a worker needs none.
          source: code
            .replace(/^export \{\s*\};?$/m, "")
            .replace("__EDITION__", JSON.stringify(hash.digest("hex").slice(0, 16)))
            .replace("__FILES__", JSON.stringify(list)),
        });
      },
    },
  };
}
