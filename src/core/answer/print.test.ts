import { describe, expect, it } from "vitest";
import { smallBrief } from "../brief/sample.ts";
import { layersNeeded } from "../fabric/index.ts";
import { answerBrief } from "./compose.ts";
import { choicesFor, stepped, typed, wordsOf } from "./words/choices.ts";

const PLAIN = { kind: "plain", id: "spray", name: "Spray", usable: "40", color: "#F1EADB" };
const PRINT = {
  kind: "print",
  id: "kelp",
  name: "Kelp",
  usable: "40",
  color: "#557755",
  repeat: { along: "24", across: "13" },
  photo: { data: "data:image/png;base64,AA==", width: "14", height: "25" },
};
const brief = (place: object | undefined, print: object = PRINT, rows = 2) =>
  smallBrief({
    fabrics: [PLAIN, print],
    blocks: [
      {
        kind: "wedges",
        id: "frond",
        setting: "plain",
        strip: "4 1/2",
        fabric: { wedge: "kelp", corner: "spray" },
        ...(place && { place: { wedge: place } }),
      },
    ],
    quilt: { rows, columns: 3, plan: [["frond"]] },
    margin: { straighten: "1", wrongStrip: false },
  });
const AT = { x: "3 1/2", y: "5", turn: 0 };
const lengthOf = (b: ReturnType<typeof brief>): number => {
  const y = answerBrief(b).yardages.find((x) => x.fabricId === "kelp");
  return y?.inPieces ?? Number.NaN;
};
const lookLine = (b: ReturnType<typeof brief>) =>
  answerBrief(b).questions.find((q) => q.id === "look")?.line;
const wordAt = (b: ReturnType<typeof brief>) =>
  wordsOf(b).find((w) => w.id === "place/frond/wedge/at")?.text;

describe("eight alike from a print", () => {
  it("takes as many repeats as there are wedges for each stack, by the planner as by hand", () => {
    // A 13 in repeat across 40 in surely holds a base of 3.7 to 4.1 in twice: floor((40 - 4.06) / 13).
    const perStack = 2;
    const byHand = layersNeeded(8, 24, 4.5, 6, perStack);
    expect(lengthOf(brief({ round: "matched", at: AT }))).toBeCloseTo(byHand.length, 9);
    expect(byHand.length).toBe(8 * 24 * 3);
    const [round] = answerBrief(brief({ round: "matched", at: AT })).sights[0].rounds;
    expect(round).toMatchObject({
      at: { x: 3.5, y: 5, turn: 0 },
      stacks: { layers: 8, layer: 24, stacks: 3, length: 576 },
    });
  });

  it("takes one stack where each round may come from a place of its own", () => {
    expect(lengthOf(brief({ round: "matched" }))).toBeCloseTo(8 * 24, 9);
  });

  it("takes the place once a layer where no repeat across is known", () => {
    const once = { ...PRINT, repeat: { along: "24" } };
    expect(lengthOf(brief({ round: "matched", at: AT }, once))).toBeCloseTo(8 * 24 * 6, 9);
  });

  it("takes up and down from the same stacks, at places a repeat apart", () => {
    expect(lengthOf(brief({ round: "mixed", at: AT }))).toBeCloseTo(3 * 8 * 24, 9);
  });

  it("is in doubt about a print whose repeat is not said", () => {
    const { repeat: _, ...unsaid } = PRINT;
    const found = answerBrief(brief({ round: "matched", at: AT }, unsaid)).findings;
    expect(found).toContainEqual(expect.objectContaining({ code: "repeat-not-said" }));
  });

  it("says the place, and what the stacks take", () => {
    expect(lookLine(brief({ round: "matched", at: AT }))).toContain(
      "Kelp: all from 3 1/2 in across and 5 in up, eight alike in each of 6 rounds; 8 layers of 24 in, 3 stacks, 576 in of fabric.",
    );
    expect(lookLine(brief({ round: "matched" }))).toContain(
      "Kelp: eight alike in each of 6 rounds, each cut through all layers; 8 layers of 24 in, 1 stack, 192 in of fabric.",
    );
  });

  it("has a word for the place: typed as fractions, stepped, given up with the round", () => {
    const b = brief({ round: "matched" });
    expect(wordAt(b)).toBe("each round from a place of its own");
    const there = typed(b, "place/frond/wedge/at", "2 3/8 by 7");
    expect(there.ok && wordAt(there.brief)).toBe("all from 2 3/8 in across and 7 in up");
    if (!there.ok) throw new Error("a place expected");
    const up = stepped(there.brief, "place/frond/wedge/at", 1);
    expect(wordAt(up)).toBe("all from 2 3/8 in across and 7 1/8 in up");
    expect(typed(b, "place/frond/wedge/at", "2 3/8").ok).toBe(false);
    const half = choicesFor(up, "place/frond/wedge/at")[2].brief;
    expect(wordAt(half)).toMatch(/half round$/);
    const free = choicesFor(half, "place/frond/wedge/round")[2].brief;
    expect(free.blocks[0].place?.wedge).toEqual({ round: "free", way: "up" });
  });
});
