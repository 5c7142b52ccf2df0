# SPDX-License-Identifier: GPL-3.0-or-later
"""The counter's whole job: a car that is not there yet and three plates of the shop's own
become a fitting card, once by keys alone and once by mouse alone."""
import json
import pathlib
import subprocess
import sys

from form_dialog import FormTest
from gtkdrive import sh, wait_for
from strutwright_window import main

# The made-up corner of test-new-car.py.
FIGURES = [[5, 345, 205], [-290, 365, 215], [-5, 655, 190], [-35, 535, 770],
           [-8, 600, 330], [-130, 640, 225], [-140, 310, 240], [0, 700, 270]]
REST = (('Camber', -0.5), ('Toe-in, this wheel', 0.05), ('Loaded radius', 270))
PLATES = [
    {'name': 'Shop slot', 'kind': 'slot', 'inboard_mm': 0, 'rearward_mm': 0,
     'direction_deg': 0, 'along_mm': [0, 25]},
    {'name': 'Shop holes', 'kind': 'holes',
     'holes': [{'label': 'A', 'inboard_mm': 10, 'rearward_mm': 0},
               {'label': 'B', 'inboard_mm': 20, 'rearward_mm': 0}]},
    {'name': 'Shop bush', 'kind': 'fixed', 'inboard_mm': 0, 'rearward_mm': 8},
]


