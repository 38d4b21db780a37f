import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, resolve, sep } from "node:path";
import { headerPolicy } from "./policy.mjs";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".svg": "image/svg+xml; charset=utf-8",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".ttf": "font/ttf",
  ".wasm": "application/wasm",
  ".pdf": "application/pdf",
};

/** The file an address means, or nothing: never one outside the folder, never a hidden one. */
export function fileFor(folder, address) {
  let path;
  try {
    path = decodeURIComponent(new URL(address, "http://localhost").pathname);
  } catch {
    return undefined;
  }
  if (path.includes("\0") || path.includes("\\") || path.split("/").some((p) => p.startsWith(".")))
    return undefined;
  const file = resolve(folder, `.${path.endsWith("/") ? `${path}index.html` : path}`);
  if (!file.startsWith(resolve(folder) + sep)) return undefined;
  return statSync(file, { throwIfNoEntry: false })?.isFile() ? file : undefined;
}

/**
 * Serves a folder on loopback. `prefix` ("/some/path/") serves it below a path, as a static host
 * might. Resolves when it listens; port 0 takes a free one.
 */
export function serve(folder, { port = 0, prefix = "/" } = {}) {
  const server = createServer((request, response) => {
    const address = request.url ?? "/";
    const file = address.startsWith(prefix)
      ? fileFor(folder, `/${address.slice(prefix.length)}`)
      : undefined;
    const common = {
      "Content-Security-Policy": headerPolicy,
      "X-Content-Type-Options": "nosniff",
      "Referrer-Policy": "no-referrer",
      "Cross-Origin-Opener-Policy": "same-origin",
    };
    if (request.method !== "GET" && request.method !== "HEAD") {
      response.writeHead(405, { ...common, Allow: "GET, HEAD" }).end();
    } else if (file === undefined) {
      response.writeHead(404, { ...common, "Content-Type": "text/plain" }).end("No such file.\n");
    } else {
      response.writeHead(200, {
        ...common,
        "Content-Type": TYPES[extname(file)] ?? "application/octet-stream",
        "Content-Length": statSync(file).size,
        "Cache-Control": "no-cache",
      });
      if (request.method === "HEAD") response.end();
      else
        createReadStream(file)
          .on("error", () => response.destroy())
          .pipe(response);
    }
  });
  return new Promise((ready, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", () => {
      const address = `http://127.0.0.1:${server.address().port}${prefix}`;
      const close = () =>
        new Promise((done) => {
          server.close(done);
          server.closeAllConnections();
        });
      ready({ address, close });
    });
  });
}
