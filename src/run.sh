#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Install what is missing, build Strutwright and run it from its build folder.
#
#   sh src/run.sh               opens the window on the demo car
#   sh src/run.sh FILE…         opens the window on these cars, or plates
#   sh src/run.sh COMMAND …     table, compare, plot and the like, without a window
set -u

root=$(cd "$(dirname "$0")/.." && pwd -P) || exit 1
release=$root/.build/release
log=$root/.build/run.log
program=$release/src/command-line/strutwright
# shellcheck source=src/setup.sh
. "$root/src/setup.sh"

is_for_window () {
  case ${1:-} in
    '' | *.swcar | *.swplate) return 0 ;;
    -* | check | choose | compare | guide | loads) return 1 ;;
    plot | report | restore | springs | table) return 1 ;;
    *) test -e "$1" ;;
  esac
}

check_display () {
  if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then return 0; fi
  echo 'There is no display to open a window on; the command line needs none:' >&2
  echo "  sh '$root/src/run.sh' table '$root/data/wren.swcar'" >&2
  return 1
}

# Standard output belongs to the program: a table may go into a file or a pipe.
set_up () {
  mkdir -p "$root/.build" && : >"$log" || return 1
  install_missing 'to build Strutwright' need_to_build || return 1
  build "$release" --buildtype=release -Dwerror=false
}

if is_for_window "$@"; then check_display || exit 1; fi
set_up >&2 || exit 1
export STRUTWRIGHT_LOCALEDIR="$release/po" STRUTWRIGHT_DATADIR="$root/data"
export GSETTINGS_SCHEMA_DIR="$release/data"
exec "$program" "$@"
