#!/usr/bin/env bash
# The whole test command: sets up a fresh machine (Node 20, Debian), checks, tests, and closes with a tally.
set -euo pipefail
cd "$(dirname "$0")/.."
bash scripts/setup.sh --with-browser

step() { printf '\n== %s\n' "$1"; }
step "lint and format"; npx biome check --error-on-warnings .
step "types";           npm run -s types
step "imports";         node scripts/check-imports.mjs
step "licenses, known faults"; npm run -s licenses
step "build";           npm run -s build
mkdir -p .cache
rm -f .cache/tests.json
step "tests"
status=0
npx vitest run --reporter=dot --reporter=json --outputFile.json=.cache/tests.json || status=$?
node scripts/tally.mjs .cache/tests.json
exit "$status"
