import { describe, expect, test } from "vitest";
import { type Brief, smallBrief } from "../../brief/sample.ts";
import { answerBrief, layingsOf, meetingShapes, shapeWords } from "../index.ts";

const colors = { dark: "#23303A", light: "#EFE9DC", middle: "#7F8A86", pale: "#E4DDCD" };
const fabrics = Object.entries(colors).map(([id, color]) => ({
  kind: "plain",
  id,
  name: id,
  usable: "40",
  color,
}));
const quilt = (block: object, change: object = {}): Brief =>
  smallBrief({
    fabrics,
    blocks: [{ kind: "wedges", id: "k", strip: "4 1/2", ...block }],
    quilt: { rows: 4, columns: 3, plan: [["k"]], ...change },
  });
const seen = (b: Brief): string[] => meetingShapes(b, answerBrief(b)).map((s) => shapeWords(s, b));

describe("what appears where blocks meet", () => {
  test("plain corners: light squares on point", () => {
    const b = quilt({ setting: "plain", fabric: { wedge: "dark", corner: "light" } });
    expect(seen(b)).toEqual(["a square in light, across four blocks"]);
  });

  test("every other wedge as light as the corners: stars, and diamonds of two dark wedges", () => {
    const fabric = { "wedge-even": "dark", "wedge-odd": "light", corner: "pale" };
    expect(seen(quilt({ setting: "plain", fabric }))).toEqual([
      "a diamond in dark, across two blocks",
      "a star of four points in light and pale, across four blocks",
    ]);
  });

  test("kites: a second star, of the four kites at each corner", () => {
    const b = quilt({ setting: "kites", fabric: { wedge: "dark", kite: "light" } });
    expect(seen(b)).toContain("a star of four points in light, across four blocks");
  });

  test("deep background, lefts against rights: two pinwheels", () => {
    const fabric = { wedge: "middle", "background-left": "dark", "background-right": "light" };
    const b = quilt({ setting: "deep", side: "12", fabric });
    expect(meetingShapes(b, answerBrief(b))).toMatchObject([
      { shape: "pinwheel", points: 4, blocks: 4, fabricIds: ["dark"], value: "dark" },
      { shape: "pinwheel", points: 4, blocks: 4, fabricIds: ["light"], value: "light" },
    ]);
  });

  test("value decides, not color: lefts and rights alike in value are no pinwheel", () => {
    const fabric = { wedge: "dark", "background-left": "light", "background-right": "pale" };
    const shapes = seen(quilt({ setting: "deep", side: "12", fabric }));
    expect(shapes.filter((s) => s.includes("pinwheel"))).toEqual([]);
  });

  test("sashing keeps the blocks apart; a single block meets none", () => {
    const block = { setting: "plain", fabric: { wedge: "dark", corner: "light" } };
    const sashing = { width: "1", fabric: "middle" };
    expect(seen(quilt(block, { sashing }))).toEqual([]);
    expect(seen(quilt(block, { rows: 1, columns: 1 }))).toEqual([]);
  });
});

describe("arrangements of the same blocks", () => {
  const uneven = quilt({
    setting: "sectors",
    whole: [1, 3],
    fabric: { wedge: "dark", kite: "light", background: "light", corner: "light" },
  });

  test("at most four, the one there is first, all different, each with its own brief", () => {
    const all = layingsOf(uneven, answerBrief(uneven));
    expect(all.map((a) => a.label)).toEqual([
      "as it is",
      "every second one turned",
      "every second row shifted",
      "on point",
    ]);
    expect(all[0].brief).toBe(uneven);
    expect(new Set(all.map((a) => answerBrief(a.brief).briefHash)).size).toBe(4);
  });

  test("a block that a quarter turn leaves as it is is not offered turned", () => {
    const even = quilt({ setting: "plain", fabric: { wedge: "dark", corner: "light" } });
    expect(layingsOf(even, answerBrief(even)).map((a) => a.label)).not.toContain(
      "every second one turned",
    );
  });

  test("shifted rows part what meets at the corners", () => {
    const even = quilt({ setting: "plain", fabric: { wedge: "dark", corner: "light" } });
    const shapes = (b: typeof even) => meetingShapes(b, answerBrief(b));
    expect(shapes(even)).not.toEqual([]);
    const { brief } = layingsOf(even, answerBrief(even)).find(
      (a) => a.label === "every second row shifted",
    )!;
    expect(shapes(brief)).toEqual([]);
  });
});
