# SPDX-License-Identifier: GPL-3.0-or-later
"""The window in a language nobody speaks: what is plain there, no translator ever sees.

Walks all that a screen reader is told, on each question and in the dialogs. Needs
gettext's tools as well.
"""
import os
import re
import shutil
import tempfile

from gtkdrive import wait_for
import pseudo_locale
from pseudo_locale import plain_words, pseudo
from strutwright_window import DATA, Window, WindowTest, main

TITLE = 'Dunnock 1.4 sports coupé'
QUESTIONS = 'travel', 'height', 'mount', 'springs', 'loads'
DIALOGS = (('measured-points', 1), ('new-car', 1), ('guide', 1), ('report', 1),
           ('export', 1), ('restore', 1), ('quantities', 1), ('explain', 1),
           ('show-help-overlay', 1), ('units', 0), ('about', 0), ('cautions', 0))
# Names that GTK gives itself, its parts without one, and its own words.
CLASS_NAME = re.compile(r'(Gtk|Sw)[A-Z]\w+')
TOOLKIT = {
    'strutwright-window', 'Minimize', 'Minimize the window', 'Maximize',
    'Maximize the window', 'Close', 'Close the window',
    'Alt', 'Ctrl', 'Shift', 'Delete', 'Escape', 'Home', 'Page_Down', 'Page_Up',
    'Shortcuts', 'Search Results', 'No Results Found', 'Try a different search',
    '(None)', 'About', 'About Strutwright', 'Credits', 'License', 'System',
    'This program comes with absolutely no warranty.\nSee the GNU General Public License, '
    'version 3 or later for details.'}


class PseudoWindow(Window):
    """Finds by what the sources call a thing."""

    def find(self, role, name=None, root=None):
        names = {name, pseudo(name)} if name else None
        return next((node for node in self.walk(root) if node.get_role_name() == role
                     and (names is None or node.get_name() in names)), None)

    def texts(self, root):
        for node in self.walk(root):
            yield node.get_name()
            yield node.get_description()
            if node.get_text_iface() is not None:
                yield self.text(node)

    def dialogs(self):
        """All frames but that of the car."""
        frames = [self.acc.get_child_at_index(i)
                  for i in range(self.acc.get_child_count())]
        return [frame for frame in frames if frame and frame.get_name() != TITLE]


class PseudoLanguage(WindowTest):
    def setUp(self):
        super().setUp()
        shutil.copy(DATA / 'dunnock.swcar', self.car)
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        pseudo_locale.build(place.name)
        self.own = pseudo_locale.own_texts(self.car, DATA / 'wren.swcar')  # the tour's
        for name, value in (('STRUTWRIGHT_LOCALEDIR', place.name),
                            ('LANGUAGE', pseudo_locale.LANGUAGE)):
            self.addCleanup(os.environ.__setitem__, name, os.environ.get(name, ''))
            os.environ[name] = value
        self.window = self.keep(PseudoWindow(self.car, title=TITLE))
        self.found = set()

    def look(self, where, root, least):
        """Notes what is unmarked; at least so many texts must be in the language."""
        texts = {text for text in self.window.texts(root) if text}
        spoken = [text for text in texts if '⟦' in text]
        self.assertGreaterEqual(len(spoken), least, where)
        self.found |= {'%s: “%s”' % (where, text) for text in texts
                       if text not in TOOLKIT and not CLASS_NAME.fullmatch(text)
                       and plain_words(text, self.own)}

    def look_at_dialog(self, where):
        dialog = self.window.wait_other_window()
        for frame in wait_for(where, self.window.dialogs):
            self.look(where, frame, 1)
        self.window.close_dialog(dialog)

    def press(self, name):
        self.window.click(self.window.get('push button', name))

    def look_into(self, button, part):
        """What opens beside a button."""
        self.press(button)
        wait_for(button, lambda: self.window.find(*part))
        self.look(button, None, 10)
        self.window.key('Escape')

    def ask(self, question):
        self.window.key('alt+%d' % (1 + QUESTIONS.index(question)))
        wait_for(question, lambda: self.window.state('question') == question)

    def test_the_questions(self):
        self.look_into('Curves', ('check box', 'Camber gain'))
        self.ask('height')
        self.ask('mount')
        self.window.click(wait_for('the answers', lambda: next(
            (node for node in self.window.walk() if node.get_role_name() == 'table row'
             and node.get_description()), None)), 20, 15)
        self.press('Card…')
        self.look_at_dialog('card')
        self.look_into('Aims', ('check box', 'Camber'))
        self.press('Plate')
        self.window.press(wait_for('the menu', lambda: self.window.find(
            'menu item', 'New Plate…')))
        self.look_at_dialog('plate')
        self.ask('springs')
        self.ask('loads')
        self.press('Corrections')
        self.window.get('spin button', 'Ball-joint spacer')
        self.window.activate('tour', win=0)
        wait_for('the tour', lambda: self.window.find('heading', 'Move the upper mount'))
        self.look('window', None, 300)
        self.assertEqual(self.found, set())

    def test_the_dialogs(self):
        for action, of_window in DIALOGS:
            self.window.activate(action, win=of_window)
            self.look_at_dialog(action)
        self.assertEqual(self.found, set())


if __name__ == '__main__':
    main()
