/** What a run printed, and a page's words, as lists that must be equal. */
export type Compared = (out: string, page: (path: string) => string) => [unknown, unknown];

/** How the tests try commands that pages state. */
export interface Way {
  readonly stated: readonly string[];
  /** The command in a short form; `$` stands for a folder of its own. */
  readonly run?: string;
  readonly prints?: RegExp;
  readonly same?: Compared;
  /** Why it is not run; its scripts and options are looked for all the same. */
  readonly left?: string;
}

const row = (text: string, head: string): string[] =>
  text.split("\n").filter((line) => line.startsWith(`| ${head} |`));
const per = (text: string): string[] => text.match(/\d+\.\d %/g) ?? [];
const column = (table: string, at: number): string[] =>
  table.split("\n").flatMap((line) => per(line.split("|")[at] ?? ""));

/** The rows of an instance are those that stand first on the page. */
const cutRows =
  (id: string): Compared =>
  (out, page) => {
    const found = row(out, id);
    return [found, row(page("docs/cutting-plans.md"), id).slice(0, found.length)];
  };

export const WAYS: readonly Way[] = [
  {
    stated: [
      "npm run -s bench:cutting",
      "npm run -s bench:cutting -- bench/instances/quilts.json --table",
    ],
    run: "npm run -s bench:cutting -- bench/instances/quilts.json q01 --table",
    same: cutRows("q01"),
  },
  {
    stated: ["npm run -s bench:cutting -- bench/instances/quilts.json --stacks --table"],
    left: "is the program of the command above with an option that it knows",
  },
  {
    stated: [
      "npm run -s bench:cutting -- bench/instances/cintra2008.json gcut1d gcut2d gcut3d gcut4d --table",
    ],
    run: "npm run -s bench:cutting -- bench/instances/cintra2008.json gcut1d --table",
    same: cutRows("gcut1d"),
  },
  {
    stated: ["npm run -s bench:turn"],
    run: "npm run -s bench:turn -- --cpu harbor",
    prints: /^harbor-mat: .* first \d+ ms, third \d+ ms/,
  },
  {
    stated: [
      "npx tsx bench/sewing-size.ts",
      "npx tsx bench/sewing-size.ts --samples 20000 --seed 1",
    ],
    run: "npx tsx bench/sewing-size.ts --samples 10000 --seed 1",
    same: (out, page) => [
      out.match(/\d+\.\d+(?= {2}mean| {2}sd| {2}reach| %| standard)/g),
      page("docs/geometry/error-laws.md")
        .split("| block | trim to |")[1]
        .split("\n\n")[0]
        .match(/\d+\.\d+/g),
    ],
  },
  {
    stated: [
      "npx tsx bench/sewing-diagnosis.ts",
      "npx tsx bench/sewing-diagnosis.ts --seed 2 --wedges 8",
    ],
    run: "npx tsx bench/sewing-diagnosis.ts --seed 2 --wedges 8",
    same: (out, page) => {
      const laws = page("docs/geometry/error-laws.md").split("| seed 1 |")[1].split("\n\n")[0];
      const sewing = page("docs/sewing.md").split("| wedges |")[1].split("\n\n")[0];
      const found = per(out).slice(0, 13);
      const short = [0, 6, 9, 10, 11, 12].map((i) => found[i]);
      return [
        [found, short],
        [column(laws, 3), column(sewing, 3)],
      ];
    },
  },
  {
    stated: ["npm run -s fuzz", "npm run -s fuzz -- --count 20000 --seed 3"],
    run: "npm run -s fuzz -- --count 5 --seed 3",
    prints: /^5 cases from 0, seed 3[\s\S]*\n0 failures/m,
  },
  {
    stated: ["npm run -s stranger PATTERN.pdf -- --words WORDS.tsv"],
    run: "npm run -s stranger $/PATTERN.pdf -- --words $/WORDS.tsv",
    prints: /^A stranger can make it from its words\.\n$/,
  },
  {
    stated: ["npm run -s stranger PATTERN.pdf"],
    left: "is the line above without its option",
  },
  {
    stated: ["npm run -s stranger WORDS.tsv"],
    run: "npm run -s stranger $/WORDS.tsv",
    prints: /^A stranger can make it from its words\.\n$/,
  },
  {
    stated: ["npx tsx bench/sheets-memory.ts NAME"],
    left: "its numbers are the machine's, and it sets a pattern of many pages for them",
  },
  { stated: ["npx tsx bench/sheets.ts NAME"], left: "writes every sheet many times over" },
  { stated: ["npx tsx bench/fabric.ts"], left: "makes hundreds of pictures of millions of pixels" },
  {
    stated: ["npx tsx bench/photo-pan.ts", "npm run -s bench:page", "npm run -s bench"],
    left: "measures frames in a browser that must have the machine to itself",
  },
  {
    stated: [
      "npm run -s fault",
      "npm run -s fault -- --kills 20",
      "npm run -s fault:kill -- --rounds 1000",
    ],
    left: "kills browsers for minutes or hours; e2e/kill.test.ts and e2e/fault.test.ts are the short form",
  },
  {
    stated: ["npx tsx scripts/pictures.ts"],
    left: "takes new pictures into docs; e2e/tour.test.ts walks its walk",
  },
  {
    stated: ["npm run -s examples", "npm run -s schema"],
    left: "writes what examples/examples.test.ts makes and compares",
  },
  {
    stated: ["npm run -s types", "npx tsc --noEmit"],
    left: "the first is a step of scripts/test.sh; the second says the same in five times its time",
  },
  { stated: ["npm run -s format"], left: "rewrites the sources that are being tested" },
  {
    stated: [
      "npm run -s build",
      "npm run -s build:living",
      "npm run -s imports",
      "npm run -s licenses",
    ],
    left: "a step of scripts/test.sh, before the tests",
  },
  {
    stated: ["bash scripts/test.sh", "npm run -s test:unit", "npm run -s test:page"],
    left: "runs all tests, this one among them",
  },
  { stated: ["npm run -s docs"], left: "runs this test" },
  {
    stated: [
      "npx vitest run --project unit src/web/keep",
      "npx vitest run --project page e2e/keep.test.ts",
      "npx vitest run --project unit src/core/shop/most.laws.test.ts",
    ],
    left: "tests that run with all the others",
  },
  {
    stated: ["bash scripts/start.sh", "npm start"],
    left: "serves until it is stopped; scripts/serve.test.ts serves",
  },
  { stated: ["npm ci"], left: "would take the packages away from under the tests" },
];
