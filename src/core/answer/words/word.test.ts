import { describe, expect, it } from "vitest";
import { type Brief, readDocument } from "../../brief/index.ts";
import { smallBrief } from "../../brief/sample.ts";
import { answerBrief } from "../compose.ts";
import { allWords } from "./all-choices.ts";
import { detailSentencesOf } from "./details.ts";
import { oneFabricSentence } from "./one-fabric.ts";
import { fabricSentenceOf, sentenceOf, sentenceText } from "./sentence.ts";
import { shownLength } from "./word.ts";

const { choicesFor, stepped, typed, wordOfRole, wordsOf } = allWords;

const wedge = (change: object = {}) => ({
  kind: "wedges",
  id: "star",
  setting: "kites",
  strip: "4 1/2",
  fabric: { wedge: "red", kite: "sand" },
  ...change,
});

/** All sentences as one text. */
const allText = (b: Brief): string =>
  [
    sentenceOf(b),
    fabricSentenceOf(b),
    ...detailSentencesOf(b).map((d) => d.parts),
    ...b.fabrics.map((f) => oneFabricSentence(b, f.id)),
  ]
    .map((parts) => parts.map((p) => p.text).join(""))
    .join(" ");

const done = (r: ReturnType<typeof typed>): Brief => {
  if (!r.ok) throw new Error(r.error.problem);
  return r.brief;
};

const runner = smallBrief({
  ruler: { point: { blunt: "1/4" } },
  blocks: [
    wedge({ cut: { kite: { size: "4" } } }),
    wedge({ id: "wheel", setting: "plain", fabric: { wedge: "red", corner: "sand" } }),
  ],
  quilt: {
    rows: 3,
    columns: 8,
    plan: [
      ["star", "wheel"],
      ["wheel", "star"],
    ],
  },
});

describe("the sentence", () => {
  it("says the whole job, two kinds by turns", () => {
    expect(sentenceText(runner)).toBe(
      "Wedges, eight to the round, from 4 1/2 in strips cut blunt 1/4 in past the center, set by turns with kites from 4 in squares and with plain corners cut to cover; 24 blocks, 3 by 8 in straight rows, no sashing, no border, no binding; from fabric 40 in usable, cut single, with room for one wrong strip; sewn with a 1/4 in seam, corners last, measured to the 1/8 in.",
    );
  });

  it("says borders, sashing, binding and folded fabric", () => {
    const b = smallBrief({
      fabrics: [
        { kind: "plain", id: "red", name: "Red", usable: "40", folds: 1 },
        { kind: "plain", id: "sand", name: "Sand", usable: "42" },
      ],
      quilt: {
        rows: 2,
        columns: 5,
        plan: [["star"]],
        sashing: { width: "1 1/2", fabric: "sand" },
        borders: [
          { width: "1", fabric: "red" },
          { width: "4 3/4", fabric: "sand", join: "mitred" },
        ],
      },
      finishing: { binding: { width: "2 1/4", fabric: "red" } },
      margin: { wrongStrip: false },
    });
    expect(sentenceText(b)).toBe(
      "Wedges, eight to the round, from 4 1/2 in strips cut to a sharp point, set all alike with kites cut to cover; 10 blocks, 2 by 5 in straight rows, 1 1/2 in sashing, two borders 1 in wide with butted corners and 4 3/4 in wide with mitered corners, 2 1/4 in binding; from Red 40 in usable, cut folded once, Sand 42 in usable, cut single, with no room for a wrong strip; sewn with a 1/4 in seam, measured to the 1/8 in.",
    );
  });

  it.each([
    ["floating", { setting: "floating", side: "9" }, "set all alike floating in 9 in blocks;"],
    [
      "framed",
      { setting: "framed", side: "9 1/2", inner: "kites" },
      "with kites and a frame in 9 1/2 in blocks;",
    ],
    ["deep", { setting: "deep", side: "10" }, "in a deep background in 10 in blocks cut to cover;"],
    [
      "sectors",
      { setting: "sectors", whole: [1, 5] },
      "with two opposite left whole in the smallest blocks, flat side to the edge;",
    ],
    [
      "hexagon",
      { setting: "sectors", n: 12, outline: "hexagon", turned: "corner" },
      "with none left whole in the smallest blocks, corner to the edge in hexagons;",
    ],
  ])("says %s", (_name, change, expected) => {
    expect(sentenceText(smallBrief({ blocks: [wedge(change)] }))).toContain(expected);
  });

  it("speaks millimeters, and a flat tip", () => {
    const b = smallBrief({
      unit: "mm",
      seam: "6",
      step: "1",
      ruler: { point: { flat: "8.5" } },
      blocks: [wedge({ strip: "11.5 cm" })],
    });
    expect(sentenceText(b)).toContain("from 11.5 cm strips cut with a 8.5 mm flat tip");
    expect(sentenceText(b)).toContain("sewn with a 6 mm seam, measured to the 1 mm.");
  });

  it("marks the words that are not proved, and no others", () => {
    const parts = sentenceOf(runner, { unproved: ["cut/star/kite"] });
    expect(parts.filter((p) => p.doubt).map((p) => p.text)).toEqual(["4 in squares"]);
  });

  it("names the fabrics in a second sentence", () => {
    expect(
      fabricSentenceOf(runner)
        .map((p) => p.text)
        .join(""),
    ).toBe("Star: wedges in Red and kites in Sand. Wheel: wedges in Red and corners in Sand.");
  });
});

