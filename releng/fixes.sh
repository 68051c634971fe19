#!/usr/bin/env bash
# Tries every fix that the rules propose over the demo, the flawed bench and texts with one defect each, and prints which are offered.
#   releng/fixes.sh [places of a kind of defect in each procedure, 1 when not said]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$top"
releng/setup.sh
echo "== building"
releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests -pl releng/org.faultwright.mutations -am package
java -XX:+UseSerialGC -cp "releng/org.faultwright.mutations/target/classes:$(cat releng/org.faultwright.mutations/target/class-path)" \
  org.faultwright.mutations.FixStudy procedures-demo "${1:-1}" bundles/org.faultwright.analysis.tests/src/test/resources/flawed
