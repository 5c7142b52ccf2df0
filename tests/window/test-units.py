# SPDX-License-Identifier: GPL-3.0-or-later
"""Units as a person chooses them, and what is typed and copied in them."""
import csv
import io
import json
import math
import pathlib
import re
import subprocess
import sys

from gtkdrive import GLib, wait_for
from kept_settings import KeptTest
from strutwright_window import CURVES, DATA, NUMBERS, command, main, table_row

IMPERIAL = {'unit_length': "'inch'", 'unit_angle': "'minutes'", 'unit_toe': "'total'"}
INCH = 25.4


def degrees(text):
    """Of "−1°56′"."""
    sign, whole, minutes = re.fullmatch(r'([−-]?)(\d+)°(\d\d)′\.?', text).groups()
    return (-1 if sign else 1) * (int(whole) + int(minutes) / 60)


class Units(KeptTest):
    def row(self, window, name):
        """The row of the table, as the table tells it."""
        table = window.get('image', NUMBERS)
        window.click(table, 100, 30)
        window.rest_pointer()
        wait_for('the keys', lambda: window.has_focus(table))
        text = ''
        for _ in range(40):
            before = text
            window.key('Down')
            text = wait_for('the next row', lambda: table.get_description() != before
                            and table.get_description())
            if text.startswith(name + ':'):
                return re.match(r'.*: .* (\S+), this setup (\S+?)( \S+)?\. ',
                                text + ' ').groups()
        raise AssertionError(name)

    def entry(self, window, name):
        return window.get('spin button', name)

    def paste(self, *what):
        run = subprocess.run(
            [sys.executable, pathlib.Path(__file__).with_name('paste.py'), *map(str, what)],
            text=True, timeout=60, stdout=subprocess.PIPE, check=True)
        return run.stdout

    def test_kept_units_are_shown(self):
        """The numbers are those of the command line, which keeps to mm and degrees."""
        before = command('table', self.car).stdout
        self.keep_by_hand(**IMPERIAL)
        self.assertEqual(command('table', self.car).stdout, before)
        numbers = table_row(self.car, 0)
        window = self.open()
        _, scrub, unit = self.row(window, 'Scrub radius')
        self.assertEqual(unit, ' in')
        self.assertAlmostEqual(float(scrub), numbers['scrub_radius_mm'] / INCH, delta=5.1e-4)
        for name, key, times in (('Caster', 'caster_deg', 1), ('Camber', 'camber_deg', 1),
                                 ('Total toe-in', 'toe_in_deg', 2)):
            _, text, _ = self.row(window, name)
            self.assertAlmostEqual(degrees(text), times * numbers[key], delta=0.51 / 60)

    def test_toe_as_a_length(self):
        self.keep_by_hand(unit_toe="'at-diameter'", toe_diameter='500')
        toe = table_row(self.car, -30)['toe_in_deg']
        window = self.open()
        slider = window.get('slider', 'Wheel travel in millimetres')
        slider.get_value_iface().set_current_value(-30)
        wait_for('the travel', lambda: window.travel() == -30)
        _, text, unit = self.row(window, 'Total toe-in')
        self.assertEqual(unit, ' mm')
        self.assertAlmostEqual(float(text.replace('−', '-')),
                               2 * 500 * math.sin(math.radians(toe)), delta=0.051)

    def test_sums_and_units_are_typed(self):
        window = self.open()
        for name, text, value in (('Inboard', '12.5+1/8 in', 15.675), ('Inboard', '1/8"', 3.175),
                                  ('Rearward', '2*(1+1.5)', 5.0), ('Up', '-1/4 in', -6.35),
                                  ('Lowered by', '3mm', 3.0)):
            window.enter(self.entry(window, name), text)
            wait_for(name + ' ' + text,
                     lambda: abs(window.spin(name) - value) < 1e-9)
        window.save(self.car)
        setup = json.loads(self.car.read_text())['setups'][0]
        self.assertAlmostEqual(setup['mount']['inboard_mm'], 3.175, places=9)
        self.assertAlmostEqual(setup['mount']['up_mm'], -6.35, places=9)

    def test_leaving_an_entry_keeps_what_its_digits_do_not_show(self):
        window = self.open()
        window.enter(self.entry(window, 'Inboard'), '3.175')
        wait_for('the number', lambda: window.spin('Inboard') == 3.175)
        window.click(self.entry(window, 'Inboard'), 20, None)
        window.key('Tab', 'Tab')
        window.enter(self.entry(window, 'Up'), '1')
        window.wait_mount(3.175, 0.0, 1.0)

    def test_what_is_no_number_stays_and_says_why(self):
        window = self.open()
        entry = self.entry(window, 'Inboard')
        window.enter(entry, '12 kg')
        wait_for('the sentence', lambda: '“kg” is no unit that fits here.'
                 in (entry.get_description() or ''))
        self.assertEqual(window.spin('Inboard'), 0.0)
        window.click(entry, 20, None)
        window.key('Escape')
        wait_for('the entry as it was', lambda: '“kg”' not in (entry.get_description() or ''))
        self.assertEqual(window.spin('Inboard'), 0.0)

    def test_what_is_past_its_bounds_stays_and_says_so(self):
        """In inches: 150 mm are 5.906 in, and 180° are 180°."""
        self.keep_by_hand(**IMPERIAL)
        window = self.open(DATA / 'dunnock.swcar', title='Dunnock 1.4 sports coupé')
        entry = self.entry(window, 'Inboard')
        window.enter(entry, "12'")
        sentence = "“Inboard” is at most 5.906 in; “12'” is more."
        wait_for('the sentence', lambda: entry.get_description() == sentence)
        window.get('label', sentence)  # in a line of its own
        self.assertEqual(window.spin('Inboard'), 0.0)
        window.click(entry, 20, None)
        window.key('Escape')
        wait_for('no sentence', lambda: window.find('label', sentence) is None)
        window.enter(entry, '5.906')  # as the sentence has it
        wait_for('the bound', lambda: window.spin('Inboard') == 150.0)
        window.activate('question', GLib.Variant('s', 'springs'))
        window.enter(window.get('text', 'Torsion bar: Clamp angle'), '999')
        window.get('label', '“Torsion bar: Clamp angle” is at most 180°; “999” is more.')

    def test_a_choice_holds_at_once_and_is_kept(self):
        window = self.open()
        window.enter(self.entry(window, 'Inboard'), '25.4')
        window.wait_mount(25.4)
        window.activate('units', win=0)
        dialog = window.wait_other_window()
        window.key('space', 'Down', 'Return')
        wait_for('inches', lambda: self.kept('unit-length') == "'inch'")
        window.close_dialog(dialog)
        _, _, unit = self.row(window, 'Scrub radius')
        self.assertEqual(unit, ' in')
        window.enter(self.entry(window, 'Inboard'), '2')
        window.wait_mount(50.8)

    def test_numbers_are_copied_for_a_spreadsheet(self):
        self.keep_by_hand(**IMPERIAL)
        numbers = table_row(self.car, 0)
        window = self.open()
        self.row(window, 'Camber')
        window.key('ctrl+c')
        rows = {row[0]: row for row in csv.reader(io.StringIO(self.paste('text')),
                                                  delimiter='\t')}
        self.assertEqual(rows['Camber'][1], '°')
        self.assertAlmostEqual(float(rows['Camber'][3]), numbers['camber_deg'], places=7)
        self.assertEqual(rows['Scrub radius'][1], 'in')
        self.assertAlmostEqual(float(rows['Scrub radius'][3]),
                               numbers['scrub_radius_mm'] / INCH, places=7)

    def test_a_curve_is_copied_as_a_picture(self):
        window = self.open()
        board = window.get('image', CURVES)
        box = window.box(board)
        window.click(board, box.width - 5, box.height - 3)
        window.rest_pointer()
        window.key('ctrl+c')
        self.assertEqual(self.paste('picture').split(),
                         [str(2 * box.width), str(2 * box.height)])
        window.key('Down', 'ctrl+c')
        self.assertEqual(self.paste('picture').split(), ['1280', '840'])

    def test_the_table_is_saved_as_the_command_line_prints_it(self):
        self.keep_by_hand(**IMPERIAL)
        window = self.open()
        path = self.folder / 'travel.csv'
        window.activate('save-table')
        window.in_dialog(path)
        wait_for('the file', path.exists)
        self.assertEqual(path.read_text(), command('table', self.car).stdout.replace('\r', ''))

    def test_each_question_has_its_table(self):
        """The columns are those that the headers of the tables promise."""
        window = self.open(DATA / 'dunnock.swcar', title='Dunnock 1.4 sports coupé')
        for question, head in (('springs', 'wheel_travel_mm,wheel_load_n,wheel_rate_n_per_mm'),
                               ('loads', 'quantity,unit,value,x,y,z'),
                               ('mount', 'rank,plate')):
            path = self.folder / (question + '.csv')
            window.activate('question', GLib.Variant('s', question))
            window.activate('save-table')
            window.in_dialog(path)
            wait_for('the file', path.exists)
            self.assertTrue(path.read_text().startswith(head), path.read_text()[:80])


if __name__ == '__main__':
    main()
