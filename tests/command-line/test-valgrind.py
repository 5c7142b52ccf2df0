#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The command line under memcheck: no error, and nothing lost.

    test-valgrind.py PROGRAM DATA-FOLDER [--thorough]

Suppressed is only what GLib says of itself. Where valgrind is not installed, or the
program is already built with a sanitizer, the test is skipped.
"""
import json
import pathlib
import shutil
import subprocess
import sys

SUPPRESSIONS = pathlib.Path('/usr/share/glib-2.0/valgrind/glib.supp')
FOUND = 99


def skip(reason):
    print('skipped: ' + reason)
    sys.exit(77)


def has_sanitizer(program):
    return b'__asan_init' in pathlib.Path(program).read_bytes()


def commands(data, thorough):
    cars = sorted(data.glob('*.swcar'))
    plates = sorted((data / 'plates').glob('*.swplate'))
    bad = data.parent / 'tests/data/cars/bad'
    yield 0, ['check', cars[0]]
    yield 0, ['table', '--step', '20', cars[0]]
    yield 0, ['table', '--format', 'json', '--step', '40', cars[1]]
    yield 0, ['compare', cars[1]]
    yield 0, ['compare', '--format', 'csv', cars[2]]
    yield 0, ['choose', cars[2], '--plates', plates[0], plates[1]]
    yield 1, ['check', bad / 'duplicate-key-escaped.swcar']
    yield 1, ['check', bad / 'tie-rod-dead.swcar']
    if thorough:
        for car in cars:
            for name in ('check', 'table', 'compare'):
                yield 0, [name, car]
            last = json.loads(car.read_text())['setups'][-1]['name']
            yield 0, ['restore', '--setup', last, car]
            yield 0, ['choose', car, '--plates', *plates]
        for car in sorted(bad.iterdir()):
            yield 1, ['check', car]


def run(program, status, words):
    memcheck = ['valgrind', '-q', '--leak-check=full', '--show-leak-kinds=definite',
                '--errors-for-leak-kinds=definite', '--error-exitcode=%d' % FOUND,
                '--suppressions=%s' % SUPPRESSIONS]
    done = subprocess.run([*memcheck, program, *map(str, words)], text=True,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    if done.returncode == status and '==' not in done.stderr:
        return True
    print('%s: status %d, not %d\n%s' % (' '.join(map(str, words)), done.returncode, status,
                                         done.stderr), file=sys.stderr)
    return False


def main():
    program, data = sys.argv[1], pathlib.Path(sys.argv[2])
    if shutil.which('valgrind') is None:
        skip('valgrind is not installed')
    if not SUPPRESSIONS.exists():
        skip('GLib brings no %s' % SUPPRESSIONS)
    if has_sanitizer(program):
        skip('a sanitizer watches this build')
    runs = [run(program, *command) for command in commands(data, '--thorough' in sys.argv)]
    print('%d of %d commands run clean under memcheck' % (sum(runs), len(runs)))
    return 0 if all(runs) else 1


if __name__ == '__main__':
    sys.exit(main())
