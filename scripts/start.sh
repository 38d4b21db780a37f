#!/usr/bin/env bash
# Sets up a fresh machine, builds the page and serves it on this machine only; prints its address.
set -euo pipefail
cd "$(dirname "$0")/.."
bash scripts/setup.sh
exec npm start --silent -- "$@"
