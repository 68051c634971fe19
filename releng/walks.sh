#!/usr/bin/env bash
# Walks the bench pages of the demo in headless Chromium to every conclusion, by touch and by the keyboard alone. Needs Chromium, node
# and npm; fetches puppeteer-core once.
#   releng/walks.sh [bench pages, the demo's when not said]
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/browser.sh"
benches=()
for one in "${pages[@]}"; do if [[ "$one" = *.bench.html ]]; then benches+=("$one"); fi; done
[ "${#benches[@]}" -gt 0 ] || { echo "There is no bench page among these; their names end in .bench.html." >&2; exit 2; }
node "$top/releng/walks.mjs" "$chromium" "${benches[@]}"
