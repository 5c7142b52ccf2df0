# SPDX-License-Identifier: GPL-3.0-or-later
"""The export window, and the whole way to a picture by mouse and by keys alone."""
import datetime
import json
import struct
import time
import zlib

from gtkdrive import sh, wait_for
from strutwright_window import (CURVES, FRONT_MOUNT, NUMBERS, PLAN_MOUNT, SIDE_MOUNT,
                                TRAVEL, WindowTest, command, main)


def read_png(path):
    """(width, height, number of different bytes in its pixels) of a PNG."""
    data = path.read_bytes()
    assert data[:8] == b'\x89PNG\r\n\x1a\n'
    width, height = struct.unpack('>II', data[16:24])
    at, packed = 8, b''
    while at < len(data):
        length, kind = struct.unpack('>I4s', data[at:at + 8])
        if kind == b'IDAT':
            packed += data[at + 8:at + 8 + length]
        at += length + 12
    return width, height, len(set(zlib.decompress(packed)))


class Export(WindowTest):
    def open_export(self, window):
        window.key('ctrl+e')
        dialog = window.wait_other_window()
        wait_for('its parts', lambda: window.box(window.get('image', 'Preview')).width)
        return dialog

    def set_size(self, window, dialog, width, height):
        with window.inside(dialog, 'Export'):
            self.enter_pixels(window, 'Width', width)
            self.enter_pixels(window, 'Height', height)
            window.click(window.get('push button', 'Save…'))

    @staticmethod
    def enter_pixels(window, name, pixels):
        """Again where a busy machine lost the key that selects what stood there."""
        spin = window.get('spin button', name)
        for _ in range(4):
            window.enter(spin, str(pixels))
            try:
                return wait_for(name, lambda: window.value(spin) == pixels, timeout=4)
            except AssertionError:
                continue
        raise AssertionError('%s is %s' % (name, window.value(spin)))

    def test_a_png_of_the_asked_size_that_is_not_blank(self):
        window = self.open()
        picture = self.folder / 'curves.png'
        dialog = self.open_export(window)
        self.set_size(window, dialog, 900, 700)
        window.in_dialog(picture, dialog)
        wait_for('the picture', picture.exists)
        width, height, n_different = read_png(picture)
        self.assertEqual((width, height), (900, 700))
        self.assertGreater(n_different, 50)

    def test_the_mount_map_as_a_picture(self):
        window = self.open()
        picture = self.folder / 'map.png'
        dialog = self.open_export(window)
        self.choose(window, dialog, 'What to export', 2)
        self.set_size(window, dialog, 900, 700)
        window.in_dialog(picture, dialog)
        wait_for('the picture', picture.exists)
        width, height, n_different = read_png(picture)
        self.assertEqual((width, height), (900, 700))
        self.assertGreater(n_different, 50)

    def test_it_begins_with_the_question_in_hand(self):
        """And gives what the command line gives, to the byte."""
        car = json.loads(self.car.read_text())
        car['springs'] = {'coil': {'rate_n_per_mm': 25, 'free_length_mm': 340,
                                   'perch_mm': 140, 'upper_drop_mm': 40}}
        self.car.write_text(json.dumps(car))
        for key, question, view in (('alt+2', 'height', 'lowering'),
                                    ('alt+3', 'mount', 'mount'),
                                    ('alt+4', 'springs', 'springs'),
                                    ('alt+5', 'loads', 'loads')):
            window = self.open()
            window.key(key)
            wait_for('the page', lambda name=question, now=window:
                     now.state('question') == name)
            picture = self.folder / (view + '.png')
            dialog = self.open_export(window)
            self.set_size(window, dialog, 900, 700)
            window.in_dialog(picture, dialog)
            wait_for('the picture', picture.exists)
            like = self.folder / 'like.png'
            setups = [word for name in ('12 in, 6 back', 'Plate, 20 lower, toe reset',
                                        'As measured') for word in ('--setup', name)]
            run = command('plot', self.car, '--view', view, '--output', like, *setups,
                          '--width', 900, '--height', 700, '--date',
                          datetime.date.today().isoformat())
            self.assertEqual(run.returncode, 0, run.stderr)
            self.assertEqual(picture.read_bytes(), like.read_bytes(), view)
            window.key('ctrl+q')
            window.proc.wait(timeout=30)

    def choose(self, window, dialog, name, downs):
        with window.inside(dialog, 'Export'):
            window.click(window.get('combo box', name))
        time.sleep(0.2)  # the list takes the keys
        window.key(*['Down'] * downs, 'Return')

    def test_the_sheet_as_svg(self):
        window = self.open()
        drawing = self.folder / 'sheet'
        dialog = self.open_export(window)
        self.choose(window, dialog, 'What to export', 1)
        self.choose(window, dialog, 'Format', 1)
        self.set_size(window, dialog, 800, 600)
        window.in_dialog(drawing, dialog)
        drawing = drawing.with_suffix('.svg')  # the suffix is the program's to add
        wait_for('the drawing', drawing.exists)
        self.assertIn('<svg', drawing.read_text()[:400])


class KeysAlone(WindowTest):
    def test_tab_reaches_everything_and_a_picture_comes_out(self):
        window = self.open()
        sh('xdotool', 'mousemove', 5, 5)  # out of the window, and never again
        for role, name in (('spin button', 'Inboard'), ('spin button', 'Rearward'),
                           ('spin button', 'Up'), ('check box', 'As moved'),
                           ('spin button', 'Lowered by'), ('slider', FRONT_MOUNT),
                           ('slider', SIDE_MOUNT), ('slider', PLAN_MOUNT),
                           ('slider', TRAVEL), ('image', CURVES), ('image', NUMBERS)):
            window.tab_to(role, name)

        window.tab_to('slider', FRONT_MOUNT)
        window.key('shift+Left', 'shift+Left')
        window.wait_mount(10.0)
        window.tab_to('image', NUMBERS)
        window.key('Down')
        wait_for('camber', lambda: window.find('image', NUMBERS).get_description()
                 .startswith('Camber: measured car −0.40, this setup −'))

        window.key('ctrl+e')
        dialog = window.wait_other_window()
        window.tab_to('spin button', 'Width')
        window.key('ctrl+a')
        window.type('640')
        window.tab_to('spin button', 'Height')
        window.key('ctrl+a')
        window.type('480')
        window.tab_to('push button', 'Save…')
        window.key('Return')
        picture = self.folder / 'keys.png'
        window.in_dialog(picture, dialog)
        wait_for('the picture', picture.exists)
        self.assertEqual(read_png(picture)[:2], (640, 480))

    def test_mnemonics_and_menu_by_keys(self):
        window = self.open()
        window.key('alt+i')
        wait_for('inboard', lambda: window.focused().get_name() == 'Inboard')
        window.key('F10')
        wait_for('the keys in the menu', lambda: window.focused()
                 and window.focused().get_role_name() == 'menu item')
        window.key('Escape')
        wait_for('no menu', lambda: not window.find('menu item', 'Cautions'))
        window.key('F9')
        wait_for('no panel', lambda: not window.state('panel'))
        window.key('ctrl+d')
        wait_for('dark', lambda: window.state('dark', 0))
        for _ in range(2):
            window.key('F1')
            help_window = window.wait_other_window()
            window.key('Escape')
            window.wait_gone(help_window)


if __name__ == '__main__':
    main()
