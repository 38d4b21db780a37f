import { describe, expect, test } from "vitest";
import { layOutBlock } from "../block/index.ts";
import { type Brief, smallBrief } from "../brief/sample.ts";
import { say } from "../findings/index.ts";
import { stepOf } from "../measure/index.ts";
import { layOutQuilt } from "./index.ts";

const STEP = stepOf("1/8", "in");
const tile = (id: string, width: string, height = width) =>
  width === height
    ? { kind: "unit", id, unit: "square", width, fabric: { patch: "red" } }
    : { kind: "own", id, outline: { width, height }, seams: [], fabric: { patch: "red" } };

function laidOut(quilt: object, blocks: object[] = [tile("tile", "6")]) {
  const brief: Brief = smallBrief({
    blocks,
    quilt: { rows: 3, columns: 2, plan: [["tile"]], ...quilt },
  });
  const laid = layOutQuilt(
    brief,
    brief.blocks.flatMap((b) => layOutBlock(b, "in", 0.25, undefined).geometry ?? []),
  );
  return { ...laid, said: laid.findings.map((f) => say(f, { step: STEP })) };
}

describe("borders", () => {
  test("wider than the quilt inside: blocks, and names the most that works", () => {
    const { findings, said } = laidOut({ borders: [{ width: "13", fabric: "sand" }] });
    expect(findings).toMatchObject([
      {
        code: "border-wider-than-quilt",
        severity: "blocks",
        place: "border 1",
        needed: 12,
        found: 13,
      },
    ]);
    expect(said[0]).toBe("border 1 is 13 in wide, more than the 12 in of the quilt inside it.");
  });

  test("just as wide as the quilt is allowed", () => {
    expect(laidOut({ borders: [{ width: "12", fabric: "sand" }] }).findings).toEqual([]);
  });

  test("the second is held against the quilt with the first on it", () => {
    const borders = [
      { width: "2", fabric: "sand" },
      { width: "16 1/2", fabric: "red" },
    ];
    expect(laidOut({ borders }).findings).toMatchObject([{ place: "border 2", needed: 16 }]);
  });

  test("finishing 1/2 in: its two allowances fill it, as advice; 5/8 in has none", () => {
    const filled = laidOut({ borders: [{ width: "1/2", fabric: "sand" }] }).findings;
    expect(filled).toMatchObject([{ code: "allowances-fill-it", severity: "advice", found: 0.5 }]);
    expect(laidOut({ borders: [{ width: "5/8", fabric: "sand" }] }).findings).toEqual([]);
  });
});

test("a sash that finishes 1/4 in is legal: laid out, with advice", () => {
  const { geometry, findings } = laidOut({ sashing: { width: "1/4", fabric: "sand" } });
  expect(findings).toMatchObject([
    {
      code: "allowances-fill-it",
      severity: "advice",
      place: "the sashing",
      needed: 0.5,
      found: 0.25,
    },
  ]);
  expect(geometry).toMatchObject({ width: 12.25, height: 18.5 });
});

describe("blocks that cannot lie together", () => {
  test("two sizes", () => {
    const { geometry, findings } = laidOut({ plan: [["tile", "wide"]] }, [
      tile("tile", "6"),
      tile("wide", "7"),
    ]);
    expect(geometry).toBeUndefined();
    expect(findings).toMatchObject([{ code: "blocks-differ-in-size", needed: 6, found: 7 }]);
  });

  test("an oblong block on point has no place for its corners: straight rows are named", () => {
    const { geometry, said } = laidOut({ arrangement: "on-point" }, [tile("tile", "6", "8")]);
    expect(geometry).toBeUndefined();
    expect(said).toEqual(["Block tile is not square and cannot lie so. Take straight rows."]);
  });

  test("sashing in shifted rows: straight rows and on point are named", () => {
    const { findings, said } = laidOut({ offset: true, sashing: { width: "1", fabric: "sand" } });
    expect(findings).toMatchObject([{ code: "sashing-in-rows-only", severity: "blocks" }]);
    expect(said[0]).toMatch(/straight rows or with blocks on point/);
  });

  test("squares in hexagon rows", () => {
    expect(laidOut({ arrangement: "hexagon-rows" }).findings).toMatchObject([
      { code: "outline-does-not-fit", severity: "blocks" },
    ]);
  });
});
