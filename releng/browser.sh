# Sourced by the scripts that open pages in headless Chromium. Sets `top`, `work`, `chromium` and `pages`: the files given, else those
# that the demo publishes. Needs Chromium, node and npm; fetches axe-core and puppeteer-core once.
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
