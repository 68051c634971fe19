#!/usr/bin/env bash
# Builds the workbench and opens its window on the demo, or on what was open when it was closed. A second run with nothing changed skips the build.
#   releng/workbench.sh [more for the workbench, such as -data FOLDER for a workspace of your own, without the demo]
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$top"
case $(uname -s)/$(uname -m) in
  Linux/x86_64) product=linux/gtk/x86_64 ;;
  Darwin/arm64) product=macosx/cocoa/aarch64 ;;
  *)
    echo "workbench: the window is built for Linux x86_64, macOS aarch64 and Windows x86_64. On Windows, build with" >&2
    echo "  releng/target/mvn -DskipTests package   and unpack releng/org.faultwright.product/target/products/*win32*.zip" >&2
    exit 1
    ;;
esac
faultwright=releng/org.faultwright.product/target/products/org.faultwright.product/$product/faultwright/faultwright-workbench
stamp=releng/target/workbench.built

state() { # what the window is built from: names, sizes and times
  find pom.xml .mvn bundles features releng procedures-demo -type d \( -name target -o -name src-gen -o -name emf-gen -o -name '*.tests' \) -prune \
    -o -type f -printf '%p %s %T@\n' 2>/dev/null | sort | cksum
}

if [ -x "$faultwright" ] && [ "$(cat "$stamp" 2>/dev/null)" = "$(state)" ]; then
  echo "== nothing changed since the last build"
else
  releng/setup.sh
  echo "== building the workbench (the first time some minutes, most of it fetching libraries)"
  mkdir -p releng/target
  if ! releng/target/mvn --batch-mode --no-transfer-progress -DskipTests -pl releng/org.faultwright.product -am package \
    >releng/target/workbench-build.log 2>&1 </dev/null; then
    grep -E '^\[ERROR\]' releng/target/workbench-build.log | head -20 >&2
    echo "The build failed; all it said stands in releng/target/workbench-build.log" >&2
    exit 1
  fi
  state >"$stamp"
fi

if [ "$(uname -s)" = Linux ] && [ -z "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  echo "workbench: there is no display to open a window on. Run this in a desktop session; it is built in" >&2
  echo "  $top/$(dirname "$faultwright")" >&2
  exit 1
fi
case " $* " in
  *" -data "*) ;;
  *) set -- -data "$top/releng/target/workbench-workspace" -demo "$@" ;;
esac
echo "== opening the window"
exec "$faultwright" "$@"
