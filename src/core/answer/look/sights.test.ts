import { describe, expect, it } from "vitest";
import { smallBrief } from "../../brief/sample.ts";
import { say } from "../../findings/index.ts";
import { answerBrief } from "../compose.ts";
import { consequences } from "../index.ts";
import { choicesFor, stepped, typed, wordsOf } from "../words/choices.ts";
import { coloringChoices } from "../words/coloring-choices.ts";
import { fabricSentenceOf } from "../words/sentence.ts";
import { stepOfBrief } from "../words/word.ts";
import { seamRows } from "./table.ts";

const PLAIN = [
  { kind: "plain", id: "brine", name: "Brine", usable: "40", color: "#1F4E5F" },
  { kind: "plain", id: "coral", name: "Coral", usable: "40", color: "#D9765A" },
  { kind: "plain", id: "spray", name: "Spray", usable: "40", color: "#F1EADB" },
];
const SET = {
  kind: "strip-set",
  id: "reef",
  name: "Reef set",
  usable: "40",
  strips: [
    { fabric: "brine", cut: "2" },
    { fabric: "coral", cut: "1 1/4" },
    { fabric: "spray", cut: "2 1/4" },
  ],
};
const STRIPE = {
  kind: "stripe",
  id: "rows",
  name: "Rows",
  usable: "40",
  runs: "along",
  bands: [
    { width: "1 1/2", color: "#5B6B36" },
    { width: "1/2", color: "#F3E7C4" },
    { width: "4", color: "#B4472F" },
  ],
};
const block = (fabric: string, place?: object, change: object = {}) => ({
  kind: "wedges",
  id: "polyp",
  setting: "plain",
  strip: "4 1/2",
  fabric: { wedge: fabric, corner: "spray" },
  ...(place && { place: { wedge: place } }),
  ...change,
});
const brief = (fabric: string, place?: object, change: object = {}) =>
  smallBrief({
    fabrics: [...PLAIN, SET, STRIPE],
    blocks: [block(fabric, place)],
    quilt: { rows: 3, columns: 5, plan: [["polyp"]] },
    ...change,
  });
const lookOf = (b: ReturnType<typeof brief>) => {
  const answer = answerBrief(b);
  return { answer, question: answer.questions.find((q) => q.id === "look") };
};

