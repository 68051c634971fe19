#!/usr/bin/env bash
# Looks into the product archives: that each has what its system needs to start, and nothing of another system.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
products=releng/org.faultwright.product/target/products
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
bad=0
holds() { # what, then a command
  local what=$1
  shift
  if "$@" >/dev/null 2>&1; then echo "  yes  $what"; else echo "  NO   $what"; bad=$((bad + 1)); fi
}
lacks() { ! grep -qE "$1" "$2"; }
bundles_there() { # every bundle that the start reads is in the archive
  python3 - "$1" <<'P'
import os, sys
top = sys.argv[1]
lines = [l for l in open(top + "/configuration/org.eclipse.equinox.simpleconfigurator/bundles.info") if l.strip() and l[0] != "#"]
assert len(lines) > 90, len(lines)
for line in lines:
    place = line.split(",")[2]
    assert os.path.exists(os.path.join(top, place)), place
P
}
imports_there() { # no package is there in another version only than a bundle asks for: such an import is left out in silence where it is optional
  python3 - "$1" <<'P'
import glob, re, sys, zipfile

def headers(jar):
    text = zipfile.ZipFile(jar).read("META-INF/MANIFEST.MF").decode().replace("\r\n", "\n").replace("\n ", "")
    return dict(line.split(": ", 1) for line in text.split("\n") if ": " in line)

def clauses(header):
    for clause in re.findall(r'(?:[^,"]|"[^"]*")+', header):
        parts = [part.strip() for part in re.findall(r'(?:[^;"]|"[^"]*")+', clause)]
        version = [part.split("=", 1)[1].strip('"') for part in parts if part.startswith("version=")]
        yield [part for part in parts if "=" not in part], version[0] if version else "0"

def number(version):
    return tuple(int(part) if part.isdigit() else 0 for part in (version.split(".") + ["0", "0"])[:3])

def within(version, asked):
    ends = re.match(r"([\[(])(.*),(.*)([\])])", asked)
    if not ends:
        return number(version) >= number(asked)
    low, high, it = number(ends[2]), number(ends[3]), number(version)
    return (low <= it if ends[1] == "[" else low < it) and (it <= high if ends[4] == "]" else it < high)

bundles = {jar: headers(jar) for jar in glob.glob(sys.argv[1] + "/plugins/*.jar")}
assert len(bundles) > 90, len(bundles)
there = {}
for has in bundles.values():
    for names, version in clauses(has.get("Export-Package", "")):
        for name in names:
            there.setdefault(name, []).append(version)
for jar, has in bundles.items():
    if "DynamicImport-Package" not in has:
        for names, asked in clauses(has.get("Import-Package", "")):
            for name in names:
                assert name not in there or any(within(version, asked) for version in there[name]), f"{jar}: {name} {asked}, there is {there[name]}"
P
}
libraries() { # the one that is wanted, or none
  test "$(cd "$work/in/faultwright/plugins" && ls org.eclipse.equinox.launcher.*/eclipse_* 2>/dev/null |
    sed 's/^org.eclipse.equinox.launcher.\(.*\)_[0-9.]*\.v.*$/\1/')" = "$1"
}
look() { # archive, fragment of SWT, the others, the start script, ending of the command line, the library of the launcher
  echo "== $(basename "$1")"
  rm -rf "$work/in"
  mkdir "$work/in"
  case $1 in
    *.zip) python3 -m zipfile -l "$1" | awk 'NR > 1 { print $1 }' >"$work/names"; python3 -m zipfile -e "$1" "$work/in" ;;
    *) tar tzf "$1" >"$work/names"; tar xzf "$1" -C "$work/in" ;;
  esac
  holds "everything lies in one folder" test "$(cut -d/ -f1 "$work/names" | sort -u)" = faultwright
  holds "no name leads out of it" lacks '(^/|(^|/)\.\.(/|$))' "$work/names"
  holds "no name that Windows refuses" lacks '[<>:"|?*\\]' "$work/names"
  holds "the widgets of this system" grep -qE "plugins/org.eclipse.swt.$2_[^/]*\.jar" "$work/names"
  holds "and of no other" lacks "plugins/org.eclipse.swt.($3)" "$work/names"
  holds "the launcher" grep -qE 'plugins/org.eclipse.equinox.launcher_[^/]*\.jar' "$work/names"
  holds "the start script" test -s "$work/in/faultwright/$4"
  holds "the command line" test -s "$work/in/faultwright/commandline/bin/faultwright$5"
  holds "the picture of the start" test -s "$work/in/faultwright/splash.png"
  holds "the start script names it" grep -q splash.png "$work/in/faultwright/$4"
  holds "the library that draws it, and of no other system" libraries "$6"
  holds "the licence" test -s "$work/in/faultwright/LICENSE"
  holds "every bundle that is read at a start" bundles_there "$work/in/faultwright"
  holds "every package in a version that is asked for" imports_there "$work/in/faultwright"
  case $4 in *.bat) ;; *) holds "the start script may be run" test -x "$work/in/faultwright/$4" ;; esac
  echo "  $(($(stat -c %s "$1") >> 20)) MB, $(($(du -sm "$work/in" | cut -f1))) MB unpacked"
}
look "$products/faultwright-0.1.0-linux-x86_64.tar.gz" gtk.linux.x86_64 'win32|cocoa' faultwright-workbench '' gtk.linux.x86_64
look "$products/faultwright-0.1.0-linux-x86_64-with-java.tar.gz" gtk.linux.x86_64 'win32|cocoa' faultwright-workbench '' gtk.linux.x86_64
holds "its Java runs" "$work/in/faultwright/jre/bin/java" -version
holds "its Java shares its classes" "$work/in/faultwright/jre/bin/java" -Xshare:on -version
look "$products/faultwright-0.1.0-win32-x86_64.zip" win32.win32.x86_64 'gtk|cocoa' faultwright-workbench.bat .bat win32.win32.x86_64
look "$products/faultwright-0.1.0-macosx-aarch64.tar.gz" cocoa.macosx.aarch64 'gtk|win32' faultwright-workbench '' ''
if [ "$bad" != 0 ]; then echo "$bad did not hold" >&2; exit 1; fi
echo "everything held"