class Shop(FormTest):
    def setUp(self):
        super().setUp()
        folder = self.data / 'strutwright' / 'plates'
        folder.mkdir(parents=True)
        for plate in PLATES:
            (folder / (plate['name'] + '.swplate')).write_text(json.dumps(
                {'format': 'strutwright-plate', 'version': 1, **plate}))
        self.new_car = self.folder / 'dunlin.swcar'
        self.card = self.folder / 'card.pdf'

    def copy(self, text):
        clipboard = subprocess.Popen(
            [sys.executable, pathlib.Path(__file__).with_name('clipboard.py'), text],
            stdout=subprocess.PIPE, text=True)
        self.addCleanup(clipboard.communicate, timeout=60)
        self.addCleanup(clipboard.kill)
        self.assertEqual(clipboard.stdout.readline(), 'copied\n')

    def menu_item(self, window, name):
        window.click(window.get('push button', 'Main menu'))
        window.press(wait_for(name, lambda: next(
            (node for node in window.walk() if node.get_role_name() == 'menu item'
             and node.get_name() == name and window.box(node).width > 0), None)))

    def keep_car(self, window, title):
        """Saved, and opened again by itself: two windows would share their names."""
        window.win = window.window('• ' + title)
        wait_for('the keys', lambda: window.active() == window.win)
        window.key('ctrl+s')
        window.in_dialog(self.new_car)
        wait_for('the file', self.new_car.exists)
        window.key('ctrl+q')
        window.proc.wait(timeout=30)
        return self.open(self.new_car, title=title)

    @staticmethod
    def rows(window):
        table = window.find('tree table', 'Ranked plates')
        return [node for node in window.walk(table)
                if node.get_role_name() == 'table row' and node.get_description()]

    def wait_page(self, window):
        wait_for('the answers', lambda: len(self.rows(window)) >= 3)

    @staticmethod
    def surfaces(window):
        """X ids of what the program shows: its popovers have windows of their own."""
        found = subprocess.run(['xdotool', 'search', '--onlyvisible', '--pid',
                                str(window.proc.pid)], text=True, check=False,
                               stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        return set(found.stdout.split())

    @staticmethod
    def press_in(window, surface, button, node):
        """A control in a button's popover: its place is told as if it began at the button."""
        box = wait_for(node.get_name(), lambda: window.box(node).width > 0
                       and window.box(node))
        origin = window.box(button)
        sh('xdotool', 'mousemove', '--window', surface, int(box.x - origin.x + 12),
           int(box.y - origin.y + box.height / 2), 'click', 1)

    def set_aim(self, window, typed):
        """Camber between −2.2 and −1.8°."""
        for name, value in (('Camber, at least', '-2.2'), ('Camber, at most', '-1.8')):
            typed(name, value)
        wait_for('the sentence', lambda: any(
            node.get_name().startswith('Camber −2.20 to −1.80°')
            for node in window.walk() if node.get_role_name() == 'label'))

    def best_row(self, window):
        """The first row, once the shop's own plates lead, as the aim wants them to."""
        return wait_for('the best of the plates', lambda: next(
            (row for row in self.rows(window)[:1]
             if 'Meets every aim' in row.get_description()), None))

    def check(self, fitted):
        car = json.loads(self.new_car.read_text())
        self.assertEqual(car['targets'][0]['aim'], 'camber')
        self.assertEqual(car['setups'][-1]['plate']['name'], fitted)
        self.assertTrue(self.card.read_bytes().startswith(b'%PDF-'))

    def test_by_keys_alone(self):
        window = self.open()
        window.key('ctrl+shift+n')
        dialog = self.dialog(window, 'New Car')
        self.tab_to(window, 'text', 'Name')
        window.type('Dunlin')
        self.tab_to(window, 'text', 'Arm, front pivot, x forward')
        for row in FIGURES:
            for figure in row:
                window.type('%g' % figure)
                window.key('Tab')
        for name, figure in REST:
            self.tab_to(window, 'text', name)
            window.type('%g' % figure)
        self.sentence(window, '^The corner can be solved')
        window.key('Return')
        window.wait_gone(dialog)

        window = self.keep_car(window, 'Dunlin')
        window.key('alt+3')
        self.wait_page(window)
        window.tab_to('push button', 'Aims…')
        window.key('space')
        window.get('check box', 'Camber')
        wait_for('the panel', lambda: window.focused().get_role_name() == 'page tab')
        window.tab_to('check box', 'Camber')
        window.key('space')

        def typed(name, value):
            window.tab_to('spin button', name)
            window.key('ctrl+a')
            window.type(value)
            window.key('Tab')
        self.set_aim(window, typed)
        window.key('Escape')

        row = self.best_row(window)
        name = row.get_name()
        window.tab_to('table row', name)
        window.key('Return')
        window.wait_in_hand(name)
        window.save(self.new_car)
        window.tab_to('push button', 'Card…', key='shift+Tab')
        window.key('space')
        dialog = window.wait_other_window()
        window.key('Return')
        window.in_dialog(self.card, dialog)
        wait_for('the card', self.card.exists)
        self.check(name)

    def test_by_mouse_alone(self):
        """Figures come from a spreadsheet; file names alone are typed."""
        window = self.open()
        self.menu_item(window, 'New Car…')
        dialog = self.dialog(window, 'New Car')
        with window.inside(dialog, 'New Car'):
            self.copy('\n'.join('\t'.join('%g' % figure for figure in row)
                                for row in FIGURES) + '\n')
            window.click(self.node(window, 'text', 'Arm, front pivot, x forward'), button=2)
            self.sentence(window, '^3 entries are missing')
            for name, figure in REST:
                self.copy('%g' % figure)
                window.click(self.node(window, 'push button', 'Go There'))
                entry = self.node(window, 'text', name)
                wait_for('the focus on ' + name, lambda node=entry: window.has_focus(node))
                window.wait_laid_out()
                window.click(entry, button=2)
                wait_for(name, lambda node=entry: window.text(node) == '%g' % figure)
            self.sentence(window, '^The corner can be solved')
            window.click(self.node(window, 'push button', 'Create'))
            window.wait_gone(dialog)

        window = self.keep_car(window, 'Unnamed car')
        window.click(wait_for('the switcher', lambda: window.find('page tab', 'Mount')))
        self.wait_page(window)
        before = self.surfaces(window)
        aims = window.get('push button', 'Aims')
        window.click(aims)
        panel = wait_for('the panel', lambda: next(
            iter(self.surfaces(window) - before), None))
        check = window.get('check box', 'Camber')
        self.press_in(window, panel, aims, check)
        wait_for('a change', lambda: window.is_enabled('undo'))

        def typed(name, value):
            self.press_in(window, panel, aims, window.get('spin button', name))
            window.key('ctrl+a')
            window.type(value)
            window.key('Tab')
        self.set_aim(window, typed)
        window.key('Escape')

        row = self.best_row(window)
        name = row.get_name()
        window.click(row, 20, 15)
        wait_for(name, lambda: window.get('push button', 'Plate').get_description() == name)
        window.click(window.get('push button', 'Fit This'))
        window.wait_in_hand(name)
        window.save(self.new_car)
        window.click(window.get('push button', 'Card…'))
        dialog = window.wait_other_window()
        wait_for('the page', lambda: window.box(
            window.get('image', 'Fitting card')).width > 300)
        with window.inside(dialog, 'Fitting card'):
            window.click(window.get('push button', 'Save as PDF…'))
        window.in_dialog(self.card, dialog)
        wait_for('the card', self.card.exists)
        self.check(name)


if __name__ == '__main__':
    main()
