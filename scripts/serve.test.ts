import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { serve } from "./serve.mjs";

const outer = mkdtempSync(join(tmpdir(), "serve-"));
const folder = join(outer, "site");
let server: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  mkdirSync(join(folder, "assets"), { recursive: true });
  writeFileSync(join(folder, "index.html"), "<p>home</p>");
  writeFileSync(join(folder, ".hidden"), "hidden");
  writeFileSync(join(folder, "assets/a b.js"), "1;");
  writeFileSync(join(outer, "secret"), "secret");
  mkdirSync(join(outer, "site-too"));
  writeFileSync(join(outer, "site-too/x"), "beside");
  server = await serve(folder, { prefix: "/below/" });
});
afterAll(async () => {
  await server.close();
  rmSync(outer, { recursive: true });
});

/** Asks with the path exactly as given; `fetch` would tidy it first. */
function ask(
  path: string,
  method = "GET",
): Promise<{ status: number; type: string; text: string }> {
  const { port } = new URL(server.address);
  return new Promise((resolve, reject) => {
    const asked = request({ port, path, method, host: "127.0.0.1" }, (response) => {
      let text = "";
      response.on("data", (part) => {
        text += part;
      });
      response.on("end", () =>
        resolve({
          status: response.statusCode ?? 0,
          type: response.headers["content-type"] ?? "",
          text,
        }),
      );
    });
    asked.on("error", reject).end();
  });
}

test("files are served below the prefix with their types", async () => {
  expect(await ask("/below/")).toEqual({
    status: 200,
    type: "text/html; charset=utf-8",
    text: "<p>home</p>",
  });
  expect(await ask("/below/assets/a%20b.js?v=3")).toMatchObject({
    status: 200,
    type: "text/javascript; charset=utf-8",
  });
  expect((await ask("/")).status).toBe(404);
  expect((await ask("/below/", "POST")).status).toBe(405);
  expect(await ask("/below/", "HEAD")).toMatchObject({ status: 200, text: "" });
});

test.each([
  "/below/../secret",
  "/below/..%2fsecret",
  "/below/%2e%2e/secret",
  "/below/%2e%2e%2fsecret",
  "/below/..%5csecret",
  "/below//../../secret",
  "/below/../site-too/x",
  "/below/.hidden",
  "/below/assets/../.hidden",
  "/below/index.html%00",
  "/below/%",
  "/below/assets",
])("nothing outside the folder is given for %s", async (path) => {
  const { status, text } = await ask(path);
  expect(status).toBe(404);
  expect(text).not.toContain("secret");
});

test("every answer carries the policy", async () => {
  for (const path of ["", "nowhere"]) {
    const { headers } = await fetch(server.address + path);
    const policy = headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/'unsafe-|https?:|\*/);
    expect(headers.get("x-content-type-options")).toBe("nosniff");
  }
});
