# SPDX-License-Identifier: GPL-3.0-or-later
"""Whole processes, timed in turn so that a busy machine is busy for all of them."""
import os
import statistics
import time


def run_once(argv):
    """(milliseconds, of them on a processor, peak memory in MB) of one whole process."""
    start = time.perf_counter()
    pid = os.posix_spawnp(argv[0], argv, os.environ, file_actions=[
        (os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)])
    _, status, usage = os.wait4(pid, 0)
    spent = (time.perf_counter() - start) * 1000
    if status:
        raise SystemExit('%s ended with status %d' % (argv[0], status))
    return spent, (usage.ru_utime + usage.ru_stime) * 1000, usage.ru_maxrss / 1024


def race(runners, runs):
    """Medians of run_once by the runner's name: one round to warm up, then the runs."""
    seen = {name: [] for name in runners}
    for i in range(runs + 1):
        for name, argv in runners.items():
            once = run_once([str(word) for word in argv])
            if i:
                seen[name].append(once)
    return {name: tuple(statistics.median(column) for column in zip(*rows))
            for name, rows in seen.items()}
