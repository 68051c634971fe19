#!/usr/bin/env bash
# Takes the pictures of the README and of the help anew, from the running window on a display of its own.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
java releng/org.faultwright.product/SplashPicture.java
releng/test.sh -pl bundles/org.faultwright.workbench.tests -am -Dtest=ReadmePicturesTest -Dsurefire.failIfNoSpecifiedTests=false \
  "-Dfaultwright.pictures=$PWD/releng/pictures" "-Dfaultwright.helpPictures=$PWD/bundles/org.faultwright.workbench/help/pictures"
echo "== taken anew: releng/org.faultwright.product/splash.png, releng/pictures/workbench.png and releng/pictures/card.png, bundles/org.faultwright.workbench/help/pictures"
