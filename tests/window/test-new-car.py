# SPDX-License-Identifier: GPL-3.0-or-later
"""The form for what is measured on a car: a new one by keys alone and by mouse alone,
entries that cannot stay, and the open car changed in one step."""
import json
import os
import pathlib
import subprocess
import sys
import time

from form_dialog import FormTest
from gtkdrive import wait_for
from strutwright_window import main

POINTS = ['Arm, front pivot', 'Arm, rear pivot', 'Lower ball joint', 'Upper mount',
          'Strut foot', 'Tie rod, outer end', 'Tie rod, inner end', 'Wheel centre']
MEMBERS = ['arm_front_pivot', 'arm_rear_pivot', 'ball_joint', 'upper_mount', 'strut_foot',
           'tie_rod_outer', 'tie_rod_inner', 'wheel_centre']
AXES = ['x forward', 'y left', 'z up']
# A made-up corner, solved apart from the program with a general root finder on the raw
# constraints. It gave, standing: caster 2.961°, inclination 11.689°, trail 4.82 mm.
FIGURES = [[5, 345, 205], [-290, 365, 215], [-5, 655, 190], [-35, 535, 770],
           [-8, 600, 330], [-130, 640, 225], [-140, 310, 240], [0, 700, 270]]
CAMBER, TOE_IN, RADIUS = -0.5, 0.05, 270
NEW_CAR, MEASURED_CAR = 'New Car', 'Measured Car'


def name_of(point, axis):
    return '%s, %s' % (POINTS[point], AXES[axis])


class Form(FormTest):
    def entry(self, window, name):
        return self.node(window, 'text', name)

    def copy(self, text):
        clipboard = subprocess.Popen(
            [sys.executable, pathlib.Path(__file__).with_name('clipboard.py'), text],
            stdout=subprocess.PIPE, text=True)

        def end():
            clipboard.kill()
            clipboard.communicate(timeout=60)
        self.addCleanup(end)
        self.assertEqual(clipboard.stdout.readline(), 'copied\n')

    def assert_saved(self, path):
        car = json.loads(path.read_text())
        for member, figures in zip(MEMBERS, FIGURES):
            self.assertEqual(car['corner'][member], figures, member)
        self.assertEqual(car['alignment'], {'camber_deg': CAMBER, 'toe_in_deg': TOE_IN})
        self.assertEqual(car['tyre']['loaded_radius_mm'], RADIUS)
        return car

    def save_as(self, window, title):
        path = self.folder / 'new.swcar'
        window.win = window.window('• ' + title)
        wait_for('the keys', lambda: window.active() == window.win)
        window.key('ctrl+s')
        window.in_dialog(path)
        wait_for('the file', path.exists)
        return path


