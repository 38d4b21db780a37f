import { describe, expect, test } from "vitest";
import { say } from "../findings/index.ts";
import { stepOf } from "../measure/index.ts";
import { EVEN } from "./fabrics.testing.ts";
import { lookOf } from "./look.ts";
import { bestStarts } from "./meeting.ts";
import { oddWedges, ringFindingsOfRound } from "./roundFindings.ts";
import type { RoundPlan } from "./rounds.ts";
import type { BandLook, WedgeCut } from "./types.ts";

const step = stepOf("1/16", "in");
const even = lookOf(EVEN, [], "in", 0.25).look as BandLook;
const cut: WedgeCut = { a: 3.59672, seam: 0.25, past: 0.65328 };
const mixed = (start: number): RoundPlan => ({
  round: "mixed",
  way: "up",
  start,
  strip: 4.5,
  strips: 1,
});

describe("odd wedges", () => {
  test("one strip of 20: one octagon of each kind, 2 + 2 over", () => {
    const { pile, findings } = oddWedges("star", 1, 20, 8);
    expect(pile).toEqual({ up: 10, down: 10 });
    expect(say(findings[0], { step })).toBe(
      "star: 20 wedges make 1 of one kind and 1 of the other; 2 up and 2 down are over.",
    );
  });

  test("four strips of 16 leave nothing over, and nothing is said", () => {
    expect(oddWedges("star", 4, 16, 8)).toEqual({ pile: { up: 32, down: 32 }, findings: [] });
  });

  test("two strips of 23, the second begun the other way: 23 of each, 7 + 7 over", () => {
    const { pile, findings } = oddWedges("star", 2, 23, 8);
    expect(pile).toEqual({ up: 23, down: 23 });
    expect(findings[0].words?.what).toContain(
      "7 up and 7 down are over, enough for 1 half and half",
    );
  });
});

describe("rings of a mixed round", () => {
  test("meeting rings are left alone", () => {
    const { meet } = bestStarts(even, cut);
    expect(ringFindingsOfRound("star", mixed(meet?.start ?? 0), even, cut, step)).toEqual([]);
  });

  test("a miss of 1/8 in looks like a mistake: says where they meet and where they miss", () => {
    const { meet } = bestStarts(even, cut);
    const [f] = ringFindingsOfRound("star", mixed((meet?.start ?? 0) + 1 / 16), even, cut, step);
    expect(f).toMatchObject({ code: "rings-nearly-meet", needed: 0.375 });
    expect(f.found).toBeCloseTo(0.125, 9);
    expect(f.words?.works).toMatch(/^They meet when .* They miss by 5\/16 in or more when/);
  });

  test("free and matched rounds say nothing", () => {
    for (const round of ["free", "matched"] as const)
      expect(ringFindingsOfRound("star", { ...mixed(0.3), round }, even, cut, step)).toEqual([]);
  });
});
