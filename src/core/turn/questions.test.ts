import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { answerBrief, changed } from "../answer/index.ts";
import { type Brief, readDocument } from "../brief/index.ts";
import { smallBrief } from "../brief/sample.ts";
import { readStock, setWidth } from "../fabric/index.ts";
import { planPieces } from "../layout/index.ts";
import { halfAcross, rulerOf, stripFor } from "../recipe/index.ts";
import { type FreeWord, fromStock, readPin, type Turned, turnRound } from "./index.ts";

/** Inverse questions of the counter. The numbers are calculated by hand, with a 1/4 in seam. */

const SHARP = rulerOf({ point: "sharp" }, 8, "in");
const BLUNT = rulerOf({ point: { blunt: "1/4" } }, 8, "in");
const across = (strip: number, ruler = SHARP): number => 2 * halfAcross(ruler, strip, 0.25);
const stripOf = (block: number, ruler = SHARP): number => stripFor(ruler, block / 2, 0.25);

function example(name: string): Brief {
  const read = readDocument(JSON.parse(readFileSync(`examples/${name}.json`, "utf8")));
  if (!read.ok) throw new Error(`${name} is refused`);
  return read.brief;
}

function turned(brief: Brief, pins: readonly string[], free: readonly FreeWord[]): Turned {
  const read = pins.map((text) => {
    const pin = readPin(text, brief);
    if ("problem" in pin) throw new Error(pin.problem);
    return pin;
  });
  const search = turnRound({ brief, pins: read, free });
  for (let x = search.next(); ; x = search.next()) if (x.done) return x.value;
}

/** Wedges of a 4 1/2 in sharp strip, as the planner is asked for them. */
const wedges = (count: number) => {
  const tan = Math.tan(Math.PI / 8);
  return {
    id: "wedge",
    fabricId: "reed",
    shape: { kind: "nested", first: 2 * 4.5 * tan, pitch: 4.5 * tan, height: 4.5 },
    count,
    turns: "half",
    hand: "none",
    up: false,
    layers: 1,
    joinsAllowed: false,
    piecesEach: 1,
    pieceIds: ["wedge"],
  } as const;
};
const sheet = (width: number, length: number, count = 1) => ({
  id: "here",
  fabricId: "reed",
  width,
  length,
  count,
});
/** Of so many asked for, how many these pieces give. */
const given = (asked: number, pieces: Parameters<typeof planPieces>[1]): number => {
  const { unplaced } = planPieces([wedges(asked)], pieces);
  return asked - unplaced.reduce((n, u) => n + u.count, 0);
};

