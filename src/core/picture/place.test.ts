import { describe, expect, it } from "vitest";
import { answerBrief, looksOfBlock } from "../answer/index.ts";
import { smallBrief } from "../brief/sample.ts";
import type { PhotoLook } from "../fabric/index.ts";
import { applyTo, centroid, distance } from "../geometry/index.ts";
import { ON_FABRIC, placePicture } from "./place.ts";

const AT = { x: 9.5, y: 7.25, turn: 0 };
const brief = smallBrief({
  fabrics: [
    { kind: "plain", id: "spray", name: "Spray", usable: "40", color: "#F1EADB" },
    {
      kind: "print",
      id: "kelp",
      name: "Kelp",
      usable: "40",
      repeat: { along: "18", across: "12" },
      photo: { data: "data:image/png;base64,AA==", width: "12", height: "18" },
    },
  ],
  blocks: [
    {
      kind: "wedges",
      id: "frond",
      setting: "plain",
      strip: "4 1/2",
      fabric: { wedge: "kelp", corner: "spray" },
      place: { wedge: { round: "matched", at: { x: "9 1/2", y: "7 1/4" } } },
    },
  ],
  quilt: { rows: 1, columns: 1, plan: [["frond"]] },
});
const answer = answerBrief(brief);
const [block] = answer.blocks;
const looks = looksOfBlock(brief, answer, block);
const wedge = block.patches.find((p) => p.role === "wedge-even");
const piece = answer.pieces.find((p) => p.id === block.pieceOf[wedge?.id ?? ""]);
const recipe = answer.recipes.find((r) => r.pieceId === piece?.id);
const look: PhotoLook = {
  kind: "photo",
  fabricId: "kelp",
  color: "#888888",
  width: 12,
  height: 18,
  repeat: { along: 18, across: 12 },
};
if (!wedge || !piece || !recipe) throw new Error("a wedge expected");
const made = (stacked: boolean) =>
  placePicture({
    block,
    piece,
    recipe,
    pieces: answer.pieces,
    looks,
    unit: "in",
    seam: 0.25,
    look,
    at: AT,
    small: 0.5,
    stacked,
  });

describe("the place of a piece on a print", () => {
  it("lies on the fabric just where the block's own patches say they are cut from", () => {
    const { picture, origin, middle } = made(false);
    expect(middle).toEqual({ x: origin.x + 9.5, y: origin.y + 7.25 });
    const marks = picture.marks.flatMap((m) => (m.kind === "group" ? m.marks : []));
    const inner = marks.flatMap((m) => (m.kind === "group" ? m.marks : []));
    const seam = inner[1];
    if (seam?.kind !== "shape") throw new Error("the sewn wedge expected");
    expect(inner[0]).toMatchObject({ id: ON_FABRIC });
    // By the other way round: each patch of the block carried to the photo by its own motion.
    for (const l of looks.filter((x) => x.fabricId === "kelp")) {
      const [shown] = l.shown;
      const there = shown.polygon.map((p) => applyTo(shown.photo!, p));
      const c = centroid(there);
      expect(distance(c, centroid(seam.polygon))).toBeLessThan(1e-9);
      for (const p of there)
        expect(Math.min(...seam.polygon.map((q) => distance(p, q)))).toBeLessThan(1e-9);
    }
  });

  it("stacked, the fabric stands over the others and is no wider than it was", () => {
    const [wide, tall] = [made(false), made(true)];
    expect(tall.picture.width).toBeLessThan(wide.picture.width);
    expect(tall.window.bottom).toBeGreaterThan(wide.window.bottom);
    expect(tall.window.right - tall.window.left).toBe(wide.window.right - wide.window.left);
  });
});
