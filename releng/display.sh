# Sourced by what opens a window: a display of its own with a window manager, gone when the script ends.
#   open_display [folder]   exports DISPLAY; adds to the array helpers what is to be ended; what is seen is kept as a file in the folder, where one is named
#   press KEY TITLE         presses a key once the keys go to a window whose title begins so: that comes after it is seen; false where they do not within 20 s
helpers=()
open_display() {
  local number
  number=$(mktemp)
  Xvfb -displayfd 3 -screen 0 1600x1000x24 -nolisten tcp ${1:+-fbdir "$1"} 3>"$number" >/dev/null 2>&1 &
  helpers+=($!)
  for _ in $(seq 100); do [ -s "$number" ] && break; sleep 0.1; done
  if [ ! -s "$number" ]; then
    rm -f "$number"
    echo "$(basename "$0" .sh): no display could be opened (Xvfb did not start)." >&2
    return 1
  fi
  DISPLAY=:$(cat "$number")
  export DISPLAY
  rm -f "$number"
  openbox >/dev/null 2>&1 &
  helpers+=($!)
}
close_display() {
  local one
  for one in "${helpers[@]}"; do kill "$one" 2>/dev/null || true; done
}
has_keys() { xdotool getactivewindow getwindowname 2>/dev/null | grep -q "^$1"; }
press() {
  for _ in $(seq 80); do
    if has_keys "$2"; then
      xdotool key "$1"
      return 0
    fi
    sleep 0.25
  done
  return 1
}
