# SPDX-License-Identifier: GPL-3.0-or-later
"""The window as a desktop for other eyes and hands asks for it, with real input.

The parts that need no person are in test-eyes-parts.c.
"""
import collections
import os
import pathlib
import re
import tempfile

from gtkdrive import sh, wait_for
from mount_page import HANDLE, MountTest
from strutwright_window import (CURVES, DATA, FRONT_MOUNT, SIDE_MOUNT, TRAVEL, WindowTest,
                                main, shown_number, table_row)

SHEET = 'Sheet: front, side and plan view of the corner'
SMALL = 1024, 640


def colours(window, node):
    """How many pixels of each colour that part of the window shows."""
    box, (left, top) = window.box(node), window.origin()
    shown = sh('import', '-window', window.win, '-crop',
               '%dx%d+%d+%d' % (box.width, box.height, left + box.x, top + box.y),
               '-format', '%c', 'histogram:info:-')
    found = re.findall(r'^ *(\d+): .*?(#[0-9A-F]{6})', shown, re.MULTILINE)
    return collections.Counter({colour: int(n) for n, colour in found})


class EyesTest(WindowTest):
    def set_environment(self, **values):
        for name, value in values.items():
            before = os.environ.get(name)
            os.environ[name] = value
            self.addCleanup(self.put_back, name, before)

    @staticmethod
    def put_back(name, value):
        if value is None:
            del os.environ[name]
        else:
            os.environ[name] = value

    def use_settings(self, *lines):
        """What the desktop's own settings would say."""
        folder = tempfile.TemporaryDirectory(prefix='strutwright-')
        self.addCleanup(folder.cleanup)
        place = pathlib.Path(folder.name) / 'gtk-4.0'
        place.mkdir()
        (place / 'settings.ini').write_text('\n'.join(
            ('[Settings]', 'gtk-enable-animations=0', 'gtk-cursor-blink=0', *lines)))
        self.set_environment(XDG_CONFIG_HOME=folder.name)


class RightToLeft(EyesTest, MountTest):
    def open(self):
        self.set_environment(GTK_DEBUG='invert-text-dir')
        return super().open()

    def test_handles_and_clicks_meet_their_places(self):
        window = self.open()
        sheet = window.box(window.get('panel', SHEET))
        self.assertGreater(window.box(window.get('list', 'Setups')).x,
                           sheet.x + sheet.width)
        self.assertLess(window.box(window.get('image', CURVES)).x, sheet.x)

        # the centre of the car is on the left of the front view, the front on the right of
        # the side view, in every language
        window.drag_handle(FRONT_MOUNT, -20, 0)
        inboard = wait_for('a mount moved inboard', lambda: max(window.mount()[0], 0))
        window.drag_handle(SIDE_MOUNT, -15, 0)
        wait_for('a mount moved back', lambda: window.mount()[1] > 0)
        window.key('alt+3')
        wait_for('the map', lambda: window.box(window.handle(HANDLE)).x > 0)
        self.wait_still(window)
        window.drag_handle(HANDLE, -30, 0)
        wait_for('a mount further inboard', lambda: window.mount()[0] > inboard)

    def test_travel_runs_as_the_curves_do(self):
        window = self.open()
        curves = window.get('image', CURVES)
        box = window.box(curves)
        window.click(curves, 0.4 * box.width, 0.2 * box.height)
        wait_for('bump on the right', lambda: window.travel() > 5)
        window.click(curves, 0.15 * box.width, 0.2 * box.height)
        wait_for('droop on the left', lambda: window.travel() < -5)
        scale = window.get('slider', TRAVEL)
        window.click(scale, 0.9 * window.box(scale).width)
        wait_for('bump on the right of the slider', lambda: window.travel() > 5)


