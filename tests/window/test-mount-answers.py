# SPDX-License-Identifier: GPL-3.0-or-later
"""What is aimed for, the ranked table that answers, and the card to fit a plate by."""
import json
import re

from gtkdrive import wait_for
from mount_page import PLATE_FILES, MountTest
from strutwright_window import command, main, table_row


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

    def test_the_sentence_names_its_plate(self):
        window = self.open_page()
        self.assertIsNotNone(next((node for node in window.walk() if re.fullmatch(
            r'\d+ of \d+ meets? every aim\.', node.get_name())), None))
        for row in self.rows(window)[:2]:
            told = '%s: %s' % (row.get_name(), row.get_description())
            window.click(row, 120, 15)  # not where the sign's hint would hide the next row
            wait_for(told, lambda: window.find('label', told))

    def test_the_sign_says_what_it_means(self):
        window = self.open_page()
        rank = self.rows(window)[0].get_child_at_index(0)
        self.assertEqual(rank.get_name(), '1 ✓')
        self.assertEqual(rank.get_description(), 'meets every aim')

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
        for way in ('inboard_mm', 'rearward_mm', 'up_mm'):
            self.assertAlmostEqual(setup['mount'][way], place[way], delta=1e-9)
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


if __name__ == '__main__':
    main()
