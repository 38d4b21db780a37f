import { describe, expect, it } from "vitest";
import type { Brief } from "../../brief/index.ts";
import { smallBrief } from "../../brief/sample.ts";
import { brief as schema } from "../../brief/schema.ts";
import { allWords } from "./all-choices.ts";
import { addFabric, isNamed, removeFabric } from "./fabric-kinds.ts";
import { oneFabricSentence } from "./one-fabric.ts";
import { changed } from "./word.ts";

const { choicesFor, typed, wordsOf } = allWords;

const brief = smallBrief({
  fabrics: [
    { kind: "plain", id: "red", name: "Red", usable: "40", color: "#AA3322" },
    { kind: "plain", id: "sand", name: "Sand", usable: "40", color: "#EEDDBB" },
    {
      kind: "print",
      id: "kelp",
      name: "Kelp",
      usable: "43 1/2",
      narrower: "42",
      folds: 1,
      directional: true,
      shrinkage: { length: 4, width: 1.5 },
      inHand: [{ width: "18", length: "21", count: 3 }],
      photo: { data: "data:image/png;base64,AA==", width: "12", height: "16 1/4" },
      repeat: { along: "24" },
    },
  ],
});
const text = (b: Brief, id: string): string =>
  oneFabricSentence(b, id)
    .map((p) => p.text)
    .join("");
const done = (b: Brief, word: string, said: string): Brief => {
  const r = typed(b, word, said);
  if (!r.ok) throw new Error(r.error.problem);
  return schema.parse(r.brief);
};

describe("the sentence of one fabric", () => {
  it("says all that a brief says of a print", () => {
    expect(text(brief, "kelp")).toBe(
      "Kelp is a print, repeating every 24 in along it, no repeat across it, with a picture of 12 in by 16 1/4 in; 43 1/2 in usable, 42 in where it is narrower, cut folded once, with a way up, its right side out, washed before it is cut, losing 4 per cent of its length and 1.5 of its width, in hand 3 pieces 18 by 21 in.",
    );
  });

  it("says a fabric of which little is decided", () => {
    expect(text(brief, "red")).toBe(
      "Red is a plain fabric; 40 in usable, no narrower width, cut single, with no way up, its right side out, cut unwashed, none in hand.",
    );
  });

  it.each([
    ["name", "Rusty red", { name: "Rusty red" }],
    ["usable", "41 1/2", { usable: "41 1/2" }],
    ["narrower", "38", { narrower: "38" }],
    ["folds", "cut folded once", { folds: 1 }],
    ["directional", "with a way up", { directional: true }],
    ["reversible", "either side out", { reversible: true }],
    ["shrinkage", "5 by 2.5", { shrinkage: { length: 5, width: 2.5 } }],
    [
      "inHand",
      "2 of 18 by 21, 9 1/2 by 40",
      {
        inHand: [
          { width: "18", length: "21", count: 2 },
          { width: "9 1/2", length: "40", count: 1 },
        ],
      },
    ],
    ["kind", "a printed stripe", { kind: "stripe", runs: "along", name: "Red" }],
    [
      "kind",
      "a strip set",
      { kind: "strip-set", strips: [{ fabric: "sand" }, { fabric: "kelp" }] },
    ],
  ])("its %s is edited: %s", (word, said, expected) => {
    expect(done(brief, `of/red/${word}`, said).fabrics[0]).toMatchObject(expected);
  });

  it("its repeat, its picture's size and its stripe's run are edited", () => {
    const across = done(brief, "of/kelp/repeat/across", "12 3/4");
    expect(across.fabrics[2]).toMatchObject({ repeat: { along: "24", across: "12 3/4" } });
    const wide = done(across, "of/kelp/photo/width", "11 7/8");
    expect(wide.fabrics[2]).toMatchObject({ photo: { width: "11 7/8", height: "16 1/4" } });
    const stripe = done(brief, "of/red/kind", "a printed stripe");
    const runs = done(done(stripe, "of/red/runs", "across the fabric"), "of/red/tilt", "-7.5");
    expect(runs.fabrics[0]).toMatchObject({ runs: "across", tilt: -7.5 });
  });

  it("says a strip set's strips, each width a word", () => {
    const set = done(brief, "of/red/kind", "a strip set");
    const b = done(set, "of/red/strip/1", "1 3/4");
    expect(text(b, "red")).toMatch(
      /^Red is a strip set of strips cut 2 1\/2 in of Sand and 1 3\/4 in of Kelp; /,
    );
  });

  it("takes back to unsaid, and refuses what cannot be", () => {
    const [unsaid] = choicesFor(brief, "of/kelp/narrower");
    expect(unsaid.brief.fabrics[2]).not.toHaveProperty("narrower");
    for (const [word, said] of [
      ["name", "  "],
      ["usable", "wide"],
      ["shrinkage", "40 by 2"],
      ["inHand", "some"],
      ["inHand", "2 of 18 by wide"],
    ])
      expect(typed(brief, `of/kelp/${word}`, said).ok, `${word}: ${said}`).toBe(false);
  });

  it("every word's path is a place of the brief, and every choice a brief the reader takes", () => {
    for (const w of wordsOf(brief).filter((x) => x.id.startsWith("of/"))) {
      expect(w.path).toMatch(/^fabrics\/\d\//);
      for (const c of choicesFor(brief, w.id)) expect(schema.safeParse(c.brief).success).toBe(true);
    }
  });
});

describe("fabrics more and fewer", () => {
  it("a fabric is added with a free name, and taken out only when nothing is made of it", () => {
    const more = changed(brief, addFabric);
    expect(schema.parse(more).fabrics[3]).toMatchObject({ id: "fabric-4", kind: "plain" });
    expect(isNamed(more, "fabric-4")).toBe(false);
    expect(isNamed(more, "red")).toBe(true);
    expect(changed(more, removeFabric("fabric-4"))).toEqual(brief);
    expect(() => changed(more, removeFabric("red"))).toThrow(RangeError);
    const set = done(more, "of/fabric-4/kind", "a strip set");
    expect(isNamed(set, "kelp") || isNamed(set, "sand")).toBe(true);
  });
});
