#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the kernel needs from outside: mathematics, and nothing that can run out.

    test-needs.py ARCHIVE NM

It allocates no memory, so no allocation of its can fail; it opens, prints and reads
nothing. Read off the archive's undefined symbols.
"""
import re
import subprocess
import sys

MATHEMATICS = set('acos asin atan atan2 cbrt ceil copysign cos cosh exp fabs floor fma fmax '
                  'fmin fmod hypot log pow round sin sincos sinh sqrt tan tanh trunc'.split())
BYTES = {'memcpy', 'memmove', 'memset', 'memcmp'}
# A mistake of the programmer; what compilers add to find or harden against them.
CHECKS = re.compile(r'__assert_fail|__stack_chk_fail|__(asan|ubsan|sanitizer)_\w+|__mem\w+_chk'
                    r'|_GLOBAL_OFFSET_TABLE_')


def main():
    archive, nm = sys.argv[1:]
    listed = subprocess.run([nm, archive], check=True, text=True, capture_output=True).stdout
    symbols = re.findall(r'^(?:[0-9a-f]+)? +([A-Za-z]) (\S+)$', listed, re.MULTILINE)
    defined = {name for kind, name in symbols if kind != 'U'}
    needed = {name for kind, name in symbols if kind == 'U'} - defined
    if 'corner_assemble' not in defined or 'sqrt' not in needed:
        sys.exit('%s: this is not the kernel' % archive)
    other = {name for name in needed - MATHEMATICS - BYTES if not CHECKS.fullmatch(name)}
    for name in sorted(other):
        print('The kernel needs %s.' % name, file=sys.stderr)
    print('%d symbols of the kernel; from outside: %s' % (len(defined), ' '.join(sorted(needed))))
    return 1 if other else 0


if __name__ == '__main__':
    sys.exit(main())
