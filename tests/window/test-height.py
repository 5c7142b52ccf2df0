# SPDX-License-Identifier: GPL-3.0-or-later
"""Ride height: the handle on the sheet, the page on lowering, and instructor's mode."""
from gtkdrive import Atspi, sh, wait_for
from strutwright_window import (HEIGHT_HANDLE, LOWERING, NUMBERS, WindowTest, main,
                                table_row)

LECTURE = 'How the roll centre is constructed'
LOWERED = 'Plate, 20 lower, toe reset'


class Handle(WindowTest):
    def lowered_by(self, window):
        return window.spin('Lowered by')

    def test_dragging_the_body_down_lowers_in_one_undo_step(self):
        window = self.open()
        window.drag_handle(HEIGHT_HANDLE, 0, 8)
        lowering = wait_for('a lowered car', lambda: self.lowered_by(window))
        self.assertGreater(lowering, 5.0)
        wait_for('the standing travel', lambda: window.travel() == lowering)
        _, camber, _ = window.read_number('Camber')
        window.save(self.car)
        kernel = table_row(self.car, lowering)['camber_deg']
        self.assertAlmostEqual(camber, kernel, delta=0.005 + 1e-9)
        window.key('ctrl+z')
        wait_for('the measured height', lambda: self.lowered_by(window) == 0.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_escape_during_the_drag_changes_nothing(self):
        window = self.open()
        window.drag_handle(HEIGHT_HANDLE, 0, 8, keep=['Escape'])
        wait_for('the measured height', lambda: self.lowered_by(window) == 0.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_arrow_keys_on_the_handle(self):
        window = self.open()
        window.tab_to('slider', HEIGHT_HANDLE)
        for key, lowering in (('Down', 1.0), ('shift+Down', 6.0), ('ctrl+Up', 5.9),
                              ('Home', 0.0)):
            window.key(key)
            wait_for('%s at %g' % (key, lowering),
                     lambda: self.lowered_by(window) == lowering)
        self.assertEqual(window.handle(HEIGHT_HANDLE).get_description(), '0.0 mm')


class Page(WindowTest):
    def open_page(self):
        window = self.open()
        window.key('alt+2')
        page = window.get('image', LOWERING)
        wait_for('the page', lambda: self.question(window) == 'Height')
        wait_for('its size', lambda: window.box(page).height > 0)
        return window, page

    def question(self, window):
        return next((tab.get_name() for tab in window.walk()
                     if tab.get_role_name() == 'page tab'
                     and tab.get_state_set().contains(Atspi.StateType.SELECTED)), None)

    def test_alt_2_and_back(self):
        window, _ = self.open_page()
        self.assertEqual(window.state('question'), 'height')
        window.get('push button', 'Play')
        window.key('alt+1')
        wait_for('the curves', lambda: self.question(window) == 'Travel')

    def test_pressing_and_dragging_on_the_page_moves_the_cursor(self):
        window, page = self.open_page()
        box = window.box(page)
        window.click(page, box.width * 0.6, box.height * 0.3)
        clicked = wait_for('lowering', window.travel)
        window.moves(page, (box.width * 0.6, box.height * 0.3),
                     (box.width * 0.65, box.height * 0.3),
                     (box.width * 0.7, box.height * 0.3))
        wait_for('more of it', lambda: window.travel() > clicked)
        self.assertEqual(window.spin('Lowered by'), 0.0)

    def test_travel_keys_on_the_page(self):
        window, _ = self.open_page()
        window.tab_to('image', LOWERING)
        for key, travel in (('Right', 1.0), ('shift+Right', 11.0), ('Home', 0.0)):
            window.key(key)
            wait_for('%s at %g' % (key, travel), lambda: window.travel() == travel)

    def test_play_without_animations_jumps(self):
        window, _ = self.open_page()
        window.pick(LOWERED)
        wait_for('its height', lambda: window.travel() == 20.0)
        play = window.get('push button', 'Play')
        for travel in (0.0, 20.0):
            window.click(play)
            wait_for('travel %g' % travel, lambda: window.travel() == travel)


class Lecture(WindowTest):
    def open_lecture(self):
        window = self.open()
        window.key('F5')
        lecture = window.wait_other_window()
        picture = window.get('image', LECTURE)
        wait_for('a sentence', picture.get_description)
        return window, lecture, picture

    def test_steps_forwards_and_backwards_by_keys(self):
        window, lecture, picture = self.open_lecture()
        told = [picture.get_description()]
        for _ in range(5):
            window.key('Right')
            told.append(wait_for('the next step', lambda: picture.get_description()
                                 != told[-1] and picture.get_description()))
        self.assertEqual(len(set(told)), 6)
        window.key('Right')  # nothing behind the last
        for sentence in reversed(told[:-1]):
            window.key('Left')
            wait_for('the step before', lambda: picture.get_description() == sentence)
        window.key('Escape')
        window.wait_gone(lecture)
        wait_for('the window', lambda: window.active() == window.win)

    def test_it_fills_the_screen(self):
        window, lecture, _ = self.open_lecture()

        def size(of):
            words = sh('xwininfo', *of).split()
            return [int(words[words.index(what) + 1]) for what in ('Width:', 'Height:')]
        wait_for('the whole screen', lambda: size(['-id', lecture]) == size(['-root']))

    def test_arrows_lower_and_the_sentence_goes_along(self):
        window, lecture, picture = self.open_lecture()
        window.key('Right')
        for _ in range(4):
            window.key('Right')
        before = wait_for('the roll centre', picture.get_description)
        window.key('shift+Down', 'Down')
        wait_for('lowering', lambda: window.travel() == 6.0)
        wait_for('other numbers', lambda: picture.get_description() != before)
        window.key('p')
        wait_for('lowered by play', lambda: window.travel() == 40.0)
        window.key('Escape')
        window.wait_gone(lecture)


class SideBySide(WindowTest):
    def picture(self, window):
        """Of the table, as a fingerprint."""
        shot = self.folder / 'table.png'
        window.rest_pointer()
        window.screenshot(shot)
        left, top = window.at(window.get('image', NUMBERS), 0, 0)
        sh('mogrify', '-crop', '600x60+%d+%d' % (left, top), '+repage', shot)
        return sh('identify', '-format', '%#', shot)

    def test_the_table_changes_by_key_and_by_button(self):
        window = self.open()
        usual = self.picture(window)
        window.key('ctrl+t')
        wait_for('side by side', lambda: window.state('side-by-side'))
        wait_for('another table', lambda: self.picture(window) != usual)
        window.click(window.get('push button', 'Side by side'))
        wait_for('one by one', lambda: not window.state('side-by-side'))
        wait_for('the usual table', lambda: self.picture(window) == usual)


if __name__ == '__main__':
    main()