class NewCar(Form):
    def test_by_keys_alone(self):
        window = self.open()
        window.key('ctrl+shift+n')
        dialog = self.dialog(window, NEW_CAR)
        self.sentence(window, '^27 entries are missing; the next one is “Arm, front pivot, '
                              'x forward”')
        self.assertFalse(self.is_on(window, 'Create'))
        self.tab_to(window, 'text', 'Name')
        window.type('Wheatear')
        self.tab_to(window, 'text', name_of(0, 0))
        for row in FIGURES:
            for figure in row:
                window.type('%g' % figure)
                window.key('Tab')
        self.sentence(window, '^3 entries are missing; the next one is “Camber”')
        for name, figure in (('Camber', CAMBER), ('Toe-in, this wheel', TOE_IN),
                             ('Loaded radius', RADIUS)):
            self.tab_to(window, 'text', name)
            window.type('%g' % figure)
        self.sentence(window, '^The corner can be solved. Camber −0.50°, caster 2.96°, '
                              'steering-axis inclination 11.69°.* trail 4.8 mm')
        window.key('Return')
        window.wait_gone(dialog)
        car = self.assert_saved(self.save_as(window, 'Wheatear'))
        self.assertEqual(car['name'], 'Wheatear')
        self.assertEqual([setup['name'] for setup in car['setups']], ['As measured'])

    def test_by_mouse_alone(self):
        """A block from a spreadsheet is pasted; figures come by the same way."""
        window = self.open()
        self.open_by_menu(window, 'New Car…')
        dialog = self.dialog(window, NEW_CAR)
        with window.inside(dialog, NEW_CAR):
            self.copy('\n'.join('\t'.join('%g' % figure for figure in row)
                                for row in FIGURES) + '\n')
            window.click(self.entry(window, name_of(0, 0)), button=2)
            self.sentence(window, '^3 entries are missing')
            for name, figure in (('Camber', CAMBER), ('Toe-in, this wheel', TOE_IN),
                                 ('Loaded radius', RADIUS)):
                self.copy('%g' % figure)
                window.click(self.node(window, 'push button', 'Go There'))
                entry = self.entry(window, name)
                wait_for('the focus on ' + name, lambda node=entry: window.has_focus(node))
                window.wait_laid_out()
                window.click(entry, button=2)
                wait_for(name, lambda node=entry: window.text(node) == '%g' % figure)
            self.sentence(window, '^The corner can be solved')
            window.click(self.node(window, 'push button', 'Create'))
            window.wait_gone(dialog)
        self.assert_saved(self.save_as(window, 'Unnamed car'))

    def open_by_menu(self, window, item):
        window.click(window.get('push button', 'Main menu'))
        found = wait_for(item, lambda: next(
            (node for node in window.walk() if node.get_role_name() == 'menu item'
             and node.get_name() == item and window.box(node).width > 0), None))
        window.press(found)

    def test_a_comma_where_it_is_the_decimal_mark(self):
        folder = self.folder / 'locale'
        folder.mkdir()
        if subprocess.run(['localedef', '-i', 'de_DE', '-f', 'UTF-8',
                           folder / 'de_DE.UTF-8'], check=False,
                          stderr=subprocess.DEVNULL).returncode > 1:
            self.skipTest('localedef cannot build a locale with a decimal comma here')
        os.environ.update(LOCPATH=str(folder), LC_NUMERIC='de_DE.UTF-8')
        self.addCleanup(os.environ.pop, 'LOCPATH')
        self.addCleanup(os.environ.pop, 'LC_NUMERIC')
        everything = os.environ.pop('LC_ALL')
        self.addCleanup(os.environ.update, LC_ALL=everything)
        window = self.open()
        window.key('ctrl+shift+n')
        self.dialog(window, NEW_CAR)
        self.copy('\n'.join('\t'.join(('%g,5' if i else '%g.25') % figure
                                      for i, figure in enumerate(row)) for row in FIGURES))
        self.tab_to(window, 'text', name_of(0, 0))
        window.key('ctrl+v')
        self.sentence(window, '^3 entries are missing')
        self.assertEqual(window.text(self.entry(window, name_of(0, 0))), '5,25')
        self.assertEqual(window.text(self.entry(window, name_of(0, 1))), '345,5')
        window.key('Escape')

    def test_escape_asks_before_it_throws_away(self):
        window = self.open()
        window.key('ctrl+shift+n')
        dialog = self.dialog(window, NEW_CAR)
        window.type('Dunnock')
        wait_for('the name', lambda: window.text(self.entry(window, 'Name')) == 'Dunnock')
        window.key('Escape')
        question = window.wait_other_window(dialog)
        window.key('Return')  # keep editing
        window.wait_gone(question)
        self.assertEqual(window.text(self.entry(window, 'Name')), 'Dunnock')
        window.key('Escape')
        window.wait_other_window(dialog)
        window.press(window.get('push button', 'Discard'))
        window.wait_gone(dialog)
        self.assertEqual(window.acc.get_child_count(), 1)

    def test_escape_closes_what_is_empty(self):
        window = self.open()
        window.key('ctrl+shift+n')
        dialog = self.dialog(window, NEW_CAR)
        window.key('Escape')
        window.wait_gone(dialog)


