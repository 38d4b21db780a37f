// Memory that a long pattern takes: the greatest resident size of a process that answers a brief and
// writes its long form, beside the same process once the answer stands. Run: npx tsx
// bench/sheets-memory.ts NAME.
import { readFileSync } from "node:fs";
import { longSheet } from "../src/core/sheet/index.ts";
import { jobOf } from "../src/core/sheet/job.testing.ts";
import { nodeFonts } from "../src/pdf/fonts.node.ts";
import { writePdf } from "../src/pdf/index.ts";

const name = process.argv[2] ?? "garden-path";
const job = jobOf(readFileSync(new URL(`../examples/${name}.json`, import.meta.url), "utf8"));
const megabytes = (): number => process.resourceUsage().maxRSS / 1024;
const before = megabytes();
const sheet = longSheet(job);
await writePdf([sheet], { fonts: nodeFonts(), created: new Date(Date.UTC(2026, 10, 25)) });
const after = megabytes();
console.log(
  `${name}: ${sheet.pages.length} pages; at most ${after.toFixed(0)} MB resident, ${before.toFixed(0)} MB of them when the answer stood`,
);
