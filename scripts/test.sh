#!/usr/bin/env bash
# The whole test command: sets up a fresh machine (Node 20, Debian), checks, tests, and closes with a tally.
set -euo pipefail
cd "$(dirname "$0")/.."
bash scripts/setup.sh --with-browser

step() { printf '\n== %s\n' "$1"; }
mkdir -p .cache
rm -f .cache/tests.json
# One core reads imports and builds while the other checks; each says its own when it has ended.
{ node scripts/check-imports.mjs && npm run -s build; } >.cache/beside.log 2>&1 & beside=$!
step "lint and format"; npx biome check --error-on-warnings .
step "types"; npm run -s types
step "licenses, known faults"; npm run -s licenses
step "imports, build"; wait "$beside" && cat .cache/beside.log || { cat .cache/beside.log; exit 1; }
step "tests"
status=0
npx vitest run --reporter=dot --reporter=json --outputFile.json=.cache/tests.json || status=$?
node scripts/tally.mjs .cache/tests.json
exit "$status"
