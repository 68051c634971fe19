#!/usr/bin/env bash
# The whole build with every test, the window's among them, on a display of its own.
#   releng/test.sh [--dark] [--scaled PERCENT] [more for Maven, such as -pl bundles/org.faultwright.quantity.tests -am]
#     --dark             the window is tested in dark colours
#     --scaled PERCENT   and on a display with letters of that size, such as 150
set -euo pipefail
while :; do
  case ${1:-} in
    --dark)
      export GTK_THEME=Adwaita:dark
      shift
      ;;
    --scaled)
      case ${2:-} in
        [1-9][0-9] | [1-3][0-9][0-9]) ;;
        *) echo "test: after --scaled a percentage from 10 to 399 is needed, such as 150" >&2; exit 2 ;;
      esac
      GDK_DPI_SCALE=$(awk -v percent="$2" 'BEGIN { print percent / 100 }')
      export GDK_DPI_SCALE
      shift 2
      ;;
    *) break ;;
  esac
done
cd "$(dirname "${BASH_SOURCE[0]}")/.."
releng/setup.sh --tests

# what an earlier run reported must not count for this one
find bundles releng -type d -path '*/target/surefire-reports' -prune -exec rm -rf {} +

echo "== opening a display"
. releng/display.sh
trap close_display EXIT
open_display

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
# which ones, and what they said, where it is read last: class, test, the first line of the failure
find bundles releng -path '*/target/surefire-reports/TEST-*.xml' -exec awk '
  function value(name) { return match($0, " " name "=\"[^\"]*\"") ? substr($0, RSTART + length(name) + 3, RLENGTH - length(name) - 4) : "" }
  /<testcase / { test = value("classname") "." value("name") }
  /<(failure|error)[ >]/ { print "failed: " test ": " substr(value("message"), 1, 300) }' {} +
echo "$((tests - bad - skipped)) passed, $bad failed, $skipped skipped"
exit "$result"
