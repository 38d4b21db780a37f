#!/usr/bin/env bash
# Installs what a fresh Debian machine with Node 20 lacks. Safe to run again: it does only what is missing.
set -euo pipefail
cd "$(dirname "$0")/.."

if ! node -e 'const [a, b] = process.versions.node.split(".").map(Number); process.exit(a > 20 || (a === 20 && b >= 19) ? 0 : 1)'; then
  echo "Node 20.19 or newer is needed; this is $(node --version 2>/dev/null || echo none)" >&2
  exit 2
fi

# node_modules is remade when the lock file is newer than the last install, beside what follows.
modules=
if [ ! -f node_modules/.package-lock.json ] || [ package-lock.json -nt node_modules/.package-lock.json ]; then
  npm ci --no-audit --no-fund --loglevel=error & modules=$!
fi

if [ "${1:-}" = "--with-browser" ]; then
  missing=()
  command -v chromium-headless-shell >/dev/null 2>&1 || missing+=(chromium-headless-shell)
  command -v pdftotext >/dev/null 2>&1 || missing+=(poppler-utils)
  if [ "${#missing[@]}" -gt 0 ]; then
    as_root=(); [ "$(id -u)" -eq 0 ] || as_root=(sudo)
    echo "installing ${missing[*]} from Debian" >&2
    "${as_root[@]}" apt-get update -qq
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
  fi
fi

[ -z "$modules" ] || wait "$modules"
