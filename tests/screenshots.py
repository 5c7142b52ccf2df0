# SPDX-License-Identifier: GPL-3.0-or-later
"""Make the pictures in screenshots/ from the real window. Run by hand, from the root:

    tests/with-display --wm openbox --compositor /usr/bin/python3 tests/screenshots.py

with the program built in .build/release, or in the folder named as the first argument.
The pictures repeat to the pixel on one machine. Needs what the window's tests need, and
picom; imagemagick packs them.
"""
import os
import pathlib
import subprocess
import sys
import time

ROOT = pathlib.Path(__file__).resolve().parent.parent
BUILD = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / '.build/release').resolve()
os.environ.update(STRUTWRIGHT=str(BUILD / 'src/command-line/strutwright'),
                  STRUTWRIGHT_WINDOW=str(BUILD / 'src/window/strutwright-window'),
                  STRUTWRIGHT_DATADIR=str(ROOT / 'data'),
                  STRUTWRIGHT_LOCALEDIR=str(BUILD / 'po'), LC_ALL='C.UTF-8')
sys.path[:0] = [str(ROOT / 'tests'), str(ROOT / 'tests/window')]

from gtkdrive import sh, wait_for  # noqa: E402
from strutwright_window import DATA, FRONT_MOUNT, NUMBERS, Window, command  # noqa: E402

PICTURES = ROOT / 'screenshots'
WREN = DATA / 'wren.swcar'
MOST_BYTES = 250_000


def pack(picture):
    """Without dates, in 256 colours: no difference to the eye on drawings like these."""
    subprocess.run(['convert', picture, '-strip', '+dither', '-colors', '256',
                    '-define', 'png:exclude-chunks=date,time',
                    '-define', 'png:compression-level=9', 'PNG8:%s' % picture], check=True)
    assert picture.stat().st_size < MOST_BYTES, picture


def take(window, name):
    """The inside of the window, once two pictures in a row are the same."""
    picture = PICTURES / name
    left, top = window.origin()
    last = None
    while True:
        window.screenshot(picture)
        sh('mogrify', '-shave', '%dx%d' % (left, top), '+repage', picture)
        now = sh('identify', '-format', '%#', picture)
        if now == last:
            break
        last = now
        time.sleep(0.2)
    pack(picture)
    return picture


def resize(window, width, height):
    left, top = window.origin()
    sh('xdotool', 'windowsize', window.win, width + 2 * left, height + 2 * top)
    wait_for('the size', lambda: window.box(window.get('frame')).width == width)
    window.rest_pointer()


def second_setup(window):
    window.click(window.get('combo box', 'Setup in hand'))
    window.key('Down', 'Return')
    window.wait_mount(12.0, 6.0)


def point_at_camber(window):
    """Lights it on sheet, curves and table; the pointer itself is not in the picture."""
    place = window.at(window.get('image', NUMBERS), 100, 30)
    sh('xdotool', 'mousemove', '--window', window.win, *place)


def main():
    PICTURES.mkdir(exist_ok=True)
    with Window(WREN) as window:
        second_setup(window)
        resize(window, 1600, 1000)
        point_at_camber(window)
        take(window, 'window-light.png')
        window.key('ctrl+d')
        wait_for('dark', lambda: window.state('dark', 0))
        take(window, 'window-dark.png')
        window.key('ctrl+d')
        resize(window, 1024, 640)
        point_at_camber(window)
        take(window, 'window-small.png')
        resize(window, 1600, 1000)
        window.scroll(window.handle(FRONT_MOUNT), 14, 14, 7)
        window.rest_pointer()
        take(window, 'sheet-zoomed.png')
    picture = PICTURES / 'export.png'
    run = command('plot', WREN, '--output', picture, '--setup', '12 in, 6 back',
                  '--width', 1200, '--height', 900)
    assert run.returncode == 0, run.stderr
    pack(picture)


main()
