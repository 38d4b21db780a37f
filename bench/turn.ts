// Questions turned round: sentences weighed a second, and when the first and the third true sentence
// are there. `npm run -s bench:turn`
import { readFileSync } from "node:fs";
import { type Brief, readDocument } from "../src/core/brief/index.ts";
import { readFree, readPin, type Turned, turnRound } from "../src/core/turn/index.ts";

const QUESTIONS = [
  ["tidepool-runner", ["size = 72 x 27"], "strip,borders,grid"],
  ["tidepool-runner", ["yardage B <= 1 1/2 yd"], "strip,rows,columns"],
  ["tidepool-runner", ["yardage B <= 1 1/2 yd", "size = 60 x 24"], "all"],
  ["quiet-field", ["size = 48 x 60"], "all"],
  ["lantern-throw", ["blocks = 30", "yardage A <= 1 1/2 yd"], "strip,grid,borders"],
  ["window-garden", ["size = 60 x 72"], "all"],
  ["ferry-windows", ["yardage C <= 3/4 yd"], "float,columns"],
  ["skylark-bed", ["size = 60 x 72", "yardage A <= 2 yd"], "strip,grid,borders"],
  ["harbor-mat", ["width = 90 cm", "size = 900 x 450"], "strip,grid,borders"],
] as const;

function briefOf(name: string): Brief {
  const read = readDocument(JSON.parse(readFileSync(`examples/${name}.json`, "utf8")));
  if (!read.ok) throw new Error(`${name} is refused`);
  return read.brief;
}

function known<T extends object>(x: T): Exclude<T, { problem: string }> {
  if ("problem" in x) throw new Error(String(x.problem));
  return x as Exclude<T, { problem: string }>;
}

/** Milliseconds since now: by the clock, or of processor time with --cpu, where others work beside. */
function clock(): () => number {
  if (!process.argv.includes("--cpu")) {
    const start = performance.now();
    return () => performance.now() - start;
  }
  const start = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  };
}

/** Only questions whose design begins so, when one is named. */
const only = process.argv.slice(2).find((a) => !a.startsWith("--")) ?? "";

for (const [name, pins, words] of QUESTIONS) {
  if (!name.startsWith(only)) continue;
  const brief = briefOf(name);
  const asked = {
    brief,
    pins: pins.map((p) => known(readPin(p, brief))),
    free: known(readFree(words)),
  };
  const since = clock();
  const search = turnRound(asked);
  const at: (number | undefined)[] = [];
  let turned: Turned;
  for (let x = search.next(); ; x = search.next()) {
    turned = x.value;
    for (let i = 0; i < turned.found.length; i++) at[i] ??= since();
    if (x.done) break;
  }
  const ms = since();
  const when = (t: number | undefined): string => (t === undefined ? "-" : `${t.toFixed(0)} ms`);
  console.log(
    [
      `${name}: ${pins.join("; ")}; free ${words}`,
      `  first ${when(at[0])}, third ${when(at[2])}, all ${when(ms)};`,
      `${turned.weighed} of ${turned.all} weighed, ${((1000 * turned.weighed) / ms).toFixed(0)} a second,`,
      `${turned.answered} answered in full, ${turned.found.length} found, ${turned.loosened.length} pins to loosen`,
    ].join(" "),
  );
}
