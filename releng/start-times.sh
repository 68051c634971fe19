#!/usr/bin/env bash
# Measures the window on a display of its own: how long a start takes until something is seen (pixels of the screen that change), until
# the window, the text, its findings and its card are there; the same with a folder of thousands of procedures; memory, and what the window does at rest.
#   releng/start-times.sh [files, 3000 when not said] [folder of the product]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
files=${1:-3000}
product=${2:-releng/org.faultwright.product/target/products/org.faultwright.product/linux/gtk/x86_64/faultwright}
releng/setup.sh --tests
if [ ! -x "$product/faultwright-workbench" ]; then
  echo "start-times: there is no product in $product yet. Build it with: releng/target/mvn -DskipTests package" >&2
  exit 1
fi
if [ ! -f releng/org.faultwright.benchmarks/target/classes/org/faultwright/benchmarks/FirstSeen.class ]; then
  releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests -pl releng/org.faultwright.benchmarks -am package
fi

work=$(mktemp -d)
# what was found before is kept here, and nothing of whoever measures is used
export XDG_CACHE_HOME=$work/cache XDG_STATE_HOME=$work/state
. releng/display.sh
finish() {
  [ -z "${last:-}" ] || kill -- "-$last" 2>/dev/null || true
  close_display
  sleep 1
  rm -rf "$work"
}
trap finish EXIT
mkdir "$work/screen"
open_display "$work/screen" || exit 1

measure() { # what, workspace, seconds to wait at most
  rm -f "$work/times"
  java -XX:+UseSerialGC -cp "$classes" org.faultwright.benchmarks.FirstSeen "$work/screen/Xvfb_screen0" "$3" >"$work/seen" &
  local looking=$! began seen
  for _ in $(seq 100); do grep -q looking "$work/seen" && break; sleep 0.1; done
  began=$(date +%s%3N)
  # the java machine tells on its error output that it has taken the option
  JAVA_TOOL_OPTIONS="-Dfaultwright.times=$work/times" setsid dbus-run-session -- \
    "$product/faultwright-workbench" -data "$2" >/dev/null 2>&1 </dev/null &
  last=$!
  for _ in $(seq $(($3 * 10))); do [ -s "$work/times" ] && break; sleep 0.1; done
  if [ ! -s "$work/times" ]; then echo "start-times: $1: the window was not ready in $3 s" >&2; exit 1; fi
  wait "$looking" || exit 1
  seen=$(($(tail -1 "$work/seen") - began))
  echo "$1: something is seen: $seen after the call, $(tr '\n' ',' <"$work/times" | sed 's/,$//; s/,/, /g')"
}
classes=releng/org.faultwright.benchmarks/target/classes:$(cat releng/org.faultwright.benchmarks/target/class-path)
java_of() { pgrep -g "$last" java | head -1; }
ticks() { awk '{ print $14 + $15 }' "/proc/$(java_of)/stat"; }
rest() {
  sleep 5
  local before after
  before=$(ticks)
  sleep 20
  after=$(ticks)
  echo "at rest: $(((after - before) * 1000 / $(getconf CLK_TCK))) ms of processor time in 20 s, $(awk '/VmRSS/ { print int($2 / 1024) }' "/proc/$(java_of)/status") MB resident"
}
end() {
  press ctrl+q Faultwright || true
  for _ in $(seq 100); do kill -0 -- "-$last" 2>/dev/null || return 0; sleep 0.1; done
  kill -- "-$last" 2>/dev/null || true
}

echo "== milliseconds since the Java machine began (milliseconds of processor time); machine: $(nproc) processors, load $(cut -d" " -f1 /proc/loadavg)"
measure "the first start, with the welcome" "$work/demo" 120
press alt+d Faultwright # "Open the demo bench", so that it is there at the next starts
sleep 4; end
for round in 1 2 3; do
  measure "start $round, with the demo" "$work/demo" 120
  [ "$round" != 3 ] || rest
  sleep 2; end
done

echo "== a folder of $files procedures of 40 steps"
java -XX:+UseSerialGC -cp "$classes" \
  org.faultwright.benchmarks.FolderBenchmark make "$work/many" "$files" 40 >/dev/null
mkdir "$work/large"
echo "$work/many" >"$work/large/open-folders.txt"
measure "the first time" "$work/large" 900
rest
press Return "Damaged, and begun anew"; sleep 1; end
measure "the next time, with what was kept" "$work/large" 900
rest
end
