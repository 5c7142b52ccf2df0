# SPDX-License-Identifier: GPL-3.0-or-later
"""The question "Mount": the map over the tower, plates, aims, the ranked table, the card."""
import json
import re
import shutil
import time

from gtkdrive import Atspi, sh, wait_for
from strutwright_window import DATA, WindowTest, command, main, shown_number, table_row

HANDLE = 'Upper mount, map'
HOLES = 'Three-hole camber plate'
RANKED = 'Ranked plates'
FIELDFARE = 'Fieldfare 2.5 touring saloon'
PLATE_FILES = {json.loads(path.read_text())['name']: path
               for path in (DATA / 'plates').glob('*.swplate')}


class MountTest(WindowTest):
    def open_page(self, *args, **named):
        window = self.open(*args, **named)
        window.key('alt+3')
        handle = window.handle(HANDLE)
        wait_for('the map', lambda: window.box(handle).x > 0)
        wait_for('the answers', lambda: self.rows(window))
        self.wait_still(window)
        return window

    def wait_still(self, window):
        """Until the handle keeps its place, so that a press meets it."""
        last = []

        def is_still():
            last.append(self.middle(window))
            time.sleep(0.1)
            return last[-3:] == [last[-1]] * 3
        wait_for('the handle to rest', is_still)

    @staticmethod
    def rows(window):
        """The plates in the table, best first."""
        table = window.find('tree table', RANKED)
        return [node for node in window.walk(table)
                if node.get_role_name() == 'table row' and node.get_description()]

    @staticmethod
    def cells(row):
        return [row.get_child_at_index(i).get_name()
                for i in range(row.get_child_count())]

    def take_plate(self, window, name):
        """In the menu beside the switcher, by its keys."""
        window.click(window.get('push button', 'Plate'))
        item = wait_for('the menu', lambda: next(
            (node for node in window.walk() if node.get_name() == name
             and 'menu item' in node.get_role_name()), None))
        wait_for('the menu to take the keys', window.focused)
        for _ in range(30):
            if window.has_focus(item):
                break
            window.key('Down')
            time.sleep(0.05)
        self.assertTrue(window.has_focus(item), 'never came to ' + name)
        window.key('Return')
        self.wait_plate(window, name)

    @staticmethod
    def wait_plate(window, name):
        wait_for(name + ' in hand', lambda: window.get(
            'push button', 'Plate').get_description() == name)

    def saved(self, window, setup=0):
        window.save(self.car)
        return json.loads(self.car.read_text())['setups'][setup]

    @staticmethod
    def middle(window):
        box = window.box(window.handle(HANDLE))
        return box.x + box.width / 2, box.y + box.height / 2

    def words(self, window):
        return window.handle(HANDLE).get_description()


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

    def test_a_press_on_a_hole_puts_the_mount_there_in_one_step(self):
        window = self.open_page()
        self.take_plate(window, HOLES)
        window.tab_to('slider', HANDLE)
        window.key('Page_Down', 'Page_Down')
        window.wait_mount(*self.hole(2), self.raised())
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


class Aims(MountTest):
    def open_aims(self, window):
        window.click(window.get('push button', 'Aims'))
        check = window.get('check box', 'Camber')
        wait_for('the panel to take the keys', window.focused)
        return check

    @staticmethod
    def close_aims(window):
        window.key('Escape')
        wait_for('the button to have the keys again', lambda: window.focused()
                 and window.focused().get_name() == 'Aims…')

    def targets(self, window):
        window.save(self.car)
        car = json.loads(self.car.read_text())
        return {target['aim']: target for target in car.get('targets', [])}

    def test_a_range_is_typed_stepped_and_opened(self):
        window = self.open_page()
        self.open_aims(window)
        window.tab_to('spin button', 'Caster trail, at least')
        window.type('21')
        window.key('Tab')
        window.tab_to('spin button', 'Camber, at most', key='shift+Tab')
        window.key('ctrl+a', 'Delete', 'Tab')
        self.close_aims(window)
        targets = self.targets(window)
        self.assertEqual(targets['trail']['least'], 21)
        self.assertIsNone(targets['trail'].get('most'))
        self.assertIsNone(targets['camber'].get('most'))
        window.key('ctrl+z', 'ctrl+z')
        wait_for('nothing to undo', lambda: not window.is_enabled('undo'))

    def test_a_check_box_starts_from_what_the_car_has(self):
        window = self.open_page()
        self.open_aims(window)
        window.tab_to('check box', 'Steering-axis inclination')
        window.key('space')
        wait_for('a change', lambda: window.is_enabled('undo'))
        window.key('space')
        window.key('space')
        self.close_aims(window)
        sai = self.targets(window)['sai']
        kernel = table_row(self.car, 0)['sai_deg']
        self.assertLess(sai['least'], kernel)
        self.assertGreater(sai['most'], kernel)

    def test_the_sentence_and_the_table_follow(self):
        window = self.open_page()
        before = [self.cells(row) for row in self.rows(window)]
        self.open_aims(window)
        window.tab_to('spin button', 'Camber, at least')
        window.key('ctrl+a')
        window.type('-1')
        window.key('Tab')
        window.key('ctrl+a')
        window.type('-0.8')
        window.key('Tab')
        self.close_aims(window)
        wait_for('the sentence', lambda: window.find('label', None) and any(
            node.get_name().startswith('Camber −1.00 to −0.80°')
            for node in window.walk() if node.get_role_name() == 'label'))
        wait_for('other answers', lambda: [self.cells(row) for row in self.rows(window)]
                 != before)

    def test_a_limit_is_the_cars(self):
        window = self.open_page()
        self.open_aims(window)
        window.tab_to('page tab', 'Limits and Parts')
        window.key('space')
        window.tab_to('spin button', 'Tyre to strut, at least')
        window.key('ctrl+a')
        window.type('7.5')
        window.key('Tab')
        self.close_aims(window)
        window.save(self.car)
        limits = json.loads(self.car.read_text())['limits']
        self.assertEqual(limits['tyre_clearance_mm'], 7.5)


