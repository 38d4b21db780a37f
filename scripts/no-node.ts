import type { Plugin } from "vite";

const NOTHING = "\0nothing-of-node";

/**
 * The solver asks for `node:module` where it finds itself in Node, never in a browser. In the page
 * that module is empty, on purpose; without this the build would warn of it each time.
 */
export const noNode = (): Plugin => ({
  name: "no-node",
  enforce: "pre",
  resolveId: (id) => (id === "node:module" ? NOTHING : undefined),
  load: (id) => (id === NOTHING ? "export const createRequire = undefined;" : undefined),
});
