# SPDX-License-Identifier: GPL-3.0-or-later
"""Corrections typed, and the question what would put back what the baseline has."""
import csv
import io
import json

from gtkdrive import Atspi, wait_for
from strutwright_window import WindowTest, command, main, table_row

LOWERED = 'Plate, 20 lower, toe reset'
QUESTION = 'What would put it back?'
ROLL_CENTRE = 'Roll-centre height'


class CorrectionsTest(WindowTest):
    def unfold(self, window):
        """The entries under the heading; folded they are not there."""
        window.tab_to('push button', 'Corrections')
        window.key('space')
        spin = window.get('spin button', 'Ball-joint spacer')
        wait_for('the entries', lambda: window.box(spin).height > 0)


class Corrections(CorrectionsTest):
    def corrections(self):
        """Of the first setup in the file, those that are not zero."""
        corrections = json.loads(self.car.read_text())['setups'][0]['corrections']
        return {name: value for name, value in corrections.items() if value}

    def type_into(self, window, name, text):
        """By keys: the entries may lie below the edge of the panel, which then scrolls."""
        spin = window.tab_to('spin button', name)
        window.key('ctrl+a')
        window.type(text)
        window.key('Return')
        wait_for('%s in %s' % (text, name), lambda: window.value(spin) == float(text))

    def test_a_typed_spacer_is_solved_saved_and_undone(self):
        window = self.open()
        self.unfold(window)
        self.type_into(window, 'Ball-joint spacer', '15')
        _, shown, _ = window.read_number(ROLL_CENTRE)
        window.save(self.car)
        self.assertEqual(self.corrections(), {'ball_joint_spacer_mm': 15})
        kernel = table_row(self.car, 0)['roll_centre_height_mm']
        self.assertAlmostEqual(shown, kernel, delta=0.05 + 1e-9)
        window.key('ctrl+z')
        wait_for('no spacer', lambda: window.spin('Ball-joint spacer') == 0.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_every_entry_goes_into_the_file_by_its_own_name(self):
        window = self.open()
        self.unfold(window)
        wanted = {}
        for name, member, text in (
                ('Camber bolt', 'camber_bolt_deg', '-1.25'),
                ('Ball-joint spacer', 'ball_joint_spacer_mm', '11'),
                ('Tie-rod-end spacer', 'tie_rod_end_spacer_mm', '12'),
                ('Front pivot up', 'front_pivot_raise_mm', '3'),
                ('Rear pivot up', 'rear_pivot_raise_mm', '4'),
                ('Offset bushes out', 'pivot_outboard_mm', '5'),
                ('Rack up', 'rack_raise_mm', '6'),
                ('Tie rod longer', 'tie_rod_length_mm', '0.75'),
                ('Wheel spacer', 'wheel_spacer_mm', '-2.5')):
            self.type_into(window, name, text)
            wanted[member] = float(text)
        window.save(self.car)
        self.assertEqual(self.corrections(), wanted)


class PutBack(CorrectionsTest):
    def compare(self, row, column):
        run = command('compare', self.car, '--format', 'csv')
        self.assertEqual(run.returncode, 0, run.stderr)
        rows = {line['quantity']: line for line in csv.DictReader(io.StringIO(run.stdout))}
        return float(rows[row][column])

    def test_fit_it_returns_the_roll_centre_to_the_baseline(self):
        window = self.open()
        _, baseline, _ = window.read_number(ROLL_CENTRE)
        window.pick(LOWERED)
        wait_for('its height', lambda: window.travel() == 20.0)
        _, lowered, _ = window.read_number(ROLL_CENTRE)
        self.assertLess(lowered, baseline - 10)

        self.unfold(window)
        window.activate('restore')
        dialog = window.wait_other_window()
        with window.inside(dialog, QUESTION):
            window.click(window.get('push button', 'Fit it'))  # the first goal's
        wait_for('a spacer', lambda: window.spin('Ball-joint spacer') > 0.0)
        window.key('Escape')
        window.wait_gone(dialog)
        wait_for('the window', lambda: window.active() == window.win)

        _, fitted, _ = window.read_number(ROLL_CENTRE)
        self.assertEqual(fitted, baseline)
        window.save(self.car)
        change = LOWERED + ': change from As measured'
        self.assertLess(abs(self.compare('roll_centre_height_mm', change)), 1e-6)
        window.key('ctrl+z')
        wait_for('no spacer', lambda: window.spin('Ball-joint spacer') == 0.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_limits_that_are_too_tight_are_told(self):
        window = self.open()
        window.pick(LOWERED)
        window.click(window.get('push button', QUESTION))
        dialog = window.wait_other_window()
        fit = window.get('push button', 'Fit it')
        with window.inside(dialog, QUESTION):
            window.enter(window.get('spin button', 'Limit of the part'), '1')
        wait_for('no answer to fit', lambda: not fit.get_state_set().contains(
            Atspi.StateType.SENSITIVE))


if __name__ == '__main__':
    main()
