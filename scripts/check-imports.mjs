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
const LEAST_MODULES = 30;

const upward = CORE.flatMap((folder, i) => {
  const below = CORE.slice(i + 1);
  if (below.length === 0) return [];
  return [
    {
      name: `${folder}-imports-only-from-above`,
      severity: "error",
      from: { path: `^src/core/${folder}/` },
      to: { path: `^src/core/(${below.join("|")})/` },
    },
  ];
});

const forbidden = [
  ...upward,
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
    // Types may refer to each other within a stage; code that runs may not go round in a circle.
    name: "no-circle",
    severity: "error",
    from: {},
    to: { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } },
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
const result = await cruise(["src"], options, undefined, {
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
