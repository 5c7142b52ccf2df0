# SPDX-License-Identifier: GPL-3.0-or-later
"""The question "Loads": the wheel where a case puts it, its forces, and the cases."""
import json
import math
import pathlib
import subprocess
import sys

from gtkdrive import sh, wait_for
from strutwright_window import FRONT_WHEEL, WindowTest, command, main, shown_number

BOARD = 'Loads on tower and floor, and the rod'
TABLE = 'Forces at the joints'
OTHER = '12 in, 6 back'
CASES = ['Standing', 'Cornering, outer wheel', 'Cornering, inner wheel', 'Braking', 'Bump',
         'Pothole', 'Braking into a bumpy bend']
SPRINGS = {'torsion_bar': {'sections': [{'outer_mm': 21, 'inner_mm': 0, 'length_mm': 800}],
                           'clamp_angle_deg': 20},
           'anti_roll_bar': {'rate_n_per_mm': 12},
           'bump_stop': {'gap_mm': 40, 'table': [[0, 0], [10, 300], [30, 4000]]}}
ROD = {'rod_diameter_mm': 20, 'guide_height_mm': 325, 'piston_drop_mm': 520}


class LoadsTest(WindowTest):
    def setUp(self):
        super().setUp()
        self.change_car(lambda car: (car.update(springs=SPRINGS),
                                     car['strut'].update(ROD)))

    def change_car(self, change):
        car = json.loads(self.car.read_text())
        change(car)
        self.car.write_text(json.dumps(car))

    def open_page(self):
        window = self.open()
        window.key('alt+5')
        board = window.get('image', BOARD)
        wait_for('the board', lambda: window.box(board).width > 0)
        wait_for('what it says', board.get_description)
        return window, board

    def loads(self, name, *args):
        """What the command line has of that case, from the file."""
        run = command('loads', self.car, '--case', name, '--format', 'json', *args)
        self.assertEqual(run.returncode, 0, run.stderr)
        return json.loads(run.stdout)

    def wait_case(self, board, name):
        try:
            wait_for(name, lambda: board.get_description().startswith(name + ':'))
        except AssertionError:
            raise AssertionError('%r, not %r' % (board.get_description(), name)) from None

    def wait_travel(self, window, travel):
        try:
            wait_for('travel', lambda: abs(window.travel() - travel) < 1e-6)
        except AssertionError:
            raise AssertionError('%g, not %g' % (window.travel(), travel)) from None

    @staticmethod
    def pasted():
        paste = [sys.executable, pathlib.Path(__file__).with_name('clipboard.py')]
        return subprocess.run(paste, text=True, timeout=60, stdout=subprocess.PIPE).stdout

    @staticmethod
    def drop_down(window, name):
        return window.get('combo box', name)

    def choose_case(self, window, steps):
        """By keys, from the case in hand on."""
        window.tab_to('push button', 'Load case')
        window.key('space')
        for _ in range(steps):
            window.key('Down')
        window.key('Return')

    @staticmethod
    def cell(window, name, column):
        """Of the row @name of the table: 0 its name, 1 unit, 2 baseline, 3 size, 4 …"""
        label = next(node for node in window.walk() if node.get_role_name() == 'label'
                     and node.get_name() == name)
        row = label.get_parent()
        at = next(i for i in range(row.get_child_count())
                  if row.get_child_at_index(i) == label)
        return row.get_child_at_index(at + column).get_name()


