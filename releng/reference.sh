#!/usr/bin/env bash
# Walks small procedures at random with a second interpreter of the bench and holds what it meets against what the rules find.
# A disagreement is printed as the smallest text that shows it.
#   releng/reference.sh [procedures, 10000 when not said]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
releng/setup.sh
releng/target/mvn --batch-mode --no-transfer-progress -q -pl bundles/org.faultwright.analysis.tests -am verify \
  -Dtest=ReferenceBenchTest -Dsurefire.failIfNoSpecifiedTests=false "-Dfaultwright.procedures=${1:-10000}" | grep ' procedures'
