import { afterAll, afterEach, describe, expect, test, vi } from "vitest";
import { smallBrief } from "../brief/sample.ts";

// A throw is planted in one stage at a time, where its real work is done.
const planted = vi.hoisted(() => ({ in: "" }));
const trap = (stage: string) => {
  if (planted.in === stage) throw new RangeError(`planted in ${stage}`);
};
vi.mock("./look/sights.ts", async (real) => {
  const all = await real<typeof import("./look/sights.ts")>();
  return {
    ...all,
    sightsOf: (...args: Parameters<typeof all.sightsOf>) => {
      trap("look");
      return all.sightsOf(...args);
    },
  };
});
vi.mock("./cut/layouts.ts", async (real) => {
  const all = await real<typeof import("./cut/layouts.ts")>();
  return {
    ...all,
    layoutsOf: (...args: Parameters<typeof all.layoutsOf>) => {
      trap("layouts");
      return all.layoutsOf(...args);
    },
  };
});
vi.mock("./look/meetings.ts", async (real) => {
  const all = await real<typeof import("./look/meetings.ts")>();
  return {
    ...all,
    meetingShapes: (...args: Parameters<typeof all.meetingShapes>) => {
      trap("meetings");
      return all.meetingShapes(...args);
    },
  };
});
vi.mock("./words/sentence.ts", async (real) => {
  const all = await real<typeof import("./words/sentence.ts")>();
  return {
    ...all,
    sentenceOf: (...args: Parameters<typeof all.sentenceOf>) => {
      trap("sentence");
      return all.sentenceOf(...args);
    },
  };
});
// What the questions are answered from, as the last answer had it.
const facts = vi.hoisted(() => ({ last: undefined as unknown }));
vi.mock("./questions/questions.ts", async (real) => {
  const all = await real<typeof import("./questions/questions.ts")>();
  return {
    ...all,
    questionsOf: (...args: Parameters<typeof all.questionsOf>) => {
      facts.last = args[0];
      return all.questionsOf(...args);
    },
  };
});
vi.mock("./cut/stages.ts", async (real) => {
  const all = await real<typeof import("./cut/stages.ts")>();
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
const { QUESTIONS, questionsOf } = await import("./questions/questions.ts");
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

test("the sentence: its title stands for it, cutting is blocked, the questions are answered", () => {
  planted.in = "sentence";
  const answer = answerBrief(brief);
  expect(answer.sentence).toEqual([{ text: brief.title }]);
  expect(answer.findings[0]).toMatchObject({ code: "not-worked-out", place: "The sentence" });
  // A blocked design is not asked why a sewn block is off.
  const lines = ({ questions }: typeof sound) =>
    questions.filter((q) => !["make-size", "why"].includes(q.id)).map((q) => [q.id, q.line]);
  expect(lines(answer)).toEqual(lines(sound));
});

describe("a question that throws", () => {
  // One that is not asked of the small design is planted into all the same.
  test.each(QUESTIONS.map((q) => q.id))("%s: it says so and the others stand", (id) => {
    answerBrief(brief);
    const given = facts.last as Parameters<typeof questionsOf>[0];
    const broken = QUESTIONS.map((q) =>
      q.id === id
        ? {
            ...q,
            answer: () => {
              throw new RangeError(`planted in ${id}`);
            },
          }
        : q,
    );
    const asked = questionsOf(given, broken);
    const own = asked.find((q) => q.id === id);
    expect(own?.line).toBe(`This could not be worked out (planted in ${id}).`);
    expect(own?.doubt).toBe(true);
    const rest = (all: typeof asked) => all.filter((q) => q.id !== id);
    expect(rest(asked)).toEqual(rest(questionsOf(given)));
  });
});