describe("from fabric to a project", () => {
  test("1. I have 2 1/2 yd of this: 19 strips of 20 wedges, 380, across a plain length of 89 in", () => {
    expect(given(400, [sheet(40, 89)])).toBe(380);
    const found = turned(example("lantern-throw"), ["yardage A <= 2 1/2 yd"], ["rows", "columns"]);
    expect(found.complete).toBe(true);
    for (const f of found.found)
      expect(f.answer.yardages.find((y) => y.fabricId === f.brief.fabrics[0].id)!.buy).toBeLessThan(
        90 + 1e-6,
      );
    // Largest first: no sentence after the first is larger.
    const areas = found.found.map((f) => f.answer.quilt!.width * f.answer.quilt!.height);
    expect(Math.max(...areas)).toBe(areas[0]);
  });

  test("3. I only have quarters, 18 x 21: 40 wedges, 5 octagons; an 18 in strip gives 8", () => {
    // Strips 21 in long: four of them in 18 in, ten wedges each.
    expect(given(60, [sheet(21, 18)])).toBe(40);
    expect(given(60, [sheet(18, 4.5)])).toBe(8);
  });

  test("4. eleven 2 1/2 in strips are left: which strips of a set do they make?", () => {
    // Sum of the cut widths less 1/2 in for each seam between them.
    expect([2, 3, 4, 5].map((n) => setWidth(Array(n).fill(2.5), 0.25))).toEqual([
      4.5, 6.5, 8.5, 10.5,
    ]);
    // Eleven make five sets of two, one strip over; each set is a 4 1/2 in strip of 20 wedges.
    expect(Math.floor(11 / 2) * given(40, [sheet(40, 4.5)])).toBe(100);
    // Equal widths for 4 1/2: three of 1 5/6 (not on a ruler), four of 1 1/2.
    expect(setWidth(Array(3).fill(11 / 6), 0.25)).toBeCloseTo(4.5, 12);
    expect(setWidth(Array(4).fill(1.5), 0.25)).toBe(4.5);
    // The list of what is here makes the same question of every design.
    const list = readStock("Red, 40, 2 1/2, 11, strip\nSand, 40, 2 yd, 1, bolt\n", "in");
    expect(list.findings).toEqual([]);
    const search = fromStock([{ name: "small", brief: smallBrief() }], list.pieces);
    let here = search.next();
    while (!here.done) here = search.next();
    // The small brief wants strips of 4 1/2 in: no strip of 2 1/2 gives one, and it says of what.
    expect(here.value.notMade.map((n) => n.short)).toEqual([["Red"]]);
  });

  test("6. how much is left over, and what does it make: true wedges fall from deep backgrounds", () => {
    const answer = answerBrief(example("quiet-field"));
    const waste = answer.cutting.flatMap((c) => c.waste);
    // Eight backgrounds a block lose a wedge each: 30 blocks. Sharp, 45 degrees: base is 2 t height.
    expect(waste.reduce((n, w) => n + w.count, 0)).toBe(8 * 30);
    const { a } = answer.blocks[0].radial!;
    for (const w of waste) {
      expect(w.base).toBeCloseTo(2 * Math.tan(Math.PI / 8) * w.height, 6);
      // Raw height a - 1/4 + (1/4) / sin 22.5 = a + 0.4033; what the ruler's step adds is trimmed.
      expect(w.height).toBeGreaterThan(a + 0.4033 - 0.0001);
    }
  });

  test("7. the same place of a 24 in print eight times: eight repeats a stack, and two blocks more", () => {
    const brief = (rows: number, columns: number) =>
      smallBrief({
        fabrics: [
          { kind: "plain", id: "sand", name: "Sand", usable: "40", color: "#DCCFB4" },
          {
            kind: "print",
            id: "kelp",
            name: "Kelp",
            usable: "40",
            color: "#557755",
            repeat: { along: "24", across: "13" },
          },
        ],
        blocks: [
          {
            kind: "wedges",
            id: "frond",
            setting: "plain",
            strip: "4 1/2",
            fabric: { wedge: "kelp", corner: "sand" },
            place: { wedge: { round: "matched", at: { x: "3 1/2", y: "5", turn: 0 } } },
          },
        ],
        quilt: { rows, columns, plan: [["frond"]] },
        margin: { straighten: "1", wrongStrip: false },
      });
    const length = (rows: number, columns: number) =>
      answerBrief(brief(rows, columns)).yardages.find((y) => y.fabricId === "kelp")!.inPieces;
    // The place lies twice across 40 in (13 in apart), so a stack of 8 x 24 in gives two blocks.
    expect(length(2, 3)).toBeCloseTo((8 * 24 * 6) / 2, 9);
    expect(length(2, 4) - length(2, 3)).toBeCloseTo(8 * 24, 9);
  });
});

