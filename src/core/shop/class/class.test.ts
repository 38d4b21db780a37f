import { describe, expect, test } from "vitest";
import harbor from "../../../../examples/harbor-mat.json" with { type: "json" };
import quiet from "../../../../examples/quiet-field.json" with { type: "json" };
import reef from "../../../../examples/reef-window.json" with { type: "json" };
import skylark from "../../../../examples/skylark-bed.json" with { type: "json" };
import tidepool from "../../../../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief } from "../../answer/index.ts";
import { type Brief, readDocument } from "../../brief/index.ts";
import { circleLoss, deepLoss } from "../../sewing/index.ts";
import { stagesOf } from "./minutes.ts";
import { planClass } from "./plan.ts";
import { changeOf } from "./seam.ts";
import { studentPlan } from "./student.ts";
import { saySeam, sayTime } from "./words.ts";

function made(document: unknown, more: object = {}): Brief {
  const read = readDocument({ ...(document as object), ...more });
  if (!read.ok) throw new RangeError(JSON.stringify(read.refusals));
  return read.brief;
}
const plan = (document: unknown, room: object, more: object = {}) => {
  const brief = made(document, { ...more, class: room });
  return { brief, plan: planClass(brief, answerBrief(brief)) };
};

describe("a student's own fabric, ruler and size", () => {
  test("a narrower fabric asks for her own yardage, and no more than her own answer says", () => {
    const { plan: p } = plan(tidepool, { students: [{ name: "Wren", usable: "20" }] });
    const [wren] = p.students;
    expect(wren.own).toEqual(["fabric 20 usable"]);
    const brief = made(tidepool);
    const own = answerBrief({
      ...brief,
      fabrics: brief.fabrics.map((f) => ({ ...f, usable: "20", narrower: undefined })),
    });
    expect(wren.supplies.map((s) => s.buy)).toEqual(own.yardages.map((y) => y.buyText));
    expect(wren.supplies.map((s) => s.buy)).not.toEqual(p.everyone.supplies.map((s) => s.buy));
  });

  // From geometry (docs/geometry/rulers.md): a blunt 4 1/2 finishes 8; a sharp ruler needs a + SA + SA / sin 22.5 = 4.9033 for it.
  test("another point keeps the block of the class: her strip changes, exactly", () => {
    const { plan: p } = plan(tidepool, { students: [{ name: "Wren", point: "sharp" }] });
    const [wren] = p.students;
    for (const b of wren.answer.blocks) expect(b.width).toBeCloseTo(8, 5);
    const [first] = wren.brief.blocks;
    expect(first.kind === "wedges" && Number(first.strip)).toBeCloseTo(4.9033, 4);
    expect(wren.tools.join()).toContain("4.90328");
  });

  test("everything on the supply list is used, and everything that is cut is on it", () => {
    const { plan: p, brief } = plan(tidepool, {});
    const cut = new Set(answerBrief(brief).layouts.map((l) => l.fabricId));
    expect(new Set(p.everyone.supplies.map((s) => s.fabricId))).toEqual(cut);
    expect(p.everyone.supplies.every((s) => s.uses !== "")).toBe(true);
  });
});

describe("the supply list", () => {
  test.each([reef, skylark, quiet, harbor])(
    "lists all that is used, and uses all it lists",
    (doc) => {
      const brief = made(doc);
      const answer = answerBrief(brief);
      const everyone = studentPlan(brief, answer, { name: "everyone" });
      // Used: what is cut from a bolt, for pieces, strip sets, binding or backing.
      const sets = new Set(brief.fabrics.flatMap((f) => (f.kind === "strip-set" ? [f.id] : [])));
      const cut = answer.layouts.map((l) => l.fabricId).filter((id) => !sets.has(id));
      expect(everyone.supplies.map((s) => s.fabricId).sort()).toEqual([...cut].sort());
      for (const s of everyone.supplies) expect(s.uses, s.name).not.toBe("");
      // Sewn from a strip set, its members are bought and the set is not.
      for (const f of brief.fabrics)
        if (f.kind === "strip-set" && cut.length > 0)
          for (const t of f.strips) expect(cut).toContain(t.fabric);
      // Tools: a wedge ruler where wedges are cut, templates where one is needed, batting where it is in.
      const tools = everyone.tools.join("; ");
      const kinds = new Set(answer.recipes.map((r) => r.kind));
      expect(tools.includes("wedge ruler")).toBe(kinds.has("wedge"));
      expect(tools.includes("batting")).toBe(brief.finishing?.batting !== undefined);
      // Homework is cut from what is on the list.
      for (const h of everyone.homework) expect(cut).toContain(h.fabricId);
    },
  );
});

describe("homework", () => {
  test("is whole strips, as many as the cutting plan cuts, and stops before any wedge", () => {
    const { plan: p } = plan(tidepool, {});
    expect(p.everyone.homework.map((h) => [h.letter, h.cuts])).toEqual([
      ["A", ["3 strips 4 1/2 in"]],
      ["B", ["6 strips 4 1/2 in"]],
      ["C", ["6 strips 4 1/2 in"]],
      ["D", ["3 strips 3 1/2 in"]],
    ]);
    expect(p.everyone.rulerCheck.length).toBeGreaterThan(0);
  });
});