class Question(LoadsTest):
    def test_the_wheel_goes_where_the_case_puts_it(self):
        window, board = self.open_page()
        self.wait_travel(window, self.loads('Standing')['wheel_travel_mm'])
        window.key('alt+1')  # other pages have the user's own travel
        self.wait_travel(window, 0.0)
        window.key('alt+5')
        self.wait_travel(window, self.loads('Standing')['wheel_travel_mm'])
        self.choose_case(window, 1)
        self.wait_case(board, CASES[1])
        outer = self.loads(CASES[1])['wheel_travel_mm']
        self.wait_travel(window, outer)
        self.assertGreater(outer, self.loads('Standing')['wheel_travel_mm'] + 3.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_a_case_by_mouse_and_arrows(self):
        window, board = self.open_page()
        window.click(self.drop_down(window, 'Load case'))
        window.key('Down', 'Down', 'Down', 'Return')
        self.wait_case(board, 'Braking')
        self.wait_travel(window, self.loads('Braking')['wheel_travel_mm'])

    def test_what_carries_is_chosen(self):
        window, board = self.open_page()
        window.pick(OTHER)
        window.tab_to('push button', 'What carries the load')
        window.key('space', 'Down', 'Return')
        coil = self.loads('Standing', '--setup', OTHER, '--spring', 'coil')
        wait_for('the coil', lambda: shown_number(
            self.cell(window, 'Along the strut', 3)) == round(coil['axial_n']))
        self.wait_travel(window, 0.0)

    def test_table_has_what_the_command_line_prints(self):
        window, board = self.open_page()
        window.pick(OTHER)
        self.choose_case(window, 1)
        self.wait_case(board, CASES[1])
        loads = self.loads(CASES[1], '--setup', OTHER)
        was = self.loads(CASES[1])
        wait_for('the table', lambda: shown_number(
            self.cell(window, 'Side force on the rod', 3)) == round(loads['side_n']))
        for column, value in enumerate(loads['tower_on_body_n']):
            self.assertAlmostEqual(
                shown_number(self.cell(window, 'Strut on tower', 4 + column)), value,
                delta=0.5)
        self.assertAlmostEqual(shown_number(self.cell(window, 'Tie rod', 2)),
                               was['tie_rod_n'], delta=0.5)
        self.assertEqual(self.cell(window, 'Tie rod', 1), 'N')
        size = shown_number(self.cell(window, 'Strut on tower', 3))
        self.assertAlmostEqual(size, math.hypot(*loads['tower_on_body_n']), delta=0.5)

    def test_table_goes_to_the_clipboard(self):
        window, board = self.open_page()
        window.click(window.get('table', TABLE), 60, 30)
        window.key('ctrl+c')
        text = wait_for('the table', lambda: next(
            (text for text in [self.pasted()] if 'Strut on tower' in text), None))
        rows = {line.split('\t')[0]: line.split('\t') for line in text.splitlines()}
        tower = self.loads('Standing')['tower_on_body_n']
        for part, value in zip(rows['Strut on tower'][4:7], tower):
            self.assertAlmostEqual(float(part), value, delta=1e-6)
        self.assertEqual(len(rows['Bending stress of the rod']), 7)

    def test_a_moved_wheel_stays_until_it_may_settle(self):
        window, board = self.open_page()
        settled = self.loads('Standing')['wheel_travel_mm']
        self.wait_travel(window, settled)
        window.drag_handle(FRONT_WHEEL, 0, -12)
        moved = wait_for('a moved wheel', lambda: window.travel() > settled + 3.0
                         and window.travel())
        wait_for('what is left over', lambda: 'is held at' in board.get_description())
        held = self.loads('Standing', '--travel', moved)
        wait_for('the table', lambda: shown_number(
            self.cell(window, 'Damper or end of travel', 2)) == round(held['left_over_n']))
        self.assertLess(held['left_over_n'], -50.0)
        window.key('alt+1')
        self.wait_travel(window, moved)
        window.key('alt+5')
        window.press(window.get('push button', 'Let it settle'))
        self.wait_travel(window, settled)
        wait_for('rest', lambda: 'is held at' not in board.get_description())

    def test_it_keeps_settling_when_the_car_changes(self):
        window, board = self.open_page()
        before = window.travel()
        window.enter(window.get('spin button', 'Inboard'), '12')
        window.wait_mount(12.0)
        window.save(self.car)
        now = self.loads('Standing')['wheel_travel_mm']
        self.assertNotAlmostEqual(before, now, delta=0.01)
        self.wait_travel(window, now)
        window.key('ctrl+z')
        self.wait_travel(window, before)

    def test_a_press_on_bars_takes_the_setup_in_hand(self):
        window, board = self.open_page()
        self.assertEqual(window.in_hand(), 'As measured')
        box = window.box(board)
        for y in range(30, box.height, 8):
            window.click(board, box.width / 3, y)
            if window.in_hand() == OTHER:
                break
        window.wait_in_hand(OTHER)

    def test_without_springs_a_coil_is_taken_and_said(self):
        self.change_car(lambda car: car.pop('springs'))
        window, board = self.open_page()
        wait_for('the note', lambda: 'No spring is given' in board.get_description())
        coil = self.loads('Standing', '--spring', 'coil')
        wait_for('the coil', lambda: shown_number(
            self.cell(window, 'Along the strut', 2)) == round(coil['axial_n']))

    def test_in_a_small_window(self):
        window, board = self.open_page()
        sh('xdotool', 'windowsize', window.win, 1024, 640)
        wait_for('a small window', lambda: 'Width: 1024' in sh('xwininfo', '-id', window.win))
        for role, name in (('image', BOARD), ('table', TABLE), ('image', 'Corner sheet')):
            part = window.find(role, name)
            if part is not None:
                self.assertGreater(window.box(part).height, 80, name)
                self.assertLessEqual(window.box(part).x, 1024)
        for name in ('Let it settle', 'Cases…'):
            box = window.box(window.get('push button', name))
            self.assertLessEqual(box.x + box.width, 1024)
        self.assertGreater(window.box(self.drop_down(window, 'Load case')).width, 200)
        self.assertGreater(
            window.box(self.drop_down(window, 'What carries the load')).width, 120)
        self.look_down(window, board)
        window.key('alt+4')
        springs = window.get('image', 'What carries the wheel through its travel')
        wait_for('the springs', lambda: window.box(springs).width > 0)
        self.look_down(window, springs)

    def look_down(self, window, board):
        """The page is longer than its place, and the keys go to its end."""
        box = wait_for('a long page', lambda: window.box(board).height > 420
                       and window.box(board))
        window.click(board, 60, 12)
        window.key('End')
        wait_for('the end', lambda: window.box(board).y + box.height < 420)
        self.assertEqual(window.box(board).height, box.height)


class Cases(LoadsTest):
    def open_cases(self):
        window, board = self.open_page()
        window.click(window.get('push button', 'Cases…'))
        entry = window.get('text', 'Case 1, Name')
        wait_for('the editor', lambda: window.box(entry).width > 0)
        return window, board

    def type_into(self, window, name, text):
        window.tab_to('text', name)
        window.key('ctrl+a')
        window.type(text)
        window.key('Return')

    @staticmethod
    def close_cases(window):
        window.key('Escape')
        wait_for('the editor to go', lambda: window.find('push button', 'Add case') is None
                 or window.box(window.get('push button', 'Add case')).height == 0)

    def shown(self, window, name):
        return window.text(window.get('text', name))

    def saved_cases(self, window):
        window.save(self.car)
        return json.loads(self.car.read_text()).get('loads', {}).get('cases')

    def test_a_number_is_changed_saved_and_undone(self):
        window, board = self.open_cases()
        before = window.travel()
        self.type_into(window, 'Case 1, Vertical', '1.5')
        wait_for('more travel', lambda: window.travel() > before + 10.0)
        self.close_cases(window)
        saved = self.saved_cases(window)
        self.assertEqual([case['name'] for case in saved], CASES)
        self.assertEqual(saved[0].get('vertical'), 1.5)
        self.wait_travel(window, self.loads('Standing')['wheel_travel_mm'])
        window.key('ctrl+z')
        self.wait_travel(window, before)
        self.assertIsNone(self.saved_cases(window))

    def test_what_cannot_be_taken_stays_with_a_sentence(self):
        window, board = self.open_cases()
        for name, text, why in (('Case 1, Vertical', 'two', 'which is no number'),
                                ('Case 2, Name', 'Standing', 'earlier case'),
                                ('Case 3, Lateral, g', '90', 'Lateral, g')):
            self.type_into(window, name, text)
            wait_for(why, lambda part=why: any(
                part in node.get_name() for node in window.walk()
                if node.get_role_name() == 'label'))
            self.assertEqual(self.shown(window, name), text)
            window.key('Escape')
        self.assertFalse(window.is_enabled('undo'))

    def test_a_case_is_added_named_and_removed(self):
        window, board = self.open_cases()
        window.press(window.get('push button', 'Add case'))
        self.wait_case(board, 'Case 8')
        self.type_into(window, 'Case 8, Name', 'Kerb')
        self.wait_case(board, 'Kerb')
        window.press(window.get('push button', 'Remove case 8'))
        wait_for('one less', lambda: window.box(
            window.get('text', 'Case 7, Name')).width > 0 and not board.get_description()
            .startswith('Kerb'))
        self.close_cases(window)
        self.assertEqual([case['name'] for case in self.saved_cases(window)], CASES)


if __name__ == '__main__':
    main()
