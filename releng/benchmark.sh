#!/usr/bin/env bash
# Prints how long things take: a folder of 1,000 procedures checked in a fresh process against parsing it alone, a single
# file, a key to its findings, the exploration of states, the search for the best order.
#   releng/benchmark.sh [files, 1000 when not said]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
files=${1:-1000}
releng/setup.sh
echo "== building"
releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests \
  -pl releng/org.faultwright.benchmarks,releng/org.faultwright.commandline.distribution -am package
classes=releng/org.faultwright.benchmarks/target/classes:$(cat releng/org.faultwright.benchmarks/target/class-path)
run() { java -XX:+UseSerialGC -cp "$classes" "org.faultwright.benchmarks.$@"; }
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

echo "== one procedure of 40 steps, the command line as a whole process"
for round in 1 2 3 4 5; do
  start=$(date +%s%N)
  releng/org.faultwright.commandline.distribution/target/faultwright/bin/faultwright check --fail-on error "$folder/Made1.procedure" >/dev/null
  echo "$((($(date +%s%N) - start) / 1000000)) ms"
done

echo "== key to findings"
run KeystrokeBenchmark
for other in releng/org.faultwright.benchmarks/src/org/faultwright/benchmarks/*Benchmark.java; do
  name=$(basename "$other" .java)
  case $name in FolderBenchmark | KeystrokeBenchmark) ;; *) echo "== $name"; run "$name" ;; esac
done
