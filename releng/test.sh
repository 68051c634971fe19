#!/usr/bin/env bash
# The whole build with every test, the window's among them, on a display of its own.
#   releng/test.sh [more for Maven, such as -pl bundles/org.faultwright.quantity.tests -am]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
releng/setup.sh --window

# what an earlier run reported must not count for this one
find bundles releng -type d -path '*/target/surefire-reports' -prune -exec rm -rf {} +

echo "== opening a display"
numbers=$(mktemp)
helpers=()
finish() {
  for helper in "${helpers[@]}"; do kill "$helper" 2>/dev/null || true; done
  rm -f "$numbers"
}
trap finish EXIT
Xvfb -displayfd 3 -screen 0 1600x1000x24 -nolisten tcp 3>"$numbers" >/dev/null 2>&1 &
helpers+=($!)
for _ in $(seq 100); do [ -s "$numbers" ] && break; sleep 0.1; done
[ -s "$numbers" ] || { echo "test: no display could be opened (Xvfb did not start)." >&2; exit 1; }
DISPLAY=:$(cat "$numbers")
export DISPLAY
openbox >/dev/null 2>&1 &
helpers+=($!)

echo "== building and testing (cold some five minutes, most of it fetching libraries)"
result=0
dbus-run-session -- releng/target/mvn --batch-mode --no-transfer-progress --fail-at-end verify "$@" </dev/null || result=$?

# <testsuite … tests="3" errors="0" skipped="0" failures="0"> of every report
count() {
  find bundles releng -path '*/target/surefire-reports/TEST-*.xml' -exec grep -hoE -m1 "<testsuite [^>]*" {} + 2>/dev/null |
    grep -oE " $1=\"[0-9]+\"" | tr -dc '0-9\n' | awk '{ sum += $1 } END { print sum + 0 }'
}
tests=$(count tests)
bad=$(($(count errors) + $(count failures)))
skipped=$(count skipped)
if [ "$tests" = 0 ]; then
  echo "test: no test ran at all." >&2
  [ "$result" != 0 ] || result=1
fi
echo "$((tests - bad - skipped)) passed, $bad failed, $skipped skipped"
exit "$result"
