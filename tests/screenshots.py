# SPDX-License-Identifier: GPL-3.0-or-later
"""Make the pictures in screenshots/ from the real window. Run by hand, from the root:

    tests/with-display --wm openbox --compositor /usr/bin/python3 tests/screenshots.py

with the program built in .build/release, or in the folder named as the first argument;
the pictures go to the folder named as the second, if there is one.
The pictures repeat to the pixel on one machine. Needs what the window's tests need, and
picom; imagemagick packs them.
"""
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parent.parent
BUILD = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / '.build/release').resolve()
os.environ.update(STRUTWRIGHT=str(BUILD / 'src/command-line/strutwright'),
                  STRUTWRIGHT_WINDOW=str(BUILD / 'src/window/strutwright-window'),
                  GSETTINGS_SCHEMA_DIR=str(BUILD / 'data'),
                  STRUTWRIGHT_DATADIR=str(ROOT / 'data'),
                  STRUTWRIGHT_LOCALEDIR=str(BUILD / 'po'), LC_ALL='C.UTF-8')
sys.path[:0] = [str(ROOT / 'tests'), str(ROOT / 'tests/window')]

from gtkdrive import sh, wait_for  # noqa: E402
from strutwright_window import DATA, FRONT_MOUNT, NUMBERS, Window, command  # noqa: E402

PICTURES = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else ROOT / 'screenshots')
WREN = DATA / 'wren.swcar'
FIELDFARE = DATA / 'fieldfare.swcar'
DUNNOCK = DATA / 'dunnock.swcar'
MOST_BYTES = 250_000


def pack(picture):
    """Without dates, in 256 colours: no difference to the eye on drawings like these."""
    subprocess.run(['convert', picture, '-strip', '+dither', '-colors', '256',
                    '-define', 'png:exclude-chunks=date,time',
                    '-define', 'png:compression-level=9', 'PNG8:%s' % picture], check=True)
    assert picture.stat().st_size < MOST_BYTES, picture


def settle(picture, shoot):
    """Once two pictures in a row are the same."""
    last = None
    while True:
        shoot()
        now = sh('identify', '-format', '%#', picture)
        if now == last:
            break
        last = now
        time.sleep(0.2)
    pack(picture)
    return picture


def take(window, name):
    """The inside of the window."""
    picture = PICTURES / name
    left, top = window.origin()

    def shoot():
        window.screenshot(picture)
        sh('mogrify', '-shave', '%dx%d' % (left, top), '+repage', picture)
    return settle(picture, shoot)


def take_all(window_id, name):
    """A window that fills the screen, at the size of a projector."""
    picture = PICTURES / name

    def shoot():
        sh('import', '-window', window_id, picture)
        sh('mogrify', '-resize', '1280x', '+repage', picture)
    return settle(picture, shoot)


def resize(window, width, height):
    left, top = window.origin()
    sh('xdotool', 'windowsize', window.win, width + 2 * left, height + 2 * top)
    wait_for('the size', lambda: window.box(window.get('frame')).width == width)
    window.rest_pointer()


def six_setups(folder):
    """A car file of six, each further from the measured car than the one before."""
    car = json.loads(WREN.read_text())
    like = car['setups'][0]
    for name, inboard, lowering, toe, spacer in (
            ('Lowered 15', 0, 15, 'reset', 0), ('Lowered 30', 0, 30, 'reset', 0),
            ('Lowered 30, spacer', 12, 30, 'reset', 25)):
        car['setups'].append({**like, 'name': name, 'lowering_mm': lowering, 'toe': toe,
                              'mount': {**like['mount'], 'inboard_mm': inboard},
                              'corrections': {'ball_joint_spacer_mm': spacer}})
    path = pathlib.Path(folder) / 'wren.swcar'
    path.write_text(json.dumps(car))
    return path


