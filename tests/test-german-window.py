#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The window in German: words and decimal comma on the screen, the point in the file.

Needs in the environment: STRUTWRIGHT, the command line, whose neighbour the window is.
"""
import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

from gtkdrive import App, wait_for

APP_ID = 'org.strutwright.Strutwright'
WREN = Path(__file__).resolve().parent.parent / 'data/wren.swcar'
TITLE = 'Wren 1.3 hill-climb hatch'
SKIPPED = 77


def build_comma_locale(folder):
    target = folder / 'de_DE.UTF-8'
    subprocess.run(['localedef', '-i', 'de_DE', '-f', 'UTF-8', target], check=False,
                   stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return target.is_dir()


def first_mount(car):
    return json.loads(car.read_text(encoding='utf-8'))['setups'][0]['mount']


def check_window(folder):
    car = folder / 'wren.swcar'
    car.write_bytes(WREN.read_bytes())
    program = Path(os.environ['STRUTWRIGHT']).parent.parent / 'window/strutwright-window'
    german = {'LC_ALL': 'de_DE.UTF-8', 'LANGUAGE': '', 'LOCPATH': str(folder)}

    with App([program, car], APP_ID, TITLE, env=german) as app:
        app.get('push button', 'Öffnen')
        app.get('label', '0,0 mm')
        spin = app.get('spin button', 'Nach innen')
        app.enter(spin, '4,5')
        wait_for('the typed number', lambda: app.value(spin) == 4.5)
        wait_for('the words under the title', lambda: any(
            '4,5 mm nach innen' in node.get_name() for node in app.walk()))
        app.activate('save')
        wait_for('the saved file', lambda: first_mount(car)['inboard_mm'] == 4.5)


def main():
    with tempfile.TemporaryDirectory() as place:
        if not build_comma_locale(Path(place)):
            print('localedef cannot build a locale with a decimal comma here')
            return SKIPPED
        check_window(Path(place))
    return 0


if __name__ == '__main__':
    sys.exit(main())