class Words(EyesTest):
    def test_curves_are_a_table_too(self):
        window = self.open()
        window.key('ctrl+shift+t')
        other = window.wait_other_window()
        table = window.get('tree table', 'Curves as a Table')

        def row(name):
            return next((node for node in window.walk(table)
                         if node.get_role_name() == 'table row'
                         and node.get_name() == name), None)

        def texts(of):
            return [of.get_child_at_index(i).get_name()
                    for i in range(of.get_child_count())]
        heads = wait_for('the heads', lambda: next(
            (texts(node) for node in window.walk(table)
             if node.get_child_count() > 2
             and node.get_child_at_index(0).get_name() == 'Wheel travel mm'), None))
        for travel in (0, 4):
            cells = wait_for('the row', lambda travel=travel: row('%.1f' % travel))
            cells = texts(cells)
            printed = table_row(self.car, travel)
            for head, key, digits in (('Camber °', 'camber_deg', 2),
                                      ('Caster °', 'caster_deg', 2)):
                self.assertAlmostEqual(shown_number(cells[heads.index(head)]),
                                       printed[key], delta=0.51 * 10 ** -digits)
        window.key('Escape')
        window.wait_gone(other)

    def test_each_drawing_says_what_it_shows(self):
        window = self.open(DATA / 'dunnock.swcar', title='Dunnock 1.4 sports coupé')
        window.key('alt+2')
        lowering = window.get('image', 'Roll centre against lowering')
        wait_for('the roll centre in words', lambda: 'roll centre'
                 in lowering.get_description())
        window.key('alt+4')
        springs = window.get('image', 'What carries the wheel through its travel')
        said = wait_for('the springs in words', springs.get_description)
        self.assertRegex(said, r'^Wheel load: 2\d{3} N at wheel travel 0\.0 mm\. '
                         r'Wheel rate: \d+\.\d\d N/mm')
        window.key('alt+5')
        loads = window.get('image', 'Loads on tower and floor, and the rod')
        wait_for('the loads in words', lambda: loads.get_description()
                 .startswith('Standing: '))
        joints = window.get('table', 'Forces at the joints')
        self.assertIn('Road on tyre', [node.get_name() for node in window.walk(joints)])


class HighContrast(EyesTest):
    def test_drawings_are_black_and_white_and_dark_turns_them(self):
        self.use_settings('gtk-theme-name=HighContrast')
        window = self.open()
        window.rest_pointer()
        sheet = window.get('panel', SHEET)
        self.assertEqual(colours(window, sheet).most_common(1)[0][0], '#FFFFFF')
        self.assertGreater(colours(window, sheet)['#000000'], 500)
        window.key('ctrl+d')
        wait_for('white on black', lambda: colours(window, sheet).most_common(1)[0][0]
                 == '#000000')
        self.assertGreater(colours(window, sheet)['#FFFFFF'], 500)
        window.key('ctrl+d')
        wait_for('black on white', lambda: colours(window, sheet).most_common(1)[0][0]
                 == '#FFFFFF')


class LargeText(EyesTest):
    def setUp(self):
        super().setUp()
        sh('xprop', '-root', '-f', 'RESOURCE_MANAGER', '8s',
           '-set', 'RESOURCE_MANAGER', 'Xft.dpi:\t192\n')
        self.addCleanup(sh, 'xprop', '-root', '-remove', 'RESOURCE_MANAGER')

    def test_a_small_window_shows_whatever_has_the_keys(self):
        window = self.open()
        left, top = window.origin()
        sh('xdotool', 'windowsize', window.win, SMALL[0] + 2 * left, SMALL[1] + 2 * top)
        frame = window.get('frame')
        wait_for('the small window', lambda: (window.box(frame).width,
                                              window.box(frame).height) == SMALL)
        window.rest_pointer()
        entry = window.tab_to('spin button', 'Lowered by')

        def is_seen():
            box = window.box(entry)
            return (box.x >= 0 and box.y >= 0 and box.x + box.width <= SMALL[0]
                    and box.y + box.height <= SMALL[1])
        wait_for('the entry in sight', is_seen)

        curves = window.tab_to('image', CURVES)
        page = curves.get_parent().get_parent()
        self.assertEqual(page.get_role_name(), 'scroll pane')

        def is_mostly_seen():  # it is as high as the window, and scrolls
            box = window.box(page)
            seen = min(box.y + box.height, SMALL[1]) - max(box.y, 0)
            return (box.x >= 0 and box.x + box.width <= SMALL[0]
                    and seen > 0.75 * min(box.height, SMALL[1]))
        wait_for('the curves in sight', is_mostly_seen)

        # each curve comes into sight as the keys walk to it
        for _ in range(7):
            window.key('Down')
        wait_for('the page to scroll', lambda: window.box(curves).y
                 < window.box(page).y - window.box(page).height / 2)


if __name__ == '__main__':
    main()
