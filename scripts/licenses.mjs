// Holds the licenses of everything that is installed against those that may be: from the packages'
// own words, without a network. Then asks for known faults where a registry answers, and says when
// none does. `npm run -s licenses`
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** May be in what is handed out, and in tools. */
const FREE = ["MIT", "ISC", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "Apache-2.0", "OFL-1.1"];
/** May be in tools only: nothing of theirs is handed out. */
const TOOLS = [
  "MPL-2.0",
  "CC-BY-4.0",
  "CC0-1.0",
  "BlueOak-1.0.0",
  "Unlicense",
  "Python-2.0",
  "W3C-20150513",
];

/** What a package says wrongly or not at all, and words of its own license file that settle it. */
const READ = {
  "node_modules/png-js": ["MIT", /Permission is hereby granted, free of charge/],
  "node_modules/splaytree-ts": [
    "BSD-3-Clause",
    /Redistribution and use in source and binary forms/,
  ],
};

/** Does an SPDX expression allow one of these? Either side of an OR will do, both sides of an AND. */
export function allows(expression, allowed) {
  const bare = expression.replace(/^\((.*)\)$/, "$1");
  if (/\sOR\s/.test(bare)) return bare.split(/\sOR\s/).some((e) => allows(e.trim(), allowed));
  if (/\sAND\s/.test(bare)) return bare.split(/\sAND\s/).every((e) => allows(e.trim(), allowed));
  return allowed.includes(bare);
}

/** Every installed package: its place, its license and whether only tools need it. */
export function installed(root) {
  const { packages } = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8"));
  return Object.entries(packages).flatMap(([place, locked]) => {
    if (place === "") return [];
    try {
      const own = JSON.parse(readFileSync(join(root, place, "package.json"), "utf8"));
      const said = own.license ?? own.licenses?.[0];
      const license = settled(root, place) ?? (typeof said === "string" ? said : said?.type);
      return [{ place, license: license ?? "none", tool: locked.dev === true }];
    } catch (e) {
      // Made for another machine, and so not installed on this one.
      if (e.code === "ENOENT" && locked.optional) return [];
      throw e;
    }
  });
}

function settled(root, place) {
  const [license, words] = READ[place] ?? [];
  if (!license) return undefined;
  const folder = join(root, place);
  const file = readdirSync(folder).find((name) => /^licen[cs]e/i.test(name));
  return file && words.test(readFileSync(join(folder, file), "utf8")) ? license : undefined;
}

export const refused = (packages) =>
  packages.filter(({ license, tool }) => !allows(license, tool ? [...FREE, ...TOOLS] : FREE));

/** What `npm audit --json` answered: sums of known faults, or nothing where no registry answered. */
export function knownFaults(said) {
  try {
    const { vulnerabilities } = JSON.parse(said).metadata;
    return { total: vulnerabilities.total, grave: vulnerabilities.high + vulnerabilities.critical };
  } catch {
    return undefined;
  }
}

/** Asks once: a machine without a network is told so within seconds. */
const asked = (root) =>
  spawnSync(
    "npm",
    ["audit", "--omit=dev", "--json", "--fetch-retries=0", "--fetch-timeout=20000"],
    {
      cwd: root,
      encoding: "utf8",
      timeout: 60_000,
    },
  ).stdout;

if (import.meta.filename === process.argv[1]) {
  const root = join(import.meta.dirname, "..");
  const packages = installed(root);
  const bad = refused(packages);
  for (const { place, license } of bad) console.error(`${place}: ${license}`);
  console.log(`${packages.length} packages, ${bad.length} with a license that may not be`);
  const faults = knownFaults(asked(root));
  console.log(
    faults
      ? `known faults in what is handed out: ${faults.total}, ${faults.grave} of them grave`
      : "no registry answered: known faults were not asked for",
  );
  process.exitCode = bad.length > 0 || faults?.grave > 0 ? 1 : 0;
}
