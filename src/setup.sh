# shellcheck shell=sh
# SPDX-License-Identifier: GPL-3.0-or-later
# What src/run.sh and tests/run.sh share: find what is missing, install it, build.
#
# The caller sets $root (the repository) and $log (where everything said goes).
# Things are looked for themselves and not by package name, so that a system other
# than Debian that has them all is never asked for anything.

: "${root:?}" "${log:?}"
missing=''

# need PACKAGE COMMAND…: the package is missing unless the command succeeds
need () {
  need_package=$1
  shift
  "$@" >/dev/null 2>&1 || missing="$missing $need_package"
}

has_command () { command -v "$1"; }
has_module () { pkg-config --exists "$1"; }
has_c_library () { echo '#include <stdio.h>' | cc -E -; }

has_svg_loader () {
  loaders=$(pkg-config --variable=gdk_pixbuf_moduledir gdk-pixbuf-2.0)
  test -e "$loaders/libpixbufloader-svg.so"
}

need_to_build () {
  need gcc has_command cc
  need libc6-dev has_c_library
  need pkg-config has_command pkg-config
  need meson has_command meson
  need ninja-build has_command ninja
  need gettext has_command msgfmt
  need desktop-file-utils has_command update-desktop-database
  need shared-mime-info has_command update-mime-database
  need libgtk-4-dev has_module 'gtk4 >= 4.8'
  need libgtk-4-bin has_command gtk4-update-icon-cache
  need libgsl-dev has_module 'gsl >= 2.5'
  need libjson-glib-dev has_module 'json-glib-1.0 >= 1.6'
  need librsvg2-common has_svg_loader
}

is_debian () (
  command -v apt-get >/dev/null || exit 1
  ID='' ID_LIKE=''
  # shellcheck source=/dev/null
  . /etc/os-release 2>/dev/null
  case " $ID $ID_LIKE " in *' debian '*) exit 0 ;; esac
  exit 1
)

# quietly WHAT COMMAND…: one line for the reader, the rest into the log
quietly () {
  what=$1
  shift
  echo "$what …"
  echo "\$ $*" >>"$log"
  "$@" >>"$log" 2>&1 </dev/null && return 0
  cat "$log" >&2
  echo "$what: failed. The log is above and in $log" >&2
  return 1
}

apt () {
  if [ "$(id -u)" -eq 0 ]; then
    env DEBIAN_FRONTEND=noninteractive apt-get -y "$@"
  else
    sudo ${CI:+-n} env DEBIAN_FRONTEND=noninteractive apt-get -y "$@"
  fi
}

# Fresh machines come without package lists, old ones with lists too old to fetch by.
apt_install () {
  apt-get --simulate install --no-install-recommends "$@" || apt update || return 1
  apt install --no-install-recommends "$@" && return 0
  apt update && apt install --no-install-recommends "$@"
}

may_install () {
  if [ "$(id -u)" -eq 0 ]; then return 0; fi
  if ! command -v sudo >/dev/null; then
    echo "Only root can install them. As root, run this, then try again:" >&2
    echo "  apt-get update && apt-get install --no-install-recommends$missing" >&2
    return 1
  fi
  if [ -n "${CI:-}" ]; then return 0; fi
  printf 'Install them with sudo? [Y/n] '
  read -r answer || answer=n
  case $answer in
    '' | [Yy]*) sudo -v ;;
    *) echo 'Nothing was installed.'; return 1 ;;
  esac
}

# install_missing PURPOSE CHECK: whatever CHECK finds missing, for a sentence's PURPOSE
install_missing () {
  missing=''
  "$2"
  if [ -z "$missing" ]; then return 0; fi
  if ! is_debian; then
    echo "Missing on this machine $1, by Debian's package names:$missing" >&2
    echo 'This script installs them on Debian and its kin only. Please install them' >&2
    echo 'with your own package manager, then run this again.' >&2
    return 1
  fi
  echo "Missing on this machine $1:$missing"
  may_install || return 1
  # shellcheck disable=SC2086 # the list is split into its names
  quietly 'Installing them with apt-get, a minute or two' apt_install $missing || return 1
  missing=''
  "$2"
  if [ -z "$missing" ]; then return 0; fi
  echo "Installed, but too old or not found by their tools:$missing" >&2
  echo 'Debian 12 or newer has what is needed (GTK 4.8, json-glib 1.6).' >&2
  return 1
}

# build FOLDER OPTION…: configure once, and again when the repository was moved; only
# $build_target where that is set
build_target=''
build () {
  build_folder=$1
  shift
  if [ "$(cat "$build_folder/built-from" 2>/dev/null)" != "$root" ]; then
    rm -rf "$build_folder"
    quietly 'Preparing the build' meson setup "$@" "$build_folder" "$root" || return 1
    printf '%s\n' "$root" >"$build_folder/built-from"
  fi
  set -- -C "$build_folder" ${build_target:+"$build_target"}
  if ninja -n "$@" 2>/dev/null | grep -q 'no work to do'; then return 0; fi
  quietly 'Building' ninja "$@"
}
