# SPDX-License-Identifier: GPL-3.0-or-later
"""The list of setups: every change by pointer and by keys alone, and undone again."""
import json

from gtkdrive import sh, wait_for
from strutwright_window import DATA, WindowTest, main, table_row

FIRST, SECOND, THIRD = 'As measured', '12 in, 6 back', 'Plate, 20 lower, toe reset'
COPY = FIRST + ' (2)'
SHOWN = 'Show this setup on the curves'


class ListTest(WindowTest):
    def undo(self, window):
        window.key('ctrl+z')

    def assert_nothing_to_undo(self, window):
        wait_for('nothing to undo', lambda: not window.is_enabled('undo'))

    def saved_setups(self, window):
        window.save(self.car)
        return json.loads(self.car.read_text())

    def choose_from_menu(self, window, item, key):
        """The list's menu, by the button and the letter underlined in its item."""
        window.click(window.get('push button', 'More about this setup'))
        entry = window.get('menu item', item)
        wait_for('the menu', lambda: window.box(entry).height > 0)
        window.key(key)

    def eye(self, window, name):
        row = next(row for row in window.rows() if row.get_name() == name)
        return window.find('push button', SHOWN, row)


class Pointer(ListTest):
    def test_a_click_takes_another_setup_in_hand(self):
        window = self.open()
        self.assertEqual(window.setups(), [FIRST, SECOND, THIRD])
        self.assertEqual(window.in_hand(), FIRST)
        window.pick(SECOND)
        window.wait_mount(12.0, 6.0)
        _, camber, _ = window.read_number('Camber')
        kernel = table_row(self.car, 0, SECOND)['camber_deg']
        self.assertAlmostEqual(camber, kernel, delta=0.005 + 1e-9)
        self.assert_nothing_to_undo(window)
        window.pick(THIRD)
        wait_for('its standing height', lambda: window.travel() == 20.0)

    def test_add_copies_the_setup_in_hand(self):
        window = self.open()
        window.pick(SECOND)
        window.click(window.get('push button', 'Add a setup'))
        window.wait_setups(FIRST, SECOND, THIRD, SECOND + ' (2)')
        window.wait_in_hand(SECOND + ' (2)')
        window.wait_mount(12.0, 6.0)
        window.enter(window.get('spin button', 'Inboard'), '20')
        window.wait_mount(20.0, 6.0)
        self.undo(window)
        window.wait_mount(12.0, 6.0)
        self.undo(window)
        window.wait_setups(FIRST, SECOND, THIRD)
        self.assert_nothing_to_undo(window)

    def test_remove_takes_it_away_and_undo_brings_it_back(self):
        window = self.open()
        window.pick(SECOND)
        window.click(window.get('push button', 'Remove the setup'))
        window.wait_setups(FIRST, THIRD)
        self.undo(window)
        window.wait_setups(FIRST, SECOND, THIRD)
        self.assert_nothing_to_undo(window)

    def test_the_last_setup_cannot_be_removed(self):
        window = self.open()
        remove = window.get('push button', 'Remove the setup')
        window.click(remove)
        window.wait_setups(SECOND, THIRD)
        window.click(remove)
        window.wait_setups(THIRD)
        window.click(remove)
        window.key('ctrl+z')  # of the second removal: the third click removed nothing
        window.wait_setups(SECOND, THIRD)

    def test_a_double_click_renames(self):
        window = self.open()
        window.pick(SECOND)
        row = window.rows()[1]
        entry = window.double_click(
            lambda: row, lambda: window.find('text', 'Name of the setup'), 50)
        wait_for('the keys in it', lambda: window.has_focus(entry))
        window.key('ctrl+a')
        window.type('Street')
        window.key('Return')
        window.wait_setups(FIRST, 'Street', THIRD)
        self.assertEqual(self.saved_setups(window)['setups'][1]['name'], 'Street')
        self.undo(window)
        window.wait_setups(FIRST, SECOND, THIRD)

    def test_the_eye_hides_and_shows(self):
        window = self.open()
        window.click(self.eye(window, SECOND))
        wait_for('a change', lambda: window.is_enabled('undo'))
        self.assertEqual(window.in_hand(), FIRST)
        hidden = [bool(setup.get('hidden')) for setup in
                  self.saved_setups(window)['setups']]
        self.assertEqual(hidden, [False, True, False])
        window.click(self.eye(window, SECOND))
        wait_for('the other way too', lambda: [
            bool(setup.get('hidden')) for setup in self.saved_setups(window)['setups']]
            == [False] * 3)
        self.undo(window)
        self.undo(window)
        self.assert_nothing_to_undo(window)

    def test_the_baseline_from_the_menu(self):
        window = self.open()
        window.pick(SECOND)
        self.choose_from_menu(window, 'Make It the Baseline', 'b')
        wait_for('a change', lambda: window.is_enabled('undo'))
        self.assertEqual(self.saved_setups(window)['baseline'], SECOND)
        window.pick(FIRST)
        was, _, _ = window.read_number('Camber')
        kernel = table_row(self.car, 0, SECOND)['camber_deg']
        self.assertAlmostEqual(was, kernel, delta=0.005 + 1e-9)
        self.undo(window)
        self.assert_nothing_to_undo(window)

    def test_the_menu_moves_up_and_down(self):
        window = self.open()
        window.pick(SECOND)
        self.choose_from_menu(window, 'Move Down', 'd')
        window.wait_setups(FIRST, THIRD, SECOND)
        window.wait_in_hand(SECOND)
        self.undo(window)
        window.wait_setups(FIRST, SECOND, THIRD)
        self.assert_nothing_to_undo(window)

    def test_setups_of_another_car(self):
        window = self.open()
        self.choose_from_menu(window, 'Take Setups of Another Car…', 't')
        window.in_dialog(DATA / 'fieldfare.swcar', location_key='ctrl+l')
        window.wait_setups(FIRST, SECOND, THIRD, COPY, '10 in, 8 back',
                           'Lowered 25, toe reset')
        window.pick('10 in, 8 back')
        window.wait_mount(10.0, 8.0)
        self.undo(window)
        window.wait_setups(FIRST, SECOND, THIRD)
        self.assert_nothing_to_undo(window)

    def test_a_car_that_cannot_be_read_is_a_sentence(self):
        bad = self.folder / 'bad.swcar'
        bad.write_text('{ "format": 3 }')
        window = self.open()
        self.choose_from_menu(window, 'Take Setups of Another Car…', 't')
        window.in_dialog(bad, location_key='ctrl+l')
        self.assertIn('format', wait_for('a sentence', window.message))
        self.assertEqual(window.setups(), [FIRST, SECOND, THIRD])
        self.assert_nothing_to_undo(window)


