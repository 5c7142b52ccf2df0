# SPDX-License-Identifier: GPL-3.0-or-later
"""Whole-process times of the command line; the picture against gnuplot on the same curves.

bench-command-line.py STRUTWRIGHT CAR [RUNS]
"""
import pathlib
import shutil
import subprocess
import sys
import tempfile

from bench_processes import race

# the curves of the program's default board: columns of its own table, from 1
CURVES = (2, 4, 8, 3, 5, 6, 7, 9)


def gnuplot_script(folder, table):
    data = folder / 'curves.csv'
    data.write_text(table)
    lines = ["set datafile separator ','", 'set terminal pngcairo size 1200,900',
             "set output '%s'" % (folder / 'gnuplot.png'), 'set grid',
             'set multiplot layout 4,2']
    lines += ["plot '%s' skip 1 using 1:%d with lines notitle" % (data, column)
              for column in CURVES]
    script = folder / 'curves.gp'
    script.write_text('\n'.join(lines + ['unset multiplot']) + '\n')
    return script


def main(program, car, runs):
    with tempfile.TemporaryDirectory(prefix='strutwright-') as name:
        folder = pathlib.Path(name)
        picture = folder / 'curves.png'
        table = subprocess.run([program, 'table', car], check=True, text=True,
                               stdout=subprocess.PIPE).stdout
        rows = table.count('\n') - 1
        runners = {'table': [program, 'table', car]}
        has_plot = subprocess.run([program, 'plot', car, '--output', picture],
                                  stderr=subprocess.DEVNULL).returncode == 0
        if has_plot:
            runners['plot'] = [program, 'plot', car, '--output', picture,
                               '--width', 1200, '--height', 900]
        if shutil.which('gnuplot'):
            runners['gnuplot'] = ['gnuplot', gnuplot_script(folder, table)]
        seen = race(runners, runs)

    print('table of %d positions   %6.1f ms (target 15)' % (rows, seen['table'][0]))
    if not has_plot:
        print('plot is not there or failed: no picture to time')
    elif 'gnuplot' not in seen:
        print('plot to PNG             %6.1f ms; gnuplot is absent, not compared'
              % seen['plot'][0])
    else:
        print('plot to PNG             %6.1f ms' % seen['plot'][0])
        print('gnuplot to PNG          %6.1f ms' % seen['gnuplot'][0])
        print('plot / gnuplot          %6.2f (target 0.5)'
              % (seen['plot'][0] / seen['gnuplot'][0]))


main(sys.argv[1], sys.argv[2], int(sys.argv[3]) if len(sys.argv) > 3 else 15)
