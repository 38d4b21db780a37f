import { describe, expect, test } from "vitest";
import { canonicalText } from "../core/brief/index.ts";
import { smallBrief } from "../core/brief/sample.ts";
import { answerBest } from "./best.ts";
import type { BestAnswer, Io } from "./io.ts";
import { ran } from "./ran.testing.ts";

const brief = canonicalText(smallBrief({ quilt: { rows: 3, columns: 5, plan: [["star"]] } }));

const planned = (args: string[], io: Partial<Io> = {}) => ran(args, brief, io);

describe("--best", () => {
  test("plans at least as well, the same each time, and says nothing off a terminal", async () => {
    const first = JSON.parse((await planned(["answer", "-", "--json"])).out);
    const best = await planned(["answer", "-", "--json", "--best", "--nodes", "20"]);
    expect(best).toMatchObject({ code: 0, err: "" });
    expect((await planned(["answer", "-", "--json", "--best", "--nodes", "20"])).out).toBe(
      best.out,
    );
    const lengths = (a: { layouts: { length: number }[] }) => a.layouts.map((l) => l.length);
    const [now, then] = [lengths(first), lengths(JSON.parse(best.out))];
    for (const [i, x] of then.entries()) expect(x).toBeLessThanOrEqual(now[i]);
  }, 20_000);

  test("on a terminal, every better plan with how near the least it is", async () => {
    const told: BestAnswer = async (b, search, tell, signal) => {
      const answer = await answerBest(b, { ...search, nodes: 1 }, tell, signal);
      tell({ ...answer.layouts[0], length: 50, lowerBound: 49, proven: false });
      return answer;
    };
    const { err, code } = await planned(["answer", "-", "--best"], { terminal: true, best: told });
    expect(code).toBe(0);
    expect(err).toContain("Red, 50 in: within 2.00 % of the least");
  }, 20_000);

  test("stopped: the best plan so far is written, and the code is 4", async () => {
    const stopping = new AbortController();
    const stop: BestAnswer = (b, search, tell, signal) => {
      stopping.abort();
      return answerBest(b, search, tell, signal);
    };
    const ended = await planned(["answer", "-", "--best"], { signal: stopping.signal, best: stop });
    expect(ended.code).toBe(4);
    expect(ended.out).toContain("Cutting Red");
    expect(ended.err).toContain("best plan found so far");
  }, 20_000);

  test.each(["0", "1.5", "many"])("--nodes %s is refused", async (nodes) => {
    const { code, err } = await planned(["answer", "-", "--best", "--nodes", nodes]);
    expect(code).toBe(2);
    expect(err).toContain("--nodes");
  });
});