describe("what will my fabric look like", () => {
  it("counts up and down in a mixed round of a strip set and measures its rings", () => {
    const { answer, question } = lookOf(
      brief("reef", { round: "mixed" }, { ruler: { point: { blunt: "1/4" } } }),
    );
    const [round] = answer.sights[0].rounds;
    expect([round.up, round.down, round.blocksMixed]).toEqual([4, 4, 15]);
    // Seams at 1 3/4 and 2 1/2 of the set; up at a + SA - y, down at y - p; a = 4, SA = p = 1/4.
    const inner = round.rings.map(({ way, rings }) => [way, ...rings.map((r) => r.inner)]);
    expect(inner[0].slice(1)).toEqual([0, 1.75, 2.5].map((x) => expect.closeTo(x, 9)));
    expect(inner[1].slice(1)).toEqual([0, 1.5, 2.25].map((x) => expect.closeTo(x, 9)));
    expect(round.narrowest).toBeCloseTo(0.75, 9);
    expect(question?.line).toContain(
      "Reef set: mixed, four up and four down in each of 15 rounds.",
    );
    expect(question?.margin).toMatchObject({
      number: { text: "3/4 in" },
      caption: "narrowest ring, Reef set",
    });
  });

  it("says by how little rings miss, and the widths that meet or miss on purpose", () => {
    const b = brief("reef", { round: "mixed" }, { ruler: { point: { blunt: "1/4" } } });
    const found = answerBrief(b).findings.find((f) => f.code === "rings-nearly-meet");
    // |W - y - z| for the seams y, z: 1, 1/4, 1/2.
    expect(found).toMatchObject({ found: expect.closeTo(0.25, 9), needed: 0.375 });
    expect(say(found!, { step: stepOfBrief(b) })).toContain(
      "Their seams meet when the strips are cut 2 1/8 in, 1 1/4 in, 2 1/8 in.",
    );
  });

  it("lists by how much each ring misses at each seam, along the seam", () => {
    const blunt = { ruler: { point: { blunt: "1/4" } } };
    const mixed = brief("reef", { round: "mixed" }, blunt);
    const [round] = answerBrief(mixed).sights[0].rounds;
    // Up seams show at radius 1.75 and 2.5 (brine, coral, spray inward), down at 1.5 and 2.25 the
    // other way round: no edge has its own colors opposite, in a set of three fabrics.
    expect(round.seams).toEqual([
      {
        count: 8,
        ways: ["up", "down"],
        misses: [{ radius: 1.75 }, { radius: 2.5 }].map((m) => ({
          radius: expect.closeTo(m.radius, 9),
        })),
      },
    ]);
    const matched = brief("reef", { round: "matched" }, blunt);
    expect(seamRows(matched, answerBrief(matched))[1].slice(2)).toEqual([
      "8 seams",
      "Brine out beside Brine out",
      "every ring meets",
    ]);
  });

  it("measures an even stripe's miss along the seam: twice the radius off, over cos 22.5", () => {
    const even = {
      ...STRIPE,
      bands: [
        { width: "1", color: "#222222" },
        { width: "1", color: "#EEEEEE" },
      ],
    };
    const b = brief(
      "rows",
      { round: "mixed", start: "0" },
      {
        fabrics: [...PLAIN, even],
        ruler: { point: { blunt: "1/4" } },
      },
    );
    const [{ seams }] = answerBrief(b).sights[0].rounds;
    // Edges at whole inches y: up at 4.25 - y, down at y - 0.25. Dark to light outward lies at
    // 0.25, 2.25 up (odd y) and at 0.75, 2.75 down: half an inch off along the axis.
    for (const { miss } of seams[0].misses)
      expect(miss).toBeCloseTo(0.5 / Math.cos(Math.PI / 8), 9);
    expect(seams[0].most).toBeCloseTo(0.5412, 4);
    expect(seamRows(b, answerBrief(b))[1][4]).toContain("0.541");
  });

  it("names the odd wedges of a whole strip: 20 flipped make 1 and 1, 2 + 2 over", () => {
    const quilt = { rows: 1, columns: 1, plan: [["polyp"]] };
    const { answer } = lookOf(brief("reef", undefined, { quilt }));
    expect(answer.findings.find((f) => f.code === "odd-wedges")?.words?.what).toBe(
      "20 wedges make 1 of one kind and 1 of the other; 2 up and 2 down are over.",
    );
  });

  it("says what the gaps of a matched round hold", () => {
    const { answer, question } = lookOf(brief("rows", { round: "matched", start: "1 1/4" }));
    expect(answer.sights[0].rounds[0]).toMatchObject({ blocksUp: 15, blocksDown: 0, spare: 120 });
    expect(question?.line).toContain(
      "Rows: matched, all lower edge out, 15 rounds alike, each begun 1 1/4 in into the repeat; the gaps hold as many the other way, 15 rounds of the other kind.",
    );
  });

  it("is in doubt when a seam of the set lies in an allowance, and blocked when it is too narrow", () => {
    const strips = (cuts: string[]) => [
      ...PLAIN,
      { ...SET, strips: SET.strips.map((s, i) => ({ ...s, cut: cuts[i] })) },
    ];
    const { question } = lookOf(
      brief("reef", { round: "matched" }, { fabrics: strips(["1/2", "2 1/2", "2 1/2"]) }),
    );
    expect(question?.doubt).toBe(true);
    const { answer } = lookOf(
      brief("reef", { round: "matched" }, { fabrics: strips(["2", "1", "2"]) }),
    );
    expect(answer.findings.find((f) => f.code === "strip-set-sum")?.severity).toBe("blocks");
  });

  it("says which figure is seen, which neighbors the eye will not part, and nothing of no color", () => {
    const near = { ...PLAIN[1], id: "shell", name: "Shell", color: "#D87F62" };
    const b = brief("coral", undefined, {
      fabrics: [...PLAIN, near],
      blocks: [block("coral", undefined, { fabric: { wedge: "coral", corner: "shell" } })],
    });
    const { answer, question } = lookOf(b);
    expect(answer.findings.find((f) => f.code === "eye-will-not-part")?.words).toMatchObject({
      a: "Coral",
      b: "Shell",
    });
    expect(answer.sights[0].gaps).toHaveLength(1);
    expect(question?.line).toContain("No figure is seen");
    expect(lookOf(brief("brine")).question?.line).toBe("The octagon is seen first.");
    const blank = PLAIN.map(({ color: _, ...f }) => f);
    expect(lookOf(brief("brine", undefined, { fabrics: blank })).question).toBeUndefined();
  });
});

