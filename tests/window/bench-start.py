# SPDX-License-Identifier: GPL-3.0-or-later
"""First frame with the demo car against an empty GTK window of the same size.

bench-start.py FIRST-FRAME EMPTY-WINDOW [RUNS]
"""
import sys

from bench_processes import race

seen = race({'Strutwright': [sys.argv[1]], 'empty window': [sys.argv[2]]},
            int(sys.argv[3]) if len(sys.argv) > 3 else 9)
for name, (spent, on_processor, memory) in seen.items():
    print('%-14s first frame %6.1f ms (%6.1f on a processor), peak %5.1f MB'
          % (name, spent, on_processor, memory))
ours, theirs = seen.values()
print('time ratio     %.2f, on a processor %.2f (target 1.3)'
      % (ours[0] / theirs[0], ours[1] / theirs[1]))
print('memory ratio   %.2f (target 1.4)' % (ours[2] / theirs[2]))
