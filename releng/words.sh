#!/usr/bin/env bash
# Counts the words of the demo's procedures by kind of clause, beside those before the language was made shorter.
#   releng/words.sh [commit to compare with]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$top"
# the last state before the words of the language were changed
commit=${1:-d4a8e80}
if ! git cat-file -e "$commit:procedures-demo" 2>/dev/null; then
  echo "words: there is no commit $commit with a folder procedures-demo here. Name another one, or get the whole history: git fetch --unshallow" >&2
  exit 2
fi
before=$(mktemp -d)
trap 'rm -rf "$before"' EXIT
git archive "$commit" procedures-demo | tar x -C "$before"
releng/setup.sh
echo "== building"
releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests -pl releng/org.faultwright.benchmarks -am package
java -XX:+UseSerialGC -cp "releng/org.faultwright.benchmarks/target/classes:$(cat releng/org.faultwright.benchmarks/target/class-path)" \
  org.faultwright.benchmarks.WordStudy procedures-demo "$before/procedures-demo"
