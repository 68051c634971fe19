#!/usr/bin/env bash
# Gets what the build needs and this machine lacks: Debian packages, and Maven 3.9. Says what it does; does nothing twice.
#   releng/setup.sh           for building
#   releng/setup.sh --tests   also for all tests: those that open the window on a display of their own, and an editor that asks the language server
# The Maven to use stands in releng/target/mvn afterwards.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
maven_version=3.9.11

say() { printf '== %s\n' "$*"; }

missing=()
need() { # command or file that shows that the package is there, package
  command -v "$1" >/dev/null 2>&1 || [ -e "$1" ] || missing+=("$2")
}
need javac openjdk-17-jdk-headless
need mvn maven
if [ "${1:-}" = --tests ]; then
  need nvim neovim
  need Xvfb xvfb
  need xauth xauth
  need openbox openbox
  need xdotool xdotool
  need dbus-run-session dbus-x11
  need /usr/share/icons/Adwaita adwaita-icon-theme
  need /usr/share/fonts/truetype/dejavu fonts-dejavu
  ldconfig -p 2>/dev/null | grep -q libgtk-3.so.0 || missing+=(libgtk-3-0)
fi

if [ ${#missing[@]} -gt 0 ]; then
  if ! command -v apt-get >/dev/null 2>&1; then
    echo "setup: missing here: ${missing[*]} (Debian's names). Install them in this system's own way and run this again." >&2
    exit 1
  fi
  as_root=()
  if [ "$(id -u)" != 0 ]; then
    command -v sudo >/dev/null 2>&1 || { echo "setup: run as root, or with sudo installed: apt-get install ${missing[*]}" >&2; exit 1; }
    as_root=(sudo)
  fi
  say "installing ${missing[*]}"
  "${as_root[@]}" apt-get update -qq
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
fi

java_version=$(javac -version 2>&1 | sed 's/[^0-9]*\([0-9]*\).*/\1/')
if [ "$java_version" -lt 17 ]; then
  echo "setup: Java 17 or newer is needed to build; this is $(javac -version 2>&1). Install openjdk-17-jdk and let JAVA_HOME name it." >&2
  exit 1
fi

mkdir -p target
found=$(mvn --version 2>/dev/null | sed -n 's/.*Apache Maven \([0-9.]*\).*/\1/p')
case $found in
  3.9.[2-9] | 3.9.[1-9][0-9]) ln -sfn "$(command -v mvn)" target/mvn ;;
  *)
    if [ ! -x "target/apache-maven-$maven_version/bin/mvn" ]; then
      say "fetching Maven $maven_version (the build needs 3.9.2 or newer; here is ${found:-none})"
      # from a folder without a project: the old Maven cannot read ours
      empty=$(mktemp -d)
      trap 'rm -rf "$empty"' EXIT
      (cd "$empty" && mvn --batch-mode --quiet -Dstyle.color=never dependency:copy "-Dartifact=org.apache.maven:apache-maven:$maven_version:tar.gz:bin" "-DoutputDirectory=$empty")
      tar xzf "$empty/apache-maven-$maven_version-bin.tar.gz" -C target
    fi
    ln -sfn "apache-maven-$maven_version/bin/mvn" target/mvn
    ;;
esac
say "Java $java_version and Maven are ready"
