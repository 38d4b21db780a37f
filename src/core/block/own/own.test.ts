import { describe, expect, test } from "vitest";
import type { OwnBlock, UnitBlock } from "../../brief/schema.ts";
import { area, edgeLength, edges } from "../../geometry/index.ts";
import { layOutBlock } from "../lay-out.ts";
import { unitsOf } from "../plan.ts";

const SEAM = 0.25;
const WIDE: OwnBlock["outline"] = { width: "8", height: "6" };

const own = (seams: string[], over: Partial<OwnBlock> = {}) => {
  const laid = layOutBlock(
    { kind: "own", id: "mine", fabric: {}, outline: WIDE, seams, ...over },
    "in",
    SEAM,
    undefined,
  );
  return { ...laid, geometry: laid.geometry!, points: laid.points! };
};

const at = (laid: ReturnType<typeof own>, name: string) => {
  const { x, y } = laid.points.find((p) => p.name === name)!.at;
  return [x, y];
};

const works = (seams: string[]) => own(seams).findings.map((f) => [f.code, f.words?.works]);

describe("points and letters", () => {
  test("corners are lettered anticlockwise from the lower left", () => {
    const rectangle = own([]);
    expect(rectangle.points.map((p) => p.name).join("")).toBe("ABCD");
    expect(at(rectangle, "A")).toEqual([-4, -3]);
    expect(at(rectangle, "C")).toEqual([4, 3]);
    const hexagon = own([], { outline: { hexagon: "10" } });
    expect(hexagon.points.map((p) => p.name).join("")).toBe("ABCDEF");
    expect(at(hexagon, "A")[0]).toBeCloseTo(-5, 12);
    expect(at(hexagon, "B")[0]).toBeCloseTo(0, 12);
    expect(hexagon.geometry.width).toBeCloseTo(10, 12);
  });

  test("a new end of a seam gets the next letter, its start before its end", () => {
    const laid = own(["from corner A to the middle of BC", "from a quarter of AE to D"]);
    expect(at(laid, "E")).toEqual([4, 0]);
    expect(at(laid, "F")).toEqual([-2, -2.25]);
    expect(laid.points.length).toBe(6);
  });

  test("a seam across several parts cuts each, and its crossings are lettered on the way", () => {
    const laid = own([
      "from a third of AB to a third of DC",
      "from two thirds of AB to two thirds of DC",
      "from 2 1/2 in from A along AD to 2.5 from B along BC",
    ]);
    expect(laid.geometry.patches.length).toBe(6);
    expect(laid.points.slice(8).map((p) => p.name)).toEqual(["I", "J", "K", "L"]);
    expect(laid.points.slice(8).map((p) => p.at.y)).toEqual([-0.5, -0.5, -0.5, -0.5]);
    expect(at(laid, "J")[0]).toBeCloseTo(-4 / 3, 12);
  });

  test("after Z come A2, B2", () => {
    const strips = Array.from(
      { length: 12 },
      (_, i) => `from ${i + 1}/14 of AB to ${i + 1}/14 of DC`,
    );
    const laid = own(strips);
    expect(laid.points[25].name).toBe("Z");
    expect(laid.points[26].name).toBe("A2");
    const more = own([...strips, "from A2 to 13/14 of DC"]);
    expect(more.findings.filter((f) => f.severity === "blocks")).toEqual([]);
  });

  test.each([
    ["corner C", [4, 3]],
    ["point C", [4, 3]],
    ["c", [4, 3]],
    ["the middle of CD", [0, 3]],
    ["the center of CD", [0, 3]],
    ["middle of side CD", [0, 3]],
    ["halfway along CD", [0, 3]],
    ["half of CD", [0, 3]],
    ["one half of CD", [0, 3]],
    ["a third of CD", [4 / 3, 3]],
    ["a third of the way from C to D", [4 / 3, 3]],
    ["two thirds of CD", [-4 / 3, 3]],
    ["three quarters along CD", [-2, 3]],
    ["1/4 of CD", [2, 3]],
    ["3/8 of CD", [1, 3]],
    ["2 in from C along CD", [2, 3]],
    ["2 in from D along CD", [-2, 3]],
    ["2½ in from C along CD", [1.5, 3]],
    ["3 1/4 along CD", [0.75, 3]],
    ["3.25 from C toward D", [0.75, 3]],
    ["50.8 mm from C along CD", [2, 3]],
  ])("%s", (words, [x, y]) => {
    const laid = own([`from A to ${words}`]);
    expect(laid.findings).toEqual([]);
    const [seam] = unitsOf(laid.geometry.tree);
    const ends = [seam.seam.from, seam.seam.to];
    expect(ends.some((v) => Math.hypot(v.x - x, v.y - y) < 1e-12)).toBe(true);
  });

  test("a crossing of two lines, also of lines not sewn", () => {
    for (const words of [
      "the crossing of AC and BD",
      "crossing of BD with AC",
      "where AC meets BD",
    ]) {
      const laid = own(["from A to C", `from B to ${words}`]);
      expect(laid.findings).toEqual([]);
      expect(at(laid, "E")).toEqual([0, 0]);
      expect(laid.geometry.patches.length).toBe(3);
    }
  });

  test("square to a line, and parallel to one", () => {
    const square = own(["from 3 in from A along AB square to CD"]);
    expect(at(square, "F")).toEqual([-1, 3]);
    const parallel = own(["from 3 in from A along AB parallel to BC"]);
    expect(parallel.geometry.patches.map((p) => area(p.polygon))).toEqual([18, 30]);
  });
});

