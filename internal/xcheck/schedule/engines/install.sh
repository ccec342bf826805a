#!/bin/sh
# Installs the engines the planner is compared with: MiniZinc with Gecode from the Debian
# archive, HiGHS from npm (beside this script, not committed).
set -eu
cd "$(dirname "$0")"
command -v minizinc >/dev/null || apt-get install -y minizinc
npm install --no-fund --no-audit --no-save --no-package-lock highs
