# SPDX-License-Identifier: GPL-3.0-or-later
"""The question "Mount": the map over the tower, the plates on it, and the right side."""
import json
import re
import shutil
import time

from gtkdrive import sh, wait_for
from mount_page import HANDLE, HOLES, PLATE_FILES, RANKED, MountTest
from strutwright_window import DATA, main, shown_number, table_row

FIELDFARE = 'Fieldfare 2.5 touring saloon'


class Map(MountTest):
    def test_alt_3_and_the_menu_of_questions(self):
        window = self.open_page()
        self.assertEqual(window.state('question'), 'mount')
        self.assertEqual(self.words(window), 'Mount as measured: camber −0.40°, '
                                             'caster 4.23°')
        window.key('alt+1')
        wait_for('the curves', lambda: window.state('question') == 'travel')

    def test_the_drag_that_is_saved_is_what_the_kernel_solves(self):
        window = self.open_page()
        x, y = self.middle(window)
        window.drag_handle(HANDLE, -40, -25)
        inboard, rearward, up = wait_for('a moved mount', lambda: window.mount()[0]
                                         and window.mount())
        self.assertGreater(inboard, 1.0)
        self.assertGreater(rearward, 1.0)
        self.assertEqual(up, 0.0)
        wait_for('the handle below the pointer', lambda: all(
            abs(now - wanted) < 2 for now, wanted in zip(self.middle(window),
                                                         (x - 40, y - 25))))
        told = re.match(r'Mount (\S+) mm inboard, (\S+) mm rearward: camber (\S+)°, '
                        r'caster (\S+)°$', self.words(window))
        self.assertEqual((float(told[1]), float(told[2])), (inboard, rearward))
        self.assertEqual(self.saved(window)['mount'],
                         {'inboard_mm': inboard, 'rearward_mm': rearward, 'up_mm': 0})
        kernel = table_row(self.car, 0)
        self.assertAlmostEqual(shown_number(told[3]), kernel['camber_deg'], delta=0.00501)
        self.assertAlmostEqual(shown_number(told[4]), kernel['caster_deg'], delta=0.00501)
        window.key('ctrl+z')
        window.wait_mount(0.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_escape_during_the_drag_changes_nothing(self):
        window = self.open_page()
        window.drag_handle(HANDLE, -40, -25, keep=['Escape'])
        window.wait_mount(0.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_arrow_keys_on_the_handle(self):
        window = self.open_page()
        window.tab_to('slider', HANDLE)
        for key, inboard, rearward in (('Left', 0.5, 0.0), ('shift+Left', 5.5, 0.0),
                                       ('ctrl+Right', 5.4, 0.0), ('Up', 5.4, 0.5),
                                       ('shift+Down', 5.4, -4.5), ('Home', 0.0, 0.0)):
            window.key(key)
            window.wait_mount(inboard, rearward)

    def test_a_press_on_another_setups_marker_takes_it_in_hand(self):
        window = self.open_page()
        window.pick('12 in, 6 back')
        wait_for('its place', lambda: self.words(window).startswith('Mount 12.0 mm in'))
        self.wait_still(window)
        x, y = self.middle(window)
        window.pick('As measured')
        wait_for('its place', lambda: self.words(window).startswith('Mount as measured'))
        self.wait_still(window)
        left, top = self.middle(window)
        box = window.box(window.handle(HANDLE))
        window.click(window.handle(HANDLE), x - left + box.width / 2,
                     y - top + box.height / 2)
        window.wait_mount(12.0, 6.0)  # of the two that stand there the one on top
        self.assertNotEqual(window.in_hand(), 'As measured')
        self.assertFalse(window.is_enabled('undo'))

    def test_a_press_beside_the_handle_moves_nothing(self):
        window = self.open_page()
        x, y = (n / 2 for n in (window.box(window.handle(HANDLE)).width,) * 2)
        window.click(window.handle(HANDLE), x + 60, y + 60)
        time.sleep(0.3)
        self.assertEqual(window.mount(), (0.0, 0.0, 0.0))
        self.assertFalse(window.is_enabled('undo'))


class Plates(MountTest):
    def hole(self, i):
        hole = json.loads(PLATE_FILES[HOLES].read_text())['holes'][i]
        return hole['inboard_mm'], hole['rearward_mm']

    def raised(self):
        return json.loads(PLATE_FILES[HOLES].read_text()).get('raises_mm', 0.0)

    def test_keys_walk_the_holes_and_the_file_names_the_plate(self):
        window = self.open_page()
        self.take_plate(window, HOLES)
        window.tab_to('slider', HANDLE)
        window.key('Page_Down')
        window.wait_mount(*self.hole(1), self.raised())
        window.key('Page_Up')
        window.wait_mount(*self.hole(0), self.raised())
        window.key('Page_Up')
        window.wait_mount(*self.hole(2), self.raised())
        self.assertEqual(self.saved(window)['plate'], {'name': HOLES})

    def test_a_step_that_moves_the_baseline_is_told_of(self):
        told = 'This moves the baseline, “As measured”: the other setups are compared ' \
               'with it.'
        window = self.open_page()
        self.take_plate(window, HOLES)
        window.pick('12 in, 6 back')
        window.tab_to('slider', HANDLE)
        window.key('Page_Down')
        wait_for('a change', lambda: window.is_enabled('undo'))
        self.assertIsNone(window.message())
        window.pick('As measured')
        window.tab_to('slider', HANDLE)
        window.key('Page_Down')
        wait_for('the sentence', lambda: window.message() == told)
        window.activate('dismiss')
        wait_for('it to go', lambda: window.message() is None)
        window.key('Page_Down')  # once is enough
        window.wait_mount(*self.hole(2), self.raised())
        self.assertIsNone(window.message())

    def test_a_press_on_a_hole_puts_the_mount_there_in_one_step(self):
        window = self.open_page()
        self.take_plate(window, HOLES)
        window.tab_to('slider', HANDLE)
        window.key('Page_Down', 'Page_Down')
        window.wait_mount(*self.hole(2), self.raised())
        self.wait_still(window)  # the sentence about the baseline makes room for itself
        x, y = self.middle(window)
        window.key('Home')
        window.wait_mount(0.0)
        left, top = self.middle(window)
        box = window.box(window.handle(HANDLE))
        window.click(window.handle(HANDLE), x - left + box.width / 2,
                     y - top + box.height / 2)
        window.wait_mount(*self.hole(2), self.raised())
        window.key('ctrl+z')
        window.wait_mount(0.0)

    def test_a_drag_keeps_to_the_plate(self):
        window = self.open_page()
        self.take_plate(window, HOLES)
        window.drag_handle(HANDLE, -45, -8)
        mount = wait_for('a hole', lambda: window.mount() != (0.0, 0.0, 0.0)
                         and window.mount())
        self.assertIn(mount[:2], [self.hole(i) for i in range(3)])

    def test_a_mount_that_left_its_plate_is_told_of(self):
        window = self.open_page()
        self.take_plate(window, HOLES)
        window.tab_to('slider', HANDLE)
        window.key('Page_Down')
        window.wait_mount(*self.hole(1), self.raised())
        window.enter(window.get('spin button', 'Rearward'), '30')
        told = '“As measured” stands 30.0 mm off its plate.'
        wait_for(told, lambda: window.find('label', told))

    def test_the_plate_comes_with_the_setup_that_names_it(self):
        window = self.open_page()
        self.take_plate(window, HOLES)
        window.tab_to('slider', HANDLE)
        window.key('Page_Down')
        window.wait_mount(*self.hole(1), self.raised())
        window.save(self.car)
        window.key('ctrl+q')
        window.proc.wait(timeout=30)
        again = self.open_page()
        self.wait_plate(again, HOLES)


class Shelf(MountTest):
    def test_a_plate_beside_the_car_is_there_and_a_broken_one_is_told_of(self):
        plate = json.loads(PLATE_FILES[HOLES].read_text())
        plate['name'] = 'Workshop plate'
        (self.folder / 'own.swplate').write_text(json.dumps(plate))
        (self.folder / 'broken.swplate').write_text('{')
        window = self.open_page()
        self.assertIn('Workshop plate', [row.get_name() for row in self.rows(window)])
        self.assertIn('broken.swplate', wait_for('the sentence', window.message))


class RightSide(MountTest):
    def setUp(self):
        super().setUp()
        shutil.copy(DATA / 'fieldfare.swcar', self.car)

    def test_a_drag_on_the_right_is_the_right_sides_own(self):
        window = self.open_page(title=FIELDFARE)
        left = self.words(window)
        window.click(window.get('push button', 'Right'))
        wait_for('the right side', lambda: self.words(window) != left)
        window.drag_handle(HANDLE, -30, -12)
        wait_for('a change', lambda: window.is_enabled('undo'))
        setup = self.saved(window)
        self.assertEqual(setup['mount']['inboard_mm'], 0)
        self.assertGreater(setup['right']['inboard_mm'], 0.5)
        self.assertGreater(setup['right']['rearward_mm'], 0.5)

    def test_the_table_has_a_line_for_each_side(self):
        window = self.open_page(title=FIELDFARE)
        cells = self.cells(self.rows(window)[0])
        self.assertIn('left\nright', cells)
        self.assertEqual(len(cells[4].split('\n')), 2)


class OwnRightSide(MountTest):
    def test_a_setup_may_differ_on_a_car_that_does_not(self):
        window = self.open_page()
        self.assertIsNone(window.find('push button', 'Right'))
        window.tab_to('check box', 'Right side differs')
        window.key('space')
        window.click(window.get('push button', 'Right'))
        window.tab_to('spin button', 'Inboard, right side')
        window.key('ctrl+a')
        window.type('11')
        window.key('Return')
        wait_for('the right mount', lambda: self.words(window).startswith(
            'Mount 11.0 mm inboard'))
        self.assertEqual(window.mount(), (0.0, 0.0, 0.0))
        window.tab_to('check box', 'Right side differs', key='shift+Tab')
        window.key('space')
        wait_for('one side', lambda: window.find('push button', 'Right') is None)
        wait_for('the left mount', lambda: self.words(window).startswith(
            'Mount as measured'))


class SmallWindow(MountTest):
    def test_nothing_is_lost_at_1024_by_640(self):
        window = self.open_page()
        frame = window.get('frame')
        sh('xdotool', 'windowsize', window.win, 1024, 640)
        wait_for('the size', lambda: window.box(frame).width <= 1024
                 and window.box(frame).height <= 640)
        whole = window.box(frame)
        parts = [window.get(role, name) for role, name in (
            ('push button', 'Lines'), ('push button', 'Plate'), ('push button', 'Aims'),
            ('slider', HANDLE), ('page tab', 'Numbers'), ('push button', 'Fit This'),
            ('push button', 'Card…'), ('tree table', RANKED))]
        for part in parts:
            box = window.box(part)
            self.assertGreater(box.width, 10, part.get_name())
            self.assertGreaterEqual(box.x, 0, part.get_name())
            self.assertLessEqual(box.x + box.width, whole.width, part.get_name())
            self.assertLessEqual(box.y + box.height, whole.height, part.get_name())
        shown = [row for row in self.rows(window)
                 if window.box(row).y + window.box(row).height <= whole.height]
        self.assertGreaterEqual(len(shown), 3)


if __name__ == '__main__':
    main()