describe("the order it gives", () => {
  test("the first seam said is the last one sewn", () => {
    const laid = own(["from the middle of AB to the middle of CD", "from A to F"]);
    const order = unitsOf(laid.geometry.tree);
    expect(order.map((u) => u.id)).toEqual(["mine/u0", "mine/u"]);
    expect(order[1].seam.length).toBe(6);
    expect(laid.geometry.choice).toEqual({ name: "as-said", others: [], why: "said" });
    expect(laid.geometry.patches.map((p) => p.id)).toEqual(["mine/00", "mine/01", "mine/1"]);
  });

  test("a block without seams is one patch", () => {
    const { geometry } = own([]);
    expect(geometry.patches.map((p) => p.id)).toEqual(["mine/whole"]);
    expect(geometry.patches[0].outside).toEqual([true, true, true, true]);
  });
});

describe("wedges round a point", () => {
  test("eight equal ones, the first seam straight right, lettered anticlockwise", () => {
    const laid = own(["8 wedges round the center"], { outline: { width: "9", height: "9" } });
    expect(laid.geometry.patches.length).toBe(8);
    expect(laid.geometry.patches.every((p) => Math.abs(area(p.polygon) - 81 / 8) < 1e-12)).toBe(
      true,
    );
    expect(at(laid, "E")).toEqual([0, 0]);
    expect(at(laid, "F")).toEqual([4.5, 0]);
    // Four of its seams run to corners, which have their letters.
    expect(laid.points.map((p) => p.name).join("")).toBe("ABCDEFGHI");
    expect(at(laid, "G")).toEqual([0, 4.5]);
    const sizes = unitsOf(laid.geometry.tree).map((u) => Math.round(area(u.outline) / (81 / 8)));
    expect(sizes.sort()).toEqual([2, 2, 2, 2, 4, 4, 8]);
  });

  test("turned toward a point, of unlike angles, round another point than the center", () => {
    const laid = own(["wedges of 30, 60 round the center from A"]);
    expect(laid.geometry.patches.length).toBe(8);
    expect(laid.findings).toEqual([]);
    const off = own(["12 wedges of 30 degrees round 1/3 of AC"]);
    expect(off.geometry.patches.length).toBe(12);
  });

  test("wedges may be trimmed afterward", () => {
    const laid = own([
      "4 wedges round the center",
      "from 2 in from E along EF to 2 in from E along EG",
    ]);
    expect(laid.findings).toEqual([]);
    expect(laid.geometry.patches.length).toBe(5);
  });

  test.each([
    ["8 wedges of 40 round the center", 320, "8 equal wedges close it."],
    ["wedges of 50 round the center", 350, "8 equal wedges close it."],
    ["3 wedges round the center", 360, "4 equal wedges close it."],
    ["13 wedges of 30 round the center", 390, "14 equal wedges close it."],
  ])("%s do not close the circle", (seam, found, sentence) => {
    expect(own([seam]).findings).toMatchObject([
      {
        code: "circle-not-closed",
        place: "mine/seam-1",
        needed: 360,
        found,
        unit: "degrees",
        words: { works: sentence },
      },
    ]);
    expect(own([sentence.replace(" close it.", " round the center")]).findings).toEqual([]);
  });

  test("an odd number has no seam straight through", () => {
    expect(works(["9 wedges round the center"])).toEqual([
      [
        "seam-misses-outline",
        "No two of its seams make one straight line; an even number of equal wedges does.",
      ],
    ]);
  });

  test("round a point on a seam they cannot go", () => {
    expect(works(["from A to C", "8 wedges round the center"])[0][0]).toBe("seam-misses-outline");
  });
});

