import type { Page } from "playwright-core";
import { giveFile } from "./harness.ts";

/** A print of big blooms on a ground, drawn by the page's own canvas: 12 by 16 in, 40 pixels to the inch. */
export const drawnPrint = (page: Page): Promise<string> =>
  page.evaluate(() => {
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
    return canvas.toDataURL("image/png");
  });

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

/** Opens a brief on the page as a maker would open her file. */
export async function openBrief(page: Page, brief: object): Promise<void> {
  await giveFile(page, "given.json", JSON.stringify(brief));
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
