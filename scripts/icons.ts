// Draws the icons of the installed page (src/web/public) and rasterizes them in Chromium:
// a block of eight wedges with plain corners, one wedge lit. Run: npx tsx scripts/icons.ts
import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { chromium } from "playwright-core";

const PAPER = "#FCF9F3";
const INK = "#1D1A16";
const MADDER = "#A3195B";
const STONE = "#D9D1C2";
const out = resolve(import.meta.dirname, "../src/web/public");

/** The block, `side` wide, in the middle of a 512 square. */
function drawing(side: number, ground: "round" | "full"): string {
  const half = side / 2;
  const at = (x: number, y: number) => `${(256 + x).toFixed(2)},${(256 - y).toFixed(2)}`;
  const radius = half / Math.cos(Math.PI / 8);
  const corner = (k: number) => {
    const angle = ((2 * k - 1) * Math.PI) / 8;
    return at(radius * Math.cos(angle), radius * Math.sin(angle));
  };
  const lit = 1;
  const wedges = Array.from({ length: 8 }, (_, k) => {
    const fill = k === lit ? MADDER : k % 2 === 0 ? INK : PAPER;
    return `<polygon points="256,256 ${corner(k)} ${corner(k + 1)}" fill="${fill}"/>`;
  });
  const square = `<rect x="${256 - half}" y="${256 - half}" width="${side}" height="${side}" fill="${STONE}"/>`;
  const rounding = ground === "round" ? ' rx="96"' : "";
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">` +
    `<rect width="512" height="512"${rounding} fill="${PAPER}"/>` +
    `<g stroke="${INK}" stroke-width="8" stroke-linejoin="round">${square}${wedges.join("")}</g></svg>\n`
  );
}

const icons = [
  { file: "icon-192.png", size: 192, svg: drawing(368, "round") },
  { file: "icon-512.png", size: 512, svg: drawing(368, "round") },
  // Launchers crop a maskable icon to as little as the middle 80 %.
  { file: "icon-maskable-512.png", size: 512, svg: drawing(280, "full") },
];
writeFileSync(resolve(out, "icon.svg"), drawing(368, "round"));
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium-headless-shell",
  args: ["--no-sandbox", "--disable-background-networking", "--disable-gpu"],
});
for (const { file, size, svg } of icons) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const address = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  await page.setContent(
    `<style>body{margin:0}img{display:block;width:100vw}</style><img src="${address}">`,
  );
  await page.locator("img").screenshot({ path: resolve(out, file), omitBackground: true });
  await page.close();
}
await browser.close();