class KeysAlone(ListTest):
    def open_on_list(self):
        window = self.open()
        sh('xdotool', 'mousemove', 5, 5)  # out of the window, and never again
        window.tab_to('list item', FIRST)
        return window

    def test_arrow_keys_take_another_setup_in_hand(self):
        window = self.open_on_list()
        for key, name, mount in (('Down', SECOND, (12.0, 6.0)),
                                 ('Down', THIRD, (12.0, 6.0)), ('Up', SECOND, (12.0, 6.0)),
                                 ('Up', FIRST, (0.0, 0.0)), ('End', THIRD, (12.0, 6.0)),
                                 ('Home', FIRST, (0.0, 0.0))):
            window.key(key)
            window.wait_in_hand(name)
            window.wait_mount(*mount)
        self.assert_nothing_to_undo(window)

    def test_all_changes_by_keys(self):
        window = self.open_on_list()
        window.key('Down')
        window.wait_in_hand(SECOND)
        window.key('F2')
        entry = wait_for('the entry', lambda: window.find('text', 'Name of the setup'))
        wait_for('the keys in it', lambda: window.has_focus(entry))
        window.key('ctrl+a')
        window.type('Street')
        window.key('Return')
        window.wait_setups(FIRST, 'Street', THIRD)

        wait_for('the list again', lambda: window.has_focus(window.rows()[1]))
        window.key('alt+Down')
        window.wait_setups(FIRST, THIRD, 'Street')
        window.wait_in_hand('Street')
        window.key('alt+Up')
        window.wait_setups(FIRST, 'Street', THIRD)
        wait_for('the keys on the row', lambda: window.has_focus(window.rows()[1]))
        window.key('Delete')
        window.wait_setups(FIRST, THIRD)
        for names in ([FIRST, 'Street', THIRD], [FIRST, THIRD, 'Street'],
                      [FIRST, 'Street', THIRD], [FIRST, SECOND, THIRD]):
            self.undo(window)
            window.wait_setups(*names)
        self.assert_nothing_to_undo(window)

    def test_escape_leaves_the_name(self):
        window = self.open_on_list()
        window.key('F2')
        entry = wait_for('the entry', lambda: window.find('text', 'Name of the setup'))
        wait_for('the keys in it', lambda: window.has_focus(entry))
        window.type('Nobody')
        window.key('Escape')
        wait_for('the list again', lambda: window.has_focus(window.rows()[0]))
        self.assertEqual(window.setups(), [FIRST, SECOND, THIRD])
        self.assert_nothing_to_undo(window)

    def test_buttons_by_tab_and_space(self):
        window = self.open_on_list()
        window.tab_to('push button', 'Add a setup', key='shift+Tab')
        window.key('space')
        window.wait_setups(FIRST, SECOND, THIRD, COPY)

    def test_the_eye_by_tab_and_space(self):
        window = self.open_on_list()
        window.key('Tab')
        wait_for('the eye', lambda: window.has_focus(self.eye(window, FIRST)))
        window.key('space')
        wait_for('a change', lambda: window.is_enabled('undo'))
        self.assertTrue(self.saved_setups(window)['setups'][0]['hidden'])


if __name__ == '__main__':
    main()
