import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";

const css = readFileSync(resolve(import.meta.dirname, "tokens.css"), "utf8");

/** The colors declared in the block that starts with this selector. */
function tokens(selector: string): Record<string, string> {
  const from = css.indexOf(`${selector} {`);
  const block = css.slice(from, css.indexOf("}", from));
  return Object.fromEntries(
    [...block.matchAll(/--(\w+): (#[0-9a-f]{6})/g)].map((m) => [m[1], m[2]]),
  );
}

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

describe.each([
  ["light", ":root"],
  ["dark", ':root[data-theme="dark"]'],
  ["gray", ':root[data-theme="gray"]'],
])("%s", (_name, selector) => {
  const t = tokens(selector);

  it("text has at least 4.5 to 1 on paper (WCAG 2.2, 1.4.3), lines that mean something 3 to 1 (1.4.11)", () => {
    for (const text of ["ink", "soft", "accent"])
      expect(contrast(t[text], t.paper), text).toBeGreaterThanOrEqual(4.5);
    expect(contrast(t.line, t.paper)).toBeGreaterThanOrEqual(3);
  });
});

it("the dark of the system is the dark that can be chosen", () => {
  expect(tokens(":root:not([data-theme])")).toEqual(tokens(':root[data-theme="dark"]'));
});
