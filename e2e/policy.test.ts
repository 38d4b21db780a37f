import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { buildIfNeeded, PAGE } from "../scripts/build-web.mjs";
import { openBrowser, servePage, tab } from "./harness.ts";

/** What is built, as it is served and handed out: read, not run. */
const text = (name: string): string => readFileSync(join(PAGE.out, name), "utf8");
const filesOf = (end: string): string[] =>
  readdirSync(PAGE.out, { recursive: true, encoding: "utf8" }).filter((f) => f.endsWith(end));

beforeAll(() => buildIfNeeded(PAGE));

/** The rules of the one policy a document states, by name. */
function policyOf(html: string): Readonly<Record<string, string>> {
  const stated = [
    ...html.matchAll(/<meta http-equiv="Content-Security-Policy" content="([^"]+)"/g),
  ];
  expect(stated).toHaveLength(1);
  const rules = stated[0][1]
    .replaceAll("&#39;", "'")
    .split("; ")
    .map((r) => [r.split(" ")[0], r.replace(/^\S+ /, "")]);
  return Object.fromEntries(rules);
}

const tags = (html: string, name: string): { attributes: string; inner: string }[] =>
  [...html.matchAll(new RegExp(`<${name}\\b([^>]*)>([\\s\\S]*?)</${name}>`, "g"))].map(
    ([, attributes, inner]) => ({ attributes, inner }),
  );

/** The document without what stands inside its scripts and styles. */
const bare = (html: string): string =>
  html.replace(/(<(script|style)\b[^>]*>)[\s\S]*?<\/\2>/g, "$1");

describe("every page that is built", () => {
  test("states a policy that lets nothing inline run and no other host be asked", () => {
    const pages = filesOf(".html");
    expect(pages).toEqual(
      expect.arrayContaining(["index.html", "crash.html", "living-pattern.html"]),
    );
    for (const name of pages) {
      const html = text(name);
      const rules = policyOf(html);
      expect(rules["default-src"], name).toBe("'none'");
      expect(rules["base-uri"], name).toBe("'none'");
      expect(rules["form-action"], name).toBe("'none'");
      expect(Object.values(rules).join(" "), name).not.toMatch(
        /'unsafe-(inline|eval|hashes)'|https?:|\*|strict-dynamic/,
      );
      // The policy stands before anything it governs.
      expect(html.indexOf("Content-Security-Policy"), name).toBeLessThan(
        html.search(/<(script|style|link|img|body)\b/),
      );
      expect(bare(html), name).not.toMatch(/\son[a-z]+\s*=|\sstyle\s*=|javascript:|https?:\/\//i);
    }
  });

  test("the page and the crash page have no script or style of their own inside", () => {
    for (const name of ["index.html", "crash.html"]) {
      for (const { attributes, inner } of tags(text(name), "script")) {
        expect(attributes, name).toMatch(/src="\.\//);
        expect(inner.trim(), name).toBe("");
      }
      expect(tags(text(name), "style"), name).toEqual([]);
    }
  });

  test("the living pattern runs its own script and wears its own style, by their hashes", () => {
    const html = text("living-pattern.html");
    const rules = policyOf(html);
    const hash = (of: string): string =>
      `'sha256-${createHash("sha256").update(of).digest("base64")}'`;
    const [style, ...styles] = tags(html, "style");
    expect(styles).toEqual([]);
    expect(rules["style-src"]).toBe(hash(style.inner));
    // What carries the design is data, which no browser runs.
    const run = tags(html, "script").filter((s) => !/type="application\/json"/.test(s.attributes));
    expect(run).toHaveLength(1);
    expect(rules["script-src"]).toBe(hash(run[0].inner));
    expect(rules["connect-src"]).toBeUndefined();
  });

  test("no script makes code of text, and none tells where its source lies", () => {
    const scripts = filesOf(".js");
    expect(scripts.length).toBeGreaterThan(5);
    for (const name of scripts) {
      const script = text(name);
      expect(
        /\beval\s*\(|\bnew Function\b|[^.\w]Function\s*\(\s*["'`]/.exec(script)?.[0],
        name,
      ).toBe(undefined);
      expect(script.includes("sourceMappingURL"), name).toBe(false);
    }
  });
});

test("the policy refuses what a file could put in, and these tests hear of it", async () => {
  const site = await servePage();
  const browser = await openBrowser();
  const profile = await browser.profile();
  const page = await tab(profile, site.address);
  await page.locator("h1").waitFor();
  const refused = await page.evaluate(async () => {
    const heard: string[] = [];
    document.addEventListener("securitypolicyviolation", (e) => heard.push(e.effectiveDirective));
    const put = (name: string, given: object): void =>
      document.body.append(Object.assign(document.createElement(name), given));
    put("script", { textContent: "document.title = '1'" });
    put("script", { src: "http://elsewhere.invalid/a.js" });
    put("img", { src: "http://elsewhere.invalid/a.png" });
    put("style", { textContent: "body { display: none }" });
    put("iframe", { src: "http://elsewhere.invalid/" });
    put("p", { innerHTML: "<b onclick='document.title = 1' style='color: red'>b</b>" });
    await fetch("http://elsewhere.invalid/").catch(() => {});
    // From a timer: what a test asks of the page directly may make code of text.
    const made = await new Promise((done) =>
      setTimeout(() => {
        try {
          done(new Function("return 1")());
        } catch {
          done("refused");
        }
      }),
    );
    document.querySelector("b")?.click();
    await new Promise((done) => setTimeout(done, 50));
    return { heard: [...new Set(heard)].sort(), made, title: document.title };
  });
  expect(refused.made).toBe("refused");
  expect(refused.title).not.toBe("1");
  expect(refused.heard).toEqual(
    expect.arrayContaining([
      ...["connect-src", "frame-src", "img-src"],
      ...["script-src", "script-src-attr", "script-src-elem", "style-src-attr", "style-src-elem"],
    ]),
  );
  expect(profile.complaints.length).toBeGreaterThan(5);
  await browser.close();
  await site.close();
});