describe("lengths shown", () => {
  it.each([
    ["4 1/2", "4 1/2 in"],
    ["4-1/2", "4 1/2 in"],
    ['4½"', "4 1/2 in"],
    ["4.5", "4.5 in"],
    ["11.5cm", "11.5 cm"],
    ["9/2 inches", "9/2 in"],
  ])("%s is set as %s", (text, shown) => {
    expect(shownLength(text, "in")).toBe(shown);
  });
});

const metric = smallBrief({
  unit: "mm",
  seam: "7 mm",
  step: "1 mm",
  fabrics: [
    { kind: "plain", id: "red", name: "Red", usable: "105 cm" },
    { kind: "plain", id: "sand", name: "Sand", usable: "105 cm" },
    { kind: "plain", id: "blue", name: "Blue", usable: "105 cm" },
    { kind: "plain", id: "gray", name: "Gray", usable: "105 cm" },
    { kind: "plain", id: "moss", name: "Moss", usable: "105 cm" },
  ],
  blocks: [
    wedge({
      strip: "11.5 cm",
      setting: "sectors",
      n: 12,
      whole: [0, 5],
      fabric: { wedge: "red", background: "moss" },
    }),
  ],
  quilt: {
    rows: 1,
    columns: 1,
    plan: [["star"]],
    arrangement: "on-point",
    setting: "gray",
    sashing: { width: "33", fabric: "sand" },
    borders: [1, 2, 3, 4].map((n) => ({ width: `${n} cm`, fabric: "blue" })),
  },
  finishing: {
    binding: { width: "61", fabric: "red" },
    backing: { fabric: "sand", overhang: "10 cm" },
  },
});

/** What the brief can hold that the others do not. */
const ownQuilt = smallBrief({
  ruler: { point: { blunt: "1/4", seam: "7 mm" }, shortest: "1", longest: "8 1/2" },
  blocks: [
    {
      kind: "own",
      id: "sail",
      name: "Sail",
      outline: { width: "8", height: "8" },
      seams: ["from the middle of AB to the middle of CD", "from A to F"],
      roles: { AEF: "corner" },
      fabric: { patch: "red", corner: "sand" },
    },
    {
      kind: "unit",
      id: "pane",
      unit: "half-rectangle",
      width: "8",
      hand: "left",
      fabric: { patch: "sand" },
    },
  ],
  quilt: {
    rows: 3,
    columns: 4,
    plan: [["sail", { block: "pane", quarters: 1, mirrored: true }]],
    sashing: { width: "1", fabric: "sand", cornerstone: "red" },
    borders: [{ width: "3", fabric: "red", cornerstone: "sand", cut: "along" }],
  },
  margin: { straighten: "2", wrongStrip: true, extra: "3" },
  finishing: {
    binding: { width: "2 1/4", fabric: "red", cut: "bias", join: "slant-cut", spare: "12" },
    backing: { fabric: "sand", overhang: "4", whose: "Marsh" },
    batting: { overhang: "3" },
  },
});

