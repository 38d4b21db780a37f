// Keeps the direction of imports: a folder may import only from folders above it in the list of
// ARCHITECTURE.md, and core knows no file, window, clock or randomness. Fails when nothing is read.
import { cruise } from "dependency-cruiser";
import extractTsConfig from "dependency-cruiser/config-utl/extract-ts-config";

const CORE = [
  "measure",
  "table",
  "geometry",
  "findings",
  "brief",
  "block",
  "quilt",
  "piece",
  "fabric",
  "recipe",
  "layout",
  "sewing",
  "answer",
  "turn",
  "shop",
  "picture",
  "sheet",
];
const ANSWER = ["types", "cut", "words", "look", "sewing", "say", "size", "questions"];
const TEST = "\\.(test|testing)\\.tsx?$";
const LEAST_MODULES = 30;

/** Each of these folders imports only from those before it in its list. */
const upward = (under, folders) =>
  folders.slice(0, -1).map((folder, i) => ({
    name: `${folder}-imports-only-from-above`,
    severity: "error",
    from: { path: `^${under}/${folder}/` },
    to: { path: `^${under}/(${folders.slice(i + 1).join("|")})/` },
  }));

const forbidden = [
  ...upward("src/core", CORE),
  ...upward("src/core/answer", ANSWER),
  {
    name: "answer-is-composed-last",
    severity: "error",
    from: { path: `^src/core/answer/(${ANSWER.join("|")})/`, pathNot: TEST },
    to: { path: "^src/core/answer/[^/]+[.]ts$" },
  },
  {
    name: "core-knows-no-shell",
    severity: "error",
    from: { path: "^src/core/" },
    to: { path: "^src/(pdf|cli|web)/" },
  },
  {
    name: "core-is-pure",
    severity: "error",
    from: { path: "^src/core/", pathNot: "\\.test\\.tsx?$" },
    to: { dependencyTypes: ["core"] },
  },
  {
    name: "pdf-knows-no-shell",
    severity: "error",
    from: { path: "^src/pdf/" },
    to: { path: "^src/(cli|web)/" },
  },
  {
    name: "shells-apart",
    severity: "error",
    from: { path: "^src/cli/" },
    to: { path: "^src/web/" },
  },
  {
    name: "shells-apart-too",
    severity: "error",
    from: { path: "^src/web/" },
    to: { path: "^src/cli/" },
  },
  {
    // Types too: a reader who follows imports downward never comes back to where she was.
    name: "no-circle",
    severity: "error",
    from: {},
    to: { circular: true },
  },
];

const options = {
  ruleSet: { forbidden },
  validate: true,
  tsPreCompilationDeps: true,
  doNotFollow: { path: "node_modules" },
  exclude: { path: "[.](css|svg|woff2?)" },
  enhancedResolveOptions: { extensions: [".ts", ".tsx", ".js", ".mjs"] },
};
const result = await cruise(["src", "bench", "e2e", "scripts"], options, undefined, {
  tsConfig: extractTsConfig("./tsconfig.json"),
});
const { violations, totalCruised } = result.output.summary;
const errors = violations.filter((v) => v.rule.severity === "error");
for (const v of errors) console.error(`${v.rule.name}: ${v.from} -> ${v.to}`);
if (totalCruised < LEAST_MODULES) {
  console.error(`imports: only ${totalCruised} modules were read; the check is blind`);
  process.exit(1);
}
if (errors.length > 0) process.exit(1);
console.log(`imports: ${totalCruised} modules, every one imports only from above`);
