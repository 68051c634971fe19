#!/usr/bin/env bash
# Holds the HTML pages of the demo against WCAG 2.2 A and AA: publishes them, opens them in headless Chromium and runs axe-core over
# them, at the usual width, at 320 CSS pixels and at 400 %. Needs Chromium, node and npm; fetches axe-core and puppeteer-core once.
#   releng/accessibility.sh [HTML files, the demo's when not said]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
work=$top/releng/target/accessibility
for tool in node npm; do
  command -v "$tool" >/dev/null || { echo "$tool is missing: install nodejs and npm" >&2; exit 2; }
done
chromium=$(command -v chromium || command -v chromium-browser || command -v google-chrome || true)
[ -n "$chromium" ] || { echo "Chromium is missing: install chromium" >&2; exit 2; }
mkdir -p "$work"
if [ ! -d "$work/node_modules/axe-core" ]; then
  echo "== fetching axe-core and puppeteer-core"
  (cd "$work" && npm install --no-audit --no-fund --silent axe-core@4.14.1 puppeteer-core@24.43.1)
fi
pages=()
for one in "$@"; do pages+=("$(realpath "$one")"); done
if [ "${#pages[@]}" = 0 ]; then
  "$top/releng/demo.sh" "$work/pages" >"$work/demo.log" 2>&1 || { tail -5 "$work/demo.log" >&2; exit 2; }
  mapfile -t pages < <(find "$work/pages" -name '*.html' | sort)
fi
cd "$work"
node "$top/releng/accessibility.mjs" "$chromium" "${pages[@]}"
