# SPDX-License-Identifier: GPL-3.0-or-later
"""The question "Mount" as the tests meet it: its map, its menu of plates, its table."""
import json
import time

from gtkdrive import wait_for
from strutwright_window import DATA, WindowTest

HANDLE = 'Upper mount, map'
HOLES = 'Three-hole camber plate'
RANKED = 'Ranked plates'
PLATE_FILES = {json.loads(path.read_text())['name']: path
               for path in (DATA / 'plates').glob('*.swplate')}


class MountTest(WindowTest):
    def open_page(self, *args, **named):
        window = self.open(*args, **named)
        window.key('alt+3')
        handle = window.handle(HANDLE)
        wait_for('the map', lambda: window.box(handle).x > 0)
        wait_for('the answers', lambda: self.rows(window))
        self.wait_still(window)
        return window

    def wait_still(self, window):
        """Until the handle keeps its place, so that a press meets it."""
        last = []

        def is_still():
            last.append(self.middle(window))
            time.sleep(0.1)
            return last[-3:] == [last[-1]] * 3
        wait_for('the handle to rest', is_still)

    @staticmethod
    def rows(window):
        """The plates in the table, best first."""
        table = window.find('tree table', RANKED)
        return [node for node in window.walk(table, but_inside='table row')
                if node.get_role_name() == 'table row' and node.get_description()]

    @staticmethod
    def cells(row):
        return [row.get_child_at_index(i).get_name()
                for i in range(row.get_child_count())]

    def take_plate(self, window, name):
        """In the menu beside the switcher, by its keys."""
        window.click(window.get('push button', 'Plate'))
        item = wait_for('the menu', lambda: next(
            (node for node in window.walk() if node.get_name() == name
             and 'menu item' in node.get_role_name()), None))
        wait_for('the menu to take the keys', window.focused)
        for _ in range(30):
            if window.has_focus(item):
                break
            window.key('Down')
            time.sleep(0.05)
        self.assertTrue(window.has_focus(item), 'never came to ' + name)
        window.key('Return')
        self.wait_plate(window, name)

    @staticmethod
    def wait_plate(window, name):
        wait_for(name + ' in hand', lambda: window.get(
            'push button', 'Plate').get_description() == name)

    def saved(self, window, setup=0):
        window.save(self.car)
        return json.loads(self.car.read_text())['setups'][setup]

    @staticmethod
    def middle(window):
        box = window.box(window.handle(HANDLE))
        return box.x + box.width / 2, box.y + box.height / 2

    def words(self, window):
        return window.handle(HANDLE).get_description()