describe("from size to a block", () => {
  test("8. can I make it 60 x 72: the strips that exact blocks want, and the nearest on the ruler", () => {
    // 5 x 6 of 12, 6 x 7 of 10, 10 x 12 of 6: sharp 6.903, 5.903, 3.903; blunt 6 1/2 for 12.
    expect([12, 10, 6].map((b) => stripOf(b).toFixed(3))).toEqual(["6.903", "5.903", "3.903"]);
    expect(stripOf(12, BLUNT)).toBeCloseTo(6.5, 9);
    const coarse = changed(example("lantern-throw"), (d) => {
      d.step = "1";
      d.quilt.borders = [];
    });
    const at = (blocks: number) => {
      const pins = ["size = 60 x 72", `blocks = ${blocks}`];
      const [f] = turned(coarse, pins, ["strip", "rows", "columns"]).found;
      const { width, height } = f.answer.quilt!;
      return [f.values.strip, f.values.columns, f.values.rows, width.toFixed(2), height.toFixed(2)];
    };
    expect(at(30)).toEqual([7, 5, 6, "60.97", "73.16"]);
    expect(at(42)).toEqual([6, 6, 7, "61.16", "71.35"]);
    // The deep block comes exact: h = 6, square h + 0.8536, on the ruler 6 7/8.
    const deep = answerBrief(example("quiet-field"));
    expect([deep.quilt!.width, deep.quilt!.height]).toEqual([60, 72]);
    expect(6 + 0.25 * (2 + Math.SQRT2)).toBeCloseTo(6.8536, 4);
    const squares = deep.recipes.flatMap((r) => r.cuts.flatMap((c) => Object.values(c.lengths)));
    expect(squares.some((x) => Math.abs(x - 6.875) < 1e-9)).toBe(true);
  });

  test("9. finish 9 and not 9.19: strips either side, the exact one, and a setting that comes exact", () => {
    expect(across(5.5)).toBeCloseTo(9.193, 3);
    expect(stripOf(9)).toBeCloseTo(5.4033, 4);
    // Trimmed to 9 each outer seam moves 0.10 into the wedges.
    expect((across(5.5) - 9) / 2).toBeCloseTo(0.0967, 3);
    const half = changed(example("lantern-throw"), (d) => {
      d.step = "1/2";
    });
    const [near] = turned(half, ["block = 9"], ["strip"]).found;
    expect([near.values.strip, near.over[0].by.toFixed(3)]).toEqual([5.5, "0.193"]);
    const exact = turned(
      example("lantern-throw"),
      ["block = 9 within 0"],
      ["strip", "setting", "float"],
    );
    expect(exact.found.length).toBeGreaterThan(0);
    for (const f of exact.found) expect(f.answer.blocks[0].width).toBe(9);
  });

  test("11. my ruler stops at 8: the strip stays under it, or a 10 in wedge is cut past its end", () => {
    const ten = changed(example("lantern-throw"), (d) => {
      for (const k of d.blocks) if (k.kind === "wedges") k.strip = "10";
    });
    const [f] = turned(ten, ["ruler <= 8"], ["strip"]).found;
    expect(f.values.strip).toBe(8);
    expect(f.answer.blocks[0].width).toBeCloseTo(14.193, 3);
    const short = changed(ten, (d) => {
      d.ruler.longest = "8";
    });
    const [guide] = answerBrief(short).wedges;
    const ways = new Map(guide.ways.map((w) => [w.kind, w.lengths]));
    expect([...ways.keys()]).toEqual(
      expect.arrayContaining(["extended", "two-passes", "two-marks", "template"]),
    );
    // The base must measure 0.8284 of the full height.
    expect(ways.get("two-marks")!.base).toBeCloseTo(0.8284 * 10, 3);
    expect(ways.get("extended")).toMatchObject({ ruler: 8 });
  });

  test("22. I cut 4 and not 4 1/2: a smaller octagon in the same deep block, the background proved", () => {
    const brief = example("quiet-field");
    const cut4 = changed(brief, (d) => {
      for (const k of d.blocks) if (k.kind === "wedges") k.strip = "4";
    });
    const [before, after] = [answerBrief(brief), answerBrief(cut4)];
    expect([across(4.5), across(4)].map((x) => x.toFixed(3))).toEqual(["7.193", "6.193"]);
    expect(after.blocks[0].width).toBe(before.blocks[0].width);
    expect(after.findings.filter((x) => x.severity === "blocks")).toEqual([]);
    expect(after.recipes.every((r) => r.verdict === "proved")).toBe(true);
  });
});
