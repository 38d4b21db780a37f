// The template of the living pattern: one HTML file with style, faces and the core inlined, and a
// policy that lets its own script run and nothing else. `npm run -s build:living`
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { build } from "vite";

const root = resolve(import.meta.dirname, "..");
const from = (path) => resolve(root, path);
const FACES = [
  ["Alegreya Sans", 400, "alegreya-sans/files/alegreya-sans-latin-400-normal.woff2"],
  ["Alegreya Sans", 700, "alegreya-sans/files/alegreya-sans-latin-700-normal.woff2"],
  ["Young Serif", 400, "young-serif/files/young-serif-latin-400-normal.woff2"],
];

/** The template as text. */
export async function livingTemplate() {
  const result = await build({
    configFile: false,
    root,
    logLevel: "warn",
    publicDir: false,
    // A library is built as it is written; this one runs in a browser.
    define: { "process.env.NODE_ENV": '"production"' },
    build: {
      write: false,
      target: "es2022",
      lib: { entry: from("src/living/main.ts"), formats: ["iife"], name: "living" },
    },
  });
  const [{ output }] = Array.isArray(result) ? result : [result];
  // A closing tag in a text would end the script.
  const script = output[0].code.replaceAll("</script", "<\\/script").replaceAll("<!--", "<\\!--");
  const faces = FACES.map(([family, weight, path]) => {
    const bytes = readFileSync(from(`node_modules/@fontsource/${path}`)).toString("base64");
    return `@font-face{font-family:"${family}";font-weight:${weight};src:url(data:font/woff2;base64,${bytes}) format("woff2")}`;
  });
  const style = faces.join("") + readFileSync(from("src/living/living.css"), "utf8");
  const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
  const policy = `default-src 'none'; script-src ${hash(script)}; style-src ${hash(style)}; font-src data:; img-src data:; base-uri 'none'; form-action 'none'`;
  return readFileSync(from("src/living/template.html"), "utf8")
    .replace("__POLICY__", () => policy)
    .replace("__STYLE__", () => style)
    .replace("__SCRIPT__", () => script);
}

/** Beside the page's other files, so that it can be made and handed out offline. */
export const livingAsset = () => ({
  name: "living-asset",
  apply: "build",
  async generateBundle() {
    this.emitFile({
      type: "asset",
      fileName: "living-pattern.html",
      source: await livingTemplate(),
    });
  },
});

if (process.argv[1]?.endsWith("build-living.mjs")) {
  mkdirSync(from("dist/living"), { recursive: true });
  writeFileSync(from("dist/living/pattern.html"), await livingTemplate());
}
