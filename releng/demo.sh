#!/usr/bin/env bash
# From a clean clone to bench cards: sets up, builds the command line, checks the procedures of procedures-demo and publishes them.
# A second run with nothing changed skips the build.
#   releng/demo.sh [folder for the output]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
output=$(realpath -m "${1:-$top/releng/target/demo}")
cd "$top"
faultwright=releng/org.faultwright.commandline.distribution/target/faultwright/bin/faultwright
stamp=releng/target/demo.built

state() { # what the command line is built from: names, sizes and times
  find pom.xml .mvn bundles releng procedures-demo -type d \( -name target -o -name src-gen -o -name emf-gen -o -name '*.tests' \) -prune \
    -o -type f -printf '%p %s %T@\n' | sort | cksum
}

if [ -x "$faultwright" ] && [ "$(cat "$stamp" 2>/dev/null)" = "$(state)" ]; then
  echo "== nothing changed since the last build"
else
  releng/setup.sh
  echo "== building the command line (the first time some minutes, most of it fetching libraries)"
  mkdir -p releng/target
  releng/target/mvn --batch-mode --no-transfer-progress -DskipTests -pl releng/org.faultwright.commandline.distribution -am package \
    >releng/target/demo-build.log 2>&1 </dev/null &
  build=$!
  while kill -0 "$build" 2>/dev/null; do
    sleep 5
    now=$(grep -E '^\[INFO\] Building .*\[[0-9]+/[0-9]+\]' releng/target/demo-build.log 2>/dev/null | tail -1 | sed 's/^\[INFO\] *//; s/  */ /g' || true)
    if [ -n "$now" ] && [ "$now" != "${shown:-}" ]; then
      echo "   $now"
      shown=$now
    fi
  done
  if ! wait "$build"; then
    grep -E '^\[ERROR\]' releng/target/demo-build.log | head -20 >&2
    echo "The build failed; all it said stands in releng/target/demo-build.log" >&2
    exit 1
  fi
  state >"$stamp"
fi

echo "== faultwright check procedures-demo"
checked=0
"$faultwright" check procedures-demo || checked=$?
echo "== faultwright publish procedures-demo --into $output"
published=0
"$faultwright" publish procedures-demo --into "$output" || published=$?
if [ "$published" = 0 ]; then
  echo "== the cards, trees and charts are in $output"
fi
exit $((checked > published ? checked : published))