class Table(MountTest):
    def best(self):
        run = command('choose', self.car, '--plates', *PLATE_FILES.values(), '--format',
                      'json')
        self.assertEqual(run.returncode, 0, run.stderr)
        return json.loads(run.stdout)['answers'][0]

    def test_the_first_row_is_the_command_lines_best(self):
        window = self.open_page()
        best, row = self.best(), self.rows(window)[0]
        self.assertEqual(row.get_name(), best['plate'])
        self.assertEqual(row.get_description(), best['verdict'])
        cells = self.cells(row)
        self.assertIn('%.2f' % best['sides'][0]['caster_deg'], cells)

    def test_fit_makes_a_setup_and_undo_takes_it_away(self):
        window = self.open_page()
        before = window.setups()
        row = self.rows(window)[0]
        name = row.get_name()
        window.click(row, 20, 15)
        self.wait_plate(window, name)
        window.click(window.get('push button', 'Fit This'))
        window.wait_in_hand(name)
        window.wait_setups(*before, name)
        setup = self.saved(window, -1)
        self.assertEqual(setup['plate']['name'], name)
        place = self.best()['sides'][0]
        self.assertAlmostEqual(setup['mount']['inboard_mm'], place['inboard_mm'], delta=1e-9)
        self.assertAlmostEqual(setup['mount']['rearward_mm'], place['rearward_mm'],
                               delta=1e-9)
        window.key('ctrl+z')
        window.wait_setups(*before)

    def test_return_on_a_row_fits_it(self):
        window = self.open_page()
        names = [row.get_name() for row in self.rows(window)]
        window.click(self.rows(window)[0], 20, 15)
        self.wait_plate(window, names[0])
        window.key('Down')
        self.wait_plate(window, names[1])
        window.key('Return')
        window.wait_in_hand(names[1])

    def test_the_switch_shows_the_numbers(self):
        window = self.open_page()
        window.click(window.get('page tab', 'Numbers'))
        wait_for('the numbers', lambda: window.box(window.get(
            'image', 'Numbers at the travel in hand')).height > 50)
        window.click(window.get('page tab', 'Plates'))
        wait_for('the table', lambda: self.rows(window)
                 and window.box(self.rows(window)[0]).height > 10)
        window.key('alt+1')
        wait_for('the numbers again', lambda: window.box(window.get(
            'image', 'Numbers at the travel in hand')).height > 50)


class Card(MountTest):
    def test_saved_as_pdf(self):
        window = self.open_page()
        row = self.rows(window)[0]
        window.click(row, 20, 15)
        self.wait_plate(window, row.get_name())
        window.click(window.get('push button', 'Card…'))
        dialog = window.wait_other_window()
        wait_for('the page', lambda: window.box(
            window.get('image', 'Fitting card')).width > 300)
        page = self.folder / 'card'
        with window.inside(dialog, 'Fitting card'):
            window.click(window.get('push button', 'Save as PDF…'))
        window.in_dialog(page, dialog)
        written = wait_for('the file', lambda: page.with_suffix('.pdf').exists()
                           and page.with_suffix('.pdf').read_bytes())
        self.assertTrue(written.startswith(b'%PDF-'))
        box = re.search(rb'/MediaBox \[ *0 0 ([0-9.]+) ([0-9.]+)', written)
        self.assertAlmostEqual(float(box[1]), 595.276, delta=0.01)  # A4, ISO 216
        self.assertAlmostEqual(float(box[2]), 841.890, delta=0.01)

    def test_escape_closes_it(self):
        window = self.open_page()
        row = self.rows(window)[0]
        window.click(row, 20, 15)
        self.wait_plate(window, row.get_name())
        window.click(window.get('push button', 'Card…'))
        dialog = window.wait_other_window()
        window.key('Escape')
        window.wait_gone(dialog)


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


class KeysAlone(MountTest):
    def test_from_aims_to_the_card(self):
        window = self.open_page()
        window.tab_to('push button', 'Aims…')
        window.key('space')
        window.get('check box', 'Camber')
        wait_for('the panel', lambda: window.focused().get_role_name() == 'page tab')
        window.tab_to('check box', 'Caster trail')
        window.key('space')
        wait_for('a change', lambda: window.is_enabled('undo'))
        window.key('Escape')
        window.tab_to('table row', self.rows(window)[0].get_name())
        window.key('Return')
        window.wait_in_hand(self.rows(window)[0].get_name())
        window.tab_to('push button', 'Card…', key='shift+Tab')
        window.key('space')
        dialog = window.wait_other_window()
        wait_for('the page', lambda: window.box(
            window.get('image', 'Fitting card')).width > 300)
        page = self.folder / 'card.pdf'
        window.key('Return')
        window.in_dialog(page, dialog)
        wait_for('the file', page.exists)


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
