#!/usr/bin/env bash
# Prints how long things take: a folder of 1,000 procedures checked in a fresh process against parsing it alone, a single
# file, a key to its findings, the exploration of states, the search for the best order.
#   releng/benchmark.sh [files, 1000 when not said]
#   releng/benchmark.sh --window    instead of these the window: keys, stalls and the card while somebody types, then what releng/start-times.sh measures
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
if [ "${1:-}" = --window ]; then
  releng/setup.sh --tests
  echo "== the window in its tests, load $(cut -d" " -f1 /proc/loadavg)"
  mkdir -p releng/target
  if ! releng/test.sh -pl bundles/org.faultwright.workbench.tests -am -Dtest=NothingFreezesTest,FindViewTest -Dsurefire.failIfNoSpecifiedTests=false \
    >releng/target/window-benchmark.log 2>&1; then
    grep -E '^\[ERROR\]' releng/target/window-benchmark.log | head -20 >&2
    echo "benchmark: the tests of the window failed; all they said stands in releng/target/window-benchmark.log" >&2
    exit 1
  fi
  sed -n 's/^measured: //p' releng/target/window-benchmark.log | awk '!told[$0]++'
  echo "== building the product"
  releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests -pl releng/org.faultwright.product,releng/org.faultwright.benchmarks -am package
  exec releng/start-times.sh
fi
files=${1:-1000}
releng/setup.sh
echo "== building"
releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests \
  -pl releng/org.faultwright.benchmarks,releng/org.faultwright.commandline.distribution -am package
classes=releng/org.faultwright.benchmarks/target/classes:$(cat releng/org.faultwright.benchmarks/target/class-path)
run() { java ${heap:-} -XX:+UseSerialGC -cp "$classes" "org.faultwright.benchmarks.$@"; }
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

echo "== $files procedures of 40 steps, each line a fresh process"
run FolderBenchmark make "$folder" "$files" 40
for round in 1 2 3; do
  for work in parse read quick check; do run FolderBenchmark $work "$folder" | tee -a "$folder/times"; done
done
awk '{ n[$1]++; t[$1, n[$1]] = $2 } function middle(w, a, b, c) { a = t[w, 1]; b = t[w, 2]; c = t[w, 3];
  return a < b ? (b < c ? b : (a < c ? c : a)) : (a < c ? a : (b < c ? c : b)) }
  END { printf "read / parse = %.2f, quick rules / parse = %.2f, all rules / parse = %.2f\n",
    middle("read") / middle("parse"), middle("quick") / middle("parse"), middle("check") / middle("parse") }' "$folder/times"

faultwright=$PWD/releng/org.faultwright.commandline.distribution/target/faultwright/bin/faultwright
# what is kept lies here, and nothing of whoever measures is used
export XDG_CACHE_HOME=$folder/cache XDG_STATE_HOME=$folder/state
timed() { # what, command: seconds, and those of the processor
  local what=$1
  shift
  TIMEFORMAT="%R %U %S"
  { time "$@" >/dev/null 2>&1 || true; } 2>"$folder/time"
  awk -v what="$what" '{ printf "%s: %.2f s (processor %.2f s)\n", what, $1, $2 + $3 }' "$folder/time"
}
echo "== $files procedures of 40 steps, the command line as a whole process, on $(nproc) processors"
mkdir "$folder/many"
mv "$folder"/*.procedure "$folder/many"
timed "quick rules" "$faultwright" check --quick --no-cache "$folder/many"
timed "every rule, keeping nothing" "$faultwright" check --no-cache "$folder/many"
timed "every rule, for the first time" "$faultwright" check "$folder/many"
for round in 1 2 3; do timed "again, nothing changed" "$faultwright" check "$folder/many"; done
echo "// changed" >>"$folder/many/Made1.procedure"
timed "again, one text changed" "$faultwright" check "$folder/many"
echo "all results: $(du -sk "$folder/cache/faultwright/kept" | cut -f1) kB"

echo "== $files bench cards as PDF with every rule, the command line as a whole process, on $(nproc) processors"
for round in 1 2; do timed "cards" "$faultwright" publish --as card-pdf --into "$folder/cards$round" "$folder/many"; done
if [ "$(ls "$folder/cards1" | wc -l)" -eq "$files" ] && diff -rq "$folder/cards1" "$folder/cards2"; then
  echo "the second time $files files with the same bytes"
else
  echo "the cards of two runs differ, or there are not $files of them"
fi
rm -r "$folder/cards1" "$folder/cards2"

echo "== $files procedures open at once in one process of 512 MB"
java -Xmx512m -XX:+UseSerialGC -cp "$classes" org.faultwright.benchmarks.FolderBenchmark open "$folder/many"

echo "== one procedure of 40 steps, the command line as a whole process, keeping nothing"
for round in 1 2 3 4 5; do timed "every rule" "$faultwright" check --no-cache --fail-on error "$folder/many/Made2.procedure"; done

echo "== key to findings"
run KeystrokeBenchmark
for other in releng/org.faultwright.benchmarks/src/org/faultwright/benchmarks/*Benchmark.java; do
  name=$(basename "$other" .java)
  # a long card must fit into what a small machine has
  case $name in CardBenchmark) heap=-Xmx512m ;; *) heap= ;; esac
  case $name in FolderBenchmark | KeystrokeBenchmark) ;; *) echo "== $name"; run "$name" ;; esac
done
