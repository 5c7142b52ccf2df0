# SPDX-License-Identifier: GPL-3.0-or-later
"""What is this? The pages on the quantities: from keys, from a menu, from each other."""
from gtkdrive import Atspi, GLib, wait_for
from strutwright_window import CURVES, FRONT_MOUNT, NUMBERS, WindowTest, main


class Quantities(WindowTest):
    def page(self, window, title):
        """The page has all its parts, and the row of the list is the chosen one."""
        wait_for(title, lambda: window.find('heading', title))
        for part in ('What it is', 'Its sign', 'What changes it', 'What is usual',
                     'What is often said', 'See also'):
            window.get('heading', part)

    @staticmethod
    def rows(window):
        shown = window.get('list', 'Quantities')
        return [node.get_name() for node in window.walk(shown)
                if node.get_role_name() == 'list item'
                and node.get_state_set().contains(Atspi.StateType.VISIBLE)]

    @staticmethod
    def entry(window):
        """Of the menu that is open."""
        return wait_for('the entry', lambda: next(
            (node for node in window.walk() if node.get_role_name() == 'menu item'
             and node.get_name() == 'What is this?' and window.box(node).width > 0), None))

    def light_row(self, window, quantity):
        window.read_number(quantity)

    def test_by_key_on_a_row_of_numbers(self):
        window = self.open()
        self.light_row(window, 'Caster')
        window.key('shift+F1')
        help_window = window.wait_other_window()
        self.page(window, 'Caster, °')
        labels = [node.get_name() for node in window.walk()
                  if node.get_role_name() == 'label']
        self.assertIn('Positive: axis top leans back. Negative: axis top leans forward.',
                      labels)
        self.assertTrue(any(text.startswith('Caster: 1.5 to 7.5° is usual')
                            for text in labels), labels)
        wait_for('the row', lambda: window.focused().get_name() == 'Caster')
        window.key('Escape')
        window.wait_gone(help_window)

    def test_the_same_window_shows_the_next_one(self):
        window = self.open()
        self.light_row(window, 'Camber')
        window.key('shift+F1')
        first = window.wait_other_window()
        self.page(window, 'Camber, °')
        window.activate('what-is', GLib.Variant('s', 'bump_steer'))
        self.page(window, 'Bump steer, °/mm')
        self.assertEqual(window.active(), first)

    def test_from_the_menu_of_a_curve(self):
        window = self.open()
        curves = window.get('image', CURVES)
        window.click(curves, 200, 120, button=3)
        window.press(self.entry(window))
        window.wait_other_window()
        self.page(window, 'Camber, °')

    def test_from_the_menu_of_the_sheet(self):
        """A little below the mount run the strut and the steering axis."""
        window = self.open()
        box = window.box(window.handle(FRONT_MOUNT))
        window.click(window.handle(FRONT_MOUNT), box.width / 2 + 9, box.height / 2 + 60,
                     button=3)
        window.press(self.entry(window))
        window.wait_other_window()
        found = wait_for('its page', lambda: next(
            (title for title in ('Strut length, mm', 'Steering-axis inclination, °')
             if window.find('heading', title)), None))
        self.page(window, found)

    def test_from_the_menu_by_keys(self):
        window = self.open()
        self.light_row(window, 'Scrub radius')
        self.assertTrue(window.has_focus(window.get('image', NUMBERS)))
        window.key('shift+F10')
        self.entry(window)
        window.key('Return')
        window.wait_other_window()
        self.page(window, 'Scrub radius, mm')

    def test_all_of_them_can_be_searched(self):
        window = self.open()
        window.activate('quantities')
        dialog = window.wait_other_window()
        self.page(window, 'Camber, °')
        self.assertEqual(len(self.rows(window)), 25)
        window.type('torsion bar')
        found = wait_for('fewer', lambda: len(self.rows(window)) < 25
                         and self.rows(window))
        self.assertEqual(found, ['Arm ratio'])
        self.page(window, 'Arm ratio, rad/mm')
        with window.inside(dialog, 'Quantities'):
            window.click(window.get('push button', 'Arm angle'))
        self.page(window, 'Arm angle, °')
        self.assertEqual(len(self.rows(window)), 25)

    def test_escape_clears_the_search_and_then_closes(self):
        window = self.open()
        window.activate('quantities')
        dialog = window.wait_other_window()
        self.page(window, 'Camber, °')
        window.type('torsion bar')
        wait_for('fewer', lambda: len(self.rows(window)) < 25)
        window.key('Escape')
        wait_for('all', lambda: len(self.rows(window)) == 25)
        window.key('Escape')
        window.wait_gone(dialog)

    def test_words_that_no_page_has(self):
        window = self.open()
        window.activate('quantities')
        window.wait_other_window()
        self.page(window, 'Camber, °')
        window.type('turbocharger')
        wait_for('the sentence', lambda: window.find('label', 'No page has all these words.'))


if __name__ == '__main__':
    main()
