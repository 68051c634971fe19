#!/usr/bin/env bash
# Holds the HTML pages of the demo against WCAG 2.2 A and AA: publishes them, opens them in headless Chromium and runs axe-core over
# them, at the usual width, at 320 CSS pixels and at 400 %. Needs Chromium, node and npm; fetches axe-core and puppeteer-core once.
#   releng/accessibility.sh [HTML files, the demo's when not said]
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/browser.sh"
node "$top/releng/accessibility.mjs" "$chromium" "${pages[@]}"
