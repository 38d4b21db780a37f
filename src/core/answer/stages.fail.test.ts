import { afterAll, afterEach, describe, expect, test, vi } from "vitest";
import { smallBrief } from "../brief/sample.ts";

// A throw is planted in one stage at a time, where its real work is done.
const planted = vi.hoisted(() => ({ in: "" }));
const trap = (stage: string) => {
  if (planted.in === stage) throw new RangeError(`planted in ${stage}`);
};
vi.mock("./look.ts", async (real) => {
  const all = await real<typeof import("./look.ts")>();
  return {
    ...all,
    sightsOf: (...args: Parameters<typeof all.sightsOf>) => {
      trap("look");
      return all.sightsOf(...args);
    },
  };
});
vi.mock("./layouts.ts", async (real) => {
  const all = await real<typeof import("./layouts.ts")>();
  return {
    ...all,
    layoutsOf: (...args: Parameters<typeof all.layoutsOf>) => {
      trap("layouts");
      return all.layoutsOf(...args);
    },
  };
});
vi.mock("./meetings.ts", async (real) => {
  const all = await real<typeof import("./meetings.ts")>();
  return {
    ...all,
    meetingShapes: (...args: Parameters<typeof all.meetingShapes>) => {
      trap("meetings");
      return all.meetingShapes(...args);
    },
  };
});
vi.mock("./stages.ts", async (real) => {
  const all = await real<typeof import("./stages.ts")>();
  return {
    ...all,
    sewingIn: (...args: Parameters<typeof all.sewingIn>) => {
      trap("sewing");
      return all.sewingIn(...args);
    },
    recipesIn: (...args: Parameters<typeof all.recipesIn>) => {
      trap("recipes");
      return all.recipesIn(...args);
    },
    finishingIn: (...args: Parameters<typeof all.finishingIn>) => {
      trap("finishing");
      return all.finishingIn(...args);
    },
    quiltOf: (...args: Parameters<typeof all.quiltOf>) => {
      trap("quilt");
      return all.quiltOf(...args);
    },
  };
});

// Files share what they have loaded: here the stages are loaded anew, with the traps, and let go after.
vi.resetModules();
const { answerBrief } = await import("./compose.ts");
afterAll(() => vi.resetModules());

const brief = smallBrief();
const sound = answerBrief(brief);
afterEach(() => {
  planted.in = "";
});

describe("a stage that throws", () => {
  test.each([
    ["look", ["look"]],
    ["layouts", ["enough"]],
    ["meetings", ["meeting"]],
    ["sewing", ["order", "measure", "make-size"]],
    ["recipes", ["cover", "make-size"]],
    ["finishing", ["finish"]],
    ["quilt", ["size"]],
  ] as const)("%s: its question says so, cutting is blocked, the others stand", (stage, ids) => {
    planted.in = stage;
    const answer = answerBrief(brief);
    const failed = answer.questions.filter((q) => q.line.includes(`planted in ${stage}`));
    expect(failed.map((q) => q.id)).toEqual(ids);
    for (const q of failed) expect(q.doubt).toBe(true);
    expect(answer.findings.filter((f) => f.code === "not-worked-out")).toMatchObject([
      { severity: "blocks", words: { said: `planted in ${stage}` } },
    ]);
    // What does not rest on the failed stage is as it was.
    const untouched = { look: "enough", layouts: "cover", meetings: "enough", sewing: "cover" }[
      stage as string
    ];
    if (untouched)
      expect(answer.questions.find((q) => q.id === untouched)?.line).toBe(
        sound.questions.find((q) => q.id === untouched)?.line,
      );
    expect(answer.sentence).toEqual(sound.sentence);
  });
});
