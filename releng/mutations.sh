#!/usr/bin/env bash
# Puts one defect at a time into the demo procedures, of more than a hundred kinds, and prints which of them the rules find.
#   releng/mutations.sh [places of a kind in each procedure, 3 when not said] [folder of procedures] [words of a kind's title]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
folder=$(realpath "${2:-$top/procedures-demo}")
cd "$top"
releng/setup.sh
echo "== building"
releng/target/mvn --batch-mode --no-transfer-progress -q -DskipTests -pl releng/org.faultwright.mutations -am package
java -XX:+UseSerialGC -cp "releng/org.faultwright.mutations/target/classes:$(cat releng/org.faultwright.mutations/target/class-path)" \
  org.faultwright.mutations.MutationStudy "$folder" "${1:-3}" ${3:+"$3"}