describe("what cannot be cut says what would work", () => {
  test.each([
    ["from A to the center", "It stops inside a part. Go on to C."],
    ["from the center to the middle of CD", "It starts inside a part. Start at the middle of AB."],
    ["from H to B", "There is no point H yet; the points so far are A to D."],
    ["from 9 in from A along AB to C", "AB is only 8 in long."],
    ["from A to a third of CC", "A line needs two different points; CC has one."],
    ["from A to the crossing of AB and CD", "AB and CD are parallel and cross nowhere."],
    ["from A to A", "It starts and ends at the same point; name two."],
    ["from B square to AB", "It starts and ends at the same point; name two."],
    [
      "from D parallel to AD",
      "Nothing lies beside it in the direction of AD; start on another side.",
    ],
  ])("%s", (seam, sentence) => {
    expect(works([seam])).toEqual([["seam-misses-outline", sentence]]);
    expect(own([seam]).findings[0]).toMatchObject({ severity: "blocks", place: "mine/seam-1" });
    expect(own([seam]).geometry.patches.length).toBe(1);
  });

  test("a parallel that could run both ways", () => {
    const seams = ["from the middle of AB to the middle of CD", "from 1/3 of EF parallel to AB"];
    expect(works(seams)).toEqual([
      [
        "seam-misses-outline",
        'It could run both ways beside AB; say where it ends: "from ... to ...".',
      ],
    ]);
  });

  test("an end outside the block", () => {
    const seams = ["from A to 1/4 of BC", "from D to the crossing of AE and DC"];
    expect(works(seams)).toEqual([
      [
        "seam-misses-outline",
        "One of its ends lies outside the block; take both on the outline or on seams.",
      ],
    ]);
  });

  test.each([
    [["from A to B"]],
    [["from A to C", "from C to A"]],
    [["from A to C", "from A to 1/3 of AC"]],
    [["from the middle of AB to the middle of CD", "from 1/4 of EF to 3/4 of EF"]],
    [["from A to the middle of AB"]],
  ])("%o doubles a seam or an edge", (seams) => {
    expect(works(seams)).toEqual([
      ["seam-twice", "Leave it out, or say only the stretch that is new."],
    ]);
    expect(own(seams).geometry.patches.length).toBe(seams.length);
  });

  test("a seam that runs on along an old one doubles it in part", () => {
    const seams = ["from A to C", "from B to 1/2 of AC", "from D to B"];
    expect(works(seams)[0][0]).toBe("seam-twice");
    expect(own([...seams.slice(0, 2), "from D to E"]).findings).toEqual([]);
  });

  test.each([
    ["from A to midle of BC", 'The nearest way to say a point is "the middle of BC".'],
    ["from A to a thrid of BC", 'The nearest way to say a point is "a third of BC".'],
    [
      "from the crossin of AC and BD to B",
      'The nearest way to say a point is "the crossing of AC and BD".',
    ],
    ["from A to 2 in along from B", 'The nearest way to say a point is "2 in from A along AB".'],
    ["from A square to the bottom", 'The nearest way to say a line through two points is "AB".'],
    ["8 wedge round the center", 'The nearest way to say a seam is "8 wedges round the center".'],
    ["cut it in half", 'The nearest way to say a seam is "from A to B".'],
    ["A - C", 'The nearest way to say a seam is "from A to C".'],
    ["from A to 5/4 of BC", 'The nearest way to say a point is "3/4 of BC".'],
  ])("%s is not understood", (seam, sentence) => {
    expect(works([seam])).toEqual([["seam-not-understood", sentence]]);
  });

  test("a sliver narrower than two allowances is a doubt, with its width", () => {
    const laid = own(["from 3/8 in from A along AB to 3/8 in from D along DC"]);
    expect(laid.findings).toEqual([
      {
        code: "sliver",
        severity: "draft",
        place: "mine/seam-1",
        needed: 0.5,
        found: 0.375,
        unit: "in",
      },
    ]);
    expect(laid.geometry.patches.length).toBe(2);
    expect(own(["from 1/2 in from A along AB to 1/2 in from D along DC"]).findings).toEqual([]);
  });

  test("it stops at the first seam that cannot be cut", () => {
    const laid = own(["from A to C", "from Q to B", "from B to the middle of AC"]);
    expect(laid.findings.length).toBe(1);
    expect(laid.findings[0].place).toBe("mine/seam-2");
    expect(laid.geometry.patches.length).toBe(2);
  });
});

