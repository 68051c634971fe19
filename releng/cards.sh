#!/usr/bin/env bash
# Prints for each procedure of the demo how many pages its card has, of A4 where nothing else is said, how many steps stand on a page, and how often a reader
# turns the page on the way through its three likeliest repairs, every routine on the way included.
#   releng/cards.sh [--ways: each place that is read, with its page] [--paper=LETTER: on other paper] [folders of procedures, or procedures]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
options=()
given=()
for one in "$@"; do
  if [[ "$one" = --ways || "$one" = --paper=* ]]; then options+=("$one"); else given+=("$(realpath "$one")"); fi
done
cd "$top"
releng/setup.sh
echo "== building"
releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests -pl releng/org.faultwright.benchmarks -am package
java -XX:+UseSerialGC -cp "releng/org.faultwright.benchmarks/target/classes:$(cat releng/org.faultwright.benchmarks/target/class-path)" \
  org.faultwright.benchmarks.CardStudy "${options[@]}" "${given[@]:-procedures-demo}"
