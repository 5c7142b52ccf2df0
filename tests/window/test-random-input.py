# SPDX-License-Identifier: GPL-3.0-or-later
"""A thousand random clicks, drags, wheels and keys: no word on standard error."""
import os
import random
import time

from gtkdrive import sh, wait_for
from strutwright_window import WindowTest, main

SEED = int(os.environ.get('STRUTWRIGHT_SEED', 20240817))  # another one to look further
EVENTS, A_ROUND = 1000, 50
KEYS = ['Left', 'Right', 'Up', 'Down', 'Home', 'End', 'Tab', 'shift+Tab', 'Escape',
        'Return', 'space', 'Page_Up', 'Page_Down', 'shift+Left', 'ctrl+Right', 'ctrl+z',
        'ctrl+shift+z', 'ctrl+0', 'ctrl+plus', 'ctrl+minus', 'F9', 'ctrl+d', 'alt+1',
        'ctrl+shift+c', '7', 'minus', 'BackSpace']
HEADER = 60  # no clicks on the bar: it opens dialogs and closes the window


class RandomInput(WindowTest):
    def events(self, chance, width, height, n):
        words = []
        for _ in range(n):
            x, y = chance.randrange(10, width - 10), chance.randrange(HEADER, height - 10)
            kind = chance.random()
            if kind < 0.35:
                words += ['key', chance.choice(KEYS)]
            elif kind < 0.55:
                words += ['mousemove', '--window', '%1', x, y, 'click',
                          chance.choice([1, 1, 1, 2, 3, 4, 5])]
            else:
                words += ['mousemove', '--window', '%1', x, y, 'mousedown', 1]
                for _ in range(3):
                    words += ['mousemove_relative', '--', chance.randrange(-60, 60),
                              chance.randrange(-60, 60), 'sleep', 0.004]
                if chance.random() < 0.2:
                    words += ['key', 'Escape']
                words += ['mouseup', 1]
            words += ['sleep', 0.004]
        return words

    def questions(self, window):
        """The keys that ask them, by the questions that they show."""
        found = {}
        for digit in range(1, 10):
            window.key('alt+%d' % digit)
            time.sleep(0.3)
            found.setdefault(window.state('question'), 'alt+%d' % digit)
        return found

    def back_to(self, window, question, key):
        """Whatever the last round has opened is closed, and the question is asked."""
        def is_there():
            window.key('Escape', 'Escape')
            sh('xdotool', 'windowactivate', '--sync', window.win, timeout=10)
            window.key(key)
            time.sleep(0.2)
            return window.state('question') == question
        wait_for('the question ' + question, is_there)

    def test_random_input_is_taken_in_silence(self):
        window = self.open()
        chance = random.Random(SEED)
        frame = window.box(window.get('frame'))
        questions = sorted(self.questions(window).items())
        self.assertGreaterEqual(len(questions), 3)
        for i in range(EVENTS // A_ROUND):
            self.back_to(window, *questions[i % len(questions)])
            words = self.events(chance, frame.width, frame.height, A_ROUND)
            sh('xdotool', *[window.win if word == '%1' else word for word in words],
               timeout=120)
            self.assertIsNone(window.proc.poll(), 'seed %d, round %d' % (SEED, i))
        self.back_to(window, *questions[0])
        window.key('ctrl+0')
        if window.state('panel') is False:  # F9 was among the keys
            window.activate('panel')
        wait_for('an answer', lambda: window.mount() is not None)


if __name__ == '__main__':
    main()