describe("roles", () => {
  test("by the letters of the corners, by path, or by id", () => {
    const seams = ["from A to C", "from B to the middle of AC"];
    const laid = own(seams, { roles: { ABE: "corner", "11": "kite", "mine/0": "background" } });
    const role = Object.fromEntries(laid.geometry.patches.map((p) => [p.id, p.role]));
    expect(Object.values(role).sort()).toEqual(["background", "corner", "kite"]);
    expect(laid.findings).toEqual([]);
  });

  test("a role or a patch that is not known is named", () => {
    const laid = own(["from A to C"], { roles: { ABC: "sky", XYZ: "corner" } });
    expect(laid.findings.map((f) => [f.code, f.words?.patch, f.words?.role])).toEqual([
      ["role-not-known", "ABC", "sky"],
      ["role-not-known", "XYZ", "corner"],
    ]);
    expect(laid.geometry.patches.every((p) => p.role === "patch")).toBe(true);
  });
});

describe("units by name", () => {
  const unit = (over: Partial<UnitBlock>) => {
    const block = { kind: "unit", id: "u", fabric: {}, unit: "square", width: "6", ...over };
    const laid = layOutBlock(block as UnitBlock, "in", SEAM, undefined);
    return { ...laid, geometry: laid.geometry! };
  };

  test.each([
    ["square", 1, 36],
    ["half-square", 2, 18],
    ["quarter-square", 4, 9],
    ["four-patch", 4, 9],
    ["nine-patch", 9, 4],
  ] as const)("%s: %i patches alike", (name, count, each) => {
    const { geometry, findings } = unit({ unit: name });
    expect(findings).toEqual([]);
    expect(geometry.patches.length).toBe(count);
    for (const p of geometry.patches) {
      expect(area(p.polygon)).toBeCloseTo(each, 12);
      expect(p.hand).toBe("none");
    }
  });

  test.each([
    ["left", "5", "3"],
    ["right", "5", "3"],
    ["left", "3", "5"],
    ["right", "3", "5"],
  ] as const)(
    "half-rectangle: one %s %s by %s gives two of the same hand",
    (hand, width, height) => {
      const { geometry } = unit({ unit: "half-rectangle", hand, width, height });
      expect(geometry.patches.map((p) => p.hand)).toEqual([hand, hand]);
      const [seam] = unitsOf(geometry.tree);
      expect(seam.seam.length).toBeCloseTo(Math.hypot(5, 3), 12);
    },
  );

  test("a half-rectangle is a right one unless told", () => {
    const { geometry } = unit({ unit: "half-rectangle", width: "7", height: "4" });
    expect(geometry.patches.map((p) => p.hand)).toEqual(["right", "right"]);
  });

  test("four- and nine-patches may be oblong; half- and quarter-squares may not", () => {
    expect(unit({ unit: "nine-patch", height: "4 1/2" }).findings).toEqual([]);
    const edge = unit({ unit: "four-patch", height: "9" }).geometry.patches[0].polygon;
    expect(edges(edge).map(edgeLength).sort()).toEqual([3, 3, 4.5, 4.5]);
    for (const name of ["half-square", "quarter-square"] as const)
      expect(unit({ unit: name, height: "4" }).findings).toMatchObject([
        { code: "unit-not-square", severity: "blocks", needed: 6, found: 4, words: { unit: name } },
      ]);
  });
});