describe("words", () => {
  it("have distinct ids, a role, and a path that leads into the brief", () => {
    const words = wordsOf(runner);
    expect(new Set(words.map((w) => w.id)).size).toBe(words.length);
    for (const w of words) expect(w.role).not.toBe("");
    expect(words.find((w) => w.id === "strip/star+wheel")?.path).toBe("blocks/0/strip");
  });

  it.each([
    ["inches", runner],
    ["millimeters, twelve wedges, borders, on point", metric],
    ["an own size off every rule of thumb", done(typed(runner, "cut/star/kite", "4 3/8"))],
    ["a block of one's own, sashing, finishing", ownQuilt],
  ])("every one has two to four choices, exactly one of them as it is now: %s", (_name, b) => {
    for (const w of wordsOf(b)) {
      const choices = choicesFor(b, w.id);
      expect(choices.length, w.id).toBeGreaterThanOrEqual(2);
      expect(choices.length, w.id).toBeLessThanOrEqual(4);
      const now = choices.filter((c) => c.now);
      expect(now.length, `${w.id}: ${choices.map((c) => c.label)}`).toBe(1);
      expect(now[0].brief, w.id).toEqual(b);
    }
  });

  it.each([
    ["inches", runner],
    ["millimeters, twelve wedges, borders, on point", metric],
    ["a block of one's own, sashing, finishing", ownQuilt],
  ])("every choice is a brief the reader takes, and reads as labeled: %s", (_name, b) => {
    for (const w of wordsOf(b))
      for (const c of choicesFor(b, w.id)) {
        const read = readDocument(JSON.parse(JSON.stringify(c.brief)));
        expect(read.ok, `${w.id}: ${c.label} ${JSON.stringify(read)}`).toBe(true);
        // A choice that leaves a seam out cannot be read in what is left.
        if (c.typed === undefined && !/^(mix|kinds|own)/.test(w.id))
          expect(allText(c.brief).toLowerCase(), w.id).toContain(c.label.toLowerCase());
      }
  });

  it("a touched patch finds the word of its size", () => {
    expect(wordOfRole(runner, "kite", "star")).toBe("cut/star/kite");
    expect(wordOfRole(runner, "wedge-odd", "wheel")).toBe("strip/star+wheel");
  });
});

describe("typing", () => {
  it.each(["4 3/8", "4-3/8", '4⅜"', "4.375", "11.5 cm"])("keeps %s exactly as typed", (text) => {
    const b = done(typed(runner, "strip/star+wheel", ` ${text} `));
    expect(b.blocks.map((k) => k.kind === "wedges" && k.strip)).toEqual([text, text]);
  });

  it.each([
    ["strip/star+wheel", "", "Type a length"],
    ["strip/star+wheel", "four", "not a length"],
    ["strip/star+wheel", "4 1/0", "over 0"],
    ["strip/star+wheel", "0", "more than 0"],
    ["strip/star+wheel", "4 furlongs", "not known"],
    ["strip/star+wheel", "9000", "longest"],
    ["grid", "3 by 0", "Rows and columns"],
    ["blocks", "a dozen", "how many"],
    ["borders", "13", "0 to 12"],
    ["n/star+wheel", "7", "6, 8, 10, 12 or 16"],
    ["folds/red+sand", "twice", "Choose one"],
    ["fabric/star/kite", "Blue", "Red and Sand"],
  ])("%s refuses %j with a sentence", (id, text, needle) => {
    const r = typed(runner, id, text);
    expect(r.ok).toBe(false);
    if (!r.ok) expect(r.error.problem).toContain(needle);
  });

  it("takes rows by columns, blocks in the nearest shape, and names of fabrics", () => {
    expect(done(typed(runner, "grid", "5 x 6")).quilt).toMatchObject({ rows: 5, columns: 6 });
    expect(done(typed(runner, "blocks", "20 blocks")).quilt).toMatchObject({
      rows: 2,
      columns: 10,
    });
    expect(done(typed(runner, "fabric/star/kite", "red")).blocks[0].fabric.kite).toBe("red");
  });

  it("adds and removes what may be left out", () => {
    const sashed = done(typed(runner, "sashing", "1 1/4"));
    expect(sashed.quilt.sashing?.width).toBe("1 1/4");
    expect(done(typed(sashed, "sashing", "none"))).toEqual(runner);
    expect(done(typed(runner, "sashing", "0.75")).quilt.sashing?.width).toBe("0.75");
    expect(done(typed(runner, "point", "sharp")).ruler.point).toBe("sharp");
    expect(done(typed(runner, "point", "5/16")).ruler.point).toEqual({ flat: "5/16" });
  });
});

