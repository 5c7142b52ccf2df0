# SPDX-License-Identifier: GPL-3.0-or-later
"""What the program keeps from one start to the next, in a settings file of the test's."""
import os
import pathlib
import re
import shutil

from gtkdrive import sh, wait_for
from kept_settings import KeptTest
from strutwright_window import DATA, WREN, WindowTest, main


class Kept(KeptTest):
    def size(self, window):
        box = window.box(window.get('frame', WREN))
        return box.width, box.height

    def test_a_new_window_is_as_large_as_the_last_one(self):
        window = self.open()
        first = self.size(window)
        sh('xdotool', 'windowsize', window.win, 1300, 800)
        wait_for('another size', lambda: self.size(window) != first)
        with window.inside(window.win, WREN):
            last = self.size(window)
        self.end(window)
        self.assertEqual((self.kept('window-width'), self.kept('window-height')),
                         ('1300', '800'))
        self.assertEqual(self.size(self.open()), last)

    def test_dark_stays_dark(self):
        window = self.open()
        self.assertFalse(window.state('dark', win=0))
        window.key('ctrl+d')
        wait_for('dark', lambda: window.state('dark', win=0))
        self.end(window)
        self.assertEqual(self.kept('dark'), 'true')
        self.assertTrue(self.open().state('dark', win=0))

    def test_the_next_dialog_begins_in_the_last_folder(self):
        # has the letters: one that xdotool must first put on a key may come as another
        sh('setxkbmap', 'de')
        self.addCleanup(sh, 'setxkbmap', 'us')
        place = self.folder / 'ein größerer Ort'
        place.mkdir()
        shutil.copy(DATA / 'fieldfare.swcar', place / 'one.swcar')
        window = self.open()
        window.key('ctrl+o')
        window.in_dialog(place / 'one.swcar', location_key='ctrl+l')
        wait_for('the folder', lambda: self.kept('last-folder'))
        self.assertEqual(self.kept('last-folder'), "'%s'" % place.as_uri())
        self.end(window)

        window = self.open()
        window.key('ctrl+o')
        window.in_dialog('one.swcar', location_key='ctrl+l')
        wait_for('the other car', lambda: window.get('frame').get_name() != WREN)
        self.assertIsNone(window.message())

    def test_a_folder_that_is_gone_is_no_matter(self):
        self.keep_by_hand(last_folder="'file:///nowhere/at/all'")
        window = self.open()
        window.key('ctrl+o')
        window.in_dialog(DATA / 'fieldfare.swcar', location_key='ctrl+l')
        wait_for('the other car', lambda: window.get('frame').get_name() != WREN)

    def drivers(self, renderer):
        """The graphics drivers that the program has loaded for that choice."""
        self.keep_by_hand(renderer="'%s'" % renderer)
        window = self.open()
        maps = pathlib.Path('/proc/%d/maps' % window.proc.pid).read_text()
        self.end(window)
        return set(re.findall(r'\S*(?:libEGL|libGLX)\S*_mesa\S*|\S*_dri\.so', maps))

    def test_the_renderer_is_chosen(self):
        self.set_environment(GSK_RENDERER=None, GDK_DEBUG=None)
        self.assertEqual(self.drivers('software'), set())
        self.assertNotEqual(self.drivers('toolkit'), set())


class NotInstalled(WindowTest):
    def test_without_the_schema_all_is_as_at_first(self):
        folder = os.environ.pop('GSETTINGS_SCHEMA_DIR')
        self.addCleanup(os.environ.__setitem__, 'GSETTINGS_SCHEMA_DIR', folder)
        window = self.open()
        window.key('ctrl+d')
        wait_for('dark', lambda: window.state('dark', win=0))
        window.key('ctrl+q')
        wait_for('the end', lambda: window.proc.poll() is not None)
        self.assertEqual(window.proc.returncode, 0)


if __name__ == '__main__':
    main()
