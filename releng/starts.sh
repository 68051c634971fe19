#!/usr/bin/env bash
# Starts the built window as its user does, on a display of its own, in every state that a start can meet: the first start, a
# second one with the same workspace, and workspaces of which a file was cut off, emptied or overwritten.
#   releng/starts.sh [the folder of the product, when not the one that was built here]
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
product=${1:-releng/org.faultwright.product/target/products/org.faultwright.product/linux/gtk/x86_64/faultwright}
releng/setup.sh --tests || exit 1
if [ ! -x "$product/faultwright-workbench" ]; then
  echo "starts: there is no product in $product yet. Build it with: releng/target/mvn -DskipTests package" >&2
  exit 1
fi

work=$(mktemp -d)
. releng/display.sh
started=()
finish() {
  for one in "${started[@]}"; do kill -- "-$one" 2>/dev/null; done
  close_display
  sleep 1
  rm -rf "$work"
}
trap finish EXIT
open_display || exit 1

start() { # folder of the workspace; afterwards $last is the process group
  setsid dbus-run-session -- "$product/faultwright-workbench" -data "$1" >"$work/said" 2>&1 </dev/null &
  last=$!
  started+=("$last")
}
# the picture of the start is a window without a frame, of its own size
picture_size=$(od -An -j16 -N8 -tu4 --endian=big "$product/splash.png" | awk '{ print $1 "x" $2 }')
is_picture() { xdotool getwindowgeometry "$1" 2>/dev/null | grep -q "Geometry: $picture_size$"; }
windows() { xdotool search --onlyvisible --name . 2>/dev/null; }
titles() { # of the windows that are seen
  for window in $(windows); do is_picture "$window" || xdotool getwindowname "$window" 2>/dev/null; done
}
picture() { # whether it is seen
  for window in $(windows); do is_picture "$window" && return 0; done
  return 1
}
no_picture() { ! picture; }
picture_first() { # it is seen, and no other window yet
  for _ in $(seq 200); do
    picture && return 0
    titles | grep -q . && return 1
    sleep 0.05
  done
  return 1
}
comes() { # beginning of a title, seconds
  for _ in $(seq $((${2:-40} * 4))); do
    titles | grep -q "^$1" && return 0
    sleep 0.25
  done
  return 1
}
ends() { # process group, seconds
  for _ in $(seq $((${2:-20} * 4))); do
    kill -0 -- "-$1" 2>/dev/null || return 0
    sleep 0.25
  done
  return 1
}
answer() { # title, key: until the question is gone
  for _ in $(seq 10); do
    press "$2" "$1" || return 1
    for _ in $(seq 8); do
      titles | grep -q "^$1" || return 0
      sleep 0.25
    done
  done
  return 1
}
close_window() { # process group; by the key for Quit, and by force when that does nothing
  sleep 2
  for _ in 1 2 3; do
    press ctrl+q Faultwright || break
    ends "$1" 10 && return 0
  done
  kill -- "-$1" 2>/dev/null
  return 1
}
bad=0
holds() { # what, then a command
  local what=$1
  shift
  if "$@"; then echo "  yes  $what"; else echo "  NO   $what"; bad=$((bad + 1)); fi
}
has() { compgen -G "$1" >/dev/null; }
quiet() { ! grep -qE '^!ENTRY [^ ]+ 4 ' "$1/.metadata/.log" 2>/dev/null; }

echo "== a first start"
cp -r procedures-demo "$work/bench"
mkdir "$work/first"
start "$work/first"
first=$last
holds "the picture of the start is seen before the window" picture_first
holds "the window opens" comes Faultwright
sleep 4
holds "the picture is gone" no_picture

echo "== a second start with the same workspace"
start "$work/first"
holds "it says so" comes "Faultwright is open already" 20
holds "the picture does not lie over the question" no_picture
answer "Faultwright is open already" Return
holds "it ends, and the first window stays" ends "$last"
holds "the first window has the keys" close_window "$first"
holds "no error was logged" quiet "$work/first"

echo "== a workspace with a folder of the bench"
mkdir "$work/good"
echo "$work/bench" >"$work/good/open-folders.txt"
start "$work/good"
holds "the folder is opened" comes "Damaged, and begun anew"
holds "the picture does not lie over what is said" no_picture
answer "Damaged, and begun anew" Return
close_window "$last"
start "$work/good"
comes Faultwright
sleep 3
holds "the next start has nothing to say" test -z "$(titles | grep Damaged)"
close_window "$last"