class MeasuredCar(Form):
    def open_form(self, unlock=True):
        window = self.open()
        window.activate('measured-points')
        self.outer = self.dialog(window, MEASURED_CAR)
        if unlock:
            self.tab_to(window, 'check box', 'Unlock the measured points')
            window.key('space')
        return window

    def test_points_are_locked_until_unlocked(self):
        window = self.open_form(unlock=False)
        entry = self.entry(window, name_of(3, 1))
        self.assertEqual(window.text(entry), '536')
        self.assertFalse(self.is_sensitive(entry))
        self.tab_to(window, 'check box', 'Unlock the measured points')
        window.key('space')
        wait_for('the entry', lambda: self.is_sensitive(entry))

    def test_applying_is_one_step(self):
        window = self.open_form()
        self.type_into(window, 'text', name_of(3, 1), '530')
        self.type_into(window, 'text', name_of(3, 2), '760.5')
        self.type_into(window, 'text', 'Camber', '-0.75')
        self.sentence(window, '^The corner is sound. Camber −0.75°')
        window.key('Return')
        window.wait_gone(self.outer)
        wait_for('the undo', lambda: window.is_enabled('undo'))
        window.save(self.car)
        car = json.loads(self.car.read_text())
        self.assertEqual(car['corner']['upper_mount'], [-38, 530, 760.5])
        self.assertEqual(car['alignment']['camber_deg'], -0.75)
        window.key('ctrl+z')
        wait_for('nothing more to undo', lambda: not window.is_enabled('undo'))
        window.save(self.car)
        car = json.loads(self.car.read_text())
        self.assertEqual(car['corner']['upper_mount'], [-38, 536, 762])
        self.assertEqual(car['alignment']['camber_deg'], -0.4)

    def test_wrong_entries_say_their_sentence(self):
        window = self.open_form()
        entry = self.entry(window, name_of(0, 1))
        for typed, sentence in (
                ('33x', '“Arm, front pivot, y left” holds “33x”, which is no number'),
                ('', '^1 entry is missing: “Arm, front pivot, y left”'),
                ('99999', '“Arm, front pivot, y left” is 99999 mm, but must lie between')):
            self.type_into(window, 'text', name_of(0, 1), typed)
            self.sentence(window, sentence)
            self.assertEqual(self.is_marked(entry), typed != '')
            self.assertFalse(self.is_on(window, 'Apply'))
        self.type_into(window, 'text', name_of(0, 1), '338')
        self.sentence(window, '^The corner is sound')
        wait_for('the mark to go', lambda: not self.is_marked(entry))
        self.assertTrue(self.is_on(window, 'Apply'))

    def test_undo_in_an_entry_goes_to_what_stood_there(self):
        """And never to a text that was refused on the way."""
        window = self.open_form()
        entry = self.entry(window, name_of(3, 1))
        self.type_into(window, 'text', name_of(3, 1), '53,5.2')
        wait_for('the mark', lambda: self.is_marked(entry))
        window.key('ctrl+a')
        window.type('53')
        wait_for('another text', lambda: window.text(entry) == '53')
        window.key('ctrl+z')
        wait_for('what stood there', lambda: window.text(entry) == '536')
        window.key('ctrl+z')
        time.sleep(0.2)
        self.assertEqual(window.text(entry), '536')
        wait_for('no mark', lambda: not self.is_marked(entry))

    def test_points_that_coincide_are_both_marked(self):
        window = self.open_form()
        for axis, figure in enumerate(('4', '652', '194')):  # where the ball joint is
            self.type_into(window, 'text', name_of(3, axis), figure)
        self.sentence(window, '“Lower ball joint” and “Upper mount” are the same place')
        for point in (2, 3):
            for axis in range(3):
                self.assertTrue(self.is_marked(self.entry(window, name_of(point, axis))))
        self.assertFalse(self.is_marked(self.entry(window, name_of(4, 0))))

    def test_the_right_side_is_mirrored_and_changed(self):
        window = self.open_form()
        self.tab_to(window, 'push button', 'Right side')
        window.key('space')
        self.tab_to(window, 'check box', 'The right side was measured too')
        window.key('space')
        self.sentence(window, 'entries are missing; the next one is “Right side: Arm, front '
                              'pivot, x forward”')
        self.tab_to(window, 'push button', 'Mirror the Left Side')
        window.key('space')
        self.sentence(window, '^The corner is sound')
        self.type_into(window, 'text', 'Right side: Upper mount, y left', '530')
        self.sentence(window, '“Right side: Upper mount, y left” is 530 mm, but must be below '
                              'zero')
        self.type_into(window, 'text', 'Right side: Upper mount, y left', '-530')
        self.type_into(window, 'text', 'Right side: Camber', '-0.6')
        window.key('Return')
        window.wait_gone(self.outer)
        window.save(self.car)
        right = json.loads(self.car.read_text())['right']
        self.assertEqual(right['corner']['upper_mount'], [-38, -530, 762])
        self.assertEqual(right['corner']['ball_joint'], [4, -652, 194])
        self.assertEqual(right['alignment'], {'camber_deg': -0.6, 'toe_in_deg': 0.05})

    def test_what_is_not_entered_is_the_default(self):
        """Written out, as the file's page asks of every car that is saved."""
        window = self.open_form(unlock=False)
        self.tab_to(window, 'push button', 'Travel and body')
        window.key('space')
        self.type_into(window, 'text', 'Wheelbase', '')
        window.key('Return')
        window.wait_gone(self.outer)
        window.save(self.car)
        self.assertEqual(json.loads(self.car.read_text())['body']['wheelbase_mm'], 2400)


if __name__ == '__main__':
    main()