describe("stepping", () => {
  it("moves by the ruler's marks, first onto them", () => {
    const strip = (b: Brief) => b.blocks[0].kind === "wedges" && b.blocks[0].strip;
    expect(strip(stepped(runner, "strip/star+wheel", 1))).toBe("4 5/8");
    const off = done(typed(runner, "strip/star+wheel", "4.4"));
    expect(strip(stepped(off, "strip/star+wheel", 1))).toBe("4 1/2");
    expect(strip(stepped(off, "strip/star+wheel", -1))).toBe("4 3/8");
  });

  it("stops at the end, and never reaches 0", () => {
    const thin = done(typed(runner, "seam", "1/8"));
    expect(stepped(thin, "seam", -1)).toBe(thin);
    const one = done(typed(runner, "grid", "1 by 1"));
    expect(stepped(one, "blocks", -1)).toBe(one);
  });

  it("keeps centimeters", () => {
    const b = smallBrief({
      unit: "mm",
      seam: "6",
      step: "1",
      blocks: [wedge({ strip: "11.5 cm" })],
    });
    const up = stepped(b, "strip/star", 1);
    expect(up.blocks[0].kind === "wedges" && up.blocks[0].strip).toBe("11.6 cm");
  });
});

describe("changes that carry others with them", () => {
  it("another number of wedges turns kites into sectors and back", () => {
    const b = smallBrief();
    const six = done(typed(b, "n/star", "6"));
    expect(six.blocks[0]).toMatchObject({ n: 6, setting: "sectors", whole: [1, 3, 5] });
    expect(done(typed(six, "n/star", "8")).blocks[0]).toMatchObject({ n: 8, setting: "kites" });
  });

  it("a second kind comes by turns and leaves again", () => {
    const b = smallBrief();
    const two = choicesFor(b, "mix").find((c) => c.label === "by turns")!.brief;
    expect(two.blocks.map((k) => k.id)).toEqual(["star", "plain"]);
    expect(two.quilt.plan).toEqual([
      ["star", "plain"],
      ["plain", "star"],
    ]);
    expect(choicesFor(two, "mix").find((c) => c.label === "all alike")!.brief).toEqual(b);
  });

  it("leaves everything untouched the same object", () => {
    const b = stepped(runner, "seam", 1);
    expect(b.fabrics).toBe(runner.fabrics);
    expect(b.blocks).toBe(runner.blocks);
  });
});

it("two opposite left whole are another block than plain corners: two kites, six wedges", () => {
  const choices = choicesFor(smallBrief({ blocks: [wedge()] }), "setting/star");
  const whole = choices.find((c) => c.label === "with two opposite left whole");
  const [block] = answerBrief(whole?.brief as Brief).blocks;
  const roles = block.patches.map((p) => p.role.split("-")[0]).sort();
  expect(roles).toEqual([
    ...Array(2).fill("corner"),
    ...Array(2).fill("kite"),
    ...Array(6).fill("wedge"),
  ]);
});
