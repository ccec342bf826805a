#!/usr/bin/env bash
# Tries the classroom in a real browser. It installs what it needs: Chromium (Debian's) and axe-core (npm). Anything that
# cannot be had is a failure of its own, 3, that says so. Arguments go to the program that checks.
set -euo pipefail
cd "$(dirname "$0")"
# The version is fixed so that a new rule is taken in on purpose.
axe_version=4.14.1
keep=${XDG_CACHE_HOME:-$HOME/.cache}/maslin-classroom
browser=${CHROMIUM:-chromium}

if ! command -v "$browser" >/dev/null; then
  echo "installing Chromium"
  if ! { apt-get -qq update && apt-get -qq -o DPkg::Lock::Timeout=300 install -y chromium >/dev/null; }; then
    echo "the classroom's checks need Chromium, and it could not be installed (apt-get install chromium)" >&2
    exit 3
  fi
fi
axe=$keep/$axe_version/node_modules/axe-core/axe.min.js
if [ ! -s "$axe" ]; then
  command -v npm >/dev/null || { apt-get -qq update && apt-get -qq -o DPkg::Lock::Timeout=300 install -y npm >/dev/null; } || true
  echo "installing axe-core $axe_version"
  if ! npm install --silent --no-audit --no-fund --prefix "$keep/$axe_version" "axe-core@$axe_version"; then
    echo "the classroom's checks need axe-core $axe_version, and it could not be installed (npm install axe-core)" >&2
    exit 3
  fi
fi
exec go run ./check -chromium "$browser" -axe "$axe" "$@"
