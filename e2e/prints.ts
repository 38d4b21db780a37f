import type { Page } from "playwright-core";
import { giveFile } from "./harness.ts";

/** A print of big blooms on a ground, drawn by the page's own canvas: 12 by 16 in, 40 pixels to the inch. */
export const drawnPrint = (page: Page, type = "image/png"): Promise<string> =>
  page.evaluate((type) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [480, 640];
    const c = canvas.getContext("2d");
    if (!c) throw new Error("a canvas expected");
    c.fillStyle = "#20445c";
    c.fillRect(0, 0, 480, 640);
    const bloom = (x: number, y: number, r: number, petals: string, heart: string): void => {
      for (let k = 0; k < 6; k++) {
        const t = (k * Math.PI) / 3;
        c.fillStyle = petals;
        c.beginPath();
        c.arc(x + r * 0.6 * Math.cos(t), y + r * 0.6 * Math.sin(t), r * 0.5, 0, 7);
        c.fill();
      }
      c.fillStyle = heart;
      c.beginPath();
      c.arc(x, y, r * 0.42, 0, 7);
      c.fill();
    };
    bloom(130, 150, 105, "#e8d9c0", "#c4552d");
    bloom(350, 420, 110, "#d98b9a", "#f2e3a0");
    bloom(390, 120, 55, "#8fb573", "#f2e3a0");
    bloom(110, 500, 70, "#c4552d", "#20445c");
    return canvas.toDataURL(type, 0.9);
  }, type);

/** A runner whose wedges are cut from that print. `change` is put over its block. */
export const printBrief = (data: string, change: object = {}): object => ({
  format: "eighthwise-brief",
  version: 1,
  title: "Bloom runner",
  unit: "in",
  seam: "1/4",
  step: "1/8",
  ruler: { point: "sharp" },
  fabrics: [
    {
      id: "bloom",
      name: "Bloom",
      kind: "print",
      color: "#20445C",
      usable: "40",
      photo: { data, width: "12", height: "16" },
      repeat: { along: "16", across: "12" },
    },
    { id: "chalk", name: "Chalk", kind: "plain", color: "#F0EBDD", usable: "40" },
  ],
  blocks: [
    {
      id: "petal",
      name: "petal",
      kind: "wedges",
      n: 8,
      setting: "plain",
      strip: "4 1/2",
      fabric: { wedge: "bloom", corner: "chalk" },
      place: { wedge: { round: "matched", at: { x: "3 1/4", y: "12 1/4" } } },
      ...change,
    },
  ],
  quilt: { rows: 2, columns: 5, plan: [["petal"]] },
  margin: { straighten: "1", wrongStrip: false },
});

let given = 0;

/** Opens a brief on the page as a maker would open her file, each a file of its own. */
export async function openBrief(page: Page, brief: object): Promise<void> {
  await giveFile(page, `given-${given++}.json`, JSON.stringify(brief));
  await page.getByRole("link", { name: "All designs" }).click();
  await page.getByRole("button", { name: "Open a file" }).click();
  await page.locator('.status[aria-busy="false"]').waitFor();
}

/** The question of the fabric, opened. */
export async function openLook(page: Page): Promise<void> {
  const heading = page.getByRole("button", { name: "What will my fabric look like?" });
  if ((await heading.getAttribute("aria-expanded")) === "false") await heading.click();
  await page.getByRole("group", { name: "Seen" }).waitFor();
}

/** A stripe as a camera sees it, 40 pixels to the inch: bands of 1 1/2, 1/2 and 1 in, a little askew. */
export const drawnStripe = (page: Page, type: string, width = 640, height = 480): Promise<string> =>
  page.evaluate(
    ([type, width, height]) => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [width, height];
      const c = canvas.getContext("2d");
      if (!c) throw new Error("a canvas expected");
      const k = width / 640;
      c.translate(width / 2, height / 2);
      c.rotate(-0.03);
      const bands = [
        ["#1f4e5f", 60],
        ["#f2e3a0", 20],
        ["#c4552d", 40],
      ] as const;
      for (let y = -height; y < height; )
        for (const [color, wide] of bands) {
          c.fillStyle = color;
          c.fillRect(-width, y, 2 * width, wide * k + 1);
          y += wide * k;
        }
      return canvas.toDataURL(type, 0.9);
    },
    [type, width, height] as const,
  );

/** The bytes of a data: address. */
export const bytesOf = (data: string): Buffer => Buffer.from(data.split(",")[1], "base64");
