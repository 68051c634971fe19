#!/usr/bin/env bash
# Lets everything be written that is offered for many procedures (small ones at random, the demo with defects, fault tables at random): each fix, each
# better order, each draft; and judges it by itself. Prints the numbers, and writes the smallest text of each kind of disagreement.
#   releng/writing.sh [procedures, 1000 when not said] [folder for the texts of disagreements, releng/target/writing when not said]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
into=$(realpath -m "${2:-$top/releng/target/writing}")
cd "$top"
releng/setup.sh
echo "== building"
releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests -pl releng/org.faultwright.mutations -am package
java -XX:+UseSerialGC -cp "releng/org.faultwright.mutations/target/classes:$(cat releng/org.faultwright.mutations/target/class-path)" \
  org.faultwright.mutations.WritingStudy procedures-demo "${1:-1000}" "$into"
