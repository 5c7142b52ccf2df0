# SPDX-License-Identifier: GPL-3.0-or-later
"""The tour of the first start: shown once, walked by keys, left at any step."""
import configparser
import os
import pathlib

from gtkdrive import wait_for
from strutwright_window import FRONT_MOUNT, WREN, WindowTest, main

GROUP = 'org/strutwright/Strutwright'
STEPS = (('Move the upper mount', 'travel'), ('Curves and numbers follow', 'travel'),
         ('Lower the car', 'height'), ('Choose a plate', 'mount'),
         ('Put springs on it', 'springs'))


class Tour(WindowTest):
    def setUp(self):
        super().setUp()
        config = pathlib.Path(os.environ['XDG_CONFIG_HOME'])
        self.file = config / 'glib-2.0/settings/keyfile'
        self.file.unlink(missing_ok=True)
        for name, value in (('GSETTINGS_BACKEND', 'keyfile'), ('STRUTWRIGHT_TOUR', 'yes')):
            self.addCleanup(os.environ.__setitem__, name, os.environ[name])
            os.environ[name] = value

    def seen(self):
        parser = configparser.ConfigParser(interpolation=None)
        parser.read(self.file)
        return parser.get(GROUP, 'tour-seen', fallback=None)

    @staticmethod
    def step(window):
        """The title of the step that is shown, or None."""
        for title, _ in STEPS:
            node = window.find('heading', title)
            if node is not None and window.box(node).height > 0:
                return title
        return None

    def wait_step(self, window, title):
        wait_for(title, lambda: self.step(window) == title)

    def end(self, window):
        window.key('ctrl+q')
        wait_for('the end', lambda: window.proc.poll() is not None)

    def test_it_is_shown_once(self):
        window = self.open_demo()
        self.wait_step(window, STEPS[0][0])
        wait_for('a note of it', lambda: self.seen() == 'true')
        self.end(window)
        window = self.open_demo()
        window.handle(FRONT_MOUNT)
        self.assertIsNone(self.step(window))

    def test_a_car_of_ones_own_comes_without(self):
        window = self.open()
        window.handle(FRONT_MOUNT)
        self.assertIsNone(self.step(window))
        self.assertIsNone(self.seen())

    def test_five_steps_by_keys_alone(self):
        window = self.open_demo()
        for number, (title, question) in enumerate(STEPS, 1):
            self.wait_step(window, title)
            window.get('label', 'Step %d of 5' % number)
            wait_for(question, lambda q=question: window.state('question') == q)
            focus = wait_for('the button', lambda: window.focused())
            self.assertEqual(focus.get_role_name(), 'push button')
            self.assertTrue(focus.get_description().startswith(title + ': '))
            window.key('Return')
        wait_for('the end', lambda: self.step(window) is None)

    def test_back_and_escape(self):
        window = self.open_demo()
        self.wait_step(window, STEPS[0][0])
        window.key('Return')
        self.wait_step(window, STEPS[1][0])
        window.key('shift+Tab', 'Return')
        self.wait_step(window, STEPS[0][0])
        window.key('Escape')
        wait_for('the end', lambda: self.step(window) is None)

    def test_the_window_stays_in_use(self):
        window = self.open_demo()
        self.wait_step(window, STEPS[0][0])
        window.frame = window.get('frame', WREN)
        window.wait_laid_out()
        window.click(window.handle(FRONT_MOUNT))
        window.key('Left')
        wait_for('a moved mount', lambda: window.mount()[0] == 1.0)
        self.assertEqual(self.step(window), STEPS[0][0])
        window.press(window.get('push button', 'Skip the Tour'))
        wait_for('the end', lambda: self.step(window) is None)
        self.assertEqual(window.mount()[0], 1.0)

    def test_again_from_the_menu(self):
        os.environ['STRUTWRIGHT_TOUR'] = 'no'
        window = self.open_demo()
        window.handle(FRONT_MOUNT)
        self.assertIsNone(self.step(window))
        window.activate('tour', win=0)
        self.wait_step(window, STEPS[0][0])
        self.assertEqual(window.active(), window.win)

    def test_over_a_car_of_ones_own_in_another_window(self):
        window = self.open()
        window.handle(FRONT_MOUNT)
        window.activate('tour', win=0)
        window.wait_other_window()
        self.wait_step(window, STEPS[0][0])


if __name__ == '__main__':
    main()