echo "== a text that was not saved when the last window ended"
mkdir "$work/good/unsaved"
{ echo "$work/bench/OllenbyFaintLabels.procedure"; cat "$work/bench/OllenbyFaintLabels.procedure"; echo "// typed"; } >"$work/good/unsaved/last.unsaved"
start "$work/good"
holds "it is offered" comes "Text that was not saved"
holds "the picture does not lie over the question" no_picture
answer "Text that was not saved" Escape
close_window "$last"
rm -rf "$work/good/unsaved"

echo "== a text that was open when the last window ended"
mkdir "$work/open"
start "$work/open"
comes Faultwright
sleep 4
press alt+d Faultwright # "Open the demo bench"
sleep 6
close_window "$last"
JAVA_TOOL_OPTIONS="-Dfaultwright.times=$work/times" start "$work/open"
for _ in $(seq 240); do [ -s "$work/times" ] && break; sleep 0.25; done
holds "its card is there without a click" grep -q "^card:" "$work/times"
close_window "$last"

damage() { # file under .metadata/.plugins, how
  case $2 in
    cut) truncate -s $(($(stat -c %s "$1") / 2)) "$1" ;;
    empty) : >"$1" ;;
    overwritten) head -c 300 /dev/urandom >"$1" ;;
    gone) rm "$1" ;;
  esac
}
try() { # name of the file, its place, how, what is set aside
  echo "== $1: $3"
  rm -rf "$work/damaged"
  cp -r "$work/good" "$work/damaged"
  for file in "$work/damaged"/$2; do damage "$file" "$3"; done
  start "$work/damaged"
  holds "it says so" comes "Damaged, and begun anew"
  [ -z "$4" ] || holds "what was damaged is kept" has "$work/damaged/$4"
  holds "what it says goes by Return" answer "Damaged, and begun anew" Return
  holds "the window closes as usual" close_window "$last"
  holds "the folder is open again" grep -qx "$work/bench" "$work/damaged/open-folders.txt"
  start "$work/damaged"
  comes Faultwright
  sleep 3
  holds "the next start is a usual one" test -z "$(titles | grep Damaged)"
  close_window "$last"
}
resources=.metadata/.plugins/org.eclipse.core.resources
for how in cut empty overwritten; do
  try "the tree of the resources" "$resources/.root/[0-9]*.tree" $how damaged-folders
  try "the arrangement of the window" .metadata/.plugins/org.eclipse.e4.workbench/workbench.xmi $how damaged-arrangement
done
try "the tree of the resources" "$resources/.root/[0-9]*.tree" gone ""
for how in empty overwritten; do
  try "the table of the resources" "$resources/.safetable/org.eclipse.core.resources" $how ""
  try "the description of a folder" bench/.project $how ""
done
holds "the procedures are as they were" diff -rq procedures-demo "$work/bench"

archive=releng/org.faultwright.product/target/products/faultwright-0.1.0-linux-x86_64-with-java.tar.gz
if [ -f "$archive" ]; then
  echo "== the archive with its own Java, unpacked into a folder with a space and a letter outside ASCII"
  mkdir "$work/bench pc é"
  tar xzf "$archive" -C "$work/bench pc é"
  product="$work/bench pc é/faultwright"
  mkdir "$work/own"
  start "$work/own"
  holds "the window opens" comes Faultwright 60
  java=$(pgrep -g "$last" java | head -1)
  holds "the picture is gone" no_picture
  holds "it runs on that Java" test "$(readlink "/proc/$java/exe")" = "$product/jre/bin/java"
  sleep 6
  holds "it closes" close_window "$last"
  holds "no error was logged" quiet "$work/own"
  holds "the command line runs on it" env -u JAVA_HOME "$product/commandline/bin/faultwright" check --fail-on error "$work/bench"
  one_archive() { # made in the background by the first of many calls
    for _ in $(seq 8); do XDG_CACHE_HOME="$work/cache" "$product/commandline/bin/faultwright" --version >/dev/null; done
    [ "$(pgrep -fc -- "-Xshare:dump.*$work/cache")" -le 1 ]
  }
  mv "$product/commandline/lib/faultwright.jsa" "$work/" 2>/dev/null || true
  holds "of many calls one makes the class archive" one_archive
fi

if [ "$bad" != 0 ]; then echo "$bad did not hold" >&2; exit 1; fi
echo "everything held"