describe("words of place", () => {
  const text = (b: ReturnType<typeof brief>) =>
    fabricSentenceOf(b)
      .map((p) => p.text)
      .join("");
  const matched = brief("rows", { round: "matched", start: "1 1/4" });

  it("follow the fabric's name; a plain fabric has none", () => {
    expect(text(matched)).toBe(
      "Wedges in Rows, matched, lower edge out, begun 1 1/4 in into the repeat, bands straight, and corners in Spray.",
    );
    expect(text(brief("brine"))).toBe("Wedges in Brine and corners in Spray.");
    expect(text(brief("reef", { round: "mixed", way: "down" }))).toContain(
      "Reef set, mixed four up and four down, Spray out, bands straight,",
    );
  });

  it("change what they say and nothing else", () => {
    for (const w of wordsOf(matched).filter((x) => x.id.startsWith("place/"))) {
      const choices = choicesFor(matched, w.id);
      expect(choices.filter((c) => c.now)).toHaveLength(1);
      for (const c of choices.filter((x) => !x.now && x.typed === undefined)) {
        expect(text(c.brief)).toContain(c.label);
        expect({ ...c.brief, blocks: [] }).toEqual({ ...matched, blocks: [] });
      }
    }
  });

  it("are typed and stepped", () => {
    const start = "place/polyp/wedge/start";
    const moved = typed(matched, start, "2 3/8");
    expect(moved.ok && moved.brief.blocks[0].place?.wedge.start).toBe("2 3/8");
    expect(stepped(matched, start, 1).blocks[0].place?.wedge.start).toBe("1 3/8");
    const tilt = "place/polyp/wedge/tilt";
    const askew = typed(matched, tilt, "-7.5 degrees");
    expect(askew.ok && askew.brief.blocks[0].place?.wedge.tilt).toBe(-7.5);
    expect(typed(matched, tilt, "50").ok).toBe(false);
    expect(typed(matched, tilt, "a lot").ok).toBe(false);
  });
});

it("offers at most four colorings, each differing by its word", () => {
  const b = brief("reef");
  const choices = coloringChoices(b, "polyp");
  expect(choices.length).toBeGreaterThan(1);
  expect(choices.length).toBeLessThanOrEqual(4);
  for (const c of choices) {
    expect(c.label).toContain(c.word);
    expect(c.brief.blocks[0].fabric).not.toEqual(b.blocks[0].fabric);
  }
});

it("tells what a choice does to the narrowest ring", () => {
  const now = brief("rows", { round: "matched", way: "up", start: "1 1/4" });
  const then = choicesFor(now, "place/polyp/wedge/way").find((c) => !c.now)!.brief;
  const row = consequences(answerBrief(now), answerBrief(then)).find((r) => r.id === "ring/rows");
  // Sharp 4 1/2: a = 3.5967, p = 0.6533. Up: edges at 3.3467 - 3.8467 fall at 0.25 and 0.75 of the
  // strip (rings 0.25, 0.5 ...); down they show 0.0967 at the center.
  expect(row?.changed).toBe(true);
  expect(row?.would).toBe("0.097 in");
});
