#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Install what is missing, build Strutwright with warnings as errors and run every test,
# then once more under the address and undefined-behaviour sanitizers; with clang, its
# fuzzer tries the readers of files for a few seconds as well.
#
#   sh tests/run.sh             all of it, as before a change is merged
#   sh tests/run.sh --quick     without the sanitizers, for use while working
#
# The last line counts all runs. A build that fails counts as one failure.
# shellcheck disable=SC2317 # the checks are called by way of install_missing
set -u

root=$(cd "$(dirname "$0")/.." && pwd -P) || exit 1
log=$root/.build/tests.log
# shellcheck source=src/setup.sh
. "$root/src/setup.sh"

passed=0 failed=0 skipped=0

has_accessibility_bus () { test -e /usr/share/dbus-1/services/org.a11y.Bus.service; }
has_desktop_settings () {
  test -e /usr/share/glib-2.0/schemas/org.gnome.desktop.interface.gschema.xml
}
has_locale_sources () { test -e /usr/share/i18n/locales/de_DE; }
# Small systems put a program in its place that only says what is missing.
has_manual_reader () { man --version | grep '^man '; }
has_python_atspi () {
  /usr/bin/python3 -c 'import gi; gi.require_version("Atspi", "2.0")'
}

need_to_test () {
  need_to_build
  need appstream has_command appstreamcli
  need shellcheck has_command shellcheck
  need valgrind has_command valgrind
  need locales has_locale_sources
  need man-db has_manual_reader
  need xvfb has_command Xvfb
  need dbus has_command dbus-daemon
  need at-spi2-core has_accessibility_bus
  need gsettings-desktop-schemas has_desktop_settings
  need openbox has_command openbox
  need x11-utils has_command xprop
  need poppler-utils has_command pdftotext
  need xdotool has_command xdotool
  need imagemagick has_command import
  need 'python3-gi gir1.2-atspi-2.0' has_python_atspi
}

# A line of meson's summary, as "Fail:    2" in a log; nothing there counts as 0.
summary_count () {
  sed -n "s/^$1: *\([0-9][0-9]*\) *\$/\1/p" "$2" | tail -n 1 | grep . || echo 0
}

add_counts () {
  run_passed=$(($(summary_count Ok "$1") + $(summary_count 'Expected Fail' "$1")))
  run_failed=$(($(summary_count Fail "$1") + $(summary_count 'Unexpected Pass' "$1") \
    + $(summary_count Timeout "$1")))
  passed=$((passed + run_passed))
  failed=$((failed + run_failed))
  skipped=$((skipped + $(summary_count Skipped "$1")))
}

# A run that fails without a failing test, or that tested nothing, is a failure as well.
# Tests of the window mostly wait: two stand on each core. run_tests FOLDER OPTION…
run_tests () {
  run_folder=$1
  shift
  {
    meson test --no-rebuild --print-errorlogs --num-processes "$((2 * $(nproc)))" \
      -C "$run_folder" "$@" </dev/null 2>&1
    echo $? >"$run_folder/run-status"
  } | tee "$run_folder/run-log"
  add_counts "$run_folder/run-log"
  if [ "$run_failed" -gt 0 ]; then return 0; fi
  if [ "$(cat "$run_folder/run-status")" -ne 0 ] || [ "$run_passed" -eq 0 ]; then
    failed=$((failed + 1))
  fi
}

build_or_count () {
  if build "$@"; then return 0; fi
  failed=$((failed + 1))
  return 1
}

test_plainly () {
  echo 'Strutwright with warnings as errors'
  build_or_count "$root/.build/debug" --buildtype=debug -Dwerror=true || return 1
  run_tests "$root/.build/debug"
}

# Unwinding by frame pointer would stop in GLib, and the suppressions, which go by
# library, would miss; ten frames reach them in half the time of the usual thirty.
# GLib's slices would hide blocks from the sanitizer.
watch_by_sanitizers () {
  export ASAN_OPTIONS=fast_unwind_on_malloc=0:malloc_context_size=10
  export LSAN_OPTIONS="suppressions='$root/tests/lsan.supp':print_suppressions=0"
  export UBSAN_OPTIONS=print_stacktrace=1:halt_on_error=1
  export G_SLICE=always-malloc
}

test_sanitized () {
  echo 'Strutwright under the address and undefined-behaviour sanitizers'
  build_or_count "$root/.build/sanitize" --buildtype=debug -Dwerror=true \
    -Db_sanitize=address,undefined || return 1
  run_tests "$root/.build/sanitize" --no-suite repeated # the same code in other words
}

# Of clang's package the library that holds the fuzzer is a package of its own.
has_fuzzer () {
  echo 'int LLVMFuzzerTestOneInput (const char *data, unsigned long size);
        int LLVMFuzzerTestOneInput (const char *data, unsigned long size)
        { return data == 0 && size > 0; }' |
    clang -fsanitize=fuzzer,address -x c - -o "$root/.build/has-fuzzer" 2>/dev/null
}

fuzz_readers () {
  if ! has_fuzzer; then
    echo 'No clang with its fuzzer here: the readers were fuzzed by the driver alone'
    return 0
  fi
  echo "The readers of files under clang's fuzzer"
  build_target=fuzz-targets
  export CC=clang
  build_or_count "$root/.build/fuzz" --buildtype=debugoptimized \
    -Db_sanitize=address,undefined -Db_lundef=false \
    -Dc_args=-fsanitize=fuzzer-no-link || return 1
  run_tests "$root/.build/fuzz" --suite fuzz
}

finish () {
  counts="$passed passed, $failed failed"
  if [ "$skipped" -gt 0 ]; then counts="$counts, $skipped skipped"; fi
  echo "$counts"
  [ "$failed" -eq 0 ]
  exit
}

case $* in
  '' | --quick) ;;
  *) echo 'usage: sh tests/run.sh [--quick]' >&2; exit 2 ;;
esac

mkdir -p "$root/.build" && : >"$log" || exit 1
if ! install_missing 'to build and test Strutwright' need_to_test; then
  failed=1
  finish
fi
if test_plainly && [ "$*" != --quick ]; then
  watch_by_sanitizers
  test_sanitized
  fuzz_readers
fi
finish
