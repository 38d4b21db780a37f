// Prints the closing line of a test run, "N passed, N failed, N skipped", from vitest's report.
import { readFileSync } from "node:fs";

const report = JSON.parse(readFileSync(process.argv[2], "utf8"));
const { numPassedTests, numFailedTests, numPendingTests, numFailedTestSuites } = report;
const failed = numFailedTests + (numFailedTests === 0 ? numFailedTestSuites : 0);
console.log(`\n${numPassedTests} passed, ${failed} failed, ${numPendingTests} skipped`);
if (numPassedTests === 0) process.exit(1);
