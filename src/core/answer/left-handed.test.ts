import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readBrief } from "../brief/index.ts";
import { answerBrief } from "./compose.ts";
import { isHanded, letterTurned, turnedLayout, turnsOver } from "./left-handed.ts";
import type { Answer } from "./types/answer.ts";

type Cut = Pick<Answer, "pieces" | "demands">;

/** Two handed pieces of one fabric and a plain one of another, cut as told. */
const cut = (demands: readonly (readonly string[])[]): Cut =>
  ({
    pieces: [
      { id: "l", letter: "A1", hand: "left", mirrorId: "r", eitherWay: false },
      { id: "r", letter: "A2", hand: "right", mirrorId: "l", eitherWay: false },
      { id: "p", letter: "B1", hand: "none", eitherWay: false },
    ],
    demands: demands.map((pieceIds) => ({
      fabricId: pieceIds.includes("p") ? "shell" : "kelp",
      pieceIds,
    })),
  }) as unknown as Cut;

describe("a cutting layout for a left-handed maker", () => {
  test("is never turned over where one hand is cut by itself", () => {
    expect(turnsOver(cut([["l"], ["r"]]), "kelp")).toBe(false);
    expect(turnedLayout(cut([["l"]]), "kelp")).toEqual({});
  });

  test("turned over where both hands lie in one strip, letters each as the other hand", () => {
    const both = cut([["l", "r"], ["p"]]);
    expect(turnsOver(both, "kelp")).toBe(true);
    expect(both.pieces.map((p) => letterTurned(both, p))).toEqual(["A2", "A1", "B1"]);
    expect(turnsOver(cut([["l"], ["p"]]), "shell")).toBe(true);
  });

  const folder = new URL("../../../examples/", import.meta.url);
  const names = readdirSync(folder).filter((n) => n.endsWith(".json"));
  test.each(names)("%s: a handed piece that is turned over has its mirror's letter", (name) => {
    const read = readBrief(readFileSync(new URL(name, folder), "utf8"));
    if (!read.ok) throw new Error(`${name} is refused`);
    const a = answerBrief(read.brief);
    for (const d of a.demands.filter((x) => turnsOver(a, x.fabricId)))
      for (const p of a.pieces.filter((x) => d.pieceIds.includes(x.id) && isHanded(x)))
        expect(a.pieces.find((x) => x.id === p.mirrorId)?.letter).toBe(letterTurned(a, p));
  });
});