describe("step-outs", () => {
  test("one for every stage; the last of each kind is a whole block", () => {
    const { plan: p } = plan(tidepool, {});
    const star = p.stepOuts.samples.filter((s) => s.blockId === "star");
    expect(star.map((s) => s.pieces.reduce((n, x) => n + x.count, 0))).toEqual([2, 4, 8]);
    const wheel = p.stepOuts.samples.filter((s) => s.blockId === "wheel");
    expect(wheel.at(-1)?.pieces.reduce((n, x) => n + x.count, 0)).toBe(12);
    // 7 current and 7 shell for the star; one 4 1/2 in strip gives 17 wedges at 40 (design of the runner).
    const shell = p.stepOuts.fabric.find((f) => f.fabricId === "shell");
    expect(shell?.length).toBe(4.5);
  });

  test("strip sets bring the fabrics they are sewn from", () => {
    const { plan: p, brief } = plan(reef, {});
    const set = brief.fabrics.find((f) => f.kind === "strip-set");
    const members = set?.kind === "strip-set" ? set.strips.map((s) => s.fabric) : [];
    const listed = p.stepOuts.fabric.map((f) => f.fabricId);
    for (const m of members) expect(listed).toContain(m);
  });
});

describe("minutes", () => {
  test("add up from seams, their inches, presses and stops at the teacher's own rates", () => {
    const rates = { seam: 1, inch: 0.1, press: 0.5, step: 2, cut: 0 };
    const { brief } = plan(tidepool, { rates });
    const answer = answerBrief(brief);
    const [, first] = stagesOf(brief, answer, { blocks: 1, students: 1, irons: 1 });
    const unit = answer.units[0];
    // Four pairs: 4 seams, each its finished length and two allowances long.
    expect(first.seams).toBe(4);
    expect(first.own).toBeCloseTo(4 * 1 + 0.1 * 4 * (unit.seam.length + 0.5) + 4 * 0.5 + 2, 9);
  });

  test("twelve at one iron wait; as many irons as students and nobody does", () => {
    const students = Array.from({ length: 12 }, (_, i) => ({ name: `Student ${i + 1}` }));
    const one = plan(tidepool, { students, irons: 1 }).plan;
    const all = plan(tidepool, { students, irons: 12 }).plan;
    expect(one.stages.some((s) => s.queue)).toBe(true);
    expect(all.stages.some((s) => s.queue)).toBe(false);
    expect(one.minutes).toBeGreaterThan(all.minutes);
    expect(sayTime(one)[1]).toMatch(/^With 12 at 1 iron the room waits at: /);
  });

  test("as many blocks as fit the hours, and one more does not", () => {
    const { brief, plan: p } = plan(tidepool, { hours: 6 });
    const answer = answerBrief(brief);
    const at = (blocks: number): number =>
      stagesOf(brief, answer, { blocks, students: 1, irons: 1 }).reduce((t, s) => t + s.inClass, 0);
    expect(p.finished).toBeGreaterThan(0);
    expect(at(p.finished)).toBeLessThanOrEqual(360);
    expect(at(p.finished + 1)).toBeGreaterThan(360);
  });
});

describe("the seam test", () => {
  // Utah Quilters guild, quarter-inch seam, 2012: three 1 1/2 in strips measure 3 1/2.
  test("three right strips leave the needle where it is", () => {
    const test = { strips: 3, width: "1 1/2", size: "3 1/2" };
    const { brief, plan: p } = plan(tidepool, { students: [{ name: "Wren", test }] });
    expect(p.students[0].seam).toMatchObject({ should: 3.5, wider: 0 });
    expect(saySeam(p.students[0].seam!, brief)).toContain(
      "The seam is right. Leave the needle where it is.",
    );
  });

  test("1/8 short over two seams is 1/32 too wide each, and the octagon loses 5.226 times that", () => {
    const test = { strips: 3, width: "1 1/2", size: "3 3/8" };
    const { brief, plan: p } = plan(tidepool, { students: [{ name: "Wren", test }] });
    const seam = p.students[0].seam!;
    expect(seam.wider).toBeCloseTo(1 / 32, 9);
    const star = seam.blocks.find((b) => b.blockId === "star")!;
    expect(star.unfinished - star.expected).toBeCloseTo(circleLoss(8, 1 / 32), 6);
    expect(star.verdict).toBe("small");
    expect(saySeam(seam, brief)[1]).toContain("1/32 in narrower");
  });

  test("a deep block loses what its law says", () => {
    const deep = structuredClone(tidepool) as unknown as {
      blocks: Record<string, unknown>[];
      quilt: Record<string, unknown>;
    };
    const { cut: _, ...star } = deep.blocks[0];
    deep.blocks = [
      { ...star, setting: "deep", side: "12", fabric: { wedge: "current", background: "shell" } },
    ];
    deep.quilt = { ...deep.quilt, plan: [["star"]] };
    const answer = answerBrief(made(deep));
    const [block] = answer.blocks;
    const bare = { recipes: [] };
    expect(changeOf(bare, block, 0.25, 1 / 64)).toBeCloseTo(-deepLoss(1 / 64, "outer"), 6);
  });

  test("a test that no seam can explain is told to be measured again", () => {
    const test = { strips: 3, width: "1 1/2", size: "2" };
    const { brief, plan: p } = plan(tidepool, { students: [{ name: "Wren", test }] });
    expect(saySeam(p.students[0].seam!, brief)[1]).toMatch(/Measure the strips again/);
  });
});