def setups_and_height(car):
    """Six setups on every curve, the page on ride height, the instructor's mode."""
    with Window(car) as window:
        resize(window, 1600, 1000)
        window.pick('Lowered 30')
        window.key('ctrl+t')
        wait_for('side by side', lambda: window.state('side-by-side'))
        window.rest_pointer()
        take(window, 'setups.png')
        window.key('alt+2')
        wait_for('the page', lambda: window.state('question') == 'height')
        take(window, 'height.png')
        window.key('ctrl+d')
        wait_for('dark', lambda: window.state('dark', 0))
        take(window, 'height-dark.png')
        window.key('ctrl+d')
        wait_for('light', lambda: not window.state('dark', 0))
        window.key('F5')
        lecture = window.wait_other_window()
        picture = window.get('image', 'How the roll centre is constructed')
        for _ in range(5):
            told = picture.get_description()
            window.key('Right')
            wait_for('the next step', lambda: picture.get_description() != told)
        sh('xdotool', 'mousemove', 5, 5)
        take_all(lecture, 'instructor.png')
        window.key('Escape')
        window.wait_gone(lecture)


def mount_and_card():
    """The map over the tower with its ranked plates, and the page to fit the best by."""
    with Window(FIELDFARE, title='Fieldfare 2.5 touring saloon') as window:
        resize(window, 1600, 1000)
        window.key('alt+3')
        row = wait_for('the answers', lambda: next(
            (node for node in window.walk(window.find('tree table', 'Ranked plates'))
             if node.get_role_name() == 'table row' and node.get_description()), None))
        window.click(row, 20, 15)
        window.rest_pointer()
        take(window, 'mount.png')
        window.key('ctrl+d')
        wait_for('dark', lambda: window.state('dark', 0))
        take(window, 'mount-dark.png')
        window.key('ctrl+d')
        resize(window, 1024, 640)
        take(window, 'mount-small.png')
    picture = PICTURES / 'card.png'
    run = command('choose', FIELDFARE, '--card', picture)
    assert run.returncode == 0, run.stderr
    sh('mogrify', '-resize', '900x', '+repage', picture)
    pack(picture)


def springs_and_loads():
    """What a corner stands on, and where the load goes."""
    with Window(DUNNOCK, title='Dunnock 1.4 sports coupé') as window:
        resize(window, 1600, 1000)
        for key, name in (('alt+4', 'springs'), ('alt+5', 'loads')):
            window.key(key)
            wait_for(name, lambda name=name: window.state('question') == name)
            window.rest_pointer()
            take(window, name + '.png')
            window.key('ctrl+d')
            wait_for('dark', lambda: window.state('dark', 0))
            take(window, name + '-dark.png')
            window.key('ctrl+d')
            wait_for('light', lambda: not window.state('dark', 0))
            resize(window, 1024, 640)
            take(window, name + '-small.png')
            resize(window, 1600, 1000)


def new_car():
    """The form for a car that was just measured."""
    with Window(WREN) as window:
        window.activate('measured-points')
        form = window.wait_other_window()
        sh('xdotool', 'mousemove', 5, 5)
        picture = PICTURES / 'measured.png'
        settle(picture, lambda: sh('import', '-window', form, picture))
        window.key('Escape')
        window.wait_gone(form)


def point_at_camber(window):
    """Lights it on sheet, curves and table; the pointer itself is not in the picture."""
    place = window.at(window.get('image', NUMBERS), 100, 30)
    sh('xdotool', 'mousemove', '--window', window.win, *place)


def main():
    PICTURES.mkdir(exist_ok=True)
    with Window(WREN) as window:
        window.pick('12 in, 6 back')
        window.wait_mount(12.0, 6.0)
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
    with tempfile.TemporaryDirectory() as folder:
        setups_and_height(six_setups(folder))
    mount_and_card()
    springs_and_loads()
    new_car()
    picture = PICTURES / 'export.png'
    run = command('plot', WREN, '--output', picture, '--setup', '12 in, 6 back',
                  '--width', 1200, '--height', 900)
    assert run.returncode == 0, run.stderr
    pack(picture)


main()
